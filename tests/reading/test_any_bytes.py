"""Whatever the bytes of a file, checking the department answers with problems that have a place and a remedy, and soon."""

from __future__ import annotations

import re
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.examples.harness import PLAIN, cases, department_of
from tests.support.lock import tiny_lock
from trivet.command.check import problems_of
from trivet.model.problem import Problem, Severity
from trivet.reading import report
from trivet.reading.department import read_department
from trivet.reading.lock import write_lock
from trivet.reading.source import BYTES_MOST

UNIT = "units/rolling-carts/index.md"
TRANSLATION = "units/rolling-carts/index.es.md"
STORY = "units/float-or-sink/story.md"
GUIDE = "units/guide/index.md"
LOCK = "school/groups/p1/float-or-sink.yml"
KINDS = ("school", "bells", "calendar", "classes", "rooms", "roles", "expectations", "inventory", "runs")
SCHOOL = tuple(f"school/{kind}.yml" for kind in KINDS)
FILES = (UNIT, TRANSLATION, STORY, GUIDE, *SCHOOL, LOCK)
PROSE = (STORY, GUIDE)
"""Any text is a story or a page of the guide; of the others, only some texts mean something."""
JARGON = re.compile(r"\binvalid\b|traceback|exception|schema|NoneType|\bregex\b|\bmapping\b|\bscalar\b|\btoken\b", re.IGNORECASE)
SECONDS_MOST = 20.0
"""Far above what a file of 256 KB takes, and far below what something that grows with the square of it would."""

EXAMPLES = settings(max_examples=15, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])


@pytest.fixture(scope="module")
def root(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The plain department with every kind of file there is, free of problems."""
    everything = next(case for case in cases("good") if case.name == "school-everything")
    folder = department_of(PLAIN, tmp_path_factory.mktemp("department"))
    for kind in ("roles", "expectations", "inventory"):
        (folder / f"school/{kind}.yml").write_bytes((everything / f"school/{kind}.yml").read_bytes())
    read = read_department(folder).department
    assert read is not None
    lock = write_lock(tiny_lock(read.school.classes["p1"]))
    for name, text in ((TRANSLATION, TRANSLATED), (GUIDE, "# Guide\n\nHow a unit runs.\n"), (LOCK, lock)):
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text(text, encoding="utf-8")
    assert [p.sentence for p in problems_of(folder).problems if p.severity is Severity.ERROR] == []
    return folder


@contextmanager
def written(path: Path, data: bytes) -> Iterator[None]:
    """Put other bytes into a file for a while."""
    kept = path.read_bytes()
    path.write_bytes(data)
    try:
        yield
    finally:
        path.write_bytes(kept)


def answered(root: Path, name: str, data: bytes) -> list[Problem]:
    """The problems of the file `name` when it holds `data`, once it is sure that they and all others are fit to print."""
    start = time.perf_counter()
    with written(root / name, data):
        checked = problems_of(root)
    assert time.perf_counter() - start < SECONDS_MOST
    for problem in checked.problems:
        assert problem.what
        assert problem.remedy or problem.code in ("class-size", "year-ends")
        assert not JARGON.search(problem.sentence.replace(data.decode("utf-8", "replace"), "")), problem
        assert problem.place.line >= 1
        assert problem.place.column >= 1
        assert problem.place.length >= 1
        lines = checked.sources.get(problem.place.file, "").count("\n") + 1
        assert problem.place.line <= lines or problem.code.startswith("file-")
    report.text(checked.problems, checked.sources, advice=True).encode("utf-8", "surrogatepass")
    report.json(checked.problems, advice=True)
    report.annotations(checked.problems, advice=True)
    return [problem for problem in checked.problems if problem.place.file == name]


@pytest.mark.parametrize("name", FILES)
@EXAMPLES
@given(data=st.binary(max_size=400))
def test_any_bytes(root: Path, name: str, data: bytes) -> None:
    """Bytes that mean nothing are answered, and never with a traceback; a file that must hold keys gets an error."""
    found = answered(root, name, data)
    if name not in PROSE and data.strip(b" \t\r\n#") and not data.isascii():
        assert any(problem.severity is Severity.ERROR for problem in found)


PIECES = (
    b"\n", b"  ", b"- ", b": ", b":", b'"', b"'", b"#", b" #", b"*a", b"&a ", b"!x ", b"[", b"]", b"{", b"}", b"|", b">", b"@", b"`",
    b"%", b"? ", b"---\n", b"...\n", b"<<: *a\n", b"\t", b"\x00", b"\x07", b"\xff", b"\xc2\xa0", b"\xe2\x80\x8b", b"\xef\xbb\xbf", b"\r",
    b"\xe2\x80\x94", b"<<<<<<< a\n", b"=======\n", b">>>>>>> b\n", b"9" * 30, b"-1", b"true", b"2026-02-30", b"25:99", b"p1", b"x" * 300,
)  # fmt: skip
EDIT = st.tuples(st.floats(0, 1), st.integers(0, 12), st.sampled_from(PIECES))


@pytest.mark.parametrize("name", FILES)
@EXAMPLES
@given(edits=st.lists(EDIT, min_size=1, max_size=4))
def test_any_slip(root: Path, name: str, edits: list[tuple[float, int, bytes]]) -> None:
    """A file with a few slips anywhere is read or answered; the slips of one file break no other."""
    data = (root / name).read_bytes()
    for where, cut, piece in edits:
        at = round(where * len(data))
        data = data[:at] + piece + data[at + cut :]
    answered(root, name, data)


HOSTILE: dict[str, tuple[Callable[[bytes], bytes], str]] = {
    "empty": (lambda _: b"", "file-empty"),
    "blank": (lambda _: b" \r\n\t\n", "file-empty"),
    "picture": (lambda _: b"\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR", "file-binary"),
    "UTF-16": (lambda data: data.decode().encode("utf-16"), "file-utf16"),
    "UTF-16 without its mark": (lambda data: data.decode().encode("utf-16-be"), "file-utf16"),
    "Latin-1": (lambda data: data + "# é\n".encode("latin-1"), "file-not-utf8"),
    "cut in a letter": (lambda data: data + "é".encode()[:1], "file-not-utf8"),
    "control character": (lambda data: data.replace(b"\n", b"\x0c\n", 1), "control-character"),
    "line separator": (lambda data: data.replace(b"\n", b"\xe2\x80\xa8\n", 1), "control-character"),
    "zero byte": (lambda data: data.replace(b"\n", b"\x00\n", 1), "file-binary"),
    "too large": (lambda data: data + b"#" * BYTES_MOST, "file-too-large"),
    "two versions": (lambda data: b"<<<<<<< mine\n" + data + b"=======\n" + data + b">>>>>>> theirs\n", "merge-conflict"),
}


@pytest.mark.parametrize("name", FILES)
@pytest.mark.parametrize("what", HOSTILE)
def test_what_is_no_text_is_named(root: Path, name: str, what: str) -> None:
    """Each kind of file says the same about what is no text of ours."""
    change, code = HOSTILE[what]
    assert code in {problem.code for problem in answered(root, name, change((root / name).read_bytes()))}


@pytest.mark.parametrize("name", FILES)
@pytest.mark.parametrize(
    "change",
    [
        lambda data: b"\xef\xbb\xbf" + data,
        lambda data: data.replace(b"\n", b"\r\n"),
        lambda data: data.replace(b"\n", b"\r"),
        lambda data: b"\xef\xbb\xbf" + data.replace(b"\n", b"\r\n").rstrip(b"\r\n"),
    ],
    ids=["mark", "CRLF", "CR", "mark and CRLF, no last line end"],
)
def test_how_other_systems_save_a_text(root: Path, name: str, change: Callable[[bytes], bytes]) -> None:
    """A byte-order mark and other line ends change nothing."""
    before = answered(root, name, (root / name).read_bytes())
    assert answered(root, name, change((root / name).read_bytes())) == before


def filled(unit: str, head: str = "", tail: str = "") -> str:
    """Nearly as many bytes as are read, of one thing over and over."""
    return head + unit * ((BYTES_MOST - 200 - len(head) - len(tail)) // len(unit.encode())) + tail


HUGE = {
    "one line": filled("x", "title: "),
    "one key": filled("title: x\n"),
    "unknown keys": "".join(f"title{number}: x\n" for number in range(15_000)),
    "tabs": filled("\tk: x\n", "a:\n"),
    "odd spaces": filled("\u00a0k: x\n", "a:\n"),
    "open quotes": filled('a: "\n'),
    "prose": filled("Nobody knows what this is.\n"),
    "no colon": filled("title x\n"),
    "items": filled("- x\n", "expectations:\n"),
    "long text": filled("  word: word\n", "title: x\n"),
    "colons": filled("a: "),
    "hashes": filled(" #", "title: x"),
    "open brackets": filled("[", "a: "),
    "brackets": filled("x, ", "a: [", "]\n"),
    "brackets in brackets": "a: " + "[" * 5_000 + "]" * 5_000,
    "keys under keys": "".join(" " * depth + "k:\n" for depth in range(600)),
    "marks": filled("*a: &b\n"),
    "signs of git": filled("<<<<<<< a\n") + ">>>>>>> b\n",
    "comments": filled("# x\n", tail="a: x\n"),
    "backticks": "`" * 90_000 + " x " + "``" * 60_000,
    "tables": filled("|a|b|\n|--|--|\n"),
    "links": filled("[x]("),
    "fences": filled("```\n"),
}


IN_PROSE = ("backticks", "tables", "links", "fences", "prose")


@pytest.mark.parametrize(
    ("name", "what"), [(name, what) for what in HUGE for name in ((UNIT, STORY) if what in IN_PROSE else (UNIT, "school/rooms.yml"))]
)
def test_a_large_file_takes_no_longer_than_its_length(root: Path, name: str, what: str) -> None:
    """256 KB of anything are read or answered in bounded time, with a bounded number of sentences."""
    text = HUGE[what]
    if name == UNIT:
        text = f"---\n{text}\n---\n" if what not in IN_PROSE[:4] else f"---\ntitle: x\n---\n{text}"
    found = answered(root, name, text.encode())
    assert found or name == STORY
    assert len(found) < 250


TRANSLATED = """\
---
title: Carros que ruedan
question: ¿Qué hace que un carro ruede más lejos?
stations:
  online:
    goal: Descubre qué decide hasta dónde rueda un carro.
    steps:
      - Deja rodar el carro y escribe hasta dónde llega.
      - Cambia la pendiente y adivina primero.
    done when: Puedes decir qué hace la pendiente.
    finished early: Prueba la pendiente más fuerte.
  hands-on:
    goal: Descubre cómo la pendiente cambia el camino de un carro.
    steps:
      - Deja rodar el carro desde arriba y mide.
      - Sube la rampa un libro y mide otra vez.
    done when: Diez distancias están en la tabla.
  teacher-led:
    goal: Juzga una afirmación sobre carros.
    finished early: Escribe una pregunta para el grupo siguiente.
write-up:
  claim starts: La distancia que rueda un carro depende de ...
---
"""
