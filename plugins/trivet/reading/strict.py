"""Read strict YAML in one pass: plain data, the place of every value, and what a teacher should write instead."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import yaml

from trivet.model.places import Places
from trivet.model.problem import Place, Problem, Severity, in_order
from trivet.reading.building import Builder
from trivet.reading.characters import REFUSED, name_of
from trivet.reading.indentation import mend_indentation
from trivet.reading.limit import PROBLEMS_MOST, limited
from trivet.reading.refusals import refusal
from trivet.reading.scan import scan
from trivet.reading.versions import settled


@dataclass(frozen=True, slots=True)
class Loaded:
    """What a file says.

    `value` is plain data: dict (keys always text, as typed), list, str, int, Decimal, bool, None. `readable` is False when
    reading stopped early: `value` is then None, and nothing further should be said about the content.
    """

    value: Any
    places: Places
    problems: tuple[Problem, ...]
    readable: bool = True


def load(text: str, file: str, first_line: int = 1, *, empty_brackets: bool = False) -> Loaded:
    """Read `text`, which begins at `first_line` of `file`, without ever raising.

    `empty_brackets` lets `{}` and `[]` pass (lock files). Everything else that YAML 1.1 would guess at is text or a problem.
    """
    odd = REFUSED.search(text)
    if odd:
        return _stopped([_refused_character(text, odd.start(), file, first_line)], file)
    typed = text
    text, problems = settled(text, file, first_line)
    text, mended = mend_indentation(text, file, first_line)
    problems += mended
    builder = Builder(text, file, first_line, empty_brackets)
    error = _build(builder, text)
    if error is not None:
        # What a scan of the lines can put right is answered line by line, and the rest of the file is still read.
        scanned = scan(text, file, first_line, openers=None)
        problems += scanned.problems
        text = scanned.text
        builder = Builder(text, file, first_line, empty_brackets)
        error = _build(builder, text)
    if error is not None:
        problems.append(refusal(error, text, typed, file, first_line))
    problems += builder.problems
    if error is not None or builder.stopped or len(problems) > PROBLEMS_MOST:
        return _stopped(problems, file)
    return Loaded(builder.value, builder.places, in_order(problems))


def _build(builder: Builder, text: str) -> yaml.MarkedYAMLError | None:
    try:
        for event in yaml.parse(text, Loader=yaml.CSafeLoader):
            builder.take(event)
            if builder.stopped:
                break
    except yaml.MarkedYAMLError as error:
        return error
    return None


def _stopped(problems: list[Problem], file: str) -> Loaded:
    return Loaded(None, Places(file), limited(problems), readable=False)


def _refused_character(text: str, at: int, file: str, first_line: int) -> Problem:
    line = text.count("\n", 0, at)
    place = Place(file, first_line + line, at - (text.rfind("\n", 0, at) + 1) + 1)
    return Problem(
        "control-character", Severity.ERROR, place, f"{name_of(text[at])} stands here", "delete it and type a space or a new line"
    )
