"""Links from a unit's own fields."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.support.department import tiny_department, tiny_unit
from trivet.model.unit import Unit
from trivet.pages.links import unit_address
from trivet.pages.unit_links import open_link, task, unit_links
from trivet.pages.words import load_words

WORDS = load_words()
PAGE = unit_address("float-or-sink")


def with_task(instead: str, *files: str) -> Unit:
    unit = tiny_unit(hands_on={"instead": instead})
    return replace(unit, files=files)


def made(unit: Unit, sentence: str = "", *, to_student: bool = False) -> tuple[str, str, str] | None:
    found = task(unit, unit_links(unit, tiny_department(unit=unit), PAGE), WORDS, sentence, to_student=to_student)
    return None if found is None else (found.text, found.file.text if found.file else "", found.file.href if found.file else "")


def test_no_task_is_none() -> None:
    """A unit without a task for who may not take part has none."""
    assert made(with_task("")) is None


@pytest.mark.parametrize(("file", "kind"), [("data/a.csv", "table"), ("data/A.TSV", "table"), ("story.txt", "file")])
@pytest.mark.parametrize("to_student", [False, True])
def test_a_file_is_named_in_the_words_for_its_kind(file: str, kind: str, *, to_student: bool) -> None:
    """A table and another file have their own sentence, said of a student or to one, with a link from the unit's page to the file."""
    key = f"card.instead.{kind}" if to_student else f"instead.{kind}"
    said = f"{WORDS(key)} {file}{WORDS(f'{key}_then')}"
    assert made(with_task(file, file), to_student=to_student) == (said, file, file)


def test_a_sentence_stands_as_it_was_written() -> None:
    """The unit's own sentence, or its translation, stands alone; with a file of the unit the file is named behind the translation."""
    assert made(with_task("Keep the time.")) == ("Keep the time.", "", "")
    assert made(with_task("Keep the time."), "Lleva el tiempo.") == ("Lleva el tiempo.", "", "")
    assert made(with_task("a.csv", "a.csv"), "Trabaja con") == ("Trabaja con a.csv", "a.csv", "a.csv")
    assert made(with_task("a.csv", "a.csv", "b.csv"), "b.csv") == (
        f"{WORDS('instead.table')} b.csv{WORDS('instead.table_then')}",
        "b.csv",
        "b.csv",
    )


@pytest.mark.parametrize(("opens", "href"), [("sim/", "sim/index.html"), ("https://example.org/tank", "https://example.org/tank")])
def test_what_the_online_station_opens(opens: str, href: str) -> None:
    """A page of the unit and a safe address are links; an address that leads nowhere is none."""
    unit = replace(tiny_unit(online={"open": opens}), files=("sim/index.html",))
    links = unit_links(unit, tiny_department(unit=unit), PAGE)
    found = open_link(unit, links, WORDS)
    assert found is not None and found.href in (href, opens)
    assert open_link(replace(unit, online=replace(unit.online, open="javascript:x()")), links, WORDS) is None
