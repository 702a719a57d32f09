"""Does a student card fit its page, can its readers read it, and does it keep the answers to itself?"""

from __future__ import annotations

from collections.abc import Iterator

from trivet.model.problem import Problem, Severity
from trivet.model.station import AnyStation
from trivet.model.unit import Unit
from trivet.reading.cards import card_sentences, card_texts, translated_texts
from trivet.reading.checks.remarks import advice, warning
from trivet.reading.level import Level, level
from trivet.reading.spoken import spoken_of

CHARACTERS_MOST = 1500
"""What fits on a printed card in a size that can be read at arm's length (ours, no source)."""

WATCH_SECONDS_MOST = 30
"""Common practice, no source."""

ANSWER_LEAST = 12
"""A shorter answer would be found in any text."""


def check(unit: Unit) -> Iterator[Problem]:
    """Yield warnings and advice about the student text of a unit."""
    yield from _lengths(unit)
    yield from _levels(unit)
    yield from _answers(unit)
    watch = unit.hands_on.watch_seconds
    if watch is not None and watch > WATCH_SECONDS_MOST:
        what = f"students count or watch for {watch} s without a break"
        path = ("stations", "hands-on", "watch")
        yield advice(unit, "long-watch", path, what, f"count for {WATCH_SECONDS_MOST} s or less, in more trials")


def card_levels(unit: Unit) -> Iterator[tuple[str, Level | None]]:
    """Yield the name of each student card, and of the text that is read, with its level (None where it is too short for one)."""
    for station in unit.stations:
        yield spoken_of(station.kind), level(card_sentences(station), unit.new_words)
    if unit.teacher_led.read:
        yield f"{unit.teacher_led.read.path}", level([unit.teacher_led.read.text], unit.new_words)


def _lengths(unit: Unit) -> Iterator[Problem]:
    for station in unit.stations:
        count = sum(len(text) for text in card_texts(station))
        if count > CHARACTERS_MOST:
            yield warning(unit, "card-too-long", ("stations", spoken_of(station.kind)), *_too_long(count))
    for translation in unit.translations:
        for kind, text in translation.stations.items():
            count = sum(len(each) for each in translated_texts(text))
            if count > CHARACTERS_MOST:
                place = translation.places.find("stations", spoken_of(kind))
                yield Problem("card-too-long", Severity.WARNING, place, *_too_long(count), spoken_of(kind))


def _too_long(count: int) -> tuple[str, str]:
    return (
        f"the student card has {count} characters, and about {CHARACTERS_MOST} fit on it",
        "shorten the steps, or move what is for the teacher below the second ---",
    )


def _levels(unit: Unit) -> Iterator[Problem]:
    lowest, highest = unit.grades
    for name, found in card_levels(unit):
        if found is None or found.band[0] <= lowest:
            continue
        station = "teacher-led" if name not in ("online", "hands-on", "teacher-led") else name
        path = ("stations", station) if name == station else ("stations", station, "read")
        grades = f"grades {lowest} to {highest}" if lowest < highest else f"grade {lowest}"
        what = f"this reads like {found.words_for_band}, and the unit is for {grades}"
        remedy = f"shorten its hardest sentence ({_cut(found.hardest[0])}), or list the words it teaches under new words"
        say = warning if found.band[0] > highest else advice
        yield say(unit, "reading-level", path, what, remedy)


def _answers(unit: Unit) -> Iterator[Problem]:
    cards = [(station, " ".join(card_texts(station)).casefold()) for station in unit.stations]
    for index, item in enumerate(unit.teacher_led.quick_check):
        station = _holding(item.answer, cards)
        if station:
            path = ("stations", "teacher-led", "quick check", index, "answer")
            what = f"the card of the {spoken_of(station.kind)} station gives this answer away"
            yield advice(unit, "answer-on-card", path, what, "ask for something that the card does not say")


def _holding(answer: str, cards: list[tuple[AnyStation, str]]) -> AnyStation | None:
    said = answer.casefold().strip(" .")
    return next((station for station, text in cards if len(said) >= ANSWER_LEAST and said in text), None)


def _cut(sentence: str) -> str:
    return sentence if len(sentence) <= 80 else sentence[:77] + "..."
