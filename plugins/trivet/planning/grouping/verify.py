"""Check kept groups again, from their own figures and the groups they count. Nothing is drawn again."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations

from trivet.model.lock import ROLE_IDS, Lock
from trivet.model.roster import PairRule
from trivet.planning.grouping.ledger import Two, ledger_of, pair_meetings, seat_of, team_meetings
from trivet.planning.grouping.rules import broken


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing that was checked: whether it holds, and a sentence."""

    holds: bool
    text: str


def verify(lock: Lock, others: Mapping[str, Lock], rules: Sequence[PairRule] = ()) -> tuple[Finding, ...]:
    """Check a lock against what a lock promises. `others` are the class's kept groups by unit, `rules` those of its private list."""
    return tuple(
        finding
        for finding in (
            _everyone_once(lock),
            _cards(lock),
            _counted(lock, others),
            *_repeats(lock, others),
            _minimum(lock, others),
            _rules(lock, rules),
        )
        if finding is not None
    )


def _everyone_once(lock: Lock) -> Finding:
    in_teams = [number for group in lock.groups.values() for team in group.teams.values() for number in team]
    wrong = sorted({number for number, times in Counter(in_teams).items() if times > 1})
    for group in lock.groups.values():
        in_pairs = Counter(number for pair in group.pairs for number in pair)
        wrong += sorted(number for number in {*in_pairs, *group.students} if in_pairs[number] != 1 or number not in group.students)
    text = f"{len(in_teams)} students, each in one team and in one pair, trio or alone"
    return Finding(not wrong, text if not wrong else f"not in exactly one team and pair: {', '.join(sorted(set(wrong)))}")


def _cards(lock: Lock) -> Finding:
    teams = {code: team for group in lock.groups.values() for code, team in group.teams.items()}
    dealt = {code: sorted(role for roles in team.values() for role in roles) for code, team in teams.items()}
    if not any(dealt.values()):
        return Finding(True, "duties are left to the students")
    wrong = sorted(code for code, roles in dealt.items() if roles != sorted(ROLE_IDS))
    return Finding(
        not wrong, "every team holds each of the five duties once" if not wrong else f"duties missing or given twice: {', '.join(wrong)}"
    )


def _counted(lock: Lock, others: Mapping[str, Lock]) -> Finding | None:
    missing = [unit for unit in lock.counted if unit not in others]
    if missing:
        return Finding(False, f"counted from earlier units, but not kept: {', '.join(missing)}")
    return Finding(True, f"counted from earlier units: {', '.join(lock.counted)}") if lock.counted else None


def _repeats(lock: Lock, others: Mapping[str, Lock]) -> list[Finding]:
    before = ledger_of(others[unit].groups for unit in lock.counted if unit in others)
    found = []
    for what, said, again in (
        ("teammates have worked together before", lock.repeats, sum(before.teams.get(two, 0) for two in team_meetings(lock.groups))),
        ("pairs have shared a device before", lock.pair_repeats, sum(before.pairs.get(two, 0) for two in pair_meetings(lock.groups))),
    ):
        found.append(
            Finding(said == again, f"{what}: {_times(said)}{'' if said == again else f' in the file, counted again {_times(again)}'}")
        )
    return found


def _times(count: int) -> str:
    return "never" if count == 0 else "once" if count == 1 else f"{count} times"


def _minimum(lock: Lock, others: Mapping[str, Lock]) -> Finding | None:
    """Re-check the bound in one scan over all teams of each size; where the file says more, by trying all teams that could do better."""
    if lock.proved_minimum is None:
        return None
    if not lock.certificate:
        text = "proved minimum 0, which needs no proof" if lock.proved_minimum == 0 else "no proof stands in the file"
        return Finding(lock.proved_minimum == 0, text)
    before = ledger_of(others[unit].groups for unit in lock.counted if unit in others)
    sizes = [len(team) for group in lock.groups.values() for team in group.teams.values()]
    weights = {seat_of(number): weight for number, weight in lock.certificate.items()}
    again = value_of(weights, before.teams, sizes)
    text = f"proved minimum {lock.proved_minimum}, and {lock.repeats} reached: the integers in the file prove "
    if again >= lock.proved_minimum:
        return Finding(True, text + "it")
    if _no_better(lock.proved_minimum - 1, weights, before.teams, sizes):
        return Finding(True, f"{text}{again}, and of the teams that could do better no set makes up a class")
    return Finding(False, f"proved minimum {lock.proved_minimum}: the integers in the file prove only {again}")


def _no_better(repeats: int, weights: Mapping[int, int], met: Mapping[Two, int], sizes: Sequence[int]) -> bool:
    """Try all teams that could lead to so few `repeats`. The integers alone need none of this code, so it is loaded here."""
    from trivet.planning.grouping.certificate import met_matrix  # noqa: PLC0415
    from trivet.planning.grouping.exact import better  # noqa: PLC0415

    seats = sorted(weights)
    return better(met_matrix(seats, met), sizes, [weights[seat] for seat in seats], repeats).proved


def value_of(weights: Mapping[int, int], met: Mapping[Two, int], sizes: Sequence[int]) -> int:
    """Return ⌈(Σ Y + Σ over sizes s of k_s · min over teams S of s (1000 · meetings in S - Y of S)) / 1000⌉."""
    total = sum(weights.values())
    for size, count in Counter(sizes).items():
        total += count * min(
            1000 * sum(met.get(two, 0) for two in combinations(team, 2)) - sum(weights[seat] for seat in team)
            for team in combinations(sorted(weights), size)
        )
    return -(-total // 1000)


def _rules(lock: Lock, rules: Sequence[PairRule]) -> Finding | None:
    team_of = {seat_of(n): code for group in lock.groups.values() for code, team in group.teams.items() for n in team}
    here = [rule for rule in rules if rule.low in team_of and rule.high in team_of]
    if not here:
        return None
    codes = {code: place for place, code in enumerate(sorted(set(team_of.values())))}
    bad = broken(here, {seat: codes[code] for seat, code in team_of.items()}, {seat: ord(code[0]) for seat, code in team_of.items()})
    said = "; ".join(f"{rule.kind.value}: {rule.low} and {rule.high}" for rule in bad)
    return Finding(not bad, f"all {len(here)} rules of the private list are kept" if not bad else f"not kept: {said}")
