"""The screens on which every kind of page is tried."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Literal

from playwright.sync_api import Browser, Page

PHONE = {"width": 390, "height": 844}
LAPTOP = {"width": 1280, "height": 720}
NARROW = {"width": 320, "height": 640}
Scheme = Literal["light", "dark"]


def kinds(site: Path) -> dict[str, str]:
    """One address of each kind of page on the built site, by kind; every lesson sheet is its own.

    Pages of problems, which only a preview has, are tried in test_problem_pages.py.
    """
    lessons = sorted(p.parent.relative_to(site).as_posix() for p in site.glob("lesson/*/*/index.html"))
    found = {
        "home": "/",
        "units": "/units/",
        "unit": "/units/float-or-sink/",
        "cards": "/units/float-or-sink/student/",
        "cards-es": "/units/float-or-sink/student/es/",
        "prep": "/prep/",
        "year": "/year/",
        "whom": "/whom/p1/",
        "guide": "/guide/",
        "guide-tables": "/guide/every-key/",
        "guide-drawing": "/guide/how-long/",
        "missing": "/404.html",
        "simulation": "/units/float-or-sink/sim/index.html",
    }
    found |= {f"lesson-{number}": f"/{path}/" for number, path in enumerate(lessons)}
    return found


@contextmanager
def opened(browser: Browser, url: str, size: dict[str, int], scheme: Scheme = "light") -> Iterator[tuple[Page, list[str]]]:
    """Open `url` and yield the page with its console errors, page errors and failed requests so far."""
    context = browser.new_context(viewport=size, color_scheme=scheme, reduced_motion="reduce")  # type: ignore[arg-type]
    page = context.new_page()
    faults: list[str] = []
    page.on("console", lambda message: faults.append(message.text) if message.type in ("error", "warning") else None)
    page.on("pageerror", lambda error: faults.append(str(error)))
    page.on("requestfailed", lambda request: faults.append(f"not loaded: {request.url}"))
    page.goto(url, wait_until="load")
    page.wait_for_timeout(150)
    yield page, faults
    context.close()
