"""Values of options are refused in plain words."""

from __future__ import annotations

from collections.abc import Callable, Sequence

import click
import pytest
from click.testing import CliRunner, Result
from hypothesis import given
from hypothesis import strategies as st

from trivet.command.plain_types import MOST_SHOWN, whole, word_of


def asked(callback: Callable[..., object], words: Sequence[str]) -> Result:
    @click.command()
    @click.option("--many", callback=callback)
    def command(many: object) -> None:
        click.echo(repr(many))

    return CliRunner().invoke(command, list(words), standalone_mode=True)


@given(st.integers(-50, 50))
def test_numbers_within_the_limits_pass(number: int) -> None:
    """A whole number from the least to the most is taken; one outside says which side, and both limits."""
    done = asked(whole(3, 12, "weeks"), [f"--many={number}"])
    if 3 <= number <= 12:
        assert (done.exit_code, done.output) == (0, f"{number}\n")
    else:
        assert done.exit_code == 2
        assert ("is too few" if number < 3 else "is too many") in done.output
        assert "write --many and the number of weeks, from 3 to 12" in done.output


@pytest.mark.parametrize("given_", ["", " ", "three", "4.0", "٤", "1e3", "9" * 5000, "--", "4 5"])
def test_what_is_no_number_is_said_so(given_: str) -> None:
    """Words, decimals, digits of other scripts and endless ones are no whole numbers here, and are never repeated at length."""
    done = asked(whole(3, 12, "weeks"), [f"--many={given_}"])
    assert done.exit_code == 2
    assert "is no whole number" in done.output
    assert len(max(done.output.split(), key=len)) <= MOST_SHOWN


def test_left_out_is_nothing() -> None:
    """An option that is not given has no value."""
    assert asked(whole(3, 12, "weeks"), []).output == asked(word_of(["mixed"]), []).output == "None\n"


@pytest.mark.parametrize(
    ("typed", "said"),
    [(" Mixed ", "'mixed'"), ("leveled", "'leveled'"), ("mixd", "write --many mixed"), ("", "nothing is none of mixed, leveled")],
)
def test_one_of_a_few_words(typed: str, said: str) -> None:
    """Capitals and blanks don't count; another word is answered with the nearest of the few."""
    assert said in asked(word_of(["mixed", "leveled"]), [f"--many={typed}"]).output
