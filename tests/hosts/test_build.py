"""From a project folder to a site's pages."""

from __future__ import annotations

import gc
from datetime import UTC, date, datetime
from pathlib import Path

import pytest

from tests.command.small_project import small_project
from trivet.hosts.build import build_info, build_site


@pytest.mark.parametrize(
    ("epoch", "day"), [("0", date(1970, 1, 1)), ("1795564800", date(2026, 11, 25)), ("1795564799", date(2026, 11, 24))]
)
def test_the_date_of_a_build_can_be_given(epoch: str, day: date, monkeypatch: pytest.MonkeyPatch) -> None:
    """SOURCE_DATE_EPOCH counts seconds in UTC (reproducible-builds.org, from memory)."""
    monkeypatch.setenv("SOURCE_DATE_EPOCH", epoch)
    assert build_info().date == day


@pytest.mark.parametrize("epoch", ["", "soon", "-1", "1.5"])
def test_anything_else_is_today(epoch: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """What is no whole number of seconds is passed over."""
    monkeypatch.setenv("SOURCE_DATE_EPOCH", epoch)
    before = datetime.now(UTC).date()
    assert before <= build_info().date <= datetime.now(UTC).date()


@pytest.mark.parametrize("on", [True, False])
def test_the_search_for_garbage_goes_on_as_before(tmp_path: Path, *, on: bool) -> None:
    """A build leaves the collector as it found it, after a fault too."""
    was_on = gc.isenabled()
    try:
        (gc.enable if on else gc.disable)()
        build_site(small_project(tmp_path))
        assert gc.isenabled() is on
        with pytest.raises(TypeError):
            build_site(None)  # type: ignore[arg-type]
        assert gc.isenabled() is on
    finally:
        (gc.enable if was_on else gc.disable)()


def test_a_file_with_an_error_is_not_published(tmp_path: Path) -> None:
    """A picture that holds code is an error and no asset of the site, while the unit's other files are."""
    project = small_project(tmp_path)
    folder = project / "units" / "floating"
    (folder / "good.svg").write_text("<svg/>", encoding="utf-8")
    (folder / "bad.svg").write_text("<svg><script/></svg>", encoding="utf-8")
    built = build_site(project)
    assert {problem.place.file for problem in built.errors} == {"units/floating/bad.svg"}
    assert "units/floating/bad.svg" not in {asset.path for asset in built.site.assets}


def test_a_build_never_opens_the_private_folder(tmp_path: Path) -> None:
    """The pages are the same bytes with the private lists, without them, and with a list that can't be read."""
    project = small_project(tmp_path)
    with_lists = build_site(project).site
    (project / "private" / "example" / "roster-p1.csv").write_bytes(b"\xff\x00")
    assert build_site(project).site == with_lists
    (project / "private" / "example" / "roster-p1.csv").unlink()
    assert build_site(project).site == with_lists
