"""Why these groups: the rules in force, what each aim reached, what limited it, and the proof."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence

from trivet.planning.grouping.ledger import Ledger, duties_held
from trivet.planning.grouping.request import Draw, Request, Way
from trivet.planning.grouping.rules import rules_among
from trivet.planning.grouping.sentences import Name, duty, rule

WAYS = {
    Way.MIXED: "mixed, every team spans the levels",
    Way.LEVELED: "leveled, each station group is near one level",
    Way.USUAL: "usual, the tables stay together",
}


def explain(drawn: Draw, request: Request, counted: Sequence[str], name: Name) -> Iterator[str]:
    """Yield the explanation line by line. It holds class numbers, never a level."""
    yield "In this order: rules, then levels, then teammates who have not met, then pairs and duties."
    yield from _rules(drawn, request, name)
    yield from _levels(drawn, request)
    yield from _teammates(drawn, request, counted)
    yield from _cards(drawn, request)


def _rules(drawn: Draw, request: Request, name: Name) -> Iterator[str]:
    rules = rules_among(request.seats, request.rules)
    yield f"Rules: {len(rules)} in force, all kept." if rules else "Rules: none in force."
    yield from (f"  {rule(each, name)}" for each in rules)
    if request.needing:
        kept = not any(limit.code == "support" for limit in drawn.limits)
        who = ", ".join(map(name, request.needing))
        spread = "are spread over the teams" if kept else "could not be spread over the teams, your rules leave no room"
        yield f"{who}, who need something, {spread}."


def _levels(drawn: Draw, request: Request) -> Iterator[str]:
    if request.way is Way.USUAL or request.levels is None:
        yield "Levels: not used." if request.way is not Way.USUAL else f"How to group: {WAYS[request.way]}."
        return
    yield f"How to group: {WAYS[request.way]}."
    outside = sum(limit.count for limit in drawn.limits if limit.code == "levels")
    if request.way is Way.MIXED:
        reached = f"all teams but {outside}" if outside else "all teams"
        yield f"Levels: the averages of {reached} lie within {request.tolerance_percent / 100:g} of a level of the class average."


def _teammates(drawn: Draw, request: Request, counted: Sequence[str]) -> Iterator[str]:
    yield f"Earlier units that count: {', '.join(counted) if counted else 'none'}."
    yield f"Repeats: {drawn.repeats} (for every two teammates, the earlier units in which they were teammates)."
    if drawn.own_repeats != drawn.repeats:
        yield f"By who was present, leveled units included: {drawn.own_repeats}."
    if drawn.proved_minimum is not None:
        yield f"Proved minimum without rules and levels: {drawn.proved_minimum}."
    if drawn.own_minimum is not None and drawn.own_minimum != drawn.proved_minimum:
        yield f"Fewest repeats that rules and levels allow: {drawn.own_minimum}, by trying all teams that could do better."
    if drawn.certificate:
        yield "The proof: give each student the number below. Whatever the numbers are, their sum, plus for each team size the number of"
        yield "teams times the least of (1000 x earlier meetings in a team - the numbers of its members) over all teams of that size,"
        yield "divided by 1000 and rounded up, is a minimum: each student sits in just one team. Where it is lower than the one above, all"
        yield "teams that could do better were tried, and no set of them makes up the class. trivet groups --check FILE does both again."
        yield "  " + ", ".join(f"{number} {weight}" for number, weight in drawn.certificate.items())


def _cards(drawn: Draw, request: Request) -> Iterator[str]:
    if not request.deal_roles:
        yield "Duties: left to the students."
        return
    held = Counter(role for _, role in duties_held(drawn.groups))
    dealt = ", ".join(f"{count} × {duty(role)}" for role, count in sorted(held.items()))
    yield f"Duties: {dealt}."
    yield f"Over the units so far, how often a student led, recorded and fetched differs by {drawn.role_spread} at most."


def who_with_whom(ledger: Ledger, seats: Sequence[int]) -> Iterator[str]:
    """Yield a table of how often every two students were teammates: a row and a column for each class number, a point for never."""
    yield "     " + " ".join(f"{seat:02d}" for seat in seats)
    for one in seats:
        cells = [" \\" if one == two else f"{ledger.teams.get((min(one, two), max(one, two)), 0) or '.':>2}" for two in seats]
        yield f"  {one:02d} " + " ".join(cells)
    pairs = len(seats) * (len(seats) - 1) // 2
    here = set(seats)
    met = sum(1 for (low, high), times in ledger.teams.items() if times and low in here and high in here)
    often = max(ledger.teams.values(), default=0)
    yield f"In words: of {pairs} pairs of students {met} have been teammates, none more than {often} times."
