"""The day of a lesson sheet to scale: who stands in the lanes of a round that was stopped, missed, or is held for some."""

from __future__ import annotations

import re
from datetime import date, timedelta
from typing import Any

from tests.support.department import STARTS, tiny_class, tiny_department
from tests.support.lock import tiny_lock
from trivet.model.plan import Plan
from trivet.model.school import Done, HalfDone, Run
from trivet.pages.build_info import BuildInfo
from trivet.pages.site import make_site
from trivet.planning.department import plan_department


def day(number: int) -> date:
    """The date so many days after the run's start, a Monday."""
    return STARTS + timedelta(days=number)


def recorded(**record: Any) -> tuple[Plan, dict[str, str], str]:
    """The plan of a run with its record, the text of each day's own panel and launch by date, and the class's calendar file."""
    run = Run(class_id="p1", unit="float-or-sink", starts=STARTS, **record)
    made = tiny_department(runs=[run], locks=[tiny_lock(tiny_class())])
    plans = plan_department(made)
    site = make_site(made, plans, (), BuildInfo(date(2026, 11, 22)), {})
    body = next(page.body for page in site.pages if page.path == "lesson/p1/float-or-sink/")
    days = {part[:10]: part for part in body.split('<section class="sheet-day" id="')[1:]}
    calendar = next(asset.content for asset in site.assets if asset.path == "calendar/p1.ics").decode()
    return plans.plans[0], days, calendar.replace("\r\n ", "")


def lanes(sheet: str) -> list[tuple[str, str]]:
    """Letter and station of each lane of a day."""
    blocks = sheet.partition("</ol>")[0]
    return re.findall(r'<span class="letter">(\w+)</span>.*?<p class="station">([\w-]+)</p>', blocks, re.DOTALL)


def test_each_part_of_a_stopped_round_shows_its_own_groups() -> None:
    """Round 2 was stopped, and group C missed its other part: the second day has no lane for C, the first has, in the calendar as well."""
    plan, days, calendar = recorded(half=(HalfDone(day(1), 2, 11),), done=(Done(date=day(2), rounds=(2,), without=("C",)),))
    first, second = (dict(lanes(days[day(number).isoformat()])) for number in (1, 2))
    assert set(first) == {"A", "B", "C"} and set(second) == {"A", "B"}
    assert all(first[letter] == second[letter] for letter in second)
    for held in plan.rounds:
        shown = {letter: kind.value.replace("_", "-") for letter, kind in (held.stations or {}).items()}
        assert {letter: station.lower() for letter, station in lanes(days[held.date.isoformat()])} == shown
    texts = {event[:8]: event for event in calendar.split("DTSTART;TZID=America/Chicago:")[1:]}
    assert f"C {first['C']}" in texts["20261201"] and "C " not in texts["20261202"].partition("DESCRIPTION")[2].partition("\\n")[0]


def test_who_has_no_station_stands_under_the_day() -> None:
    """In the round that is held for a group that missed one, the day itself says who has no station, and asks only who works there."""
    _, days, _ = recorded(done=(Done(date=day(0), rounds=(1,), without=("B",)),))
    last = next(reversed([sheet for sheet in days.values() if "Round 4 of 4" in sheet]))
    panel, _, launch = last.partition('data-panel="launch"')
    missing = {"A", "B", "C"} - set(dict(lanes(last)))
    assert len(missing) == 1
    assert f"Group {missing.pop()} has no station to go to in round 4" in panel
    asked = int(re.findall(r"Launch, (\d+) spot check", panel)[0])
    assert launch.count('<li class="ck check">') == asked < 6
    assert "Group B missed round 1." in days[day(0).isoformat()].partition('data-panel="launch"')[0]


def test_nobody_starts_alone_where_nobody_is_with_the_teacher() -> None:
    """A launch has the task of the teacher's group only where there is one."""
    done = (Done(date=day(0), rounds=(1,), without=("A", "B")),)
    plan, days, _ = recorded(done=done)
    for held in plan.rounds[1:]:
        with_teacher = "teacher_led" in [kind.value for kind in (held.stations or {}).values()]
        assert ("no spot checks: starts alone" in days[held.date.isoformat()]) == with_teacher
    assert any("teacher_led" not in [kind.value for kind in (held.stations or {}).values()] for held in plan.rounds[1:])
