"""A line of materials says how many, of what and for whom, and every common slip is answered with the line that was meant."""

from __future__ import annotations

import re
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from trivet.model.station import Material, Per
from trivet.reading.forms import MATERIAL_PATTERN, UNITS, Unreadable, material, write_material
from trivet.reading.forms.measures import SYMBOL


def one(
    quantity: str, item: str, per: Per = Per.TEAM, *, per_count: int = 1, unit: str = "", used_up: bool = False, spare: str = ""
) -> Material:
    """A line of materials, shortly."""
    more = Decimal(spare) if spare else None
    return Material(Decimal(quantity), item, per, per_count=per_count, unit=unit, used_up=used_up, spare=more)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("1 graduated cylinder 25 mL per team", one("1", "graduated cylinder 25 mL")),
        ("1 balance 0.1 g per 2 teams", one("1", "balance 0.1 g", per_count=2)),
        ("60 mL water per team, used up", one("60", "water", unit="mL", used_up=True)),
        ("60 mL of water per team, used up", one("60", "water", unit="mL", used_up=True)),
        ("0.5 L water per class, used up, spare 1.5", one("0.5", "water", Per.CLASS, unit="L", used_up=True, spare="1.5")),
        ("2 balloons per student, used up, spare 6", one("2", "balloons", Per.STUDENT, used_up=True, spare="6")),
        ("1 ramp per station, spare 0", one("1", "ramp", Per.STATION, spare="0")),
        ("1 tablet per pair", one("1", "tablet", Per.PAIR)),
        ("1 km per h meter per team", one("1", "km per h meter")),
        ("1 meter stick per team", one("1", "meter stick")),
        ("1 L-shaped tube per team", one("1", "L-shaped tube")),
        ("3 cups, clear, large per team", one("3", "cups, clear, large")),
        ("1\u00a0cup per\u00a0team", one("1", "cup")),
        ("1 cup “blue” per team ,used up", one("1", "cup “blue”", used_up=True)),
    ],
)
def test_read(text: str, expected: Material) -> None:
    """Counts, amounts with a unit of the closed list, and the item that ends at the last ` per `."""
    assert material(text) == expected
    assert re.search(MATERIAL_PATTERN, text)


@pytest.mark.parametrize(
    ("text", "corrected"),
    [
        ("60 mL water per team", "60 mL water per team, used up"),
        ("2 m string per team", "2 m string per team, used up"),
        ("25 mL graduated cylinder per team", "1 graduated cylinder 25 mL per team"),
        ("250 mL beakers per team", "1 beakers 250 mL per team"),
        ("12 in ruler per team", "1 ruler 12 in per team"),
        ("60 ml water per team, used up", "60 mL water per team, used up"),
        ("60mL water per team, used up", "60 mL water per team, used up"),
        ("2 liters water per class, used up", "2 L water per class, used up"),
        ("3 pounds rice per class", "3 lb rice per class, used up"),
        ("1,000 mL water per class, used up", "1000 mL water per class, used up"),
        ("1 balance per 2 team", "1 balance per 2 teams"),
        ("1 balance per two teams", "1 balance per 2 teams"),
        ("1 balance per 1 team", "1 balance per team"),
        ("1 balance per teams", "1 balance per team"),
        ("1 balance each team", "1 balance per team"),
        ("1 balance for each team", "1 balance per team"),
        ("1 balance for every team", "1 balance per team"),
        ("1 balance a team", "1 balance per team"),
        ("1 balance/team", "1 balance per team"),
        ("1 balance per group", "1 balance per team"),
        ("1 balance per kid", "1 balance per student"),
        ("1 balance per the whole class", "1 balance per class"),
        ("1 balance per 2 students", "1 balance per pair"),
        ("1 balance per 4 students", "1 balance per team"),
        ("1 balance per 4 pairs", "1 balance per 2 teams"),
        ("2 balloons each", "2 balloons per student"),
        ("6 batteries in all", "6 batteries per class"),
        ("2 balloons", "2 balloons per team"),
        ("balance per team", "1 balance per team"),
        ("a balance per team", "1 balance per team"),
        ("two balloons per team", "2 balloons per team"),
        ("2 x cup per team", "2 cup per team"),
        ("2-3 cups per team", "3 cups per team"),
        ("0.5 lemon per team", "1 lemon per 2 teams"),
        ("1.5 lemons per team", "2 lemons per team"),
        ("1 cup per team (used up)", "1 cup per team, used up"),
        ("1 cup per team, consumable", "1 cup per team, used up"),
        ("1 cup per team; used up", "1 cup per team, used up"),
        ("1 cup, used up, per team", "1 cup per team, used up"),
        ("1 cup per team, spare 2, used up", "1 cup per team, used up, spare 2"),
        ("1 cup per team, 2 spares", "1 cup per team, spare 2"),
        ("1 cup per team plus 2 spare", "1 cup per team, spare 2"),
        ("1 cup per team + 2", "1 cup per team, spare 2"),
        ("1 cup, per team", "1 cup per team"),
        ("1 cup per team.", "1 cup per team"),
    ],
)
def test_slips(text: str, corrected: str) -> None:
    """The corrected line is read, and it stands in the remedy after a dash."""
    answer = material(text)
    assert isinstance(answer, Unreadable)
    assert (answer.remedy, answer.corrected) == (f"write - {corrected}", corrected)
    assert isinstance(material(corrected), Material)


@pytest.mark.parametrize(
    ("text", "what"),
    [
        ("60 mL water per team", "60 mL is an amount, and an amount is used up"),
        ("balance per team", "this line does not begin with how many"),
        ("2 balloons", "this line does not end with for whom: per team, per 2 teams, per pair, per student, per station or per class"),
        ("1 cup per 2 team", "this line of materials can't be read: 1 cup per 2 team"),
        ("per team", "this line names no thing: per team"),
        ("", "this is no line of materials"),
    ],
)
def test_what_is_wrong_is_said(text: str, what: str) -> None:
    """The answer names what is missing where it can."""
    answer = material(text)
    assert isinstance(answer, Unreadable)
    assert answer.what == what
    assert answer.remedy


@pytest.mark.parametrize("value", [None, 5, {"a": "b"}, ["x"], True])
def test_other_values(value: object) -> None:
    """A number, a list or nothing is answered with an example."""
    answer = material(value)
    assert isinstance(answer, Unreadable)
    assert answer.remedy == "write it as one text: - 1 graduated cylinder 25 mL per team"


NAMES = st.lists(st.text("abcdefghijkl ABC0123456789.,()“”é-", min_size=1, max_size=10), min_size=1, max_size=5)
ITEMS = (
    NAMES.map(" ".join)
    .map(lambda text: " ".join(text.split()).strip(" ,"))
    .filter(lambda text: text and text.split()[0] not in SYMBOL and text.split()[0] not in ("x", "of"))
)
COUNTS = st.integers(1, 9999).map(Decimal)
AMOUNTS = st.integers(1, 999_999).map(lambda thousandths: Decimal(thousandths) / 1000)
WHO = st.one_of(st.tuples(st.sampled_from(list(Per)), st.just(1)), st.tuples(st.just(Per.TEAM), st.integers(2, 99)))
COUNTED = st.builds(
    lambda count, item, who, used_up, spare: Material(count, item, who[0], who[1], "", used_up, spare),
    COUNTS, ITEMS, WHO, st.booleans(), st.one_of(st.none(), st.integers(0, 99).map(Decimal)),
)  # fmt: skip
MEASURED = st.builds(
    lambda amount, unit, item, who, spare: Material(amount, item, who[0], who[1], unit, True, spare),
    AMOUNTS, st.sampled_from(UNITS), ITEMS, WHO, st.one_of(st.none(), AMOUNTS),
)  # fmt: skip


@settings(max_examples=300, deadline=None)
@given(st.one_of(COUNTED, MEASURED))
def test_round_trip(each: Material) -> None:
    """What is written is read back as the same line, and fits the pattern of the schema."""
    assert material(write_material(each)) == each
    assert re.search(MATERIAL_PATTERN, write_material(each))


PIECES = [
    "1",
    "25",
    "0",
    ".5",
    " ",
    "mL",
    "ml",
    "g",
    "water",
    "cup",
    "cylinder",
    " per ",
    "each ",
    "team",
    "teams",
    "2",
    "class",
    ", used up",
    ", spare 2",
    "of",
    "a ",
    ",",
]


@settings(max_examples=300, deadline=None)
@given(st.one_of(st.text(max_size=200), st.lists(st.sampled_from(PIECES), max_size=15).map("".join)))
def test_any_text(text: str) -> None:
    """Any text is a line exactly where the pattern says so, else it is answered; a corrected line is itself one."""
    answer = material(text)
    assert isinstance(answer, Material) == bool(re.search(MATERIAL_PATTERN, " ".join(text.split())))
    if isinstance(answer, Unreadable):
        assert answer.what
        assert answer.remedy
        assert answer.corrected == "" or isinstance(material(answer.corrected), Material)
