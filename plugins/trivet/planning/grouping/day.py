"""Who is not there today: kept groups closed up for one day. The kept groups themselves stay as they are."""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Mapping, Sequence
from itertools import combinations, permutations, product

from trivet.model.lock import Groups, StationGroup
from trivet.planning.grouping.change import LARGEST_TEAM, LEAST_TEAM, Changed, Move, keeping, rules_hold
from trivet.planning.grouping.ledger import meetings, seat_of
from trivet.planning.grouping.pairs import apart_and_language, cheapest_pairs, pair_cost
from trivet.planning.grouping.request import Request
from trivet.planning.grouping.roles import Card, cards

Teams = dict[str, tuple[int, ...]]

MOST_AT_A_STATION = 4
"""More moves than this at one station are not looked for: then the teacher seats by eye."""


def for_the_day(groups: Groups, away: Collection[int], request: Request) -> Changed:
    """Return the groups of a day without the students who are `away`; whoever moves stays at the same station.

    A team left with one or two is mended: someone comes over from a larger team, or the team joins the one beside it. As few move
    as can be (up to four at a station), all teams then have three to five, rules and fixed seats are heeded; among equals the most
    even sizes, then the lowest numbers. Where that is not possible the short team works as it is. Only a team that changed hands
    cards on.
    """
    before = {code: tuple(seat_of(n) for n in team) for group in groups.values() for code, team in group.teams.items()}
    teams: Teams = {code: tuple(seat for seat in team if seat not in away) for code, team in before.items()}
    moves: list[Move] = []
    for group in groups.values():
        made = _mended({code: teams[code] for code in group.teams}, request)
        moves += [Move(*each) for each in made]
        teams |= _after({code: teams[code] for code in group.teams}, made)
    gone = tuple(sorted(seat for team in before.values() for seat in team if seat in away))
    return Changed(_refitted(groups, teams, request), gone, tuple(moves))


Step = tuple[int, str, str]
"""A seat, the team it leaves and the team it goes to."""


def _mended(teams: Teams, request: Request) -> tuple[Step, ...]:
    """Return the fewest moves that make the teams of one station group sound; () where they are, or where no few moves do."""
    sizes = {code: len(team) for code, team in teams.items()}
    if _sound(sizes):
        return ()
    free = sorted((seat, code) for code, team in teams.items() for seat in team if seat not in request.fixed)
    for count in range(1, MOST_AT_A_STATION + 1):
        best: tuple[tuple[int, tuple[Step, ...]], tuple[Step, ...]] | None = None
        for movers in combinations(free, count):
            for targets in product(sorted(teams), repeat=count):
                steps = tuple((seat, source, target) for (seat, source), target in zip(movers, targets, strict=True))
                after = Counter(sizes)
                for _, source, target in steps:
                    after[source] -= 1
                    after[target] += 1
                if any(source == target for _, source, target in steps) or not _sound(after):
                    continue
                rank = (sum(size * size for size in after.values()), steps)
                if (best is None or rank < best[0]) and rules_hold(request, _after(teams, steps)):
                    best = (rank, steps)
        if best is not None:
            return best[1]
    return ()


def _sound(sizes: Mapping[str, int]) -> bool:
    there = [size for size in sizes.values() if size]
    return len(there) <= 1 or all(LEAST_TEAM <= size <= LARGEST_TEAM for size in there)


def _after(teams: Teams, steps: Sequence[Step]) -> Teams:
    gone = {seat for seat, _, _ in steps}
    return {
        code: tuple(sorted([*(s for s in team if s not in gone), *(seat for seat, _, target in steps if target == code)]))
        for code, team in teams.items()
    }


def _refitted(groups: Groups, teams: Teams, request: Request) -> Groups:
    number = f"{request.class_id}-{{:02d}}".format
    apart, language = apart_and_language(request.rules)
    held = {seat_of(n): card for group in groups.values() for team in group.teams.values() for n, card in team.items()}
    found = {}
    for letter, group in groups.items():
        mine = {code: teams[code] for code in group.teams if teams[code]}
        dealt = {
            code: closed_up(team, held, group.teams[code]) if request.deal_roles else dict.fromkeys(team, ()) for code, team in mine.items()
        }
        old = set(meetings([seat_of(n) for n in pair] for pair in group.pairs))
        price = keeping(pair_cost(tuple(mine.values()), request.ledger, apart, language), old)
        pairs = cheapest_pairs([seat for team in mine.values() for seat in team], price)
        found[letter] = StationGroup(
            {code: {number(seat): card for seat, card in each.items()} for code, each in dealt.items()},
            tuple(tuple(number(seat) for seat in pair) for pair in pairs),
        )
    return found


def closed_up(team: Sequence[int], held: Mapping[int, Card], before: Collection[str]) -> dict[int, Card]:
    """Return the cards of a team for the day: the same where nobody left or came, else as many as can be keep what they were named for.

    `held` are the cards of the kept groups by seat, `before` the numbers of the kept team.
    """
    if {seat_of(number) for number in before} == set(team):
        return {seat: held[seat] for seat in team}
    dealt = cards(len(team))

    def changes(order: tuple[int, ...]) -> tuple[int, tuple[int, ...]]:
        return sum(held.get(seat, ())[:1] != card[:1] for seat, card in zip(order, dealt, strict=True)), order

    best = min(permutations(sorted(team)), key=changes)
    return dict(sorted(zip(best, dealt, strict=True)))
