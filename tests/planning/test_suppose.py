"""A supposed department: as the real one, but for some days."""

from __future__ import annotations

from datetime import date
from typing import Any

from tests.support.department import tiny_calendar, tiny_department
from trivet.model.school import SpecialDay
from trivet.model.what_if import WhatIf
from trivet.planning.suppose import suppose

WEDNESDAY = date(2026, 12, 2)


def day(**how: Any) -> WhatIf:
    return WhatIf(**{"first": WEDNESDAY, "last": WEDNESDAY, **how})


def test_what_a_supposed_day_keeps() -> None:
    """A rotation day keeps the day's bells, a day type its letter; a Saturday becomes a school day only by its bells."""
    made = tiny_department(calendar=tiny_calendar(special={WEDNESDAY: SpecialDay("assembly", "B")}))
    calendar = suppose(made, [day(rotation_day="A")], ()).school.calendar
    assert calendar.special[WEDNESDAY] == SpecialDay("assembly", "A")
    assert suppose(made, [day(day_type="regular")], ()).school.calendar.special[WEDNESDAY] == SpecialDay("regular", "B")
    saturday = date(2026, 12, 5)
    for how, kept in (({"day_type": "regular"}, True), ({"rotation_day": "A"}, False)):
        special = suppose(made, [WhatIf(first=saturday, last=saturday, **how)], ()).school.calendar.special
        assert (saturday in special) is kept
    stretch = suppose(made, [WhatIf(first=WEDNESDAY, last=date(2026, 12, 7), day_type="regular")], ()).school.calendar.special
    assert sorted(each.day for each in stretch) == [2, 3, 4, 7]
