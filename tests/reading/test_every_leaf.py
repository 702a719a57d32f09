"""Every key of every demo file, misspelled, retyped, deleted or doubled, is refused at its line, or stands in a list of exceptions."""

from __future__ import annotations

import shutil
from collections.abc import Callable, Iterator
from itertools import combinations
from pathlib import Path

import pytest

from tests.conftest import ROOT
from tests.reading.leaves import Change, Keys, Leaf, batches, deleted, demo_files, doubled, leaves, misspelled, retyped
from trivet.model.problem import Problem, Severity
from trivet.reading.lock import read_locks
from trivet.reading.school.read import read_school
from trivet.reading.school.units import unit_slugs
from trivet.reading.unit import read_unit

NAMED_BY_SCHOOL = (
    "teachers/*", "day types/*", "day types/*/*", "classes/*", "rooms/*", "days/*", "groups/*/teams/*", "groups/*/teams/*/*",
    "certificate/*",
)  # fmt: skip
"""Keys that are names the school chose: another name is another thing, and what refers to the old one is answered there."""

TEXT_OR_NUMBER = (
    "pre-check/answer", "stations/*/quick check/answer", "stations/*/expected/value", "stations/*/expected/tolerance", "items/have",
)  # fmt: skip
LINE_OR_LIST = ("stations/*/record/columns", "stations/*/data/columns", "simulations", "standards", "new words", "returns to")

OPTIONAL = (
    "standards", "new words", "round", "stretch", "prefer", "group by", "roles", "returns to", "pre-check", "pre-check/skill",
    "spot checks", "reflection", "rubric", "write-up/evidence", "write-up/reasoning", "write-up/at home", "stations/*/title",
    "stations/*/finished early", "stations/*/work in", "stations/*/again", "stations/*/variables", "stations/*/variables/change",
    "stations/*/variables/measure", "stations/*/variables/keep", "stations/*/variables/printed", "stations/*/record",
    "stations/*/record/rows", "stations/online/use", "stations/online/leave alone", "stations/online/explore", "stations/online/if down",
    "stations/hands-on/set up", "stations/hands-on/clean up", "stations/hands-on/put away", "stations/hands-on/safety notes",
    "stations/hands-on/expected", "stations/*/expected/tolerance", "stations/*/expected/source", "stations/hands-on/watch",
    "stations/teacher-led/read", "stations/teacher-led/start alone", "stations/teacher-led/data", "stations/*/data/show",
    "stations/teacher-led/misconceptions", "stations/teacher-led/quick check", "stations/*/quick check/skill",
    "stations/teacher-led/steps", "stations/teacher-led/done when", "demo", "locale", "paper", "site", "simulations", "minutes",
    "minutes/*", "defaults", "defaults/*", "week/*", "rotation", "rotation/mode", "closures", "days", "terms", "classes/*/gone",
    "classes/*/late", "classes/*/meets", "classes/*/avoid", "classes/*/adults", "rooms/*/teacher sees", "rooms/*/area", "rooms/*/devices",
    "rooms/*/store", "roles/*", "items/store", "items/price", "items/pack", "items/contains", "runs/way", "runs/second adult",
    "runs/order", "runs/lost", "runs/starts", "runs/after", "runs/gap", "runs/by",
    "how", "repeats", "pair_repeats", "proved_minimum", "certificate", "counted", "inputs", "seal",
    "groups/*",
)  # fmt: skip
"""Keys of units, of school files and of kept groups that have a default (a group that is not there is empty).

`*` stands for a station, or for a name that the school chose.
"""

OF_TRANSLATIONS = (
    "write-up", "write-up/claim starts", "stations/*/title", "stations/*/goal", "stations/*/steps", "stations/*/done when",
    "stations/*/finished early", "stations/*/start alone", "stations/*/put away", "stations/*/use", "stations/*/leave alone",
    "stations/*/record", "stations/*/record/columns", "stations/*/record/rows", "stations/hands-on/materials",
    "stations/hands-on/safety notes", "stations/hands-on/instead",
)  # fmt: skip
"""A translation may be unfinished: cards print English until it is done, and `trivet check --all` says what is missing."""

WHOLE_FILES = ("school/expectations.yml", "school/inventory.yml", "school/runs.yml", "school/roles.yml")
"""Files with one key whose absence is the absence of the file, which may be."""


def kind_of(path: Keys) -> Iterator[str]:
    """The names under which a path may stand in the lists above: as it is, and with up to three of its names made `*`."""
    spoken = [step for step in path if isinstance(step, str)]
    for stars in range(4):
        for places in combinations(range(1, len(spoken)), stars):
            yield "/".join("*" if place in places else step for place, step in enumerate(spoken))


def excepted(path: Keys, names: tuple[str, ...]) -> bool:
    return any(name in names for name in kind_of(path))


class Demo:
    """A copy of the demo in which one file at a time is changed."""

    def __init__(self, root: Path) -> None:
        self.root = root
        for folder in ("units", "school"):
            shutil.copytree(ROOT / folder, root / folder)
        self.slugs = unit_slugs(root)

    def errors(self, file: str, text: str) -> list[Problem]:
        """The errors of the demo with another text in `file`, without those about the rest of the demo."""
        original = (ROOT / file).read_text(encoding="utf-8")
        (self.root / file).write_text(text, encoding="utf-8")
        if file.startswith("units/"):
            slug = file.split("/")[1]
            problems = read_unit(self.root / "units" / slug, slug, self.root, self.slugs, self.slugs).problems
        else:
            school = read_school(self.root)
            problems = (*school.problems, *read_locks(self.root, school.school).problems)
        (self.root / file).write_text(original, encoding="utf-8")
        return [problem for problem in problems if problem.severity is Severity.ERROR]


@pytest.fixture(scope="module")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Demo:
    return Demo(tmp_path_factory.mktemp("demo") / "project")


def refused(errors: list[Problem], file: str, line: int) -> bool:
    return any(problem.place.file == file and problem.place.line == line for problem in errors)


def said_missing(errors: list[Problem], path: Keys) -> bool:
    return any(f'"{path[-1]}" is missing' in problem.what for problem in errors)


def accepted(demo: Demo, file: str, change: Callable[[str, list[Leaf]], Change], names: tuple[str, ...]) -> list[str]:
    """The leaves that are changed and not refused, without those excepted; a leaf that passes among others is tried alone."""
    text = (ROOT / file).read_text(encoding="utf-8")
    found = leaves(text, file)
    lines = {leaf.path: leaf.first + 1 for leaf in found}
    passed = []
    for batch in batches(found):
        changed = change(text, batch)
        errors = demo.errors(file, changed.text)
        for leaf in batch:
            if leaf.path not in changed.lines or excepted(leaf.path, names):
                continue
            if said_missing(errors, leaf.path) if change is deleted else refused(errors, file, changed.lines[leaf.path]):
                continue
            alone = change(text, [leaf])
            errors_alone = demo.errors(file, alone.text)
            at = lines.get(leaf.path[:-1], 1) if change is deleted else alone.lines[leaf.path]
            if not (refused(errors_alone, file, at) or (change is deleted and said_missing(errors_alone, leaf.path))):
                passed.append("/".join(map(str, leaf.path)))
    return passed


FILES = demo_files(ROOT)


def test_there_are_files_with_many_keys() -> None:
    """The demo has units and school files, each with keys to change."""
    assert len([file for file in FILES if file.startswith("units/")]) >= 4
    assert len([file for file in FILES if file.startswith("school/")]) >= 8
    assert sum(len(leaves((ROOT / file).read_text(encoding="utf-8"), file)) for file in FILES) > 500


@pytest.mark.parametrize("file", FILES)
def test_misspelled_key_is_refused(demo: Demo, file: str) -> None:
    """A key with a letter too many is refused at its line, unless the school chose its name."""
    assert accepted(demo, file, misspelled, NAMED_BY_SCHOOL) == []


@pytest.mark.parametrize("file", FILES)
def test_retyped_value_is_refused(demo: Demo, file: str) -> None:
    """A number for a text, a text for a number, a text for a list: refused at its line."""
    assert accepted(demo, file, retyped, (*TEXT_OR_NUMBER, *LINE_OR_LIST)) == []


@pytest.mark.parametrize("file", FILES)
def test_deleted_key_is_missed(demo: Demo, file: str) -> None:
    """A key that is taken out is missed by name, unless it has a default."""
    optional = OF_TRANSLATIONS if ".es." in file else (*OPTIONAL, *NAMED_BY_SCHOOL)
    whole = leaves((ROOT / file).read_text(encoding="utf-8"), file)[0].path[:1]
    passed = accepted(demo, file, deleted, optional)
    assert [leaf for leaf in passed if not (file in WHOLE_FILES and (leaf,) == whole)] == []


@pytest.mark.parametrize("file", FILES)
def test_doubled_key_is_refused(demo: Demo, file: str) -> None:
    """A key that stands twice is refused at its second line, whatever it is."""
    assert accepted(demo, file, doubled, ()) == []
