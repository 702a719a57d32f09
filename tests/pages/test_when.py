"""A run that begins after another unit, or is to end by a date: the lesson sheet, the week and the year say so."""

from __future__ import annotations

import re
from datetime import date
from typing import Any

from tests.support.department import STARTS, tiny_class, tiny_department, tiny_unit
from tests.support.lock import tiny_lock
from trivet.model.school import UNSETTLED, Done, Run
from trivet.pages.build_info import BuildInfo
from trivet.pages.links import HOME, YEAR, lesson_address
from trivet.pages.site import make_site
from trivet.planning.department import plan_department
from trivet.planning.timed_runs import settled

OTHER = tiny_unit("circuits", title="Circuits")


def site(**how: Any) -> dict[str, str]:
    """The text of each page by its path, where circuits is run so beside a unit with a date."""
    first = Run(class_id="p1", unit="float-or-sink", starts=STARTS)
    begins = "after" if "after" in how else "by"
    second = Run(class_id="p1", unit="circuits", **{"starts": UNSETTLED, "begins": begins, **how})
    made = settled(tiny_department(units=[OTHER], runs=[first, second]))
    pages = make_site(made, plan_department(made), (), BuildInfo(date(2026, 11, 22)), {}).pages
    return {page.path: re.sub(r"\s+", " ", re.sub(r"<[^>]+>", " ", page.body)) for page in pages}


def test_after_another_unit() -> None:
    """The lesson sheet, the first week and the year name the unit that it waits for, and the gap."""
    pages = site(after="float-or-sink", gap_days=14)
    assert "2 weeks after Float or sink?" in pages[lesson_address("p1", "circuits")]
    assert "It begins when Float or sink? has ended, after 2 weeks: on Friday, December 18." in pages[lesson_address("p1", "circuits")]
    assert "p1 begins Circuits: 2 weeks after Float or sink?." in pages[HOME]
    assert "Dec 18 to Dec 23; 2 weeks after Float or sink?" in pages[YEAR]
    assert "after Float or sink?" not in pages[lesson_address("p1", "float-or-sink")]


def test_by_a_date() -> None:
    """The date by which it is to end stands on the lesson sheet, in its week and in the year."""
    pages = site(by=date(2026, 12, 18))
    assert "To end by Fri Dec 18" in pages[lesson_address("p1", "circuits")]
    assert "p1 begins Circuits: to end by Fri Dec 18." in pages[HOME]
    assert "Dec 15 to Dec 18; to end by Fri Dec 18" in pages[YEAR]


def test_a_missed_date() -> None:
    """A date that is missed is told as missed, and home and the year say what to decide."""
    pages = site(by=date(2026, 12, 18), lost=(date(2026, 12, 16),))
    assert "Was to end by Fri Dec 18" in pages[lesson_address("p1", "circuits")]
    for page in (HOME, YEAR):
        assert "To decide" in pages[page]
        assert "`" not in pages[page]
        assert "the unit ends on Monday, December 21, after its last date, Friday, December 18" in pages[page]


def test_without_either() -> None:
    """A run with a date says nothing more, and there is nothing to decide."""
    pages = site(starts=date(2026, 12, 14), begins="date")
    assert "To decide" not in pages[HOME]
    assert "to end by" not in pages[YEAR]


def test_who_missed_a_round_and_who_waits() -> None:
    """The lesson sheet names the group that missed a round, and in the round that is held for it those without a station."""
    done = (Done(date=STARTS, rounds=(1,), without=("B",)), Done(date=date(2026, 12, 1), rounds=(2,), without=("B",)))
    run = Run(class_id="p1", unit="float-or-sink", starts=STARTS, done=done)
    made = tiny_department(runs=[run], locks=[tiny_lock(tiny_class())])
    pages = make_site(made, plan_department(made), (), BuildInfo(date(2026, 11, 22)), {}).pages
    sheet = next(page.body for page in pages if page.path == SHEET)
    groups = {part[:10]: part for part in sheet.split('data-panel="groups" id="')[1:]}
    assert "Group B missed round 1." in groups["2026-11-30"] and '<span class="letter">B</span>' not in groups["2026-11-30"]
    assert "Groups A and C have no station to go to in round 3" in groups["2026-12-02"]
    assert '<span class="letter">A</span>' not in groups["2026-12-02"].split("</section>")[0]


SHEET = lesson_address("p1", "float-or-sink")
