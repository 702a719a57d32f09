"""The command as a whole: it finds what is asked for and starts quickly."""

from __future__ import annotations

import importlib

import click
import pytest
from click.testing import CliRunner

from trivet.command.main import COMMANDS, main


@pytest.mark.parametrize(("typed", "meant"), [("chek", "check"), ("group", "groups"), ("classfile", "class-file"), ("writ", "write")])
def test_a_misspelled_command_is_answered_with_the_nearest(typed: str, meant: str) -> None:
    """A name that is nearly a command's is misuse (exit 2) and names it."""
    done = CliRunner().invoke(main, [typed])
    assert done.exit_code == 2
    assert f"did you mean {meant}?" in done.output


def test_a_word_that_is_near_none_gets_the_list() -> None:
    """A word that sounds like no command is answered with all of them."""
    done = CliRunner().invoke(main, ["xyzzy"])
    assert done.exit_code == 2
    assert all(name in done.output for name in COMMANDS)


@pytest.mark.parametrize("name", COMMANDS)
def test_each_command_is_where_it_is_said_to_be(name: str) -> None:
    """Each entry leads to a command, which takes --root after its name too and has one line of help."""
    module, _, function = COMMANDS[name].partition(":")
    assert isinstance(getattr(importlib.import_module(module), function), click.Command)
    done = CliRunner().invoke(main, [name, "--help"])
    assert done.exit_code == 0
    if name != "new":
        assert done.output.count("--root") == 1
    assert main.get_command(click.Context(main), name).get_short_help_str()  # type: ignore[attr-defined]
