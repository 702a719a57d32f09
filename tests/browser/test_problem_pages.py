"""The pages that a preview shows in place of what can't be read: accessible, and narrow enough, like all others."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from mkdocs.commands.build import build
from mkdocs.config import load_config
from playwright.sync_api import Browser

from tests.browser.screens import LAPTOP, NARROW, PHONE, opened
from tests.browser.test_screens import faults_of
from tests.conftest import EPOCH
from tests.support.project import copy_project

UNIT = "float-or-sink"
BROKEN = {
    "a unit": (f"units/{UNIT}/index.md", "question:", "qestion:", f"/units/{UNIT}/"),
    "the school": ("school/school.yml", "name:", "name", "/"),
}
"""What is broken: a file, what stands in it, what comes in its place, and where the preview tells of it."""


@pytest.fixture(params=BROKEN)
def previewed(request: pytest.FixtureRequest, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, serve: Callable[[Path], str]) -> str:
    """The address of a page of problems, built as `mkdocs serve` builds it."""
    monkeypatch.setenv("SOURCE_DATE_EPOCH", EPOCH)
    monkeypatch.setenv("NO_MKDOCS_2_WARNING", "1")
    file, said, instead, address = BROKEN[request.param]
    project = copy_project(tmp_path / "project")
    text = (project / file).read_text(encoding="utf-8")
    (project / file).write_text(text.replace(said, instead, 1), encoding="utf-8")
    config = load_config(str(project / "mkdocs.yml"), site_dir=str(tmp_path / "site"))
    config.plugins.on_startup(command="serve", dirty=False)
    build(config)
    return serve(tmp_path / "site") + address


def test_a_page_of_problems_is_accessible_and_narrow(chromium: Browser, previewed: str) -> None:
    """axe-core finds nothing on phone and laptop, light and dark, and at 320 px nothing scrolls sideways (WCAG 2.2, 1.4.10)."""
    for size in (PHONE, LAPTOP):
        for scheme in ("light", "dark"):
            with opened(chromium, previewed, size, scheme) as (page, _):  # type: ignore[arg-type]
                assert page.locator("article.sheet-problem").count() == 1
                assert faults_of(Axe().run(page)) == []
    with opened(chromium, previewed, NARROW) as (page, _):
        assert page.evaluate("document.documentElement.scrollWidth") == NARROW["width"]
