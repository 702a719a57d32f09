"""Get the text of a file, or say in plain words why there is none."""

from __future__ import annotations

import stat
from dataclasses import dataclass
from pathlib import Path

from trivet.model.problem import Place, Problem, Severity
from trivet.reading.characters import REFUSED, name_of

BYTES_MOST = 256 * 1024
ODD_CHARACTERS_MOST = 20
"""How many odd characters of one file are named; the rest go with them."""

_MARKS = (
    (b"\xff\xfe\x00\x00", "UTF-32"),
    (b"\x00\x00\xfe\xff", "UTF-32"),
    (b"\xff\xfe", "UTF-16"),
    (b"\xfe\xff", "UTF-16"),
)
_SAVE = "save it as UTF-8 (in most editors: Save As, then Encoding)"


@dataclass(frozen=True, slots=True)
class Source:
    """The text of one file, with `\\n` line ends and no byte-order mark.

    `readable` is False, and `text` empty, where nothing could be read: `problems` says why.
    """

    text: str
    problems: tuple[Problem, ...] = ()
    readable: bool = True


def read_source(path: Path, name: str, bytes_most: int = BYTES_MOST) -> Source:
    """Read the file at `path`, called `name` in problems (from the project's root, with `/`); never raise, never wait."""
    try:
        kind = path.lstat().st_mode
        if stat.S_ISLNK(kind):
            return _unread(name, "file-is-link", "this is a link to another file, and links are not followed", "copy the file itself here")
        if not stat.S_ISREG(kind):
            what = "this is a folder or a device, where a file is expected"
            return _unread(name, "file-not-regular", what, "put a text file in its place")
        with path.open("rb") as stream:
            data = stream.read(bytes_most + 1)
    except FileNotFoundError:
        return _unread(name, "file-missing", "there is no such file", f"write {name}, or take away what names it")
    except (OSError, ValueError) as error:
        said = getattr(error, "strerror", None) or "its name can't be used"
        return _unread(name, "file-unreadable", f"this file can't be opened ({said})", "check its name and who may read it")
    return source_of(data, name, bytes_most)


def source_of(data: bytes, name: str, bytes_most: int = BYTES_MOST) -> Source:
    """Turn the bytes of a file into text. Odd characters become spaces, so that columns stay and the rest is still read."""
    if len(data) > bytes_most:
        what = f"this file is larger than {bytes_most // 1024} KB"
        return _unread(name, "file-too-large", what, "take out what was pasted by mistake; pictures belong beside it")
    for mark, encoding in _MARKS:
        if data.startswith(mark):
            return _unread(name, "file-utf16", f"this file is saved as {encoding}", _SAVE)
    data = data.removeprefix(b"\xef\xbb\xbf").replace(b"\r\n", b"\n").replace(b"\r", b"\n")
    if not data.strip():
        return _unread(name, "file-empty", "this file is empty", "write its content, or delete the file")
    if b"\x00" in data:
        return _binary(data, name)
    try:
        text = data.decode("utf-8")
    except UnicodeDecodeError as error:
        return _not_utf8(data, error.start, name)
    odd = _odd_characters(text, name)
    return Source(REFUSED.sub(" ", text) if odd else text, odd)


def _binary(data: bytes, name: str) -> Source:
    half = len(data) // 4
    if data.count(b"\x00") > half > 0:
        return _unread(name, "file-utf16", "this file is saved as UTF-16, without saying so", _SAVE)
    what = "this is no plain text: perhaps a picture, or a file of a word processor"
    return _unread(name, "file-binary", what, "save its text as plain text, UTF-8, under this name")


def _not_utf8(data: bytes, at: int, name: str) -> Source:
    line_start = data.rfind(b"\n", 0, at) + 1
    line = data.count(b"\n", 0, at) + 1
    column = len(data[line_start:at].decode("utf-8")) + 1
    guess = data[at : at + 1].decode("cp1252", errors="replace")
    likely = f" (perhaps {guess})" if guess.isprintable() and guess != "\ufffd" else ""
    what = f"the byte 0x{data[at]:02X}{likely} on line {line}, column {column} is not UTF-8"
    problem = Problem("file-not-utf8", Severity.ERROR, Place(name, line, column), what, _SAVE)
    return Source("", (problem,), readable=False)


def _odd_characters(text: str, name: str) -> tuple[Problem, ...]:
    problems: list[Problem] = []
    for found in REFUSED.finditer(text):
        if len(problems) == ODD_CHARACTERS_MOST:
            break
        at = found.start()
        place = Place(name, text.count("\n", 0, at) + 1, at - text.rfind("\n", 0, at))
        remedy = "delete it and type a space or a new line"
        problems.append(Problem("control-character", Severity.ERROR, place, f"{name_of(found[0])} stands here", remedy))
    return tuple(problems)


def _unread(name: str, code: str, what: str, remedy: str) -> Source:
    return Source("", (Problem(code, Severity.ERROR, Place(name), what, remedy),), readable=False)
