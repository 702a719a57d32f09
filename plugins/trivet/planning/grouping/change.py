"""Someone comes, someone leaves: the kept groups with as few students moved as can be."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations_with_replacement, permutations, product

from trivet.model.lock import Groups, StationGroup
from trivet.planning.grouping.ledger import Two, meetings, seat_of
from trivet.planning.grouping.pairs import Cost, apart_and_language, cheapest_pairs, pair_cost
from trivet.planning.grouping.request import Request
from trivet.planning.grouping.roles import deal
from trivet.planning.grouping.rules import broken, rules_among

MOST_MOVES = 2
MOST_ARRIVALS = 2
LEAST_TEAM, LARGEST_TEAM = 3, 5

KEEP_PARTNERS = 50
"""What it is worth to leave two partners together: more than a change of teams, less than a pair that met before."""


@dataclass(frozen=True, slots=True)
class Move:
    """A student who goes from one team to another; `source` is "" for one who is new."""

    seat: int
    source: str
    target: str


@dataclass(frozen=True, slots=True)
class Changed:
    """The groups after a change, who has left, and who moved; letters and team codes stay as they were drawn."""

    groups: Groups
    left: tuple[int, ...]
    moves: tuple[Move, ...]


Teams = dict[str, tuple[int, ...]]


def change(groups: Groups, request: Request) -> Changed | None:
    """Return the kept groups fitted to the seats of `request`, with the fewest students moved; None where more than two would have to.

    Exact for no, one and two moves: teams of three to five (a group of fewer is one team), station groups within one of each
    other, all rules kept. Among equals: fewest teams above the wanted size, fewest repeats, then the lowest seats.
    """
    here = set(request.seats)
    before = {code: tuple(seat_of(n) for n in team) for group in groups.values() for code, team in group.teams.items()}
    stay = {code: tuple(seat for seat in team if seat in here) for code, team in before.items()}
    seated = {seat for team in before.values() for seat in team}
    arrivals = [seat for seat in request.seats if seat not in seated]
    if len(arrivals) > MOST_ARRIVALS:
        return None
    for moves in range(MOST_MOVES + 1):
        ranked = [
            (_rank(request, teams), made, teams)
            for made, teams in _ways(stay, arrivals, moves, request.fixed)
            if rules_hold(request, teams)
        ]
        if ranked:
            _, made, teams = min(ranked, key=lambda each: (each[0], each[1]))
            steps = tuple(Move(*each) for each in made)
            return Changed(_refitted(groups, before, teams, request), tuple(sorted(seated - here)), steps)
    return None


def _ways(stay: Teams, arrivals: Sequence[int], moves: int, fixed: frozenset[int]) -> Iterator[tuple[list[tuple[int, str, str]], Teams]]:
    """Yield every way to seat the arrivals and make so many moves that leaves sound sizes; `fixed` seats stay. Sizes are settled first."""
    codes = sorted(stay)
    for targets in product(codes, repeat=len(arrivals)):
        for routes in combinations_with_replacement(list(permutations(codes, 2)), moves):
            sizes = {code: len(stay[code]) for code in codes}
            for target in targets:
                sizes[target] += 1
            for source, target in routes:
                sizes[source] -= 1
                sizes[target] += 1
            if not _sound(sizes):
                continue
            for movers in product(*([seat for seat in stay[source] if seat not in fixed] for source, _ in routes)):
                if list(movers) == sorted(set(movers)) or (len(set(movers)) == len(movers) and routes[0] != routes[-1]):
                    made = [(seat, "", target) for seat, target in zip(arrivals, targets, strict=True)]
                    made += [(seat, *route) for seat, route in zip(movers, routes, strict=True)]
                    yield made, _moved(stay, made)


def _sound(sizes: Mapping[str, int]) -> bool:
    groups: dict[str, list[int]] = {}
    for code, size in sizes.items():
        groups.setdefault(code[0], []).append(size)
    totals = [sum(teams) for teams in groups.values()]
    if max(totals, default=0) - min(totals, default=0) > 1:
        return False
    # A team whose last members went elsewhere is no longer there.
    return all(not size or LEAST_TEAM <= size <= LARGEST_TEAM or len(teams) == 1 for teams in groups.values() for size in teams)


def _moved(stay: Teams, made: Sequence[tuple[int, str, str]]) -> Teams:
    gone = {seat for seat, _, _ in made}
    return {
        code: tuple(sorted([*(s for s in team if s not in gone), *(seat for seat, _, target in made if target == code)]))
        for code, team in stay.items()
    }


def rules_hold(request: Request, teams: Teams) -> bool:
    """Say whether teams by code keep the rules among those who are in them."""
    places = {code: place for place, code in enumerate(teams)}
    team_of = {seat: places[code] for code, team in teams.items() for seat in team}
    group_of = {seat: ord(code[0]) for code, team in teams.items() for seat in team}
    return not broken(rules_among(tuple(team_of), request.rules), team_of, group_of)


def _rank(request: Request, teams: Teams) -> tuple[int, int]:
    large = sum(len(team) > request.team_size for team in teams.values())
    return large, sum(request.ledger.teams.get(two, 0) for two in meetings(teams.values()))


def _refitted(groups: Groups, before: Teams, teams: Teams, request: Request) -> Groups:
    """Deal cards anew in the teams that changed and partners in the station groups that changed; leave the rest alone."""
    number = f"{request.class_id}-{{:02d}}".format
    apart, language = apart_and_language(request.rules)
    found = {}
    for letter, group in groups.items():
        mine = {code: team for code, team in teams.items() if code[0] == letter and team}
        if all(before[code] == team for code, team in mine.items()) and len(mine) == len(group.teams):
            found[letter] = group
            continue
        cards = {}
        for code, team in mine.items():
            held = {seat_of(n): roles for n, roles in group.teams[code].items()}
            if before[code] != team:
                held = deal(team, request.ledger.duties) if request.deal_roles else dict.fromkeys(team, ())
            cards[code] = {number(seat): held[seat] for seat in team}
        old = set(meetings([seat_of(n) for n in pair] for pair in group.pairs))
        price = pair_cost(tuple(mine.values()), request.ledger, apart, language)
        pairs = cheapest_pairs([seat for team in mine.values() for seat in team], keeping(price, old))
        found[letter] = StationGroup(cards, tuple(tuple(number(seat) for seat in pair) for pair in pairs))
    return found


def keeping(price: Cost, old: set[Two]) -> Cost:
    """Return the cost of partners, with what it is worth to leave two together who are partners already."""
    return lambda one, other: price(one, other) + (0 if (min(one, other), max(one, other)) in old else KEEP_PARTNERS)


def spoken(changed: Changed, name: Mapping[int, str]) -> list[str]:
    """Return the change in words: who left, who came, and `2 students move: p1-07 A1 → A2, …`."""
    lines = []
    if changed.left:
        lines.append(f"left: {', '.join(name[seat] for seat in changed.left)}")
    came = [f"{name[move.seat]} to {move.target}" for move in changed.moves if not move.source]
    if came:
        lines.append(f"new: {', '.join(came)}")
    moved = [f"{name[move.seat]} {move.source} → {move.target}" for move in changed.moves if move.source]
    who = "1 student moves" if len(moved) == 1 else f"{len(moved)} students move"
    lines.append(f"{who}: {', '.join(moved)}" if moved else "nobody moves")
    return lines
