"""Duties for several units at once: as even as they can be, since all teams are known.

Students and teams form a bipartite graph whose edges are the seats, and a card is a color of an edge. Every bipartite graph has an
edge coloring in which, at each vertex, the colors differ by at most one (de Werra 1971, equitable colorations of graphs); it is
reached by exchanging two cards along a trail of teams from a student with too much of one to a student with too little.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from itertools import permutations

from trivet.planning.grouping.ledger import MAIN_DUTIES
from trivet.planning.grouping.roles import EXTRA_CARDS, Card, cards, counted_on, deal

SCALE = 60
"""Thirds, quarters and fifths of a card are whole."""

Held = Mapping[tuple[int, str], int]
Team = tuple[int, ...]


def share(units: Sequence[Sequence[Team]], held: Held) -> list[dict[int, Card]]:
    """Return the cards of each unit by seat, for teams of each unit in order and what each student `held` before.

    Without a past the three main cards of a student differ by at most one; where all teams have one size, so do all cards.
    """
    state = _Cards(dict(held), expected={(seat, name): SCALE * times for (seat, name), times in held.items() if name in EXTRA_CARDS})
    for teams in units:
        for team in teams:
            state.add(team)
    state.even_out([*MAIN_DUTIES, *EXTRA_CARDS])
    # Extra cards are settled; now the main ones alone, which always comes to within one of even.
    state.even_out(list(MAIN_DUTIES))
    dealt: list[dict[int, Card]] = []
    place = 0
    for teams in units:
        dealt.append({seat: card for team in state.holders[place : place + len(teams)] for seat, card in team.items()})
        place += len(teams)
    return dealt


@dataclass
class _Cards:
    counts: dict[tuple[int, str], int]
    holders: list[dict[int, Card]] = field(default_factory=list)
    expected: dict[tuple[int, str], int] = field(default_factory=dict)

    def add(self, team: Team) -> None:
        """Deal a team's cards as one unit would, and expect an even share of them for each of its students."""
        dealt = deal(team, self.counts)
        self.holders.append(dealt)
        names = [card[0] for card in cards(len(team)) if card]
        for seat, card in dealt.items():
            for role in counted_on(card):
                self.counts[seat, role] = self.counts.get((seat, role), 0) + 1
            for name in set(names) & set(EXTRA_CARDS):
                self.expected[seat, name] = self.expected.get((seat, name), 0) + SCALE // len(names)

    def even_out(self, names: Sequence[str]) -> None:
        """Exchange cards along trails while that brings the counts nearer to the shares."""
        going = True
        while going:
            going = False
            for one, other in permutations(names, 2):
                going = self._even_two(one, other) or going

    def _even_two(self, one: str, other: str) -> bool:
        """Give students with too many of `one` some of `other`, each time along the trail that helps most; whether any helped."""
        helped = False
        for seat in sorted({seat for seat, _ in self.counts}):
            while trail := self._best_trail(seat, one, other):
                for place in trail:
                    self._exchange(place, one, other)
                helped = True
        return helped

    def _best_trail(self, start: int, one: str, other: str) -> list[int]:
        """Return the teams along which `start` gets rid of one card; [] where that does not help."""
        links: dict[int, list[tuple[int, int]]] = {}
        for place, dealt in enumerate(self.holders):
            by_name = {card[0]: seat for seat, card in dealt.items() if card}
            if one in by_name and other in by_name and len(dealt) > 2:
                links.setdefault(by_name[one], []).append((by_name[other], place))
        came: dict[int, tuple[int, int]] = {start: (start, -1)}
        queue = deque([start])
        best, gain = start, 0
        while queue:
            seat = queue.popleft()
            if seat != start and (change := self._gain(start, seat, one, other)) > gain:
                best, gain = seat, change
            for target, place in links.get(seat, ()):
                if target not in came:
                    came[target] = (seat, place)
                    queue.append(target)
        trail = []
        while best != start:
            best, place = came[best]
            trail.append(place)
        return trail

    def _gain(self, start: int, end: int, one: str, other: str) -> int:
        """Return how much more even it gets when `start` gives a card `one` for an `other` and `end` the reverse."""
        before = self._uneven(start) + self._uneven(end)
        self._turn(start, one, other)
        self._turn(end, other, one)
        after = self._uneven(start) + self._uneven(end)
        self._turn(start, other, one)
        self._turn(end, one, other)
        return before - after

    def _uneven(self, seat: int) -> int:
        """Return the squares of the distances of a student's counts from the shares, in SCALE: a third of all main cards for each main
        one; of an extra card what the student's teams give (and what was held before, which can't be changed)."""
        main = [self.counts.get((seat, name), 0) for name in MAIN_DUTIES]
        extra = [SCALE * self.counts.get((seat, name), 0) - self.expected.get((seat, name), 0) for name in EXTRA_CARDS]
        return sum((SCALE * count - SCALE // len(main) * sum(main)) ** 2 for count in main) + sum(off**2 for off in extra)

    def _turn(self, seat: int, lost: str, won: str) -> None:
        self.counts[seat, lost] = self.counts.get((seat, lost), 0) - 1
        self.counts[seat, won] = self.counts.get((seat, won), 0) + 1

    def _exchange(self, place: int, one: str, other: str) -> None:
        dealt = self.holders[place]
        first = next(seat for seat, card in dealt.items() if card[:1] == (one,))
        second = next(seat for seat, card in dealt.items() if card[:1] == (other,))
        dealt[first], dealt[second] = dealt[second], dealt[first]
        self._turn(first, one, other)
        self._turn(second, other, one)
