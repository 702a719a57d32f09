"""Make a unit from a file that fits its schema."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from trivet.model.places import Path
from trivet.model.problem import Problem
from trivet.model.station import (
    CheckItem,
    DataTable,
    Expected,
    HandsOnStation,
    Kind,
    Misconception,
    OnlineStation,
    Prompt,
    Question,
    Reading,
    Record,
    SpotCheckLine,
    Step,
    TeacherLedStation,
    Variables,
)
from trivet.model.unit import RubricRow, Translation, Unit, WriteUp
from trivet.reading import forms, spoken
from trivet.reading.checks.sentences import cells_of
from trivet.reading.draft import Draft
from trivet.reading.form_problems import problem_of
from trivet.reading.forms import Unreadable

PROMPTS = {"(support)": Prompt.SUPPORT, "(challenge)": Prompt.CHALLENGE}
NO_HAZARDS = "none"


def build_unit(draft: Draft, reading: Reading | None, translations: tuple[Translation, ...]) -> tuple[Unit | None, tuple[Problem, ...]]:
    """Return the unit of a draft that fits its schema, or None and what its sentences get wrong."""
    work = _Work(draft, reading)
    top = work.fields(spoken.UNIT, ())
    stations = {kind: work.fields(spoken.OF_STATION[kind], ("stations", key)) for key, kind in spoken.STATIONS.items()}
    if work.problems:
        return None, tuple(work.problems)
    unit = Unit(
        slug=draft.slug,
        online=OnlineStation(**stations[Kind.ONLINE]),
        hands_on=HandsOnStation(**stations[Kind.HANDS_ON]),
        teacher_led=TeacherLedStation(**stations[Kind.TEACHER_LED]),
        translations=translations,
        body=draft.body,
        body_line=draft.body_line,
        files=draft.files,
        places=draft.places,
        **top,
    )
    return unit, ()


class _Work:
    """Reads values one by one; a value that its sentence form refuses leaves a problem, and its field is never used."""

    def __init__(self, draft: Draft, reading: Reading | None) -> None:
        self.draft = draft
        self.reading = reading
        self.problems: list[Problem] = []

    def fields(self, table: Mapping[str, str], path: Path) -> dict[str, Any]:
        """Read the keys of one mapping that are there, by their readers (text where none is named)."""
        present = self.draft.value(*path) or {}
        return {field: READERS.get(key, _Work.text)(self, (*path, key)) for key, field in table.items() if key in present}

    def text(self, path: Path) -> str:
        said = self.draft.text(*path)
        return said.text if said else ""

    def flag(self, path: Path) -> bool:
        return self.draft.value(*path) is True

    def listed(self, path: Path) -> tuple[str, ...]:
        return tuple(entry.text for entry in self.draft.listed(*path))

    def form(self, path: Path, code: str, read: Callable[[object], Any]) -> Any:
        answer = read(self.draft.value(*path))
        if isinstance(answer, Unreadable):
            self.problems.append(problem_of(self.draft, path, code, answer))
        return answer

    def steps(self, path: Path) -> tuple[Step, ...]:
        return tuple(self.form(item, "step-unreadable", forms.step) for item in self.draft.items(*path))

    def hazards(self, path: Path) -> tuple[str, ...]:
        words = dict.fromkeys(" ".join(word.lower().split()) for word in self.listed(path))
        return tuple(word for word in words if word != NO_HAZARDS)

    def variables(self, path: Path) -> Variables:
        return Variables(**self.fields(spoken.VARIABLES, path))

    def record(self, path: Path) -> Record:
        rows = self.draft.value(*path, "rows")
        labels = ("",) * rows if isinstance(rows, int) else self.listed((*path, "rows"))
        return Record(self.listed((*path, "columns")), labels)

    def data(self, path: Path) -> DataTable:
        columns = self.listed((*path, "columns"))
        rows = tuple(cells_of(self.text(item)) for item in self.draft.items(*path, "rows"))
        return DataTable(columns, rows, drawn=self.text((*path, "show")) != "empty axes")

    def question(self, path: Path) -> Question:
        ask = self.text((*path, "ask"))
        for mark, prompt in PROMPTS.items():
            if ask.endswith(mark):
                return Question(ask.removesuffix(mark).rstrip(), self.text((*path, "listen for")), prompt)
        return Question(ask, self.text((*path, "listen for")))

    def check_item(self, path: Path) -> CheckItem:
        return CheckItem(**self.fields(spoken.CHECK_ITEM, path))

    def spot_check(self, path: Path) -> SpotCheckLine:
        return SpotCheckLine(**self.fields(spoken.SPOT_CHECK, path))

    def expected(self, path: Path) -> Expected:
        return Expected(**self.fields(spoken.EXPECTED, path))

    def misconception(self, path: Path) -> Misconception:
        return Misconception(**self.fields(spoken.MISCONCEPTION, path))

    def rubric_row(self, path: Path) -> RubricRow:
        return RubricRow(**self.fields(spoken.RUBRIC, path))

    def write_up(self, path: Path) -> WriteUp:
        return WriteUp(**self.fields(spoken.WRITE_UP, path))


Reader = Callable[[_Work, Path], Any]


def _each(read: Reader) -> Reader:
    return lambda work, path: tuple(read(work, item) for item in work.draft.items(*path))


def _form(code: str, read: Callable[[object], Any]) -> Reader:
    return lambda work, path: work.form(path, code, read)


READERS: dict[str, Reader] = {
    "grades": _form("grades-unreadable", forms.grades),
    "round": _form("round-unreadable", forms.round_bounds),
    "standards": _Work.listed,
    "new words": _Work.listed,
    "returns to": _Work.listed,
    "stretch": _Work.flag,
    "level tolerance": _form("share-unreadable", forms.percent),
    "pre-check": _each(_Work.check_item),
    "quick check": _each(_Work.check_item),
    "spot checks": _each(_Work.spot_check),
    "station": lambda work, path: spoken.STATIONS[work.text(path)],
    "write-up": _Work.write_up,
    "at home": _Work.flag,
    "evidence": _Work.listed,
    "rubric": _each(_Work.rubric_row),
    "levels": _Work.listed,
    "steps": _Work.steps,
    "explore": _form("minutes-unreadable", forms.minutes),
    "set up": _form("minutes-unreadable", forms.minutes),
    "clean up": _form("minutes-unreadable", forms.minutes),
    "watch": _form("seconds-unreadable", forms.seconds),
    "materials": _each(_form("material-unreadable", forms.material)),
    "hazards": _Work.hazards,
    "safety notes": _Work.listed,
    "expected": _each(_Work.expected),
    "variables": _Work.variables,
    "printed": _Work.flag,
    "record": _Work.record,
    "read": lambda work, _path: work.reading,
    "data": _Work.data,
    "questions": _each(_Work.question),
    "misconceptions": _each(_Work.misconception),
}
"""How the value of a key is read, by the key as spoken; all others are text."""
