"""What a department asks of a draw, what is kept of it, and what a new draw changes."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

from tests.planning.grouping.classes import drawn
from tests.support.department import tiny_class, tiny_department, tiny_unit
from tests.support.lock import tiny_lock
from trivet.model.department import Department
from trivet.model.lock import Lock
from trivet.model.roster import PairRule, Roster, RuleKind, Student
from trivet.model.school import LateSeat, Run
from trivet.planning.grouping.for_class import Unseated, counted_before, request_for, run_of
from trivet.planning.grouping.kept import inputs_digest, keep, recounted, replace_lock, seal
from trivet.planning.grouping.ledger import ledger_of, repeats
from trivet.planning.grouping.past import dates_of, passed
from trivet.planning.grouping.request import Request, Way

SLUGS = ("moving-plates", "float-or-sink", "beaks-and-seeds")
RUNS = tuple(
    Run(class_id="p1", unit=slug, starts=starts)
    for slug, starts in zip(SLUGS, (date(2026, 10, 5), date(2026, 11, 30), date(2027, 2, 1)), strict=True)
)


def department(size: int = 12, kept: tuple[str, ...] = (), **changes: object) -> Department:
    """Return a department whose class p1 runs three units, with tiny locks for those in `kept`."""
    school_class = replace(tiny_class(size=size), **changes)  # type: ignore[arg-type]
    return tiny_department(
        unit=tiny_unit(SLUGS[0]),
        units=[tiny_unit(slug) for slug in SLUGS[1:]],
        runs=RUNS,
        classes=[school_class],
        locks=[tiny_lock(school_class, slug) for slug in kept],
    )


def roster(size: int = 12) -> Roster:
    """Return a list with levels 1 to 4, tables of four and one rule."""
    students = tuple(Student(seat=s, name="N", level=1 + s % 4, table=str((s - 1) // 4)) for s in range(1, size + 1))
    return Roster(class_id="p1", students=students, rules=(PairRule(RuleKind.NOT_ONE_TEAM, 1, 5),))


def request(of: Department, run: Run, listed: Roster | None = None) -> Request:
    found = request_for(of, run, listed)
    assert isinstance(found, Request)
    return found


def lock_of(of: Department, run: Run, key: bytes = b"key") -> Lock:
    asked = request(of, run, roster())
    return keep(drawn(asked), asked, run, counted_before(of, run), drawn_on=date(2026, 9, 1), from_roster=True, key=key)


def test_earlier_units_count_in_order_of_their_dates() -> None:
    """History is the kept groups of units that the class runs before, by date; later ones and leveled ones do not count."""
    whole = department(kept=SLUGS)
    assert [lock.unit for lock in counted_before(whole, RUNS[2])] == list(SLUGS[:2])
    assert counted_before(whole, RUNS[0]) == ()
    leveled = replace_lock(whole, replace(whole.locks["p1", SLUGS[1]], leveled=True))
    assert [lock.unit for lock in counted_before(leveled, RUNS[2])] == [SLUGS[0]]
    assert request(whole, RUNS[2]).ledger == ledger_of(whole.locks["p1", slug].groups for slug in SLUGS[:2])


def test_late_seats_join_from_their_date() -> None:
    """Who joins later is not drawn before, and is drawn from then on."""
    of = department(late=(LateSeat(12, date(2026, 11, 1)),))
    assert request(of, RUNS[0]).seats == tuple(range(1, 12))
    assert request(of, RUNS[1]).seats == tuple(range(1, 13))


def test_by_number_there_are_no_levels_and_rules() -> None:
    """Without a private list there are no levels, rules or tables, and even a unit with usual tables is drawn mixed."""
    of = department()
    found = request(replace(of, units={**of.units, SLUGS[0]: replace(of.units[SLUGS[0]], group_by="usual")}), RUNS[0])
    assert (found.levels, found.rules, found.tables, found.way) == (None, (), None, Way.MIXED)


def test_usual_needs_tables_of_two_to_six() -> None:
    """Usual names who has no table, and who sits at a table of one or of more than six."""
    of = department()
    of = replace(of, units={**of.units, SLUGS[0]: replace(of.units[SLUGS[0]], group_by="usual")})
    whole = roster()
    assert request(of, RUNS[0], whole).way is Way.USUAL
    gap = replace(whole, students=tuple(replace(s, table="" if s.seat > 10 else s.table) for s in whole.students))
    assert request_for(of, RUNS[0], gap) == Unseated("no_table", (11, 12))
    alone = replace(whole, students=tuple(replace(s, table="x" if s.seat == 3 else s.table) for s in whole.students))
    assert request_for(of, RUNS[0], alone) == Unseated("table_size", (3,))


def test_digest_and_seal() -> None:
    """The digest follows the public inputs alone; the seal follows the private ones and the key, and is no plain digest."""
    of = department(kept=SLUGS[:1])
    plain, listed = request(of, RUNS[1]), request(of, RUNS[1], roster())
    counted = counted_before(of, RUNS[1])
    assert inputs_digest(plain, RUNS[1], counted) == inputs_digest(listed, RUNS[1], counted)
    assert inputs_digest(plain, RUNS[1], ()) != inputs_digest(plain, RUNS[1], counted)
    assert inputs_digest(replace(plain, seats=plain.seats[1:]), RUNS[1], counted) != inputs_digest(plain, RUNS[1], counted)
    seals = {seal(each, key) for each in (plain, listed, replace(listed, levels={1: 4})) for key in (b"a", b"b")}
    assert len(seals) == 6


def test_kept_groups_carry_their_figures() -> None:
    """A lock holds the draw's groups, what it counted, and repeats that anyone can count again."""
    of = department(kept=SLUGS[:1])
    lock = lock_of(of, RUNS[1])
    assert (lock.unit, lock.class_id, lock.drawn_from, lock.counted) == (SLUGS[1], "p1", "roster", (SLUGS[0],))
    assert lock.repeats == repeats(lock.groups, ledger_of([of.locks["p1", SLUGS[0]].groups]))
    assert not lock.leveled


def test_a_new_draw_counts_later_units_again() -> None:
    """Drawing the second unit anew re-counts the third and leaves its groups; the first is not touched."""
    of = department(kept=(SLUGS[0], SLUGS[2]))
    new = lock_of(of, RUNS[1])
    later = recounted(of, new)
    assert [lock.unit for lock in later] == [SLUGS[2]]
    assert later[0].counted == SLUGS[:2]
    assert later[0].groups == of.locks["p1", SLUGS[2]].groups
    assert later[0].repeats == repeats(later[0].groups, ledger_of([of.locks["p1", SLUGS[0]].groups, new.groups]))
    after = replace_lock(replace_lock(of, new), later[0])
    assert recounted(after, new) == ()


def test_dates_that_have_passed() -> None:
    """Dates come from the plan; a date has passed from the next day on."""
    of = department()
    days = dates_of(of, RUNS[1])
    assert days[0] == date(2026, 11, 30) and len(days) >= 2
    assert passed(of, RUNS[1], days[0]) == ()
    assert passed(of, RUNS[1], days[1]) == days[:1]
    assert run_of(of, "p1", "no-such-unit") is None
