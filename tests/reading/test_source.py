"""Bytes become text, or a problem that says why not and what to do."""

from __future__ import annotations

import os
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from trivet.reading.source import BYTES_MOST, Source, read_source, source_of

NAME = "units/float-or-sink/index.md"


def only(source: Source) -> tuple[str, int, int, str]:
    """Code, line, column and sentence of the one problem."""
    (problem,) = source.problems
    assert problem.remedy
    assert problem.place.file == NAME
    return problem.code, problem.place.line, problem.place.column, problem.sentence


def test_line_ends_and_mark_are_made_one() -> None:
    """A byte-order mark goes, and every kind of line end becomes one."""
    source = source_of("\ufeffa\r\nb\rc\nd".encode(), NAME)
    assert source == Source("a\nb\nc\nd")


@pytest.mark.parametrize("data", [b"", b"\n\n", b" \r\n\t", b"\xef\xbb\xbf"])
def test_empty_file(data: bytes) -> None:
    """A file with nothing but blanks is answered at 1:1."""
    assert only(source_of(data, NAME))[:3] == ("file-empty", 1, 1)


@pytest.mark.parametrize("encoding", ["utf-16", "utf-16-le", "utf-16-be", "utf-32", "utf-32-le", "utf-32-be"])
def test_wide_encodings(encoding: str) -> None:
    """UTF-16 and UTF-32 are named, with or without their mark, and the remedy is to save as UTF-8."""
    code, line, column, sentence = only(source_of("title: Float or sink?\n".encode(encoding), NAME))
    assert (line, column) == (1, 1)
    assert code in ("file-utf16", "file-binary")
    if encoding not in ("utf-32-le", "utf-32-be"):
        assert code == "file-utf16"
        assert "save it as UTF-8" in sentence


def test_binary_file() -> None:
    """A picture in place of a text is called no text file."""
    assert only(source_of(b"\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR" + b"x" * 50, NAME))[0] == "file-binary"


def test_not_utf8_names_line_column_byte_and_letter() -> None:
    """A Latin-1 letter is placed by characters and guessed."""
    code, line, column, sentence = only(source_of("ok\ntitle: ü caf".encode() + b"\xe9\n", NAME))
    assert (code, line, column) == ("file-not-utf8", 2, 13)
    assert "0xE9 (perhaps é)" in sentence
    assert "save it as UTF-8" in sentence


def test_too_large() -> None:
    """A file of 256 KB is read, one byte more is not."""
    assert source_of(b"a" * BYTES_MOST, NAME).readable
    assert only(source_of(b"a" * (BYTES_MOST + 1), NAME))[0] == "file-too-large"


def test_control_characters_are_placed_and_replaced() -> None:
    """Each odd character is named at its place and becomes a space, so that the columns of the rest stay."""
    source = source_of("a\x07b\nü\x0c\u2028c\x7f\ufeff".encode(), NAME)
    assert [(p.code, p.place.line, p.place.column) for p in source.problems] == [
        ("control-character", 1, 2),
        ("control-character", 2, 2),
        ("control-character", 2, 3),
        ("control-character", 2, 5),
        ("control-character", 2, 6),
    ]
    assert source.text == "a b\nü  c  "
    assert source.readable
    assert "a bell character (U+0007)" in source.problems[0].sentence


def test_many_control_characters_are_answered_briefly() -> None:
    """A file full of odd characters gives a short list."""
    assert len(source_of(b"\x07" * 100_000, NAME).problems) == 20


def test_what_is_no_file(tmp_path: Path) -> None:
    """A missing file, a folder, a link, a pipe and an unusable name are answered without waiting."""
    (tmp_path / "folder").mkdir()
    (tmp_path / "real.md").write_text("text")
    (tmp_path / "link.md").symlink_to(tmp_path / "real.md")
    os.mkfifo(tmp_path / "pipe")
    expected = {
        "gone.md": "file-missing",
        "folder": "file-not-regular",
        "link.md": "file-is-link",
        "pipe": "file-not-regular",
        "a\0b": "file-unreadable",
        "x" * 300: "file-unreadable",
        "real.md/below": "file-unreadable",
    }
    found = {name: only(read_source(tmp_path / name, NAME))[0] for name in expected}
    assert found == expected
    assert read_source(tmp_path / "real.md", NAME) == Source("text")


@settings(max_examples=200, deadline=None)
@given(st.binary(max_size=300))
def test_any_bytes(data: bytes) -> None:
    """Whatever the bytes, the answer is a text or a problem with a remedy, and the text holds nothing odd."""
    source = source_of(data, NAME)
    assert all(problem.remedy and problem.place.line >= 1 for problem in source.problems)
    assert source.readable or source.problems
    assert not any(c in source.text for c in "\r\x00\x07\u2028\ufeff")
