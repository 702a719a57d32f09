"""Links, pictures, tables and raw HTML are found in Markdown at their places, and not inside code."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trivet.reading.prose import links, table_columns, tags, without_code


@pytest.mark.parametrize(
    ("text", "target"),
    [
        ("[a](b.csv)", "b.csv"),
        ("[a [b] c](d.csv)", "d.csv"),
        ("[a](<b c.csv>)", "b c.csv"),
        ('[a](b.csv "title")', "b.csv"),
        ("[a](wiki_(page))", "wiki_(page)"),
        ("[a\nb](c.csv)", "c.csv"),
        ("<https://example.org/>", "https://example.org/"),
        ("[a]: https://example.org/", "https://example.org/"),
        ("![words](p.png)", "p.png"),
        ("[![words](p.png)](q.csv)", "p.png"),
    ],
)
def test_link_is_found(text: str, target: str) -> None:
    """Each way to write a link gives its target."""
    assert target in [link.target.text for link in links(text)]


def test_link_has_its_line_and_column() -> None:
    """Places count from the first line of the prose in its file."""
    (link,) = links("one\n\ntwo [a](b.csv)\n", first_line=40)
    assert (link.target.line, link.target.column) == (42, 9)


@pytest.mark.parametrize("text", ["`[a](b)`", "```\n[a](b)\n```", "~~~ python\n[a](b)\n~~~", "`` `[a](b)` ``", "\\[a] (b)", "[a]", "a (b)"])
def test_code_and_plain_text_hold_no_link(text: str) -> None:
    """What stands in code is no link."""
    assert links(text) == ()


@pytest.mark.parametrize(
    ("text", "count"), [("<b>x</b>", 2), ("a < b > c", 0), ("<https://x.org>", 0), ("<!-- note -->", 1), ("`<b>`", 0), ("<br/>", 1)]
)
def test_raw_html_is_found(text: str, count: int) -> None:
    """Elements and comments are raw HTML; addresses, comparisons and code are not."""
    assert len(tags(text)) == count


def test_columns_of_tables_are_found() -> None:
    """A table gives its titles with places and its cells; a line with a bar alone is no table."""
    columns = list(table_columns("a | b\n\n| Name | n |\n| :-- | --: |\n| A | 1 |\n| B | 2 |\n"))
    assert [(column.title.text, column.title.line, column.title.column, column.cells) for column in columns] == [
        ("Name", 3, 3, ("A", "B")),
        ("n", 3, 10, ("1", "2")),
    ]


@given(st.text(alphabet="ab[]()!`<>|-: \n\\#/", max_size=60))
def test_places_point_at_the_text(text: str) -> None:
    """Whatever stands in the prose, each link points at its target in the text, and code keeps the length."""
    lines = text.split("\n")
    assert len(without_code(text)) == len(text)
    for link in links(text):
        first = link.target.text.split("\n")[0]
        assert lines[link.target.line - 1][link.target.column - 1 :].startswith(first)
    assert list(table_columns(text)) is not None


@pytest.mark.parametrize(
    ("text", "left"),
    [
        ("a `b` c", "a     c"),
        ("a ``b`c`` d", "a         d"),
        ("`a``b`` c`", "          "),
        ("```a` b", "```a` b"),
        ("a ` b", "a ` b"),
        ("`a\nb` c", "  \n   c"),
        ("~~~\n`a\n~~~\n`b", "   \n  \n   \n`b"),
    ],
)
def test_code_closes_with_as_many_backticks(text: str, left: str) -> None:
    """A run of backticks closes with the next run of the same length, and one without its fellow is text (CommonMark 0.31.2, 6.1)."""
    assert without_code(text) == left


def test_rows_of_a_table_begin_no_table() -> None:
    """A row that looks like a heading row belongs to the table above it."""
    text = "|a|b|\n|--|--|\n|c|d|\n|--|--|\n\n|e|\n|--|\n"
    assert [column.title.text for column in table_columns(text)] == ["a", "b", "e"]
