"""The text that students read on a card."""

from __future__ import annotations

from trivet.model.station import AnyStation, HandsOnStation, OnlineStation, TeacherLedStation
from trivet.model.unit import StationText


def card_texts(station: AnyStation) -> tuple[str, ...]:
    """Return the texts of a station's student card in the order in which it prints them, without empty ones."""
    texts = [station.title, station.goal]
    if isinstance(station, OnlineStation):
        texts += [station.use, station.leave_alone]
    if isinstance(station, TeacherLedStation):
        texts.append(station.start_alone)
    if isinstance(station, HandsOnStation):
        texts += station.safety_notes
    texts += [step.text for step in station.steps]
    texts += [station.done_when, station.finished_early]
    if isinstance(station, HandsOnStation):
        texts.append(station.put_away)
    return tuple(text for text in texts if text)


def translated_texts(text: StationText) -> tuple[str, ...]:
    """Return the same for a station's text in another language."""
    texts = [
        text.title,
        text.goal,
        text.use,
        text.leave_alone,
        text.start_alone,
        *text.safety_notes,
        *text.steps,
        text.done_when,
        text.finished_early,
        text.put_away,
    ]
    return tuple(each for each in texts if each)


def card_sentences(station: AnyStation) -> tuple[str, ...]:
    """Return the texts of a card that are sentences: titles and lists of controls have no reading level."""
    left_out = {station.title}
    if isinstance(station, OnlineStation):
        left_out |= {station.use, station.leave_alone}
    return tuple(text for text in card_texts(station) if text not in left_out)
