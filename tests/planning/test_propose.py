"""Where a new run would go."""

from __future__ import annotations

from datetime import date, timedelta
from typing import Any

import pytest

from tests.support.department import STARTS, tiny_calendar, tiny_class, tiny_department, tiny_unit
from trivet.model.school import UNSETTLED, Closure, Run
from trivet.planning.propose import propose


@pytest.mark.parametrize("closed", [(), (date(2026, 12, 7),), (date(2026, 12, 4), date(2026, 12, 8))])
def test_no_earlier_date_would_do(closed: tuple[date, ...]) -> None:
    """The proposed date is the first: on each earlier meeting after the class's last unit something would be to decide."""
    other = [tiny_class(), tiny_class("p2", room="r14", teacher="rowan")]
    runs = [Run(class_id="p1", unit="float-or-sink", starts=STARTS), Run(class_id="p2", unit="float-or-sink", starts=date(2026, 12, 3))]
    calendar = tiny_calendar(closures=tuple(Closure(day, day) for day in closed))
    made = tiny_department(units=[tiny_unit("circuits")], runs=runs, classes=other, calendar=calendar)
    wanted = Run(class_id="p1", unit="circuits", starts=UNSETTLED, begins="")
    found = propose(made, wanted, date(2026, 9, 1))
    assert found.problems == () and found.plan is not None and found.run.way == "rotate"
    day = date(2026, 12, 4)
    while day < found.run.starts:
        if day.weekday() < 5 and day not in closed:
            tried: Any = propose(made, Run(class_id="p1", unit="circuits", starts=day), day)
            assert tried.problems != ()
        day += timedelta(days=1)
