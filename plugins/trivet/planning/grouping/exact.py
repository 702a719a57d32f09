"""The last step of a search: can there be fewer repeats than the arrangement in hand has? Answered exactly where few teams are cheap.

Any arrangement with at most `target` repeats consists of teams whose reduced costs, added up, fit into what the Lagrangian bound
leaves (variable fixing by reduced costs; Nemhauser and Wolsey 1988, from memory). Where few teams are that cheap, an exact cover of
the class by them is sought depth first, the student with the fewest teams first (Knuth 2000).
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, field

from trivet.planning.grouping.certificate import SCALE
from trivet.planning.grouping.cheap_teams import Allowed, Costs, Team, cheap_teams

MOST_TEAMS = 6_000
WORK = 3_000_000
"""Teams looked at, over all steps."""


@dataclass(frozen=True, slots=True)
class Better:
    """`teams`: an arrangement with at most the target's repeats; None where there is none (`proved`) or the work ran out."""

    teams: tuple[Team, ...] | None
    proved: bool


def better(costs: Costs, sizes: Sequence[int], weights: Sequence[int], target: int, allowed: Allowed | None = None) -> Better:
    """Look for teams of these `sizes` that cover everyone once with at most `target` repeats, given integers `weights` of a bound."""
    wanted = Counter(sizes)
    value = sum(weights)
    cheapest: dict[int, int] = {}
    for size in wanted:
        found = cheap_teams(costs, weights, size, 0, allowed=allowed)
        if not found:
            return Better(None, proved=True)
        cheapest[size] = found[0][0]
        value += wanted[size] * found[0][0]
    slack = SCALE * target - value
    if slack < 0:
        return Better(None, proved=True)
    teams: list[tuple[int, int, Team]] = []
    for size, least in sorted(cheapest.items()):
        found = cheap_teams(costs, weights, size, slack, guess=least, allowed=allowed, most=MOST_TEAMS)
        if len(found) > MOST_TEAMS:
            return Better(None, proved=False)
        teams += [(reduced - least, sum(1 << s for s in team), team) for reduced, team in found]
    cover = _Cover(dict(wanted), len(weights))
    chosen = cover.go((1 << len(weights)) - 1, slack, sorted(teams))
    return Better(None if chosen is None else tuple(chosen), proved=chosen is None and cover.work > 0)


@dataclass
class _Cover:
    wanted: dict[int, int]
    students: int
    work: int = field(default=WORK)

    def go(self, free: int, slack: int, teams: list[tuple[int, int, Team]]) -> list[Team] | None:
        """Cover the set `free` by `teams` (extra cost, set, members) within `slack`; None where that can't be done, or the work ran out."""
        if not free:
            return []
        self.work -= len(teams)
        if self.work <= 0:
            return None
        counts = Counter(s for _, _, team in teams for s in team)
        student = min((s for s in range(self.students) if free >> s & 1), key=lambda s: (counts[s], s))
        for extra, members, team in teams:
            if student not in team:
                continue
            size = len(team)
            self.wanted[size] -= 1
            left = slack - extra
            full = self.wanted[size] == 0
            rest = [each for each in teams if not each[1] & members and each[0] <= left and not (full and len(each[2]) == size)]
            found = self.go(free & ~members, left, rest)
            self.wanted[size] += 1
            if found is not None:
                return [team, *found]
            if self.work <= 0:
                return None
        return None
