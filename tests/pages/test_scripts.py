"""The small scripts and the printed cards, in a real browser."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from tests.pages.scenario import site

TUESDAY = "2026-12-01T08:03:00-06:00"
LESSON = "lesson/p1/float-or-sink/"
POLICY = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:"
KEEP = (
    '<!doctype html><html lang="{lang}"><head><meta charset="utf-8"><meta http-equiv="Content-Security-Policy" content="{policy}">'
    '<title>{title}</title><meta name="viewport" content="width=device-width"><link rel="icon" href="{assets}mark.svg">'
    '<link rel="stylesheet" href="{assets}trivet.css">'
)


@pytest.fixture(scope="module")
def address(tmp_path_factory: pytest.TempPathFactory, serve: Callable[[Path], str]) -> str:
    """The scenario's pages under /dept/, each with the stylesheet and its script and nothing of any theme."""
    folder = tmp_path_factory.mktemp("pages")
    for page in site().pages:
        path = folder / "dept" / page.path / "index.html"
        path.parent.mkdir(parents=True, exist_ok=True)
        up = "../" * page.path.count("/")
        head = KEEP.format(lang=page.meta["lang"], policy=POLICY, title=page.meta["title"], assets=f"{up}assets/trivet/")
        if page.meta["kind"] in ("home", "lesson"):
            head += f'<script type="module" src="{up}assets/trivet/{page.meta["kind"]}.js"></script>'
        path.write_text(f'{head}</head><body><main class="sheet">{page.body}</main></body></html>', encoding="utf-8")
    for asset in site().assets:
        path = folder / "dept" / asset.path
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(asset.content)
    return f"{serve(folder)}/dept/"


@contextmanager
def opened(chromium: Browser, url: str, *, now: str = TUESDAY, script: bool = True, width: int = 390) -> Iterator[Page]:
    """A phone at that moment in Chicago; nothing may appear on its console."""
    context = chromium.new_context(viewport={"width": width, "height": 844}, timezone_id="America/Chicago", java_script_enabled=script)
    page = context.new_page()
    said: list[str] = []
    page.on("console", lambda message: said.append(message.text))
    page.on("pageerror", lambda error: said.append(str(error)))
    if script:
        page.clock.set_fixed_time(now)
    page.goto(url)
    yield page
    assert said == []
    context.close()


def test_the_lesson_sheet_opens_today(chromium: Browser, address: str) -> None:
    """On the second day that day stands open, its tab is marked, and the other days are one tap away."""
    with opened(chromium, address + LESSON) as page:
        assert page.locator(".sheet-day:visible").evaluate_all("days => days.map(d => d.id)") == ["2026-12-01"]
        assert page.locator(".pick [aria-current]").inner_text().startswith("Tue Dec 1")
        page.locator('.pick a[data-day="2026-12-03"]').click()
        assert page.locator(".sheet-day:visible h2").first.inner_text().startswith("Write-up")
        assert page.locator('[data-tab="launch"]').is_hidden()


@pytest.mark.parametrize(("now", "day"), [("2026-11-01T10:00:00-06:00", "2026-11-30"), ("2027-03-01T10:00:00-06:00", "2026-12-03")])
def test_before_and_after_the_run(chromium: Browser, address: str, now: str, day: str) -> None:
    """Before the run its first day stands open, after it the last."""
    with opened(chromium, address + LESSON, now=now) as page:
        assert page.locator(".sheet-day:visible").evaluate_all("days => days.map(d => d.id)") == [day]


def test_tabs_show_one_part_at_a_time_and_go_back(chromium: Browser, address: str) -> None:
    """Launch, groups, questions and what to bring each take the phone's screen; the browser's back button leads back."""
    with opened(chromium, address + LESSON) as page:
        parts = {"launch": "Launch round 2", "groups": "Groups, round 2", "ask": "At your own station", "kit": "Bring and set out"}
        for tab, seen in parts.items():
            page.locator(f'[data-tab="{tab}"]').click()
            assert page.locator(".panel:visible").count() == 1
            assert seen in page.locator(".panel:visible").inner_text()
            assert page.locator(".tabs [aria-current]").get_attribute("data-tab") == tab
        page.go_back()
        assert "At your own station" in page.locator(".panel:visible").inner_text()
        page.go_back()
        assert "Groups, round 2" in page.locator(".panel:visible").inner_text()


def test_ticks_survive_a_reload_and_keep_to_their_run(chromium: Browser, address: str) -> None:
    """A tick stands after a reload and on no other run; its line shrinks, the next one opens; the key names the base path."""
    with opened(chromium, address + LESSON + "#2026-12-01-launch") as page:
        boxes = page.locator(".panel:visible .tick input")
        boxes.nth(0).check()
        boxes.nth(1).check()
        assert page.locator(".panel:visible .ck.done").count() == 2
        assert "Ask your partner" in page.locator(".panel:visible .ck.now").inner_text()
        page.reload()
        assert page.locator(".panel:visible .tick input:checked").count() == 2
        boxes.nth(1).uncheck()
        page.reload()
        assert page.locator(".panel:visible .tick input:checked").count() == 1
        keys = page.evaluate("Object.keys(localStorage)")
        assert keys == ["trivet:/dept/:ticks:p1/float-or-sink:2026-11-30"]
        page.goto(address + "lesson/n1/float-or-sink/#2026-12-01-launch")
        assert page.locator(".tick input:checked").count() == 0


def test_a_device_that_keeps_nothing_still_ticks(chromium: Browser, address: str) -> None:
    """Where storage is refused the list works until the page is left."""
    with opened(chromium, address + LESSON + "#2026-12-01-launch") as page:
        page.evaluate("void (Storage.prototype.setItem = () => { throw new Error('full') })")
        page.locator(".panel:visible .tick input").first.check()
        assert page.locator(".panel:visible .ck.done").count() == 1


def test_without_script_everything_stands_open(chromium: Browser, address: str) -> None:
    """All days, launches, groups and weeks are on the page for whoever runs no script."""
    with opened(chromium, address + LESSON, script=False) as page:
        assert page.locator(".sheet-day:visible").count() == 4
        assert page.locator(".panel:visible").count() == 4 + 3 + 3 + 1 + 1
    with opened(chromium, address, script=False) as page:
        assert page.locator(".wk:visible").count() == page.locator(".wk").count() > 1
        assert page.locator(".turn").is_hidden()


def test_home_opens_this_week_with_the_next_lesson_first(chromium: Browser, address: str) -> None:
    """Two minutes before the bell: that lesson, its round, who is where, and one tap to today's sheet; today and done days are marked."""
    with opened(chromium, address) as page:
        first = page.locator(".first").inner_text()
        assert first.startswith("in 2 min, Room 12")
        assert "p1 Float or sink?" in first or "n1 Float or sink?" in first
        assert "Round 2 of 3" in first
        assert page.locator(".wk:visible").get_attribute("data-week") == "2026-11-30"
        assert page.locator(".wk:visible .cells .today").all_inner_texts() == ["2", "2"]
        assert page.locator(".wk:visible .cells .done").all_inner_texts() == ["1", "1", "P"]
        page.locator(".first .go").click()
        page.wait_for_url("**/float-or-sink/#2026-12-01")  # loaded: what the sheet's script opens stands open
        assert page.locator(".sheet-day:visible h2").first.inner_text().startswith("Round 2 of 3")


@pytest.mark.parametrize(
    ("now", "says"),
    [
        ("2026-12-01T08:20:00-06:00", "now: 8:05, Room 12"),
        ("2026-12-01T09:10:00-06:00", "next: Wed, Dec 2, 8:05, Room 12"),
        ("2026-11-20T09:10:00-06:00", "next: Mon, Nov 30, 8:05, Room 12"),
    ],
)
def test_home_says_when(chromium: Browser, address: str, now: str, says: str) -> None:
    """During a lesson it is on now; after the day's last bell the next day's comes first, with its date."""
    with opened(chromium, address, now=now) as page:
        assert page.locator(".first .soon").inner_text() == says


def test_home_turns_its_weeks(chromium: Browser, address: str) -> None:
    """Earlier and later week, by button, to the first and the last; after the year the last week stands and no lesson is promised."""
    with opened(chromium, address) as page:
        earlier, later = page.locator("[data-turn='-1']"), page.locator("[data-turn='1']")
        later.click()
        assert page.locator(".wk:visible").get_attribute("data-week") == "2026-12-07"
        assert later.is_disabled()
        earlier.click()
        earlier.click()
        assert page.locator(".wk:visible").get_attribute("data-week") == "2026-11-23"
        assert earlier.is_disabled()
    with opened(chromium, address, now="2027-06-30T09:00:00-06:00") as page:
        assert page.locator(".first").count() == 0
        assert page.locator(".wk:visible").get_attribute("data-week") == "2026-12-07"


def test_a_station_address_shows_that_station_alone(chromium: Browser, address: str) -> None:
    """A QR code's anchor opens one card; without it all three stand; the reading belongs to the teacher-led card."""
    student = address + "units/float-or-sink/student/"
    for anchor, seen in (("", ["online", "hands-on", "teacher-led"]), ("#hands-on", ["hands-on"]), ("#reading", ["teacher-led"])):
        with opened(chromium, student + anchor) as page:
            assert page.locator(".card:visible").evaluate_all("cards => cards.map(c => c.id)") == seen


@pytest.mark.parametrize("paper", ["Letter", "A4"])
@pytest.mark.parametrize("cards", ["student/", "student/es/"])
def test_each_card_is_one_printed_page(chromium: Browser, address: str, paper: str, cards: str) -> None:
    """Three cards and the reading make four pages on both papers, whatever card the screen shows; each card's page says its address."""
    with opened(chromium, f"{address}units/float-or-sink/{cards}#hands-on") as page:
        pdf = page.pdf(format=paper)
    assert len(re.findall(rb"/Type\s*/Page\b(?!s)", pdf)) == 4


def test_nothing_scrolls_sideways(chromium: Browser, address: str) -> None:
    """No page of the scenario is wider than its screen, from the narrowest phone up (WCAG 2.2, 1.4.10)."""
    wide = []
    with opened(chromium, address) as page:
        for one in site().pages:
            page.goto(address + one.path)
            for width in (320, 390, 768, 1280):
                page.set_viewport_size({"width": width, "height": 844})
                if page.evaluate("document.documentElement.scrollWidth") > width:
                    wide.append((one.path, width))
    assert wide == []
