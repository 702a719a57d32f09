"""All teams of one size whose cost, less what their members are worth, is nearly the least."""

from __future__ import annotations

from collections.abc import Callable, Sequence

Costs = Sequence[Sequence[int]]
Team = tuple[int, ...]
Found = list[tuple[int, Team]]
Allowed = Callable[[Team], bool]

WIDER = 1000
"""Where no team lies under the limit, the limit rises by this much."""


def cheap_teams(
    costs: Costs,
    worth: Sequence[int],
    size: int,
    near: int,
    *,
    guess: int = 0,
    allowed: Allowed | None = None,
    most: int | None = None,
) -> Found:
    """Return (reduced cost, team) for every team of `size` within `near` of the least, the least first; [] where none is allowed.

    The reduced cost is the sum of `costs` of all two members less the sum of their `worth`. `guess` is an upper bound of the least,
    from teams known before. Exact: every team that is left out is proved dearer, by what its dearest-worth members can still save.
    With `most`, the scan ends early once more teams than that are found.
    """
    if size > len(worth):
        return []
    dearest = size * (size - 1) // 2 * max(map(max, costs)) - sum(sorted(worth)[:size])
    limit = guess + near
    while True:
        found = _Scan(costs, worth, size, limit, near, allowed=allowed, most=most).found
        if found:
            least = min(reduced for reduced, _ in found)
            if limit >= least + near or (most is not None and len(found) > most):
                return sorted(each for each in found if each[0] <= least + near)
            limit = least + near
            continue
        if limit > dearest:
            return []
        limit += max(WIDER, abs(limit) // 2)


class _Scan:
    """One pass over the teams, depth first over students by falling worth; the limit falls as cheaper teams are found."""

    def __init__(
        self, costs: Costs, worth: Sequence[int], size: int, limit: int, near: int, *, allowed: Allowed | None, most: int | None
    ) -> None:
        order = sorted(range(len(worth)), key=lambda i: (-worth[i], i))
        values = [worth[i] for i in order]
        self.order, self.count = order, len(order)
        self.rows = [[costs[one][other] for other in order] for one in order]
        # saves[k][p]: what the k most valuable students from place p on are worth together.
        self.saves = [[sum(values[p : p + k]) for p in range(self.count + 1)] for k in range(size + 1)]
        self.limit, self.near, self.allowed, self.most = limit, near, allowed, most
        self.found: Found = []
        self._grow((), 0, [-value for value in values], 0, size)

    def _grow(self, members: Team, spent: int, extra: Sequence[int], first: int, missing: int) -> None:
        """Add `missing` students from place `first` on; `extra` is the cost of each of these beside the members, less its worth."""
        if missing == 1:
            room, others = self.limit - spent, self.order[first:]
            cheap = [(spent + more, tuple(sorted([*members, one]))) for one, more in zip(others, extra, strict=True) if more <= room]
            if cheap:
                self._keep(cheap)
            return
        saves, most = self.saves[missing - 1], self.most
        for p in range(first, self.count - missing + 1):
            now = spent + extra[p - first]
            # Worth falls along the order, so no later start can save more, but a costly member may: hence skip, not stop.
            if now - saves[p + 1] <= self.limit and (most is None or len(self.found) <= most):
                beside = [one + other for one, other in zip(extra[p - first + 1 :], self.rows[p][p + 1 :], strict=True)]
                self._grow((*members, self.order[p]), now, beside, p + 1, missing - 1)

    def _keep(self, teams: Found) -> None:
        """Keep what is allowed; once a cheaper team is among it, those too far above it are let go."""
        if self.allowed is not None:
            teams = [each for each in teams if self.allowed(each[1])]
        self.found += teams
        within = min((reduced for reduced, _ in teams), default=self.limit) + self.near
        if within < self.limit:
            self.limit = within
            self.found = [each for each in self.found if each[0] <= within]
