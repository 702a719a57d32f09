"""A file with front matter becomes a draft."""

from __future__ import annotations

from pathlib import Path

from trivet.reading.drafting import read_draft


def drafted(folder: Path, text: str):
    (folder / "index.md").write_text(text, encoding="utf-8")
    return read_draft(folder / "index.md", "units/x/index.md")


def test_keys_prose_and_lines_are_kept(tmp_path: Path) -> None:
    """What stands between the fences becomes data, what follows is prose with its first line, and the text is handed on by name."""
    text = "---\ntitle: Float or sink?\n---\n\nFor teachers.\n"
    draft, problems, sources = drafted(tmp_path, text)
    assert (draft.data, problems) == ({"title": "Float or sink?"}, [])
    assert draft.body.strip() == "For teachers."
    assert draft.lines[draft.body_line :][0] == "For teachers."
    assert sources == {"units/x/index.md": text}


def test_nothing_between_the_fences_is_told_at_the_top(tmp_path: Path) -> None:
    """Front matter without a key is one problem at 1:1 that names the keys to write."""
    draft, problems, _ = drafted(tmp_path, "---\n---\nFor teachers.\n")
    assert draft.data == {}
    assert [(problem.code, problem.place.line, problem.place.column) for problem in problems] == [("no-keys", 1, 1)]
    assert "title:" in problems[0].remedy


def test_a_line_that_was_answered_is_remembered(tmp_path: Path) -> None:
    """A line with a problem is not answered again by later checks; line 1 stands for the file and stays open."""
    draft, problems, _ = drafted(tmp_path, "---\ntitle: a\ntitle: b\n---\n")
    assert [problem.code for problem in problems] == ["duplicate-key"]
    assert draft.answered == {3}


def test_a_file_that_cannot_be_read_has_no_draft(tmp_path: Path) -> None:
    """Bytes that are no text give problems, no data and no source."""
    (tmp_path / "index.md").write_bytes(b"\x00\x01\x02\xff\xfe\xfd")
    draft, problems, sources = read_draft(tmp_path / "index.md", "units/x/index.md")
    assert draft.data == {}
    assert problems
    assert sources == {}
