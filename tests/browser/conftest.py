"""A simulation opened as a build publishes it: with the policy written in, and with storage that must not be touched."""

from __future__ import annotations

import shutil
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import Literal

import pytest
from playwright.sync_api import Browser, Page, ViewportSize

from trivet.hosts.policy import with_static_policy

PHONE: ViewportSize = {"width": 390, "height": 844}


@dataclass
class Opened:
    """A simulation in a browser, with what it asked for and what went wrong."""

    page: Page
    base: str
    requests: list[str] = field(default_factory=list)
    faults: list[str] = field(default_factory=list)


Open = Callable[..., Opened]


@pytest.fixture
def open_sim(root: Path, tmp_path: Path, chromium: Browser, serve: Callable[[Path], str]) -> Iterator[Open]:
    """Open a unit's simulation, copied with the policy written in as a build does; storage that is touched counts as a fault."""
    contexts = []

    def opened(unit: str, screen: ViewportSize = PHONE, *, calm: bool = True, scheme: Literal["light", "dark"] = "light") -> Opened:
        folder = tmp_path / unit
        if not folder.exists():
            shutil.copytree(root / "units" / unit / "sim", folder)
            for html in folder.glob("*.html"):
                html.write_text(with_static_policy(html.read_text(encoding="utf-8")), encoding="utf-8")
        base = serve(folder)
        motion: Literal["reduce", "no-preference"] = "reduce" if calm else "no-preference"
        context = chromium.new_context(viewport=screen, reduced_motion=motion, color_scheme=scheme)
        contexts.append(context)
        context.add_init_script(
            "for (const name of ['localStorage', 'sessionStorage', 'indexedDB']) "
            "Object.defineProperty(window, name, {get() { console.error('touched ' + name); throw new Error(name); }});"
        )
        found = Opened(context.new_page(), base)
        found.page.on("request", lambda request: found.requests.append(request.url))
        found.page.on("console", lambda message: found.faults.append(message.text) if message.type in ("error", "warning") else None)
        found.page.on("pageerror", lambda error: found.faults.append(str(error)))
        found.page.goto(base + "/index.html")
        return found

    yield opened
    for context in contexts:
        context.close()


def set_number(page: Page, name: str, text: str) -> None:
    """Type a number into one of a simulation's controls and leave it."""
    page.fill(f"#{name}-typed", text)
    page.press(f"#{name}-typed", "Tab")
