"""Hostile prose never runs, loads or sends anything: shown in a real browser, with listeners."""

from __future__ import annotations

import re
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Browser

from tests.conftest import mkdocs_build
from tests.support.project import ROOT, copy_project
from trivet.model.problem import Severity
from trivet.reading.unit import read_unit

PROSE = """
<script>window.hit = 'script'</script>

<img src=x onerror="window.hit='onerror'"> and <svg onload="window.hit='svg'"></svg>

<iframe src="https://elsewhere.example/frame"></iframe> <object data="https://elsewhere.example/o"></object>

<form action="https://elsewhere.example/form"><input name=q><button>go</button></form>

<style>@import url(https://elsewhere.example/style); body { background: url(https://elsewhere.example/b) }</style>

<meta http-equiv="refresh" content="0;url=https://elsewhere.example/refresh">

<a href="#" onclick="window.hit='onclick'" id="bait">bait</a>

Text {: onclick="window.hit='attr'" } and `code <script>window.hit='code'</script>`.

    <script>window.hit = 'indented'</script>
"""
LINKS = [
    "[plain](javascript:window.hit='link')",
    "[coded](&#106;avascript:window.hit='coded')",
    "[cased](JaVaScRiPt:window.hit='cased')",
    "[spaced](java\tscript:window.hit='spaced')",
    "[data](data:text/html,<script>window.hit='data'</script>)",
    "<javascript:window.hit='auto'>",
    "![pixel](https://elsewhere.example/pixel.png)",
    "![root](/../../secret.png)",
    "[reference][r]\n\n[r]: javascript:window.hit='reference'",
]


def opened_everywhere(chromium: Browser, base: str, address: str) -> tuple[object, list[str], list[str], list[str]]:
    context = chromium.new_context()
    page = context.new_page()
    requests: list[str] = []
    dialogs: list[str] = []
    page.on("request", lambda request: requests.append(request.url))
    page.on("dialog", lambda dialog: (dialogs.append(dialog.message), dialog.dismiss()))
    page.goto(base + address, wait_until="load")
    for link in page.locator("article a").evaluate_all("links => links.map(a => [a.href, a.textContent])"):
        if "hit" in link[0] or link[1] == "bait":
            page.get_by_role("link", name=link[1]).first.dispatch_event("click")
    page.wait_for_timeout(300)
    live = page.evaluate(
        "[...document.querySelectorAll('article iframe, article object, article form, article style, article script, article meta, "
        "article [onclick], article [onerror], article [onload]')].map(e => e.outerHTML)"
    )
    hit = page.evaluate("window.hit")
    context.close()
    return hit, [url for url in requests if not url.startswith(base)], dialogs, live


def test_hostile_prose_is_only_text(chromium: Browser, serve: Callable[[Path], str], tmp_path: Path) -> None:
    """Script, event attributes, frames, forms, style, refresh and foreign images in a unit's prose do nothing and ask for nothing."""
    project = copy_project(tmp_path / "project")
    unit = project / "units" / "float-or-sink" / "index.md"
    unit.write_text(unit.read_text(encoding="utf-8") + PROSE, encoding="utf-8")
    done = mkdocs_build(project, tmp_path / "site", strict=False)
    assert done.returncode == 0, done.stderr
    hit, foreign, dialogs, live = opened_everywhere(chromium, serve(tmp_path / "site"), "/units/float-or-sink/")
    assert (hit, foreign, dialogs, live) == (None, [], [], [])
    page = (tmp_path / "site/units/float-or-sink/index.html").read_text(encoding="utf-8")
    assert "&lt;script&gt;window.hit = " in page  # it stands there as words


@pytest.mark.parametrize("link", LINKS)
def test_a_hostile_link_or_image_is_an_error(tmp_path: Path, link: str) -> None:
    """A link or image that is not https, mailto or a file of the unit is an error at its line, so that the unit is not used."""
    folder = tmp_path / "units" / "float-or-sink"
    shutil.copytree(ROOT / "units" / "float-or-sink", folder)
    text = (folder / "index.md").read_text(encoding="utf-8").rstrip("\n")
    (folder / "index.md").write_text(f"{text}\n\n{link}\n", encoding="utf-8")
    units = tuple(path.name for path in (ROOT / "units").iterdir())
    found = read_unit(folder, "float-or-sink", tmp_path, ("float-or-sink",), units)
    lines = {problem.place.line for problem in found.problems if problem.severity is Severity.ERROR}
    assert found.unit is None
    assert lines and all(text.count("\n") + 1 < line <= (text + link).count("\n") + 3 for line in lines)


def test_hostile_links_and_images_stop_the_build(tmp_path: Path) -> None:
    """The build ends with an error for each hostile link or image at its line, so that none ever reaches a site."""
    project = copy_project(tmp_path / "project")
    unit = project / "units" / "float-or-sink" / "index.md"
    text = unit.read_text(encoding="utf-8").rstrip("\n")
    lines = []
    for link in LINKS:
        text += f"\n\n{link}"
        lines.append(text.count("\n") + 1)
    unit.write_text(text + "\n", encoding="utf-8")
    done = mkdocs_build(project, tmp_path / "site")
    assert done.returncode != 0
    said = {int(line) for line in re.findall(r"units/float-or-sink/index\.md:(\d+):", done.stderr)}
    assert said >= {*lines[:-1]}, done.stderr
    assert said & {lines[-1] - 2, lines[-1]}, done.stderr  # the link, or the line that says where it leads


def test_hostile_text_in_front_matter_is_only_text(chromium: Browser, serve: Callable[[Path], str], tmp_path: Path) -> None:
    """Titles, questions, steps and answers with markup in them stand on every page as they were typed."""
    project = copy_project(tmp_path / "project")
    unit = project / "units" / "float-or-sink" / "index.md"
    text = unit.read_text(encoding="utf-8")
    bait = "<img src=x onerror=window.hit=1> ok"
    lines = [f"{line.split(':')[0]}: {bait}" if line.startswith(("title:", "question:")) else line for line in text.split("\n")]
    unit.write_text("\n".join(lines), encoding="utf-8")
    done = mkdocs_build(project, tmp_path / "site", strict=False)
    assert done.returncode == 0, done.stderr
    base = serve(tmp_path / "site")
    for address in ("/", "/units/float-or-sink/", "/units/float-or-sink/student/"):
        assert opened_everywhere(chromium, base, address) == (None, [], [], [])


def test_the_simulation_cannot_read_what_pages_keep(chromium: Browser, site_url: str) -> None:
    """Names stay in the tab's own session storage: the simulation, opened in its own tab, sees none of it and cannot send anything."""
    context = chromium.new_context()
    page = context.new_page()
    page.goto(f"{site_url}/units/float-or-sink/")
    page.evaluate("sessionStorage.setItem('names', 'canary')")
    with context.expect_page() as opening:
        page.locator("a[href*='sim/'][target='_blank'][rel~='noopener']").first.click()
    simulation = opening.value
    simulation.wait_for_load_state()
    assert simulation.evaluate("sessionStorage.getItem('names')") is None
    assert simulation.evaluate("window.opener") is None
    sent = simulation.evaluate("fetch('/data/build.json').then(() => 'sent', () => 'refused')")
    assert sent == "refused"
    context.close()
