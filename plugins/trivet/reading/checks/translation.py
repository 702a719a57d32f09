"""Does a translation keep to the unit it translates?"""

from __future__ import annotations

import re
from collections.abc import Iterator

from trivet.model.places import Path
from trivet.model.problem import Place, Problem, Severity
from trivet.model.station import Material
from trivet.reading import forms
from trivet.reading.checks import files
from trivet.reading.draft import Draft, Said
from trivet.reading.spoken import STATIONS, TRANSLATED_LISTS, TRANSLATED_STATION
from trivet.reading.where import COUNTED

NAME = re.compile(r"index\.([^.]+)\.md")
LANGUAGE = re.compile(r"[a-z]{2,3}(?:-[A-Z][a-z]{3})?(?:-[A-Z]{2})?")
SAFETY = "safety notes"
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
    """Yield what keeps a translation from its unit.

    An error for each list whose length differs, for an amount that is written again and for a file that is not there; a warning for
    safety notes that are not translated; advice for other text that is not.
    """
    for station in STATIONS:
        path: Path = ("stations", station)
        for below in (*((*path, key) for key in TRANSLATED_LISTS), (*path, "record", "columns"), (*path, "record", "rows")):
            yield from _length(draft, unit, below, COUNTED[str(below[-1])])
        if isinstance(draft.value(*path), dict):
            yield from _untranslated(draft, unit, path)
    yield from _amounts(draft, unit)
    yield from files.check_instead(draft, unit.files)


def _untranslated(draft: Draft, unit: Draft, path: Path) -> Iterator[Problem]:
    missing = [key for key in TRANSLATED_STATION if unit.value(*path, key) and not draft.value(*path, key)]
    if SAFETY in missing:
        missing.remove(SAFETY)
        count = len(list(unit.listed(*path, SAFETY)))
        what = "the safety notes are not translated, so those who need this language read them in English"
        remedy = f"write {SAFETY}: and under it {count} {'line' if count == 1 else 'lines'}, in the order of the unit"
        yield draft.warning("safety-not-translated", path, what, remedy)
    task = unit.text(*path, "instead")
    if task and files.is_path(task.text) and "instead" in missing:
        missing.remove("instead")  # cards say in their own words what to do with a file
    if missing:
        remedy = "write these keys too; until then cards print English"
        yield draft.advice("not-translated", path, f"not translated: {', '.join(missing)}", remedy)


def _amounts(draft: Draft, unit: Draft) -> Iterator[Problem]:
    """An amount that stands in the translation too would be printed twice, and would be wrong when the unit's changes."""
    path: Path = ("stations", "hands-on", "materials")
    for said, own in zip(draft.listed(*path), unit.listed(*path), strict=False):
        line = forms.material(own.text)
        if isinstance(line, Material) and (thing := _without_amount(said, line)):
            what = "the amount stands here too, and it comes from the unit"
            yield draft.error("translation-amount", said, what, f"write - {thing}")


def _without_amount(said: Said, line: Material) -> str:
    """Return what stands after the unit's own amount, "" where the text does not begin with it."""
    unit = rf"(?:\s*{re.escape(line.unit)})?" if line.unit else ""
    found = re.match(rf"{re.escape(f'{line.quantity:f}')}{unit}\s+(?=\S)", said.text)
    return "" if found is None or line.item.startswith(found[0]) else said.text[found.end() :]


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
        remedy = f"write {there}, in the order of the unit" if there else "leave this key out: there is nothing to translate"
        yield draft.error("translation-length", path, what, remedy)
