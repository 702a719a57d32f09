"""The student cards of a unit: one card a station, in English and in each language beside it. No answers."""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from trivet.model.department import Department
from trivet.model.page import Page
from trivet.model.station import TeacherLedStation
from trivet.model.unit import Translation, Unit
from trivet.pages.build_info import BuildInfo
from trivet.pages.links import student_address
from trivet.pages.plot import DataView, data_view
from trivet.pages.prose import render_prose
from trivet.pages.prose_links import UnitLinks
from trivet.pages.render import render
from trivet.pages.spoken import long_date
from trivet.pages.student_card import card_url, make_card
from trivet.pages.unit_bar import Link, card_links
from trivet.pages.unit_links import unit_links
from trivet.pages.words import Words, load_words
from trivet.planning.minutes import needed


@dataclass(frozen=True, slots=True)
class Sheet:
    """What the teacher-led group reads and judges."""

    prose: Markup | str
    data: DataView | None


def student_pages(unit: Unit, department: Department, build: BuildInfo) -> tuple[Page, ...]:
    """Return the cards in English and in each language that the unit has."""
    return tuple(_page(unit, department, build, each) for each in (None, *unit.translations))


def _page(unit: Unit, department: Department, build: BuildInfo, translation: Translation | None) -> Page:
    words = load_words(translation.language if translation else "en")
    page = student_address(unit.slug, translation.language if translation else "")
    links = unit_links(unit, department, page)
    title = (translation.title if translation else "") or unit.title
    question = (translation.question if translation else "") or unit.question
    need = needed(unit, department.school.settings.defaults)
    cards = tuple(make_card(station, unit, department, translation, words, need=need.of(station.kind).minutes) for station in unit.stations)
    body = render(
        "student.html",
        words,
        title=title,
        question=question,
        cards=cards,
        sheet=_sheet(unit.teacher_led, links, words),
        sheet_lang="en" if translation else "",
        languages=_languages(unit, page, words),
        address=card_url(department.school.settings, unit.slug, translation).partition("://")[2],
        built=long_date(build.date, words),
        version=build.version,
    )
    language = translation.language if translation else "en"
    meta: dict[str, str | bool] = {"title": words("card.page_title", title=title), "kind": "student", "lang": language, "search": False}
    return Page(page, meta, body)


def _sheet(station: TeacherLedStation, links: UnitLinks, words: Words) -> Sheet | None:
    if station.read is None and station.data is None:
        return None
    prose: Markup | str = ""
    if station.read is not None:
        prose = render_prose(station.read.text, links, shift=1, table_label=words("prose.table"))
    return Sheet(prose, data_view(station.data))


def _languages(unit: Unit, page: str, words: Words) -> tuple[Link, ...]:
    if not unit.translations:
        return ()
    english, *others = card_links(unit, page, words)
    return (Link(words("languages.en"), english.href, english.current, "en"), *others)
