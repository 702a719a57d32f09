"""Read the translations of a unit: `index.es.md` with the student text under the same keys."""

from __future__ import annotations

from functools import partial
from pathlib import Path
from typing import Any

from trivet.model.problem import Problem, Severity
from trivet.model.unit import StationText, Translation
from trivet.reading.checks import tables
from trivet.reading.checks import translation as checks
from trivet.reading.draft import Draft
from trivet.reading.drafting import read_draft
from trivet.reading.form_problems import form_problem
from trivet.reading.spoken import STATIONS, TRANSLATED_LISTS, TRANSLATED_STATION
from trivet.reading.validate import validate


def read_translations(folder: Path, where: str, unit: Draft, sources: dict[str, str]) -> tuple[tuple[Translation, ...], list[Problem]]:
    """Return the translations that can be used, in order of language, and what is wrong with any of them."""
    found, problems = [], []
    for name in unit.files:
        language = checks.language_of(name)
        if not language:
            continue
        draft, wrong, texts = read_draft(folder / name, where + name)
        sources |= texts
        wrong += checks.check_name(draft.file, language)
        wrong += tables.check(draft.file, draft.body, draft.body_line)
        if draft.data:
            wrong += draft.unanswered(validate(draft.data, "unit-translation", draft.places, draft.file, partial(form_problem, draft)))
            wrong += draft.unanswered(checks.check(draft, unit))
        problems += wrong
        if draft.data and not any(problem.severity is Severity.ERROR for problem in wrong):
            found.append(_translation(draft, language))
    return tuple(found), problems


def _translation(draft: Draft, language: str) -> Translation:
    stations = {kind: _station(draft, key) for key, kind in STATIONS.items()}
    return Translation(
        language=language,
        title=_text(draft, "title"),
        question=_text(draft, "question"),
        stations=stations,
        claim_starts=_text(draft, "write-up", "claim starts"),
        places=draft.places,
    )


def _station(draft: Draft, key: str) -> StationText:
    path = ("stations", key)
    said: dict[str, Any] = {
        field: (_listed if spoken in TRANSLATED_LISTS else _text)(draft, *path, spoken) for spoken, field in TRANSLATED_STATION.items()
    }
    return StationText(
        record_columns=_listed(draft, *path, "record", "columns"),
        record_rows=_listed(draft, *path, "record", "rows"),
        **said,
    )


def _text(draft: Draft, *path: str) -> str:
    said = draft.text(*path)
    return said.text if said else ""


def _listed(draft: Draft, *path: str) -> tuple[str, ...]:
    if isinstance(draft.value(*path), int):  # a number of empty rows has no text
        return ()
    return tuple(entry.text for entry in draft.listed(*path))
