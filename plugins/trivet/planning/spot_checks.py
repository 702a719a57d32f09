"""The teacher's spot checks: which question goes to which student of which team."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from trivet.model.lock import Groups
from trivet.model.plan import SpotCheck
from trivet.model.school import Role
from trivet.model.station import Kind
from trivet.model.unit import Unit
from trivet.planning.catch_up import Places
from trivet.planning.spot_check_lines import Line, lines, safety


@dataclass(slots=True)
class AskedHistory:
    """How often each student was asked this year, and in how many units the class had spot checks."""

    asked: Counter[str] = field(default_factory=Counter)
    units: int = 0

    def add(self, checks: Sequence[SpotCheck]) -> None:
        """Count one more unit."""
        self.asked.update(check.seat for check in checks)
        self.units += 1


@dataclass(frozen=True, slots=True)
class _Team:
    code: str
    members: Mapping[str, tuple[str, ...]]
    kind: Kind


def spot_checks(
    unit: Unit, groups: Groups, rounds: Sequence[Places], roles: Sequence[Role], history: AskedHistory, *, whole_class: bool = False
) -> tuple[SpotCheck, ...]:
    """Return the spot checks of all rounds, by round and team.

    In a rotating round the teacher asks the teams at the two stations that she leaves, in a whole-class round every team.
    The student is the teammate asked least in this unit, then least this year, then with the lowest seat: nobody is asked
    twice before all teammates were asked once. The question is of the kind this team was asked least, then the one put least
    in this round, then the first of `lines`. Where the hands-on station has hazards, one team of each round is asked about one
    of them whatever the counts say; which team and which hazard moves on from round to round and from unit to unit.
    """
    duties = {role.id: role for role in roles}
    asked: Counter[str] = Counter()
    put: Counter[tuple[str, str]] = Counter()
    checks: list[SpotCheck] = []
    for number, places in enumerate(rounds):
        teams = _teams(groups, places, whole_class=whole_class)
        about_safety = _about_safety(unit, [team for team in teams if team.kind is Kind.HANDS_ON], history.units + number)
        in_round: Counter[Line] = Counter()
        for team in teams:
            seat = min(team.members, key=lambda each: (asked[each], history.asked[each], each))
            line = about_safety.get(team.code)
            if line is None:
                held = [duties[role] for role in team.members[seat] if role in duties]
                line = _next(lines(unit, team.kind, held), team.code, put, in_round)
            checks.append(SpotCheck(round=number + 1, team=team.code, seat=seat, kind=line.kind, ask=line.ask, listen_for=line.listen_for))
            asked[seat] += 1
            put[team.code, line.kind] += 1
            in_round[line] += 1
    return tuple(checks)


def _teams(groups: Groups, places: Places, *, whole_class: bool) -> list[_Team]:
    """The teams to ask in a round, by code; a group without a station has none."""
    all_teams = [
        _Team(code, members, places[letter])
        for letter, group in groups.items()
        if letter in places
        for code, members in group.teams.items()
        if members
    ]
    return sorted(
        (team for team in all_teams if whole_class or team.kind is not Kind.TEACHER_LED),
        key=lambda team: (team.code[0], len(team.code), team.code),
    )


def _about_safety(unit: Unit, teams: Sequence[_Team], turn: int) -> dict[str, Line]:
    """The one team that is asked about safety, with the question; empty where no hazard is met this round."""
    questions = safety(unit, Kind.HANDS_ON)
    if not teams or not questions:
        return {}
    return {teams[turn % len(teams)].code: questions[turn % len(questions)]}


def _next(choices: Sequence[Line], team: str, put: Counter[tuple[str, str]], in_round: Counter[Line]) -> Line:
    # min keeps the first of equals, and choices stand in the order wanted
    return min(choices, key=lambda line: (put[team, line.kind], in_round[line]))
