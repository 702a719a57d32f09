"""The guide and the README name what there is: every key of every schema, every message, every command and option."""

from __future__ import annotations

import importlib
import os
import re

import click
import pytest
from click.testing import CliRunner

from tests.examples.test_examples import NOT_CODES, codes_in, modules
from tests.support.reference import FILES, PAGES, ROOT, every_key, every_message, messages, properties, schema
from trivet.command.main import COMMANDS, main

MADE = {"every-key": every_key, "every-message": every_message}


@pytest.mark.parametrize("page", PAGES)
def test_page_is_the_one_that_is_made(page: str) -> None:
    """The page in the guide is exactly what is made from the schemas and the examples."""
    path, made = ROOT / PAGES[page], MADE[page]()
    if os.environ.get("TRIVET_REFRESH"):
        path.write_text(made, encoding="utf-8")
    assert path.read_text(encoding="utf-8") == made, "write it again: TRIVET_REFRESH=1 python -m pytest tests/test_reference.py"


def test_every_schema_has_its_part() -> None:
    """No schema is missing on the page."""
    assert set(FILES) == {path.name.removesuffix(".schema.json") for path in (ROOT / "schema").glob("*.schema.json")}


@pytest.mark.parametrize("name", FILES)
def test_every_key_is_named(name: str) -> None:
    """Each property of a schema stands in the part of its file, with a sentence."""
    part = every_key().split(f"## {FILES[name]}\n")[1].split("\n## ")[0]
    keys = [path[-1] for path, _, _ in properties(schema(name), schema(name))]
    assert keys
    for key in keys:
        assert re.search(rf"^- `{re.escape(key)}`(?: •)? \S", part, re.MULTILINE), key


def test_every_code_stands_in_the_messages() -> None:
    """Each problem code of the package has a message, and stands there once."""
    said = [code for found in messages().values() for code in found]
    assert len(said) == len(set(said))
    written = {code: path.name for path in modules() for code in codes_in(path)}
    assert {code: name for code, name in written.items() if code not in {*said, *NOT_CODES}} == {}


@pytest.mark.parametrize("page", PAGES)
def test_page_holds_no_raw_html(page: str) -> None:
    """A placeholder such as `<slug>` stands in backticks, so that nothing is taken for HTML."""
    plain = re.sub(r"(`+) ?.+? ?\1", "", MADE[page]())
    assert re.findall(r"<[A-Za-z/!]", plain) == []


def commands() -> dict[str, click.Command]:
    """Every command by the words that call it."""
    found = {}
    for name, target in COMMANDS.items():
        module, _, function = target.partition(":")
        command = getattr(importlib.import_module(module), function)
        inside = getattr(command, "commands", None)
        found |= {f"{name} {each}": inner for each, inner in inside.items()} if inside else {name: command}
    return found


@pytest.mark.parametrize("name", commands())
def test_readme_names_commands_and_options(name: str) -> None:
    """The README's table of commands has each command, and names each of its options."""
    text = (ROOT / "README.md").read_text(encoding="utf-8").split("## The commands")[1].split("\n## ")[0]
    assert f"`trivet {name}" in text
    options = [option for each in commands()[name].params if isinstance(each, click.Option) for option in each.opts]
    assert [option for option in options if option.startswith("--") and option not in text] == []


@pytest.mark.parametrize("arguments", [["--help"], ["new", "--help"]], ids=" ".join)
def test_a_list_of_commands_says_each_in_a_whole_sentence(arguments: list[str]) -> None:
    """No line of the list is cut off for want of room."""
    listed = CliRunner().invoke(main, arguments).output.partition("Commands:\n")[2].splitlines()
    assert listed
    assert [line for line in listed if not line.endswith(".") or line.endswith("...")] == []
