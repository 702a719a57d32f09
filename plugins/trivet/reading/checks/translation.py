"""Does a translation keep to the unit it translates?"""

from __future__ import annotations

import re
from collections.abc import Iterator

from trivet.model.places import Path
from trivet.model.problem import Place, Problem, Severity
from trivet.reading.draft import Draft
from trivet.reading.spoken import STATIONS, TRANSLATED_STATION

NAME = re.compile(r"index\.([^.]+)\.md")
LANGUAGE = re.compile(r"[a-z]{2,3}(?:-[A-Z][a-z]{3})?(?:-[A-Z]{2})?")
LANGUAGES = {
    "spanish": "es", "español": "es", "espanol": "es", "chinese": "zh", "vietnamese": "vi", "arabic": "ar", "french": "fr",
    "haitian": "ht", "somali": "so", "portuguese": "pt", "russian": "ru", "ukrainian": "uk", "korean": "ko", "german": "de",
    "tagalog": "tl", "hmong": "hmn", "polish": "pl",
}  # fmt: skip


def language_of(name: str) -> str:
    """Return what stands for the language in the name of a file, "" where the file is no translation."""
    found = NAME.fullmatch(name)
    return found[1] if found else ""


def check_name(file: str, language: str) -> Iterator[Problem]:
    """Yield an error where the language is not a BCP 47 tag such as `es`."""
    if not LANGUAGE.fullmatch(language):
        tag = LANGUAGES.get(language.lower(), language.lower() if LANGUAGE.fullmatch(language.lower()) else "es")
        what = f'"{language}" is not the short name of a language'
        yield Problem("translation-name", Severity.ERROR, Place(file), what, f"call the file index.{tag}.md")


def check(draft: Draft, unit: Draft) -> Iterator[Problem]:
    """Yield an error for each list whose length differs from the unit's, and advice for text that is not translated."""
    for station in STATIONS:
        path: Path = ("stations", station)
        for key, what in (("steps", "step"), ("record", "columns"), ("record", "rows")):
            below: Path = (*path, key) if key == "steps" else (*path, key, what)
            yield from _length(draft, unit, below, what.rstrip("s"))
        if not isinstance(draft.value(*path), dict):
            continue
        missing = [key for key in TRANSLATED_STATION if unit.value(*path, key) and not draft.value(*path, key)]
        if missing:
            yield draft.advice(
                "not-translated", path, f"not translated: {', '.join(missing)}", "write these keys too; until then cards print English"
            )


def _length(draft: Draft, unit: Draft, path: Path, one: str) -> Iterator[Problem]:
    if draft.value(*path) is None:
        return
    if isinstance(unit.value(*path), int):
        if draft.value(*path) != unit.value(*path):
            what = f"the unit has {unit.value(*path)} empty rows here"
            yield draft.error("translation-length", path, what, "leave this key out: there is nothing to translate")
        return
    here, there = len(list(draft.listed(*path))), len(list(unit.listed(*path)))
    if here != there:
        what = f"there {'is' if here == 1 else 'are'} {here} {one}{'' if here == 1 else 's'} here, and {there} in the unit"
        yield draft.error("translation-length", path, what, f"write {there}, in the order of the unit")
