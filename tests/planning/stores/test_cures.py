"""Every cure that is offered cures when it is done."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import date
from decimal import Decimal

import pytest

from tests.support.department import STARTS, period, tiny_class, tiny_department, tiny_room, tiny_unit
from trivet.model.department import Department
from trivet.model.places import Places
from trivet.model.problem import Place
from trivet.model.school import UNSETTLED, DayType, Run, StockItem
from trivet.model.station import Material, Per
from trivet.model.unit import Unit
from trivet.planning.department import plan_department
from trivet.planning.department_materials import Span, department_materials, kit_clashes
from trivet.planning.stores.cures import Cure
from trivet.planning.stores.needs import Reusable
from trivet.planning.stores.tried import Tried
from trivet.planning.timed_runs import settled
from trivet.reading import forms

CYLINDER = "graduated cylinder 25 mL"
LATER = date(2027, 1, 11)


def unit_with(slug: str, *lines: Material) -> Unit:
    return tiny_unit(slug, title=slug, hands_on={"materials": lines})


def two_classes(have: int = 4, **changes: object) -> Department:
    """p2 and r2 run `float` at the same time with 3 cylinders each, and `plates`, which needs none, in January."""
    cylinder = Material(Decimal(1), CYLINDER, Per.TEAM)
    runs = [Run(class_id=name, unit=unit, starts=day) for name in ("p2", "r2") for unit, day in (("float", STARTS), ("plates", LATER))]
    given: dict[str, object] = {
        "unit": unit_with("float", cylinder),
        "units": [unit_with("plates")],
        "runs": runs,
        "bells": {"regular": DayType("regular", {"P2": period("P2", 52, 9, 1)})},
        "classes": [tiny_class("p2", 36, period="P2"), tiny_class("r2", 28, period="P2", room="r14")],
        "rooms": [tiny_room("r12"), tiny_room("r14", name="Room 14")],
        "inventory": [
            StockItem(item=CYLINDER, have=Decimal(have), store="north prep room", price=Decimal("6.50")),
            StockItem(item=CYLINDER, have=Decimal(2), store="south prep room"),
        ],
    }
    return tiny_department(**(given | changes))  # type: ignore[arg-type]


def weeks(department: Department) -> tuple[Span, ...]:
    return department_materials(department, plan_department(department)).weeks


def cures_of(department: Department) -> dict[str, Cure]:
    (shortage, *_) = weeks(department)[0].shortages
    return {cure.kind: cure for cure in shortage.cures}


def with_starts(department: Department, starts: dict[tuple[str, str], date]) -> Department:
    runs = tuple(replace(run, starts=starts.get((run.class_id, run.unit), run.starts)) for run in department.school.runs)
    return replace(department, school=replace(department.school, runs=runs))


def nothing_short(department: Department) -> bool:
    return not any(week.short for week in weeks(department))


def test_borrow_names_who_can_spare_it() -> None:
    """Two are missing; the south prep room has two that nobody uses then."""
    cure = cures_of(two_classes())["borrow"]
    assert cure.title == f"Borrow 2 × {CYLINDER} from south prep room for Monday, Tuesday and Wednesday"
    assert cure.then == ("need 6, have 6", "nothing to change in the files")
    assert "from" not in cures_of(two_classes(have=3))["borrow"].title


def test_buy_gives_the_cost() -> None:
    """Two at 6.50 cost 13.00; in US English with a dollar sign, elsewhere without."""
    assert (cures_of(two_classes())["buy"].title, cures_of(two_classes())["buy"].then) == (f"Buy 2 × {CYLINDER}", ("$13.00",))
    assert cures_of(two_classes(locale="en-CA"))["buy"].then == ("13.00",)


def test_start_later_cures() -> None:
    """The earliest later start that leaves nothing short is offered, with its line and place, and does cure."""
    department = two_classes()
    places = Places("school/runs.yml", {("runs", 0, "starts"): Place("school/runs.yml", 4, 13, 10)})
    department = replace(department, places={"school/runs.yml": places})
    cure = cures_of(department)["start"]
    assert cure.title == "Start float in p2 on Thursday, December 3"
    assert cure.then == ("need 3, have 4", "its rounds move to Thursday, Friday and Monday")
    assert cure.writes == (("starts: 2026-12-03", Place("school/runs.yml", 4, 13, 10)),)
    assert nothing_short(with_starts(department, {("p2", "float"): date(2026, 12, 3)}))
    assert not nothing_short(with_starts(department, {("p2", "float"): date(2026, 12, 2)}))


def test_start_later_of_a_unit_that_waits_for_another() -> None:
    """A run that begins after another unit gets a date in place of it, and the lines that then go out are named; it swaps with none."""
    first = [Run(class_id=name, unit="plates", starts=date(2026, 11, 23)) for name in ("p2", "r2")]
    after = {"starts": UNSETTLED, "begins": "after", "after": "plates"}
    waits = [Run(class_id=name, unit="float", gap_days=gap, **after) for name, gap in (("p2", 0), ("r2", 1))]  # type: ignore[arg-type]
    department = settled(two_classes(runs=[*first, *waits]))
    at = {("runs", 2, "after"): Place("school/runs.yml", 9, 12, 6), ("runs", 3, "after"): Place("school/runs.yml", 12, 12, 6)}
    placed = replace(department, places={"school/runs.yml": Places("school/runs.yml", at)})
    (shortage,) = [shortage for week in weeks(placed) for shortage in week.shortages]
    found = {cure.kind: cure for cure in shortage.cures}
    line, place = found["start"].writes[0]
    assert line.startswith("starts: 2026-1") and place in at.values()
    assert found["start"].then[-1] in ("`after` goes out", "`after` and `gap` go out")
    assert "swap" not in found


def test_swap_two_runs_cures() -> None:
    """Two runs of one class change places, with both lines to write, and that cures."""
    department = two_classes()
    cure = cures_of(department)["swap"]
    assert cure.title == "Swap float and plates in p2"
    assert [line for line, _ in cure.writes] == ["starts: 2027-01-11", "starts: 2026-11-30"]
    assert nothing_short(with_starts(department, {("p2", "float"): LATER, ("p2", "plates"): STARTS}))


def test_a_swap_with_an_earlier_run_is_not_offered() -> None:
    """What has been taught already can't change places with what comes."""
    runs = [
        Run(class_id=name, unit=unit, starts=day)
        for name in ("p2", "r2")
        for unit, day in (("plates", date(2026, 10, 5)), ("float", STARTS))
    ]
    department = two_classes(runs=runs)
    found = {cure.kind for week in weeks(department) for shortage in week.shortages for cure in shortage.cures}
    assert "swap" not in found
    assert "start" in found


def test_a_start_that_pushes_the_next_run_is_not_offered() -> None:
    """A later start leaves the class's other runs where they are: it comes after `plates`, which takes the days from December 4 to 9."""
    runs = [
        Run(class_id=name, unit=unit, starts=day)
        for name in ("p2", "r2")
        for unit, day in (("float", STARTS), ("plates", date(2026, 12, 4)))
    ]
    assert cures_of(two_classes(runs=runs))["start"].writes[0][0] == "starts: 2026-12-10"


def test_a_start_that_cures_a_part_is_not_offered() -> None:
    """Where other classes clash later in the same week, moving one of the first two does not cure the week."""
    classes = [tiny_class(name, 36, period="P2", room="r12") for name in ("p2", "r2", "k2", "m2")]
    runs = [Run(class_id=name, unit="float", starts=STARTS) for name in ("p2", "r2")]
    runs += [Run(class_id=name, unit="seeds", starts=date(2026, 12, 4)) for name in ("k2", "m2")]
    cylinder = Material(Decimal(1), CYLINDER, Per.TEAM)
    department = two_classes(classes=classes, runs=runs, units=[unit_with("seeds", cylinder)])
    assert weeks(department)[0].reusable[0].lacking[-1].classes == ("k2", "m2")
    assert not {"start", "swap"} & set(cures_of(department))


@pytest.mark.parametrize(
    "change",
    [
        lambda unit: replace(unit, returns_to=("float",)),
        lambda unit: unit_with("plates", Material(Decimal(2), CYLINDER, Per.TEAM)),
    ],
    ids=["the later unit returns to the earlier one", "the other unit needs as many"],
)
def test_a_swap_that_does_harm_is_not_offered(change: Callable[[Unit], Unit]) -> None:
    """Neither an order that the units ask for is turned round, nor one shortage exchanged for another."""
    assert "swap" not in cures_of(two_classes(units=[change(unit_with("plates"))]))


def test_a_move_that_makes_another_thing_short_is_not_offered() -> None:
    """Where the lamps are short with a third class on every later day, no later start is offered."""
    lamp = Material(Decimal(1), "lamp", Per.TEAM)
    cylinder = Material(Decimal(1), CYLINDER, Per.TEAM)
    units = [unit_with("plates", lamp), unit_with("seeds", lamp)]
    floats = unit_with("float", cylinder, lamp)
    runs = [Run(class_id=name, unit="float", starts=STARTS) for name in ("p2", "r2")]
    runs += [Run(class_id="k2", unit="seeds", starts=date(2026, 12, 3)), Run(class_id="k2", unit="plates", starts=date(2026, 12, 9))]
    classes = [
        tiny_class("p2", 36, period="P2"),
        tiny_class("r2", 28, period="P2", room="r14"),
        tiny_class("k2", 30, period="P2", room="r16"),
    ]
    stock = [
        StockItem(item=CYLINDER, have=Decimal(4), store="north prep room"),
        StockItem(item="lamp", have=Decimal(6), store="north prep room"),
    ]
    rooms = [tiny_room("r12"), tiny_room("r14"), tiny_room("r16")]
    department = two_classes(unit=floats, units=units, runs=runs, classes=classes, inventory=stock, rooms=rooms)
    cure = cures_of(department)["start"]
    day = date.fromisoformat(cure.writes[0][0].removeprefix("starts: "))
    assert nothing_short(with_starts(department, {(cure.title.split(" in ")[1].split()[0], "float"): day}))
    fewer = replace(department, school=replace(department.school, inventory=(stock[0], replace(stock[1], have=Decimal(3)))))
    (first, *_) = weeks(fewer)[0].shortages
    assert first.lack.pool.item == CYLINDER
    moved = [cure for cure in first.cures if cure.kind == "start"]
    for cure in moved:
        day = date.fromisoformat(cure.writes[0][0].removeprefix("starts: "))
        after = with_starts(fewer, {(cure.title.split(" in ")[1].split()[0], "float"): day})
        lamps = [
            sum(each.missing for week in weeks(which) for each in week.reusable if each.pool.item == "lamp") for which in (fewer, after)
        ]
        assert lamps[1] <= lamps[0]


def test_share_cures_and_its_line_can_be_read() -> None:
    """Two teams to one cylinder, as a line of materials that reads back as it was meant; then 4 are enough."""
    department = two_classes()
    cure = cures_of(department)["share"]
    assert (cure.title, cure.then) == ("Let two teams share one", ("need 4, have 4", "teams wait for each other"))
    line = forms.material(cure.writes[0][0].removeprefix("- "))
    assert line == Material(Decimal(1), CYLINDER, Per.TEAM, per_count=2)
    thinner = replace(department, units={**department.units, "float": unit_with("float", line)})
    assert nothing_short(thinner)


@pytest.mark.parametrize("item", ["pair of safety glasses", "splash goggles", "box of gloves", "fire blanket"])
def test_what_protects_is_never_shared(item: str) -> None:
    """No team waits for protection."""
    department = two_classes(
        unit=unit_with("float", Material(Decimal(1), item, Per.TEAM)),
        inventory=[StockItem(item=item, have=Decimal(4), store="north prep room")],
    )
    assert "share" not in cures_of(department)


def test_devices_are_shared_or_borrowed_from_a_room() -> None:
    """Devices come from a room that can spare them, or trios share; nobody buys them here."""
    rooms = [tiny_room("r12", devices=4), tiny_room("r14", name="Room 14", devices=16)]
    found = cures_of(two_classes(have=9, rooms=rooms))
    assert list(found) == ["borrow", "turns"]
    assert found["borrow"].title == "Borrow 2 devices from Room 14 for Monday, Tuesday and Wednesday"
    assert found["turns"].title == "Let trios share a device"


def test_used_up_things_are_bought() -> None:
    """What is used up and short is bought, in whole packs."""
    unit = unit_with("float", Material(Decimal(2), "paper towels", Per.TEAM, used_up=True))
    stock = [StockItem(item="paper towels", have=Decimal(10), store="north prep room", price=Decimal("0.02"), pack=Decimal(150))]
    cure = cures_of(two_classes(unit=unit, inventory=stock))["buy"]
    assert (cure.title, cure.then) == ("Buy 150 × paper towels (1 × 150)", ("$3.00",))


def five_at_once(have: int) -> Department:
    """Five classes run `float` at the same time with 3 cylinders each."""
    names = ["p2", "r2", "k2", "m2", "s2"]
    return two_classes(
        classes=[tiny_class(name, 36, period="P2") for name in names],
        runs=[Run(class_id=name, unit="float", starts=STARTS) for name in names],
        rooms=[tiny_room("r12", devices=99)],
        inventory=[StockItem(item=CYLINDER, have=Decimal(have), store="north prep room")],
    )


def clash_of(department: Department) -> tuple[Reusable, Cure]:
    ((lack, cure),) = kit_clashes(department, plan_department(department).plans)
    return lack, cure


@pytest.mark.parametrize(("have", "kind", "dates_are_tried"), [(3, "borrow", False), (11, "share", False), (12, "start", True)])
def test_no_date_is_tried_where_none_can_help(have: int, kind: str, dates_are_tried: bool, monkeypatch: pytest.MonkeyPatch) -> None:
    """Where any four of five classes are short too, no other date of one of them is worked out; where four have enough, one is."""
    asked: list[object] = []
    real = Tried.moved
    monkeypatch.setattr(Tried, "moved", lambda *given: asked.append(given) or real(*given))
    lack, cure = clash_of(five_at_once(have))
    assert (lack.need, cure.kind, bool(asked)) == (15, kind, dates_are_tried)


@pytest.mark.parametrize("have", [1, 3, 5, 8, 11, 12, 13])
def test_the_cure_to_write_is_the_first_of_all_that_is_a_line(have: int) -> None:
    """The cure that the check names is the first of all cures that is a line to write, and the first of all where none is."""
    department = five_at_once(have)
    every = weeks(department)[0].shortages[0].cures
    assert clash_of(department)[1] == next((cure for cure in every if cure.writes), every[0])
