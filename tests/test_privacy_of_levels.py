"""What can be worked out about levels from everything that is public: kept groups, their order, duties, pairs and proofs.

A leveled unit adds nothing to what is public (`tests/test_privacy.py`), but the class's other units are drawn with levels in mind, and
those after it know who worked together in it. So a reader may try to work the station group of the lowest levels out from their locks.

Statistics. For each of CLASSES simulated classes a reader names as many seats as that group has. Hits are the shares of the lowest, the
middle and the highest group that it named. A reader that does not know which is which has the three in any order with equal odds, so
under chance the share of the lowest is one of three numbers, with their mean and variance, and the sum over classes is nearly normal
(central limit theorem). z is its distance from the mean in standard deviations. It is asked to stay below Z_MOST, above which one
reader in a thousand without any knowledge would come. The seeds are fixed, so that a result stays a result.

Measured over 240 classes, and the reason for two tests: over three public locks no reader does better than chance (z from -1.7 to 1.1).
Over a whole year of six, the readers that look for students who share many teammates and never a team tell the two outer groups from
the middle one, and so name 1.2 to 1.3 times as many of the lowest as chance would: levels that balance in every team leave that trace.
None of them finds out which of the two outer groups is the lowest (z at most 2.0, as chance has it among thirteen readers).
"""

from __future__ import annotations

import random
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta
from functools import cache
from itertools import combinations
from math import sqrt

import pytest

from tests.support.department import tiny_department, tiny_unit
from trivet.model.department import Department
from trivet.model.lock import Groups, Lock
from trivet.model.roster import Roster, Student
from trivet.model.school import Run
from trivet.planning.grouping.draw import draw
from trivet.planning.grouping.experience import Experience
from trivet.planning.grouping.for_class import counted_before, request_for
from trivet.planning.grouping.kept import keep, replace_lock
from trivet.planning.grouping.request import NOTHING_WANTED, Draw, Request, Wanted, Way

CLASSES = 36
UNITS = ("first", "leveled", "third", "fourth", "fifth", "sixth", "seventh")
FEW = 3
"""Public locks of a class that is some months into its year: one before the leveled unit, two after it."""
Z_MOST = 3.1
STARTS = 4
Seats = frozenset[int]


@dataclass(frozen=True, slots=True)
class Simulated:
    """A class after a year: its public locks in order, and the station groups of its leveled unit from the lowest levels up."""

    size: int
    public: tuple[Lock, ...]
    by_level: tuple[Seats, Seats, Seats]


def seats_of(students: Sequence[str]) -> Seats:
    return frozenset(int(student[-2:]) for student in students)


def department_of(size: int) -> Department:
    starts = date(2026, 9, 7)
    runs = [Run(class_id="p1", unit=slug, starts=starts + timedelta(weeks=4 * place)) for place, slug in enumerate(UNITS)]
    return tiny_department(size=size, runs=runs, unit=tiny_unit(UNITS[0]), units=[tiny_unit(slug) for slug in UNITS[1:]])


def kept(department: Department, run: Run, roster: Roster, own: Experience, *, leveled: bool) -> Lock:
    request = request_for(department, run, roster, wanted=Wanted(way=Way.LEVELED) if leveled else NOTHING_WANTED, own=own)
    assert isinstance(request, Request)
    drawn = draw(request)
    assert isinstance(drawn, Draw)
    before = counted_before(department, run)
    return keep(drawn, request, run, before, drawn_on=date(2026, 8, 25), from_roster=True, key=b"key")


def levels_of(number: int, size: int) -> dict[int, int]:
    """Scores spread widely, or one of four levels, for every ninth class (their draws take long)."""
    dice = random.Random(f"levels {number}")
    return {seat: dice.randint(20, 99) if number % 9 else dice.choice((1, 2, 2, 3, 3, 4)) for seat in range(1, size + 1)}


def year(levels: dict[int, int], slugs: Sequence[str] = UNITS) -> tuple[tuple[Lock, ...], Groups]:
    """Draw the units one after the other as a teacher would; return the public locks and the leveled groups."""
    department, own = department_of(len(levels)), Experience()
    roster = Roster(class_id="p1", students=tuple(Student(seat=seat, level=level) for seat, level in levels.items()))
    leveled: Groups = {}
    for run in department.school.runs:
        if run.unit not in slugs:
            continue
        lock = kept(department, run, roster, own, leveled=run.unit == "leveled")
        if lock.leveled:
            own, leveled = replace(own, leveled={**own.leveled, run.unit: lock}), lock.groups
        else:
            department = replace_lock(department, lock)
    return tuple(department.locks[key] for key in sorted(department.locks, key=lambda key: UNITS.index(key[1]))), leveled


@cache
def simulated() -> tuple[Simulated, ...]:
    """Return all classes with a year behind them."""
    found = []
    for number in range(CLASSES):
        levels = levels_of(number, random.Random(f"size {number}").randint(24, 33))
        public, leveled = year(levels)
        groups = [seats_of(group.students) for group in leveled.values()]
        low, middle, high = sorted(groups, key=lambda seats: sum(levels[seat] for seat in seats) / len(seats))
        found.append(Simulated(len(levels), public, (low, middle, high)))
    return tuple(found)


# what readers may try: each names `many` seats after a look at public locks

Reader = Callable[[Sequence[Lock], int, int], Seats]
Counts = list[list[int]]


def together(locks: Sequence[Lock], size: int, *, teams: bool) -> Counts:
    """How often two seats were in one team, or in one station group."""
    met = [[0] * (size + 1) for _ in range(size + 1)]
    for lock in locks:
        for group in lock.groups.values():
            for part in [list(team) for team in group.teams.values()] if teams else [group.students]:
                for one, other in combinations(sorted(seats_of(part)), 2):
                    met[one][other] += 1
                    met[other][one] += 1
    return met


def least(cost: Counts, size: int, many: int) -> Seats:
    """The set of seats with the least cost inside it that exchanges from a few starts find."""
    dice, everyone = random.Random(f"{size} {many}"), range(1, size + 1)
    best: tuple[int, list[int]] | None = None
    for _ in range(STARTS):
        chosen = set(dice.sample(everyone, many))
        moved = True
        while moved:
            inside = {seat: sum(cost[seat][other] for other in chosen) for seat in everyone}
            pairs = ((inside[new] - cost[new][old] - inside[old], old, new) for old in chosen for new in everyone if new not in chosen)
            change, old, new = min(pairs)
            moved = change < 0
            if moved:
                chosen = chosen - {old} | {new}
        total = sum(cost[one][other] for one, other in combinations(chosen, 2))
        if best is None or (total, sorted(chosen)) < best:
            best = (total, sorted(chosen))
    assert best is not None
    return frozenset(best[1])


def rarely(locks: Sequence[Lock], size: int, many: int) -> Seats:
    """Who is rarely in one team is of one level."""
    return least(together(locks, size, teams=True), size, many)


def often(locks: Sequence[Lock], size: int, many: int) -> Seats:
    """Who is often in one station group belongs together."""
    return least([[-count for count in row] for row in together(locks, size, teams=False)], size, many)


def alike(locks: Sequence[Lock], size: int, many: int) -> Seats:
    """Who shares many teammates and never a team fills the same place in it."""
    met = together(locks, size, teams=True)
    friends = [{other for other in range(1, size + 1) if row[other]} for row in met]
    cost = [[3 * met[one][other] - len(friends[one] & friends[other]) for other in range(size + 1)] for one in range(size + 1)]
    return least(cost, size, many)


def avoided(locks: Sequence[Lock], size: int, many: int) -> Seats:
    """Who is not teamed after the leveled unit worked together in it."""
    return least(together(locks[1:], size, teams=True), size, many)


def first_numbers(locks: Sequence[Lock], size: int, many: int) -> Seats:
    """Class numbers follow levels."""
    return frozenset(range(1, many + 1))


def letter(name: str, place: int) -> Reader:
    """A station group of some unit is the one."""
    return lambda locks, size, many: seats_of(locks[place].groups[name].students)


def by_count(counted: Callable[[Lock], dict[str, int]], *, most: bool) -> Reader:
    """Whoever has the most, or the least, of something."""

    def reader(locks: Sequence[Lock], size: int, many: int) -> Seats:
        sums = dict.fromkeys(range(1, size + 1), 0)
        for lock in locks:
            for student, count in counted(lock).items():
                sums[int(student[-2:])] += count
        return frozenset(sorted(sums, key=lambda seat: (-sums[seat] if most else sums[seat], seat))[:many])

    return reader


def leads(lock: Lock) -> dict[str, int]:
    return {s: "leader" in jobs for group in lock.groups.values() for team in group.teams.values() for s, jobs in team.items()}


def in_small_teams(lock: Lock) -> dict[str, int]:
    return {s: len(team) == 3 for group in lock.groups.values() for team in group.teams.values() for s in team}


def weights(lock: Lock) -> dict[str, int]:
    return dict(lock.certificate)


READERS: dict[str, Reader] = {
    "rarely in one team": rarely,
    "often in one group": often,
    "alike": alike,
    "avoided later": avoided,
    "first numbers": first_numbers,
    "A before": letter("A", 0),
    "A after": letter("A", 1),
    "C after": letter("C", 1),
    "leads often": by_count(leads, most=True),
    "leads rarely": by_count(leads, most=False),
    "small teams": by_count(in_small_teams, most=True),
    "large weights": by_count(weights, most=True),
    "small weights": by_count(weights, most=False),
}


Hits = tuple[float, float, float]


def hits(named: Seats, each: Simulated) -> Hits:
    """Which shares of the groups of the lowest, the middle and the highest levels are among the seats named."""
    low, middle, high = (len(named & group) / len(group) for group in each.by_level)
    return low, middle, high


def z_of_lowest(found: Sequence[Hits]) -> float:
    """How far the hits in the lowest group lie above chance, in standard deviations."""
    mean = sum(sum(hit) / 3 for hit in found)
    variance = sum(sum((each - sum(hit) / 3) ** 2 for each in hit) / 3 for hit in found)
    return (sum(low for low, _, _ in found) - mean) / sqrt(variance)


def z_of_lowest_against_highest(found: Sequence[Hits]) -> float:
    """The same between the two outer groups: under chance each class's difference is as likely to have the other sign."""
    differences = [low - high for low, _, high in found]
    return sum(differences) / sqrt(sum(each * each for each in differences))


def asked(reader: Reader, locks: int) -> list[Hits]:
    return [hits(reader(each.public[:locks], each.size, len(each.by_level[0])), each) for each in simulated()]


@pytest.mark.parametrize("name", READERS)
def test_the_lowest_group_is_guessed_no_better_than_chance(name: str) -> None:
    """Over the locks of the units before and after a leveled one, no reader names more of its lowest group than chance would."""
    assert z_of_lowest(asked(READERS[name], FEW)) < Z_MOST


@pytest.mark.parametrize("name", READERS)
def test_a_year_of_locks_does_not_tell_the_lowest_from_the_highest(name: str) -> None:
    """Over all locks of a year, whatever a reader finds out about levels has no direction."""
    assert abs(z_of_lowest_against_highest(asked(READERS[name], len(UNITS)))) < Z_MOST


def test_a_reader_who_knew_a_little_would_be_caught() -> None:
    """The statistics can fail: to know one student in four of the lowest group is enough to lie above the limit, in both statistics."""

    def informed(each: Simulated) -> Seats:
        dice, low = random.Random(each.size), sorted(each.by_level[0])
        known = set(dice.sample(low, len(low) // 4))
        others = sorted(set(range(1, each.size + 1)) - known)
        return frozenset([*known, *dice.sample(others, len(low) - len(known))])

    found = [hits(informed(each), each) for each in simulated()]
    assert z_of_lowest(found) > Z_MOST
    assert z_of_lowest_against_highest(found) > Z_MOST


def test_groups_by_level_are_what_the_readers_look_for() -> None:
    """The leveled groups of the simulation are groups by level, and nobody's lock of that unit is among the public ones."""
    for each in simulated():
        assert [lock.unit for lock in each.public] == [slug for slug in UNITS if slug != "leveled"]
        assert all("leveled" not in lock.counted for lock in each.public)
        assert frozenset().union(*each.by_level) == frozenset(range(1, each.size + 1))


@pytest.mark.parametrize("number", range(8))
def test_levels_turned_upside_down_give_the_same_mixed_groups(number: int) -> None:
    """Where no leveled unit came before, the lowest and the highest exchanged give the same locks: they can't tell one from the other."""
    levels = levels_of(number, 24 + number)
    top = min(levels.values()) + max(levels.values())
    slugs = ("first", "third")
    one, other = (year(each, slugs)[0] for each in (levels, {seat: top - level for seat, level in levels.items()}))
    assert [replace(lock, seal="") for lock in one] == [replace(lock, seal="") for lock in other]
