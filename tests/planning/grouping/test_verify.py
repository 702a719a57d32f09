"""Checking kept groups again finds what was tampered with, and nothing else."""

from __future__ import annotations

import subprocess
import sys
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from tests.planning.grouping.classes import NOT_TEAM, asked, drawn, rule
from tests.planning.grouping.test_certificate import value_of as by_formula
from trivet.model.lock import Lock, StationGroup
from trivet.planning.grouping.certificate import met_matrix
from trivet.planning.grouping.ledger import Ledger, ledger_of
from trivet.planning.grouping.verify import value_of, verify


def locks(students: int = 12, units: int = 4) -> dict[str, Lock]:
    """Return some units of a class, each counting those before it."""
    ledger = Ledger()
    kept: dict[str, Lock] = {}
    for number in range(units):
        one = drawn(asked(students, seed=f"unit {number}", ledger=ledger))
        kept[f"unit-{number}"] = Lock(
            unit=f"unit-{number}",
            class_id="p1",
            drawn_on=date(2026, 9, 1),
            engine="1",
            drawn_from="numbers",
            counted=tuple(kept),
            inputs="",
            seal="",
            groups=one.groups,
            repeats=one.repeats,
            pair_repeats=one.pair_repeats,
            proved_minimum=one.proved_minimum,
            certificate=one.certificate,
        )
        ledger = ledger.plus(one.groups)
    return kept


def test_what_was_drawn_holds() -> None:
    """Every lock of a drawn year holds, its proof included."""
    kept = locks()
    assert kept["unit-3"].repeats > 0 and kept["unit-3"].certificate
    for lock in kept.values():
        assert [finding.text for finding in verify(lock, kept) if not finding.holds] == []


def test_more_than_the_integers_alone_prove() -> None:
    """Where the integers prove less than the file says, all teams that could do better are tried; one more than that does not hold."""
    kept = locks(26, 9)
    lock = kept["unit-8"]
    least = lock.proved_minimum
    assert least is not None
    said = [finding.text for finding in verify(lock, kept) if finding.holds]
    assert any(f"proved minimum {least}" in text and "no set makes up a class" in text for text in said)
    assert not all(finding.holds for finding in verify(replace(lock, proved_minimum=least + 1), kept))


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({"repeats": 2}, "teammates have worked together before: 2 times in the file"),
        ({"pair_repeats": 5}, "pairs have shared a device before: 5 times in the file"),
        ({"proved_minimum": 30}, "the integers in the file prove only"),
        ({"certificate": {}}, "no proof stands in the file"),
        ({"counted": ("unit-0", "unit-9")}, "not kept: unit-9"),
    ],
)
def test_what_was_changed_does_not_hold(changes: dict[str, object], said: str) -> None:
    """A changed figure, proof or history is found, with what is true instead."""
    kept = locks()
    found = verify(replace(kept["unit-3"], **changes), kept)  # type: ignore[arg-type]
    assert any(said in finding.text for finding in found if not finding.holds)


def test_seats_cards_and_rules() -> None:
    """A student who stands nowhere or twice, a doubled duty and a broken rule are found."""
    kept = locks()
    lock = kept["unit-0"]
    group = lock.groups["A"]
    (code, team), *_ = group.teams.items()
    first, second, *_ = team
    fewer = replace(lock, groups={**lock.groups, "A": StationGroup({code: {n: r for n, r in team.items() if n != first}}, group.pairs)})
    assert first in next(f.text for f in verify(fewer, kept) if not f.holds)
    doubled = replace(lock, groups={**lock.groups, "A": StationGroup({code: {**team, second: team[first]}}, group.pairs)})
    assert any(code in finding.text for finding in verify(doubled, kept) if not finding.holds)
    apart = rule(NOT_TEAM, int(first[-2:]), int(second[-2:]))
    assert any("not kept: not in one team" in finding.text for finding in verify(lock, kept, (apart,)) if not finding.holds)


def test_the_formula_twice() -> None:
    """The check's own sum equals the formula written in the tests of the certificate."""
    kept = locks()
    before = ledger_of(kept[unit].groups for unit in kept["unit-3"].counted)
    weights = {seat: 100 * seat for seat in range(1, 13)}
    assert value_of(weights, before.teams, [4, 4, 4]) == by_formula(
        met_matrix(range(1, 13), before.teams), [4, 4, 4], [weights[s] for s in range(1, 13)]
    )


SEARCH = ("search", "exchange", "certificate", "cheap_teams", "exact", "proof", "seat", "draw", "board", "skeleton", "designs", "weeks")
"""The modules that make groups and proofs."""


def test_a_check_needs_nothing_that_makes_groups(root: Path) -> None:
    """--check counts a kept file again in a process that never loads the search, the skeleton or the making of proofs."""
    code = (
        "import sys\n"
        "from trivet.command.main import main\n"
        "main(['groups', '--check', 'school/groups/p1/float-or-sink.yml'], standalone_mode=False)\n"
        f"made = [name for name in {SEARCH!r} if 'trivet.planning.grouping.' + name in sys.modules]\n"
        "assert 'trivet.planning.grouping.verify' in sys.modules\n"
        "assert not made, made\n"
    )
    done = subprocess.run([sys.executable, "-c", code], cwd=root, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    assert "DOES NOT HOLD" not in done.stdout and "teammates have worked together before" in done.stdout
