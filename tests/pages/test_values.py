"""Numbers, times, lengths to scale, addresses and drawings."""

from __future__ import annotations

import io
import posixpath
import re
from dataclasses import replace
from datetime import date, time
from decimal import Decimal
from itertools import pairwise

import pytest
import segno
from hypothesis import given
from hypothesis import strategies as st

from tests.pages.scenario import department, plans
from tests.support.department import tiny_unit
from trivet.model.plan import Plans
from trivet.model.school import Defaults
from trivet.model.station import DataTable, Kind, Material, Per
from trivet.pages import spoken
from trivet.pages.links import relative
from trivet.pages.plot import LEFT, Tick, plot
from trivet.pages.qr import MASK, QUIET, qr_svg
from trivet.pages.scale import length_class, scale_css
from trivet.pages.stations import station_bar, tags
from trivet.pages.unit_bar import MOST, unit_bar
from trivet.pages.words import load_words
from trivet.planning.halves import spoken as planned_minutes
from trivet.planning.minutes import needed

WORDS = load_words()


@given(st.integers(min_value=0, max_value=400))
def test_minutes_are_said_as_planning_says_them(halves: int) -> None:
    """7, 7½, ½: the same words on pages as in the notes of a plan."""
    assert spoken.minutes(halves / 2) == planned_minutes(halves) or halves == 0


@pytest.mark.parametrize(("when", "said"), [(time(8, 5), "8:05"), (time(12, 0), "12:00"), (time(13, 15), "1:15"), (time(0, 30), "12:30")])
def test_a_clock_time_is_said_as_a_school_says_it(when: time, said: str) -> None:
    """Twelve hours, no leading zero."""
    assert spoken.clock(when) == said


def test_dates_amounts_and_lists() -> None:
    """US order of month and day; no trailing zeros and no exponent; a list as in a sentence."""
    assert spoken.short_date(date(2026, 11, 30), WORDS) == "Mon Nov 30"
    assert spoken.long_date(date(2026, 11, 30), load_words("es")) == "lun 30 nov 2026"
    assert [spoken.number(Decimal(n)) for n in ("0.10", "60", "6E+1", "40000", "0")] == ["0.1", "60", "60", "40,000", "0"]
    assert spoken.sentence_list(["1", "2", "3"], WORDS) == "1, 2 and 3"
    assert spoken.span([2, 3, 3], WORDS) == "2 or 3"
    assert spoken.span([2, 2.5, 5], WORDS) == "2 to 5"
    assert spoken.grades((7, 7), WORDS) == "grade 7"
    assert spoken.number_of("p1-07") == "07"


@pytest.mark.parametrize(
    ("line", "said"),
    [
        (Material(Decimal(1), "balance 0.1 g", Per.TEAM, per_count=2), "1 balance 0.1 g per 2 teams"),
        (Material(Decimal(60), "water", Per.TEAM, unit="mL", used_up=True), "60 mL water per team, used up"),
        (Material(Decimal("0.5"), "salt", Per.PAIR, unit="g", used_up=True, spare=Decimal(3)), "0.5 g salt per pair, used up, spare 3"),
    ],
)  # fmt: skip
def test_a_line_of_materials_reads_as_it_was_written(line: Material, said: str) -> None:
    """The sentence form of the unit file comes back."""
    assert spoken.material(line, WORDS) == said


@given(st.integers(min_value=0, max_value=400))
def test_a_length_has_its_class_and_its_rule(halves: int) -> None:
    """Every half minute has one class, and the stylesheet gives it exactly that number."""
    name = length_class("at", halves / 2)
    css = scale_css([f'<li class="seg {name}">'])
    assert css == f".{name}{{--at:{halves / 2:g}}}\n"


@pytest.mark.parametrize("minutes", [0.25, -1, 7.1])
def test_other_fractions_are_refused(minutes: float) -> None:
    """A length that is no multiple of half a minute is a fault of the caller, named with its value."""
    with pytest.raises(ValueError, match=str(minutes)):
        length_class("m", minutes)


def test_the_scale_knows_what_is_used_and_nothing_else() -> None:
    """One rule for each length class in the bodies, sorted; other classes, and lengths outside a class attribute, give none."""
    css = scale_css(['<b class="at-10 m-2h x-3 n-52">m-9</b>', '<b class="at-2 at-10 format-3">'])
    assert css == ".at-2{--at:2}\n.at-10{--at:10}\n.m-2h{--m:2.5}\n.n-52{--n:52}\n"


ADDRESSES = ["", "units/", "units/a/", "units/a/student/", "units/a/student/es/", "lesson/p1/a/", "assets/trivet/x.css"]


@pytest.mark.parametrize("source", ADDRESSES[:-1])
@pytest.mark.parametrize("target", ADDRESSES)
def test_a_relative_address_leads_back(source: str, target: str) -> None:
    """From every page to every page: the relative address, resolved as a browser does, is the target."""
    found = relative(source, target)
    resolved = posixpath.normpath(posixpath.join("/", source, found)).lstrip("/")
    assert resolved + ("/" if found.endswith("/") and resolved else "") == target
    assert not found.startswith("/")


def test_an_anchor_on_the_same_page_needs_no_path() -> None:
    """On its own page an anchor stands alone."""
    assert relative("units/a/", "units/a/#runs") == "#runs"
    assert relative("", "units/a/#runs") == "units/a/#runs"


def test_a_station_bar_adds_up() -> None:
    """The parts of each station and what is left add up to the round, and lie end to end."""
    for station in needed(tiny_unit(), Defaults()).stations:
        bar = station_bar(station, 23, WORDS)
        at = 0.0
        for segment in bar.segments:
            found = re.search(r"\bat-(\d+)(h?) m-(\d+)(h?)$", segment.css)
            assert found
            assert float(found[1]) + (0.5 if found[2] else 0) == at
            at += float(found[3]) + (0.5 if found[4] else 0)
        assert at == 23
        assert bar.over == "n-23"


def test_the_bar_of_a_unit_never_grows() -> None:
    """Seven links at most, the page's own among them, however many classes run the unit."""
    made = department()
    one = plans(made).plans[0]
    many = Plans(tuple(replace(one, class_id=f"c{n}") for n in range(12)), (), ())
    bar = unit_bar(made.units["float-or-sink"], many, "lesson/c9/float-or-sink/", WORDS)
    assert len(bar) == MOST == 7
    assert [link.text for link in bar if link.current] == ["c9"]
    assert bar[-1].href == "../../../units/float-or-sink/#runs"


@pytest.mark.parametrize("text", ["https://trivet.example/units/float-or-sink/student/#hands-on", "https://a.example/x/"])
def test_a_qr_code_draws_exactly_its_modules(text: str) -> None:
    """The drawing's path covers the dark modules of the code (segno's matrix) and no other, inside its quiet zone."""
    svg = str(qr_svg(text, 'a "code"'))
    rows = segno.make(text, error="m", micro=False, mask=MASK).matrix
    drawn = {(int(x) + i, int(y)) for x, y, length in re.findall(r"M(\d+) (\d+)h(\d+)v1h-\d+z", svg) for i in range(int(length))}
    assert drawn == {(x + QUIET, y + QUIET) for y, row in enumerate(rows) for x, dark in enumerate(row) if dark}
    assert f'viewBox="0 0 {len(rows) + 2 * QUIET} ' in svg
    assert 'aria-label="a &#34;code&#34;"' in svg
    assert "style" not in svg


def test_a_qr_code_is_as_dark_as_segno_draws_it() -> None:
    """segno's own picture of the same code has the same number of dark modules (ISO/IEC 18004)."""
    out = io.StringIO()
    segno.make("https://a.example/", error="m", micro=False, mask=MASK).save(out, kind="txt", border=0)
    svg = str(qr_svg("https://a.example/", ""))
    assert sum(int(n) for n in re.findall(r"h(\d+)v1", svg)) == out.getvalue().count("1")


def of_tick(tick: Tick) -> Decimal:
    return Decimal(tick.text.replace(",", "").replace("−", "-"))


NUMBERS = st.decimals(-(10**6), 10**6, places=2)


@given(st.lists(st.tuples(NUMBERS, NUMBERS), min_size=2, max_size=20))
def test_every_point_lies_inside_its_axes(points: list[tuple[Decimal, Decimal]]) -> None:
    """The axes hold 0 and every value, have two to seven ticks, and each point stands where the ticks say."""
    data = DataTable(("x (s)", "y (m)"), tuple((str(x), str(y)) for x, y in points))
    made = plot(data)
    assert made is not None
    for ticks, values in ((made.x_ticks, [x for x, _ in points]), (made.y_ticks, [y for _, y in points])):
        said = [of_tick(tick) for tick in ticks]
        assert 2 <= len(said) <= 7
        assert 0 in said
        assert said[0] <= min(values)
        assert max(values) <= said[-1]
        assert len({after - before for before, after in pairwise(said)}) == 1
    for (x, y), (across, up) in zip(points, made.points, strict=True):
        assert LEFT <= across <= made.right
        assert made.top <= up <= made.bottom
        for value, at, ticks in ((x, across, made.x_ticks), (y, up, made.y_ticks)):
            share = (value - of_tick(ticks[0])) / (of_tick(ticks[-1]) - of_tick(ticks[0]))
            assert abs(ticks[0].at + float(share) * (ticks[-1].at - ticks[0].at) - at) < 0.16


def test_the_largest_value_is_never_above_its_axis() -> None:
    """51.2 g lies below the end of its axis at 60, and a value on a tick makes no step more."""
    made = plot(DataTable(("volume (mL)", "mass (g)"), (("5", "8.4"), ("30", "51.2"))))
    assert made is not None
    assert [tick.text for tick in made.y_ticks] == ["0", "10", "20", "30", "40", "50", "60"]
    assert [tick.text for tick in made.x_ticks] == ["0", "5", "10", "15", "20", "25", "30"]


def test_numbers_below_zero_are_drawn() -> None:
    """An axis goes below 0 where a value does, with a line at 0, and both ways to write a minus are read."""
    made = plot(DataTable(("time (min)", "temperature (°C)"), (("0", "-18"), ("4", "−2.5"), ("9", "12"))))
    assert made is not None
    assert [tick.text for tick in made.y_ticks] == ["−20", "−10", "0", "10", "20"]
    zero = next(tick for tick in made.y_ticks if tick.text == "0")
    assert made.zeros == (f"M{made.left} {zero.at}H{made.right}",)
    assert made.points[0][1] > zero.at > made.points[2][1]
    both = plot(DataTable(("a", "b"), (("-1", "-2"), ("-3", "-4"))))
    assert both is not None
    assert both.x_ticks[-1].text == both.y_ticks[-1].text == "0"


def test_what_is_no_plot_is_a_table() -> None:
    """Three columns, words or one row are not plotted; empty axes have ticks and no point."""
    assert plot(DataTable(("a", "b", "c"), (("1", "2", "3"), ("1", "2", "3")))) is None
    assert plot(DataTable(("a", "b"), (("1", "red"), ("2", "blue")))) is None
    assert plot(DataTable(("a", "b"), (("1", "2"),))) is None
    assert plot(DataTable(("a", "b"), (("1", "1e999999"), ("2", "3")))) is None
    assert plot(DataTable(("a", "b"), (("1", "nan"), ("2", "3")))) is None
    empty = plot(DataTable(("a", "b"), (("1", "2"), ("2", "3")), drawn=False))
    assert empty is not None
    assert empty.points == ()


def test_the_stations_keep_their_order() -> None:
    """Online, hands-on, teacher-led, with classes that are their anchors."""
    assert [tag.css for tag in tags(WORDS)] == ["online", "hands-on", "teacher-led"] == [kind.value.replace("_", "-") for kind in Kind]
