"""What the words of an event say about a school day: it is closed, it has a day type, it is a rotation day.

Common practice, no source: districts call such events as they please, so a department may write its own words for closures.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping

from trivet.model.school import Calendar, DayType
from trivet.reading.calendars.events import Event
from trivet.reading.school.values import spoken

CLOSED_WHEN = ("no school", "school closed", "schools closed", "holiday", "break", "recess", "vacation")


class EventWords:
    """What the words of an event say about a school day."""

    def __init__(self, closed: Iterable[str], bells: Mapping[str, DayType], calendar: Calendar) -> None:
        """Take the department's words for closures, its day types and its rotation days."""
        self._closed = re.compile(rf"\b(?:{'|'.join(re.escape(' '.join(word.split())) for word in closed)})\b", re.IGNORECASE)
        self._day_types = [(name, _names(spoken(name))) for name in sorted(bells, key=lambda name: (-len(name), name))]
        letters = "|".join(re.escape(letter) for letter in calendar.rotation)
        self._letter = re.compile(rf"(?:day\s+({letters})|({letters})[\s-]+day)", re.IGNORECASE) if letters else None
        self._letters = {letter.casefold(): letter for letter in calendar.rotation}

    def concern(self, event: Event) -> bool:
        """Say whether an event, or the one it replaces, may be about school days."""
        if event.replaces is not None:
            return True
        return self.closes(event) or bool(self.day_type(event.summary)) or bool(self.letter(event.summary))

    def closes(self, event: Event) -> bool:
        """Only what lasts whole days closes a school."""
        said = (event.summary, *event.categories)
        return event.whole_days and any(self._closed.search(each) for each in said)

    def day_type(self, summary: str) -> str:
        """The day type that an event is called after, "" for none."""
        return next((name for name, pattern in self._day_types if pattern.search(summary)), "")

    def letter(self, summary: str) -> str:
        """The rotation day that an event is called after (A day, Day A), "" for none."""
        found = self._letter.fullmatch(_head(summary)) if self._letter else None
        return self._letters[(found[1] or found[2]).casefold()] if found else ""


def _names(day_type: str) -> re.Pattern[str]:
    """`assembly` is meant by "Assembly", "Assembly: band" and "Assembly schedule", and not by "Parents' assembly in the gym"."""
    name = r"[\s-]+".join(re.escape(word) for word in day_type.split())
    begins = r"\b" if " " in day_type else r"\s*(?:$|[:;,(–—-])"
    return re.compile(rf"^\s*{name}{begins}|\b{name}[\s-]+(?:day|schedule|bells?)\b", re.IGNORECASE)


def _head(summary: str) -> str:
    return re.split(r"[:;,(–—]", summary, maxsplit=1)[0].strip()
