"""Read a unit folder: its index.md, its translations and the text that its teacher-led station reads."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass, field, replace
from functools import partial
from pathlib import Path

from trivet.model.problem import Problem, Severity, in_order
from trivet.model.station import Reading
from trivet.model.unit import Unit
from trivet.reading import versions
from trivet.reading.build import build_unit
from trivet.reading.checks import (
    closed_questions,
    code_files,
    files,
    folders,
    hazards,
    links,
    returns,
    sentences,
    simulation_pages,
    standards,
    student_cards,
    tables,
    twice,
)
from trivet.reading.checks.targets import Surroundings
from trivet.reading.draft import Draft
from trivet.reading.drafting import read_draft
from trivet.reading.form_problems import form_problem
from trivet.reading.level import count_words
from trivet.reading.source import read_source
from trivet.reading.translation import read_translations
from trivet.reading.validate import validate


@dataclass(frozen=True, slots=True)
class ReadUnit:
    """`unit` is None where an error stands among `problems`. `sources` are the texts that were read, by name."""

    slug: str
    unit: Unit | None
    problems: tuple[Problem, ...]
    sources: Mapping[str, str] = field(default_factory=dict)


def read_unit(folder: Path, slug: str, root: Path, simulations: Collection[str], units: Collection[str] = ()) -> ReadUnit:
    """Read the unit in `folder`; `simulations` are the units whose code was reviewed, `units` all units there are.

    Never raises on any content, and never follows a link.
    """
    where = folder.relative_to(root).as_posix() + "/"
    others = folders.files_of(folder)
    draft, problems, sources = read_draft(folder / "index.md", where + "index.md")
    draft = replace(draft, slug=slug, files=others, units=tuple(units) or (slug,), simulation=slug in simulations)
    problems += folders.check_unit_folder(slug, others)
    problems += code_files.check(folder, where, others, reviewed=draft.simulation, slug=slug)
    if draft.simulation:
        problems += simulation_pages.check(folder, where, others)
    if draft.data:
        problems += draft.unanswered(validate(draft.data, "unit", draft.places, draft.file, partial(form_problem, draft)))
        for check in (sentences.check, twice.check, hazards.check, standards.check, returns.check, files.check):
            problems += draft.unanswered(check(draft))
    problems += _prose(folder, where, draft, sources)
    translations, found = read_translations(folder, where, draft, sources)
    problems += found
    reading, unread = _reading(folder, where, draft, sources)
    problems += unread
    unit = None
    if draft.data and not _stops(problems):
        unit, wrong = build_unit(draft, reading, translations)
        problems += wrong
    if unit is not None:
        problems += closed_questions.check(unit)
        problems += student_cards.check(unit)
    return ReadUnit(slug, None if _stops(problems) else unit, in_order(problems), sources)


def _prose(folder: Path, where: str, draft: Draft, sources: dict[str, str]) -> Iterator[Problem]:
    around = Surroundings(draft.slug, draft.files, draft.units)
    yield from links.check(draft.file, draft.body, draft.body_line, around)
    yield from tables.check(draft.file, draft.body, draft.body_line)
    for name in draft.files:
        if name.endswith(".md") and not name.startswith("index."):
            source = read_source(folder / name, where + name)
            sources[where + name] = source.text
            yield from source.problems
            yield from versions.check(source.text, where + name)
            yield from links.check(where + name, source.text, 1, around)
            yield from tables.check(where + name, source.text)


def _reading(folder: Path, where: str, draft: Draft, sources: dict[str, str]) -> tuple[Reading | None, tuple[Problem, ...]]:
    said = draft.text("stations", "teacher-led", "read")
    if said is None or said.text not in draft.files:
        return None, ()
    name = where + said.text
    problems: tuple[Problem, ...] = ()
    if name not in sources:
        source = read_source(folder / said.text, name)
        sources[name], problems = source.text, source.problems
    return Reading(said.text, sources[name], count_words(sources[name])), problems


def _stops(problems: list[Problem]) -> bool:
    return any(problem.severity is Severity.ERROR for problem in problems)
