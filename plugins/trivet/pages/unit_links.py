"""Links from a unit's own fields: what the online station opens, what a student does instead."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import PurePosixPath

from trivet.model.department import Department
from trivet.model.unit import Unit
from trivet.pages.prose_links import UnitLinks
from trivet.pages.words import Words

TABLES = (".csv", ".tsv")


@dataclass(frozen=True, slots=True)
class FileLink:
    """Words, and an address where there is one."""

    text: str
    href: str = ""


def unit_links(unit: Unit, department: Department, page: str) -> UnitLinks:
    """Return what resolves addresses of `unit` as seen from `page`."""
    return UnitLinks(slug=unit.slug, files=unit.files, units=department.units, page=page)


def open_link(unit: Unit, links: UnitLinks, words: Words) -> FileLink | None:
    """Return the link that opens the online station's simulation, or None where its address leads nowhere."""
    found = links.link(unit.online.open)
    return FileLink(words("station.open"), found) if found else None


@dataclass(frozen=True, slots=True)
class Task:
    """What replaces the hands-on station in words: before the file it is about, the file, and from right after it on."""

    before: str
    file: FileLink | None = None
    after: str = ""

    @property
    def text(self) -> str:
        """All of it without the link."""
        return f"{self.before} {self.file.text}{self.after}" if self.file else self.before


def task(unit: Unit, links: UnitLinks, words: Words, sentence: str = "", *, to_student: bool = False) -> Task | None:
    """Return the task in the unit's own sentence, for a file in the page's words (said of a student, or to one); None without one.

    `sentence` stands in for what the unit says (a translation of it); a file is named all the same.
    """
    own = unit.hands_on.instead
    if not own:
        return None
    if sentence in unit.files:
        own, sentence = sentence, ""
    if own not in unit.files:
        return Task(sentence or own)
    file = FileLink(own, links.link(own) or "")
    if sentence:
        return Task(sentence, file)
    kind = "table" if PurePosixPath(own).suffix.lower() in TABLES else "file"
    if to_student:
        return Task(words(f"card.instead.{kind}"), file, words(f"card.instead.{kind}_then"))
    return Task(words(f"instead.{kind}"), file, words(f"instead.{kind}_then"))
