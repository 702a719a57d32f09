"""What a draw says about itself, in plain words and class numbers alone."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from trivet.model.lock import Groups
from trivet.model.roster import PairRule, RuleKind
from trivet.planning.grouping.board import one_level
from trivet.planning.grouping.for_class import Unseated
from trivet.planning.grouping.ledger import seat_of, team_meetings
from trivet.planning.grouping.request import Conflict, Draw, Limit, Request, Way
from trivet.planning.grouping.rules import joined

Name = Callable[[int], str]
"""A student's number from a seat: `p1-07` from 7."""

AGAIN = 6
"""So many pairs are named of those who have worked together before; the table of `--explain` has them all."""


def quality(drawn: Draw, counted: Sequence[str]) -> str:
    """Return how good a draw is, in one plain sentence; "fewer is not possible" stands only where that is proved."""
    if not counted:
        return "No earlier unit of this school year counts yet, so everyone's teammates are new."
    if drawn.repeats == 0:
        said = "All teammates are new: no two of a team have been in one team before"
    else:
        said = worked_together(drawn.repeats, drawn.repeated_pairs)
        said = said[0].upper() + said[1:]
        if drawn.proved_minimum == drawn.repeats:
            said += "; fewer is not possible"
        elif drawn.own_repeats == drawn.own_minimum == drawn.repeats:
            said += "; under your rules and levels fewer is not possible"
        elif drawn.proved_minimum:
            said += f"; no arrangement has fewer than {drawn.proved_minimum}"
    if drawn.pair_repeats:
        who = "one pair has" if drawn.pair_repeats == 1 else f"{drawn.pair_repeats} pairs have"
        said += f"; online, {who} shared a device before"
    return said + "."


def by_presence(drawn: Draw) -> list[str]:
    """Return the figure that goes by who was there, leveled units included, where it differs from the published one."""
    if drawn.own_repeats == drawn.repeats:
        return []
    least = "; fewer is not possible under your rules and levels" if drawn.own_repeats == drawn.own_minimum else ""
    return [f"By who was present, leveled units included: {drawn.own_repeats}{least}. What is published counts the kept groups alone."]


def year_quality(repeats: int, proved: int | None, own: int | None) -> str:
    """Return a unit's quality in a few words, for the list of a year."""
    if not repeats:
        return "all teammates new"
    said = f"teammates have worked together before {'once' if repeats == 1 else f'{repeats} times'}"
    if repeats == proved:
        return f"{said}, fewer is not possible"
    if repeats == own:
        without = "" if proved is None else f"; proved minimum {proved} without them"
        return f"{said}, fewer is not possible under your rules and levels{without}"
    return said if proved is None else f"{said}, proved minimum {proved}"


def level_spread(drawn: Draw, request: Request) -> str:
    """Return how far the teams' means lie from the class mean at most; "" where levels were not used."""
    widest = widest_gap(drawn, request)
    return "" if widest is None else f"teams within {widest / 100:.2f} of a level"


def widest_gap(drawn: Draw, request: Request) -> int | None:
    """Return how far the teams' means lie from the class mean at most, in hundredths of a level; None where levels were not used."""
    levels = request.levels or {}
    known = [levels[seat] for seat in request.seats if seat in levels]
    if not known or request.way is not Way.MIXED:
        return None
    widest = 0
    for team in (team for group in drawn.groups.values() for team in group.teams.values()):
        mine = [levels[seat] for seat in map(seat_of, team) if seat in levels]
        gap = abs(len(known) * sum(mine) - len(mine) * sum(known))
        widest = max(widest, -(-100 * gap // (len(known) * len(team) * one_level(levels))))
    return widest


def worked_together(repeats: int, pairs: int) -> str:
    """Return `3 pairs have worked together before`, with how often in all where one of them did more than once."""
    pairs = pairs or repeats
    said = f"{'one pair has' if pairs == 1 else f'{pairs} pairs have'} worked together before"
    return said if pairs == repeats else f"{said}, {repeats} times in all"


def together_again(drawn: Draw, request: Request, name: Name) -> list[str]:
    """Return who of the teammates have worked together before, most often first, and whether a rule keeps them together."""
    before = request.published.teams
    ruled = {seat: block for block in joined(request.seats, _one_team(request)) for seat in block}
    again = sorted((-before[two], two) for two in team_meetings(drawn.groups) if before.get(two))
    if not again:
        return []
    named = [
        f"{name(low)} and {name(high)}{'' if times == -1 else f', {-times} times'}{', by your rule' if high in ruled[low] else ''}"
        for times, (low, high) in again[:AGAIN]
    ]
    more = [f"and {len(again) - AGAIN} more pairs"] if len(again) > AGAIN else []
    return [f"Together before: {'; '.join([*named, *more])}."]


def _one_team(request: Request) -> list[tuple[int, int]]:
    return [(each.low, each.high) for each in request.rules if each.kind.asks is RuleKind.SAME_TEAM]


def limit(found: Limit, name: Name) -> str:
    """Return what kept a draw from being better."""
    if found.code == "levels":
        teams = "one team lies" if found.count == 1 else f"{found.count} teams lie"
        return f"The spread over the teams is not as even as asked: {teams} outside the tolerance, and the search found nothing nearer."
    if found.code == "support":
        return f"The {found.count} students who need something could not be spread over the teams: your rules leave no room for that."
    if found.code == "sizes":
        return f"The table groups leave station groups that differ by {found.count} students."
    one, other = found.seats
    return f"{name(one)} and {name(other)} may not share a team, yet they share a device: nobody else was left for them."


def rule(each: PairRule, name: Name) -> str:
    """Return a rule as a teacher wrote it."""
    return f"{each.kind.value}: {name(each.low)} and {name(each.high)}"


def conflict(found: Conflict, name: Name) -> list[str]:
    """Return why the rules can't all hold, line by line: the first says it, the last what to do."""
    count = len(found.rules)
    sizes = " and ".join(str(size) for size in sorted({size for group in found.shape for size in group}))
    where = f"in a class of {found.students} with teams of {sizes}"
    if not found.minimal:
        first, last = (
            f"no groups were found {where} that keep these {count} rules; there may be some",
            "leave out one of them in the private list",
        )
    elif count == 1:
        first, last = f"this rule can't hold {where}", "leave it out of the private list"
    else:
        first, last = f"these {count} rules can't all hold {where}", "leave out any one of them in the private list and the others can hold"
    return [first, *(f"  {rule(each, name)}" for each in found.rules), last]


def unseated(found: Unseated, name: Name) -> tuple[str, str]:
    """Return what is wrong with the tables of a class, and what to write."""
    who = ", ".join(name(seat) for seat in found.seats)
    if found.code == "no_table":
        what = f"no table for {who}, and this unit keeps the usual tables together"
        return what, "write a table for each in the private list, or `group by: mixed` in the unit"
    return (
        f"a table holds one student or more than six: {who}",
        "write tables of 2 to 6 in the private list, or `group by: mixed` in the unit",
    )


def written(groups: Groups) -> list[str]:
    """Return the groups as written lists: each team with its students and duties, then the pairs."""
    lines = []
    for letter, group in groups.items():
        lines.append(f"Station group {letter} ({students(len(group.students))})" if group.teams else f"Station group {letter}: nobody")
        for code, team in group.teams.items():
            lines.append(f"  {code}  " + ", ".join(f"{number} {duties(roles)}".rstrip() for number, roles in team.items()))
        if group.pairs:
            lines.append("  online  " + ", ".join(" + ".join(pair) if len(pair) > 1 else f"{pair[0]} alone" for pair in group.pairs))
    return lines


def sentence(text: str) -> str:
    """Return a part of a sentence as one of its own."""
    return f"{text[0].upper()}{text[1:]}."


def students(count: int) -> str:
    """Return `1 student` or `11 students`."""
    return f"{count} student" if count == 1 else f"{count} students"


def duties(roles: Sequence[str]) -> str:
    """Return a student's duties, in brackets."""
    return f"({', '.join(map(duty, roles))})" if roles else ""


def duty(role: str) -> str:
    """Return the spoken name of a duty."""
    return "materials manager" if role == "materials" else role
