"""Write kept groups as canonical text: the same groups give the same bytes, in the order of the format and with nothing in brackets."""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator

from trivet.model.lock import Lock, StationGroup
from trivet.reading.forms import write_order

VERSION = 1


def write_lock(lock: Lock) -> str:
    """Return the text of a lock file: block style, groups by letter, teams by number, students and pairs ascending."""
    return "\n".join(_lines(lock)) + "\n"


def _lines(lock: Lock) -> Iterator[str]:
    yield f"lock: {VERSION}"
    yield f"unit: {_word(lock.unit)}"
    yield f"class: {_word(lock.class_id)}"
    yield f"drawn_on: {lock.drawn_on.isoformat()}"
    yield f"engine: {_quoted(lock.engine)}"
    yield f"drawn_from: {lock.drawn_from}"
    if lock.leveled:
        yield "how: leveled"
    if lock.order:
        yield from _list("order", map(write_order, lock.order))
    yield from _list("counted", map(_word, lock.counted))
    yield f"inputs: {_quoted(lock.inputs)}"
    yield f"seal: {_quoted(lock.seal)}"
    yield "groups:"
    for letter in sorted(lock.groups):
        yield from _group(letter, lock.groups[letter])
    yield f"repeats: {lock.repeats}"
    yield f"pair_repeats: {lock.pair_repeats}"
    if lock.proved_minimum is not None:
        yield f"proved_minimum: {lock.proved_minimum}"
        yield "certificate:" if lock.certificate else "certificate: {}"
        for student in sorted(lock.certificate):
            yield f"  {student}: {lock.certificate[student]}"


def _group(letter: str, group: StationGroup) -> Iterator[str]:
    yield f"  {letter}:"
    yield "    teams:" if group.teams else "    teams: {}"
    for team in sorted(group.teams, key=team_number):
        yield f"      {team}:"
        for student, roles in sorted(group.teams[team].items()):
            yield from _list(f"        {student}", roles, "          ")
    yield "    pairs:" if group.pairs else "    pairs: []"
    for pair in canonical_pairs(group.pairs):
        for mark, student in zip(("- -", "  -", "  -"), pair, strict=False):
            yield f"      {mark} {student}"


def team_number(team: str) -> int:
    """Return the number of a team: 2 for `A2`."""
    return int(team[1:])


def canonical_pairs(pairs: Iterable[Iterable[str]]) -> tuple[tuple[str, ...], ...]:
    """Return the pairs ascending, each ascending inside: nothing is told by their order."""
    return tuple(sorted(tuple(sorted(pair)) for pair in pairs))


def _list(key: str, entries: Iterable[str], indent: str = "  ") -> Iterator[str]:
    lines = [f"{indent}- {entry}" for entry in entries]
    yield f"{key}:" if lines else f"{key}: []"
    yield from lines


def _quoted(text: str) -> str:
    return json.dumps(text, ensure_ascii=False)


def _word(text: str) -> str:
    # A unit may be called `true`; unquoted, it would come back as a truth.
    return _quoted(text) if text in ("true", "false") else text
