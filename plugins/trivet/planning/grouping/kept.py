"""From a draw to kept groups, and what a new draw changes in the kept groups of later units."""

from __future__ import annotations

import hashlib
import hmac
import json
from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import date

from trivet.model.department import Department
from trivet.model.lock import Groups, Lock
from trivet.model.school import Run
from trivet.planning.engine import ENGINE
from trivet.planning.grouping.certificate import met_matrix
from trivet.planning.grouping.for_class import Unseated, counted_before, request_for, runs_in_order
from trivet.planning.grouping.ledger import ledger_of, pair_repeats, repeats, seat_of
from trivet.planning.grouping.minimum import minimum
from trivet.planning.grouping.request import Draw, Request, Way


def keep(drawn: Draw, request: Request, run: Run, counted: Sequence[Lock], *, drawn_on: date, from_roster: bool, key: bytes) -> Lock:
    """Return a draw as a lock. `key` seals the private inputs; it is not used where there are none."""
    return Lock(
        unit=run.unit,
        class_id=run.class_id,
        drawn_on=drawn_on,
        engine=ENGINE,
        drawn_from="roster" if from_roster else "numbers",
        counted=tuple(lock.unit for lock in counted),
        inputs=inputs_digest(request, run, counted),
        seal=seal(request, key) if from_roster else "",
        groups=drawn.groups,
        repeats=drawn.repeats,
        pair_repeats=drawn.pair_repeats,
        proved_minimum=drawn.proved_minimum,
        certificate=drawn.certificate,
        leveled=request.way is Way.LEVELED,
    )


def inputs_digest(request: Request, run: Run, counted: Sequence[Lock]) -> str:
    """Return SHA-256 over the public inputs: class, unit, seats, sizes, and the groups that count as history."""
    public = {
        "class": run.class_id,
        "unit": run.unit,
        "engine": ENGINE,
        "seats": list(request.seats),
        "team size": request.team_size,
        "level tolerance percent": request.tolerance_percent,
        "roles": "drawn" if request.deal_roles else "students",
        "counted": [[lock.unit, plain_groups(lock.groups)] for lock in counted],
    }
    return "sha256 " + hashlib.sha256(canonical(public)).hexdigest()


def public_digest(department: Department, run: Run, counted: Sequence[Lock]) -> str:
    """Return the digest of the public inputs of a run as the department stands now."""
    request = request_for(department, run, None)
    if isinstance(request, Unseated):
        raise AssertionError("a draw by number needs no tables")
    return inputs_digest(request, run, counted)


def seal(request: Request, key: bytes) -> str:
    """Return HMAC-SHA-256 over the private inputs: a plain digest of a class could be inverted by trying all levels."""
    private = {
        "levels": sorted((request.levels or {}).items()),
        "tables": sorted((request.tables or {}).items()),
        "rules": [[rule.kind.value, rule.low, rule.high] for rule in sorted((*request.rules, *request.wishes))],
        "way": request.way.value,
        "ledger": sorted([*two, times] for two, times in request.ledger.teams.items()) if request.public is not None else [],
    }
    return "hmac-sha256 " + hmac.new(key, canonical(private), hashlib.sha256).hexdigest()


def canonical(value: object) -> bytes:
    """Return one fixed text for a value: JSON with sorted keys and no blanks."""
    return json.dumps(value, sort_keys=True, separators=(",", ":")).encode()


def plain_groups(groups: Groups) -> dict[str, object]:
    """Return groups as plain data, in the shape of the plan."""
    return {
        letter: {
            "teams": {code: {number: list(roles) for number, roles in team.items()} for code, team in group.teams.items()},
            "pairs": [list(pair) for pair in group.pairs],
        }
        for letter, group in groups.items()
    }


def recounted(department: Department, new: Lock) -> tuple[Lock, ...]:
    """Return the kept groups of the class's later units as they must be re-written once `new` is kept.

    Their groups stay; what counts as their history is taken anew, and their repeats and proved minimum are worked out again.
    """
    after = replace_lock(department, new)
    later = []
    for run in runs_in_order(department, new.class_id):
        lock = after.locks.get((run.class_id, run.unit))
        counted = counted_before(after, run)
        if lock is None or lock.unit == new.unit or new.unit not in [c.unit for c in counted]:
            continue
        ledger = ledger_of(c.groups for c in counted)
        found = repeats(lock.groups, ledger)
        sizes = [len(team) for group in lock.groups.values() for team in group.teams.values()]
        seats = sorted(seat_of(number) for group in lock.groups.values() for number in group.students)
        proof = minimum(met_matrix(seats, ledger.teams), sizes, found).bound if lock.proved_minimum is not None else None
        numbers = sorted(number for group in lock.groups.values() for number in group.students)
        again = replace(
            lock,
            inputs=public_digest(after, run, counted),
            counted=tuple(c.unit for c in counted),
            repeats=found,
            pair_repeats=pair_repeats(lock.groups, ledger),
            proved_minimum=proof.repeats if proof is not None else None,
            certificate=dict(zip(numbers, proof.weights, strict=False)) if proof is not None else {},
        )
        if again != lock:
            later.append(again)
    return tuple(later)


def replace_lock(department: Department, new: Lock) -> Department:
    """Return the department with one more, or another, lock."""
    locks: Mapping[tuple[str, str], Lock] = {**department.locks, (new.class_id, new.unit): new}
    return replace(department, locks=locks)
