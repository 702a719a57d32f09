"""The prep page in a browser: the script opens the week to come, turns pages, and paper shows one week."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from tests.browser.screens import LAPTOP, PHONE

OPEN = "() => [...document.querySelectorAll('.pw[data-last]')].filter(e => e.getClientRects().length).map(e => e.id)"


def at(browser: Browser, url: str, day: str, size: dict[str, int] = PHONE) -> Page:
    """Open the page on a date."""
    page = browser.new_context(viewport=size).new_page()  # type: ignore[arg-type]
    page.clock.set_fixed_time(f"{day}T12:00:00")
    page.goto(url, wait_until="load")
    return page


@pytest.mark.parametrize(
    ("day", "anchor", "week"),
    [
        ("2026-09-02", "", "week-2026-09-14"),
        ("2026-11-29", "", "week-2026-11-30"),
        ("2026-12-03", "", "week-2026-11-30"),
        ("2026-12-05", "", "week-2026-12-07"),
        ("2026-12-05", "#week-2026-09-14", "week-2026-09-14"),
    ],
)
def test_the_week_to_come_is_open(chromium: Browser, site_url: str, day: str, anchor: str, week: str) -> None:
    """Until a week's last lesson it stands open, from its weekend on the next one; an address with a week shows that one."""
    page = at(chromium, f"{site_url}/prep/{anchor}", day)
    assert page.evaluate(OPEN) == [week]
    page.context.close()


def test_weeks_can_be_turned(chromium: Browser, site_url: str) -> None:
    """The two buttons go to the weeks beside, and end at the first and the last."""
    page = at(chromium, f"{site_url}/prep/", "2026-09-02")
    earlier, later = page.get_by_role("button", name="Earlier week"), page.get_by_role("button", name="Later week")
    assert earlier.is_disabled()
    seen = page.evaluate(OPEN)
    while later.is_enabled():
        later.click()
        seen += page.evaluate(OPEN)
    assert seen == sorted(set(seen))
    assert len(seen) == page.locator(".pw[data-last]").count() > 5
    earlier.click()
    assert page.evaluate(OPEN) == [seen[-2]]
    page.context.close()


def test_without_script_every_week_stands_open(chromium: Browser, site_url: str) -> None:
    """Reading needs no script: all weeks stand there one after the other, and nothing that only a script can do is shown."""
    context = chromium.new_context(viewport=PHONE, java_script_enabled=False)  # type: ignore[arg-type]
    page = context.new_page()
    page.goto(f"{site_url}/prep/")
    weeks = page.locator(".pw[data-last]")
    assert weeks.count() > 5
    assert all(weeks.nth(number).is_visible() for number in range(weeks.count()))
    assert not page.locator(".turn").is_visible()
    context.close()


def test_paper_holds_the_open_week(chromium: Browser, site_url: str, tmp_path: Path) -> None:
    """Printed, the open week alone fills at most three sheets of Letter."""
    page = at(chromium, f"{site_url}/prep/", "2026-11-29", LAPTOP)
    page.emulate_media(media="print")
    assert page.evaluate(OPEN) == ["week-2026-11-30"]
    pdf = page.pdf(path=str(tmp_path / "prep.pdf"), format="Letter")
    assert 1 <= pdf.count(b"/Type /Page\n") <= 3
    page.context.close()


def test_squares_stand_on_both_sides_of_the_line(chromium: Browser, site_url: str) -> None:
    """Down on the phone and upward on a wide screen, filled squares end at the dashed line and hollow ones begin there."""
    script = """() => { const f = [...document.querySelectorAll('.pw.open .use')][0]; const wide = innerWidth >= 960;
      const s = f.querySelector('.hot .sq:has(.over)'), b = s.getBoundingClientRect(), line = getComputedStyle(s, '::after');
      const at = wide ? b.bottom - 1.5 - parseFloat(line.bottom) : b.left + parseFloat(line.left);
      const edge = (e) => { const r = e.getBoundingClientRect(); return wide ? [r.bottom, r.top] : [r.left, r.right]; };
      const sign = wide ? -1 : 1;
      return [...s.querySelectorAll('i')].map(e => [e.className, edge(e).map(x => sign * (x - at))]); }"""
    for size in (PHONE, LAPTOP):
        page = at(chromium, f"{site_url}/prep/", "2026-09-02", size)
        squares = page.evaluate(script)
        assert {name for name, _ in squares} == {"", "over"}
        for name, (near, far) in squares:
            assert far > near
            assert (near >= -3) if name == "over" else (far <= 3), (size, name, near, far)
        page.context.close()
