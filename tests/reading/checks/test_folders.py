"""Names of unit folders and of what lies in them."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from trivet.reading.checks.folders import SLUG, check_guide, check_links, check_unit_folder, files_of, slug_fault


@pytest.mark.parametrize(
    ("slug", "better"),
    [
        ("Float", "call it float"),
        ("1-float", "call it float"),
        ("a", "call it like float-or-sink"),
        ("x y!", "call it x-y"),
        ("guide", "choose another name"),
    ],
)
def test_slug_that_is_no_address_is_answered(slug: str, better: str) -> None:
    """A name that can't stand in an address gets one that can."""
    fault = slug_fault(slug)
    assert fault is not None
    assert fault[1] == better
    assert slug_fault("float-or-sink") is None


@pytest.mark.parametrize("slug", ["ab", "a1", "a-b", "a" * 40])
def test_slugs_of_the_contract_pass(slug: str) -> None:
    """Two to forty characters, a letter first."""
    assert SLUG.fullmatch(slug)
    assert slug_fault(slug) is None


@given(st.text(max_size=50))
@example("Guide")
@example("Prep!")
def test_a_name_to_write_is_one_that_can_be(slug: str) -> None:
    """Where a name is refused and another one is proposed, that one is right; names that can be addresses pass."""
    fault = slug_fault(slug)
    if fault is None:
        assert SLUG.fullmatch(slug)
    elif fault[1].startswith("call it "):
        assert slug_fault(fault[1].removeprefix("call it ").removeprefix("like ")) is None


def test_hidden_files_and_links_are_not_files_of_a_unit(tmp_path: Path) -> None:
    """The files of a folder are sorted, without index.md, hidden files and folders, and links; each link is an error of its own."""
    folder = tmp_path / "units" / "a"
    for name in ("index.md", "z.csv", "data/b.csv", ".hidden", ".git/config"):
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).touch()
    (folder / "link.csv").symlink_to(folder / "z.csv")
    assert files_of(folder) == ("data/b.csv", "z.csv")
    assert [(problem.code, problem.place.file) for problem in check_links(tmp_path)] == [("symbolic-link", "units/a/link.csv")]


@pytest.mark.parametrize(
    ("files", "codes"), [(("print/a.csv",), ["name-taken"]), (("student.html", "data/student"), ["name-taken"]), ((), [])]
)
def test_addresses_of_pages_are_taken(files: tuple[str, ...], codes: list[str]) -> None:
    """A file or folder at the top of a unit that has the address of a page is refused, one further down is not."""
    assert [problem.code for problem in check_unit_folder("float-or-sink", files)] == codes


def test_the_guide_is_no_unit() -> None:
    """A page of the guide that is written like a unit is refused, any other one passes."""
    assert [problem.code for problem in check_guide("units/guide/index.md", "title: x\nstations:\n")] == ["unit-name"]
    assert list(check_guide("units/guide/index.md", "title: x\n")) == list(check_guide("units/guide/a.md", "stations:\n")) == []
