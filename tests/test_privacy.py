"""What is private stays private: names, needs, rules and levels never reach the site, git, the screen or a file beside them.

Canaries are words that stand nowhere but in private lists. What can be worked out from all that is public is the matter of
`tests/test_privacy_of_levels.py`.
"""

from __future__ import annotations

import csv
import io
import os
import sys
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import click
import pytest
from click.testing import CliRunner, Result
from mkdocs.commands.build import build
from mkdocs.config import load_config

from tests.conftest import EPOCH, mkdocs_build
from tests.hosts.test_site import differing
from tests.support.project import copy_project
from trivet.command.main import COMMANDS, main
from trivet.hosts.build import build_site

CANARIES = ("Quillmark", "Zebulon", "needcanary", "avoidcanary", "tablecanary", "rulecanary")
UNIT, CLASS = "float-or-sink", "p1"
RUN = [UNIT, "--class", CLASS]
BEFORE = ["--today", "2026-08-25"]


def canary_list(text: str) -> str:
    """Put a canary into every cell of a list that holds words; numbers, tables and rules stay what they were."""
    rows = list(csv.DictReader(io.StringIO(text)))
    out = io.StringIO()
    writer = csv.DictWriter(out, fieldnames=list(rows[0]))
    writer.writeheader()
    for row in rows:
        words = {"name": f"Zebulon Quillmark {row['seat']}", "needs": f"needcanary {row['seat']}", "avoid": "avoidcanary"}
        writer.writerow({**row, **words, "table": f"tablecanary {row['table']}"})
    return out.getvalue()


@pytest.fixture
def project(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A copy of the demo whose private lists are full of canaries, without groups for one run, on the tests' date."""
    monkeypatch.setenv("SOURCE_DATE_EPOCH", EPOCH)
    project = copy_project(tmp_path / "project", private=True)
    for path in (project / "private").rglob("roster-*.csv"):
        path.write_text(canary_list(path.read_text(encoding="utf-8")), encoding="utf-8")
    for folder in ("school", "private/example"):
        (project / folder / "groups" / CLASS / f"{UNIT}.yml").unlink(missing_ok=True)
    return project


def call(project: Path, *words: str) -> Result:
    """Call a command as the shell would; anything but an exit is a fault."""
    done = CliRunner().invoke(main, ["--root", str(project), *words])
    assert done.exception is None or isinstance(done.exception, SystemExit), done.exception
    return done


def found_in(text: str) -> list[str]:
    return [canary for canary in CANARIES if canary in text]


def public_files(project: Path) -> dict[str, bytes]:
    """Everything that git would see."""
    return {
        path.relative_to(project).as_posix(): path.read_bytes()
        for path in sorted(project.rglob("*"))
        if path.is_file() and path.relative_to(project).parts[0] != "private"
    }


# what is drawn by level looks like what is not drawn


def test_a_leveled_unit_looks_like_one_that_is_not_drawn(project: Path) -> None:
    """Drawing leveled groups changes no byte of the site's pages and files, nor of anything that git sees."""
    before, files = build_site(project).site, public_files(project)
    done = call(project, "groups", *RUN, "--leveled", "--write", *BEFORE)
    assert done.exit_code == 0, done.output
    assert (project / "private" / "example" / "groups" / CLASS / f"{UNIT}.yml").is_file()
    assert public_files(project) == files
    after = build_site(project).site
    assert after.pages == before.pages
    assert after.assets == before.assets


def test_what_is_drawn_by_level_is_seen_when_it_is_made_public(project: Path) -> None:
    """The comparison above can fail: mixed groups of the same run do change pages and files."""
    before, files = build_site(project).site, public_files(project)
    assert call(project, "groups", *RUN, "--write", *BEFORE).exit_code == 0
    assert public_files(project) != files
    assert build_site(project).site.pages != before.pages


def test_the_built_site_is_the_same_and_holds_no_canary(project: Path, tmp_path: Path) -> None:
    """MkDocs builds the same bytes with leveled groups and without any, and no file of the site holds a word of the lists."""
    assert mkdocs_build(project, tmp_path / "without").returncode == 0
    assert call(project, "groups", *RUN, "--leveled", "--write", *BEFORE).exit_code == 0
    assert mkdocs_build(project, tmp_path / "leveled").returncode == 0
    assert differing(tmp_path / "without", tmp_path / "leveled") == []
    for path in (tmp_path / "leveled").rglob("*"):
        assert not path.is_file() or not found_in(path.read_bytes().decode("utf-8", "replace")), path


# canaries

CALLS: dict[str, list[list[str]]] = {
    "check": [["check"], ["check", "--all"], ["check", "--strict", "--format", "json"], ["check", "--format", "annotations"]],
    "groups": [
        ["groups", *RUN, "--write", *BEFORE],
        ["groups", *RUN, "--json"],
        ["groups", "warm-metal-cool-water", "--class", CLASS, "--leveled", "--write", *BEFORE],
        ["groups", "moving-plates", "--class", CLASS, "--leveled", "--explain", *BEFORE],
        ["groups", "--class", CLASS, "--year"],
        ["groups", *RUN, "--change"],
        ["groups", *RUN, "--how", "mixed", "--team", "3", "--explain", *BEFORE],
        ["groups", *RUN, "--how", "usual", *BEFORE],
        ["groups", *RUN, "--how", "auto", *BEFORE],
        ["groups", *RUN, "--write", "--force", *BEFORE],
        ["groups", *RUN, "--day", "2026-11-30", "--absent", "3,7,19"],
        ["groups", "--class", CLASS, "--year", "--change"],
        ["groups", "--check", f"ROOT/school/groups/{CLASS}/{UNIT}.yml"],
        ["groups", "--students", "28"],
        ["groups", "--students", "28", "--units", "4", "--whole-class", "--json"],
        ["groups", UNIT, "--class", "p99"],
    ],
    "class-file": [["class-file", CLASS, *BEFORE], ["class-file", CLASS, "--levels", "--out", "OUT/names.json"]],
    "materials": [["materials"], ["materials", "--json"], ["materials", "--week", "2026-11-30"]],
    "new": [
        ["new", "unit", "heat-it-up"],
        ["new", "run", "beaks-and-seeds", "--class", "r5", "--after", "float-or-sink", "--gap", "2 weeks", "--way", "rotate"],
        ["new", "run", "beaks-and-seeds", "--class", "k3", "--by", "2027-03-01", "--today", "2026-11-25"],
        ["new", "run", "beaks-and-seeds", "--class", "r2", "--starts", "2027-01-11", "--write"],
    ],
    "plan": [
        ["plan", *RUN],
        ["plan", *RUN, "--private", "--json"],
        ["plan", "warm-metal-cool-water", "--class", CLASS, "--private"],
        ["plan", "--week", "2026-11-30"],
        ["plan", "--what-if", "2026-12-02 lost"],
    ],
    "write": [["write", "OUT/written"]],
}
"""Each command with all it can be asked, groups before what shows them; OUT and ROOT stand for folders."""


def test_every_command_is_asked() -> None:
    """A command without a call here is a hole in the tests below."""
    assert set(CALLS) == set(COMMANDS)


def options_of(command: click.Command) -> set[str]:
    """The names of all options of a command and of those under it."""
    below = [each for name in getattr(command, "commands", {}) if (each := command.get_command(click.Context(command), name))]  # type: ignore[attr-defined]
    own = {option for each in command.params if isinstance(each, click.Option) for option in each.opts}
    return own.union(*map(options_of, below)) - {"--root", "--help"}


@pytest.mark.parametrize("name", COMMANDS)
def test_every_option_is_asked(name: str) -> None:
    """An option without a call here is such a hole too; `--root` goes before each of them."""
    command = main.get_command(click.Context(main), name)
    assert command is not None
    assert sorted(options_of(command) - {word for words in CALLS[name] for word in words}) == []


class Writes:
    """Which files are opened for writing while it is on."""

    def __init__(self) -> None:
        self.on = False
        self.paths: list[Path] = []
        sys.addaudithook(self._hear)

    def _hear(self, event: str, arguments: tuple[Any, ...]) -> None:
        if self.on and event == "open" and isinstance(arguments[0], str) and arguments[2] & (os.O_WRONLY | os.O_RDWR):
            self.paths.append(Path(arguments[0]).absolute())


WRITES = Writes()
"""Hooks can't be taken back, so there is one for all tests."""


@pytest.fixture
def writes(monkeypatch: pytest.MonkeyPatch) -> Iterator[Writes]:
    """Listen to what is written, byte code of Python apart."""
    monkeypatch.setattr(sys, "dont_write_bytecode", True)
    WRITES.paths.clear()
    WRITES.on = True
    yield WRITES
    WRITES.on = False


def ask_everything(project: Path, out: Path) -> str:
    """Make all calls; return all that was said."""
    said = []
    for calls in CALLS.values():
        for words in calls:
            done = call(project, *(word.replace("OUT", str(out)).replace("ROOT", str(project)) for word in words))
            said += [done.output, done.stderr]
    return "\n".join(said)


def test_no_command_tells_or_keeps_what_is_private(project: Path, tmp_path: Path, writes: Writes) -> None:
    """Over lists full of canaries, no command prints one or writes one anywhere but into the private folder and the class file asked for.

    Files are written to the project and the folders named alone: no temporary file, wherever it might lie, is opened at all.
    """
    out = tmp_path / "out"
    said = ask_everything(project, out)
    writes.on = False
    assert "p1-07" in said and "leveled groups of warm-metal-cool-water" in said
    assert found_in(said) == []
    inside = {project: "the project", out: "the folder asked for"}
    assert [path for path in writes.paths if not any(path.is_relative_to(folder) for folder in inside)] == []
    assert {path for path in writes.paths if path.is_relative_to(project / "private")}
    key = (project / "private" / "example" / "key").read_text(encoding="ascii").strip()
    for path in [*project.rglob("*"), *out.rglob("*")]:
        if path.is_file() and not path.is_relative_to(project / "private") and path != out / "names.json":
            text = path.read_bytes().decode("utf-8", "replace")
            assert not found_in(text) and key not in text, path
    names = (out / "names.json").read_text(encoding="utf-8")
    assert found_in(names) == ["Quillmark", "Zebulon"]
    assert key not in said + names


Break = Callable[[str], bytes]
BROKEN: dict[str, Break] = {
    "quote not closed": lambda text: text.replace("Zebulon Quillmark 3,", '"Zebulon Quillmark 3,').encode(),
    "words for a level": lambda text: text.replace("Zebulon Quillmark 4,", "Zebulon Quillmark 4,needcanary").encode(),
    "words for a number": lambda text: text.replace("\n5,", "\nZebulon Quillmark,").encode(),
    "a number twice": lambda text: text.replace("\n5,", "\n4,").encode(),
    "a number too many": lambda text: (text + "88,Zebulon Quillmark,1,,,,,,\n").encode(),
    "a rule in other words": lambda text: text.replace("not in one team", "rulecanary keep away from").encode(),
    "a rule about a name": lambda text: text.replace("not in one team: 1", "not in one team: Zebulon 1").encode(),
    "neither yes nor no": lambda text: text.replace(",yes,", ",needcanary,").encode(),
    "a title nobody knows": lambda text: text.replace("seat,name", "seat,Zebulon").encode(),
    "no titles": lambda text: text.split("\n", 1)[1].encode(),
    "cells too many": lambda text: text.replace("avoidcanary", "avoidcanary,needcanary,rulecanary").encode(),
    "letters of another code": lambda text: text.replace("Zebulon", "Zebulon é").encode("latin-1"),
    "two bytes a letter": lambda text: text.encode("utf-16"),
    "zero bytes": lambda text: text.replace(" ", "\0").encode(),
    "a page of a book": lambda text: (text.replace("\n", " ") * 3).encode(),
    "nothing": lambda text: b"",
}


@pytest.mark.parametrize("fault", BROKEN)
def test_a_broken_list_is_not_quoted(project: Path, tmp_path: Path, fault: str) -> None:
    """Whatever is wrong in a list, the commands that need it say so without a word of it."""
    break_list(project, fault)
    done = [call(project, "groups", *RUN, "--leveled", "--write"), call(project, "class-file", CLASS)]
    said = "".join(part for each in done for part in (each.output, each.stderr))
    assert f"roster-{CLASS}.csv" in said
    assert found_in(said) == []


def test_no_command_quotes_a_broken_list(project: Path, tmp_path: Path) -> None:
    """All commands over a class whose list can't be read print no word of it and write none into what is shared."""
    break_list(project, "quote not closed")
    assert found_in(ask_everything(project, tmp_path / "out")) == []
    assert [name for name, content in public_files(project).items() if found_in(content.decode("utf-8", "replace"))] == []
    assert not (tmp_path / "out" / "names.json").exists()


def break_list(project: Path, fault: str) -> None:
    path = project / "private" / "example" / f"roster-{CLASS}.csv"
    whole = path.read_text(encoding="utf-8")
    path.write_bytes(BROKEN[fault](whole))
    assert path.read_bytes() != whole.encode()


@pytest.mark.parametrize(
    "place", ["school/roster-p1.csv", f"units/{UNIT}/data/list.csv", "units/guide/list.csv", f"school/groups/{CLASS}/list.csv"]
)
def test_a_list_in_a_shared_folder_stops_the_build_and_is_not_published(project: Path, place: str) -> None:
    """A list of names that someone put where it is shared is an error that quotes no name, and no page or file of the site has it."""
    path = project / place
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes((project / "private" / "example" / f"roster-{CLASS}.csv").read_bytes())
    built = build_site(project)
    assert place in {problem.place.file for problem in built.errors}
    pages = [page.body for page in built.site.pages]
    files = [asset.content.decode("utf-8", "replace") for asset in built.site.assets]
    said = [call(project, "check", "--format", form).output for form in ("text", "json", "annotations")]
    assert found_in("\n".join([*pages, *files, *said])) == []


def test_a_preview_serves_no_list_in_a_shared_folder(project: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A preview goes on beside errors, yet leaves such a file out, in a unit's folder and in the guide's."""
    monkeypatch.setenv("NO_MKDOCS_2_WARNING", "1")
    names = (project / "private" / "example" / f"roster-{CLASS}.csv").read_bytes()
    places = (f"units/{UNIT}/data/list.csv", "units/guide/list.csv")
    for place in places:
        (project / place).write_bytes(names)
    config = load_config(str(project / "mkdocs.yml"), site_dir=str(tmp_path / "site"))
    config.plugins.on_startup(command="serve", dirty=False)
    build(config)
    assert (tmp_path / "site" / "units" / UNIT / "data" / "another-class.csv").is_file()
    for path in (tmp_path / "site").rglob("*"):
        assert not path.is_file() or not found_in(path.read_bytes().decode("utf-8", "replace")), path
