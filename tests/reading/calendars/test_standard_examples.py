"""Every example of a recurrence rule in RFC 5545 3.8.5.3 (pp. 123-132), read from a calendar file as it is printed there."""

from __future__ import annotations

import calendar
from datetime import date, datetime
from zoneinfo import ZoneInfo

import pytest

from trivet.reading.calendars.events import Event, read_events
from trivet.reading.calendars.expand import Dated, dated
from trivet.reading.calendars.repeats import repeats

EASTERN = ZoneInfo("America/New_York")
"""All examples assume the Eastern United States time zone."""

MONTHS = {name: number for number, name in enumerate(calendar.month_abbr) if name}
SEPTEMBER_2 = "19970902"

EVEN, ODD = (" ".join(str(day) for day in range(first, 31, 2)) for first in (2, 1))
SUMMERS = (
    "1997 Jun 5 12 19 26 Jul 3 10 17 24 31 Aug 7 14 21 28",
    "1998 Jun 4 11 18 25 Jul 2 9 16 23 30 Aug 6 13 20 27",
    "1999 Jun 3 10 17 24 Jul 1 8 15 22 29 Aug 5 12 19 26 ...",
)

EXAMPLES = (
    ("daily for 10 occurrences", SEPTEMBER_2, "FREQ=DAILY;COUNT=10", "1997 Sep 2-11"),
    (
        "daily until December 24, 1997", SEPTEMBER_2, "FREQ=DAILY;UNTIL=19971224T000000Z",
        "1997 Sep 2-30 Oct 1-31 Nov 1-30 Dec 1-23",
    ),
    (
        "every other day, forever", SEPTEMBER_2, "FREQ=DAILY;INTERVAL=2",
        f"1997 Sep {EVEN} Oct {EVEN} Nov {ODD} Dec 1 3 ...",
    ),
    ("every 10 days, 5 occurrences", SEPTEMBER_2, "FREQ=DAILY;INTERVAL=10;COUNT=5", "1997 Sep 2 12 22 Oct 2 12"),
    (
        "every day in January, for 3 years, by year", "19980101",
        "FREQ=YEARLY;UNTIL=20000131T140000Z;\n BYMONTH=1;BYDAY=SU,MO,TU,WE,TH,FR,SA", "1998 Jan 1-31 1999 Jan 1-31 2000 Jan 1-31",
    ),
    (
        "every day in January, for 3 years, by day", "19980101", "FREQ=DAILY;UNTIL=20000131T140000Z;BYMONTH=1",
        "1998 Jan 1-31 1999 Jan 1-31 2000 Jan 1-31",
    ),
    ("weekly for 10 occurrences", SEPTEMBER_2, "FREQ=WEEKLY;COUNT=10", "1997 Sep 2 9 16 23 30 Oct 7 14 21 28 Nov 4"),
    (
        "weekly until December 24, 1997", SEPTEMBER_2, "FREQ=WEEKLY;UNTIL=19971224T000000Z",
        "1997 Sep 2 9 16 23 30 Oct 7 14 21 28 Nov 4 11 18 25 Dec 2 9 16 23",
    ),
    (
        "every other week, forever", SEPTEMBER_2, "FREQ=WEEKLY;INTERVAL=2;WKST=SU",
        "1997 Sep 2 16 30 Oct 14 28 Nov 11 25 Dec 9 23 1998 Jan 6 20 Feb 3 17 ...",
    ),
    (
        "Tuesday and Thursday for five weeks, until", SEPTEMBER_2, "FREQ=WEEKLY;UNTIL=19971007T000000Z;WKST=SU;BYDAY=TU,TH",
        "1997 Sep 2 4 9 11 16 18 23 25 30 Oct 2",
    ),
    (
        "Tuesday and Thursday for five weeks, counted", SEPTEMBER_2, "FREQ=WEEKLY;COUNT=10;WKST=SU;BYDAY=TU,TH",
        "1997 Sep 2 4 9 11 16 18 23 25 30 Oct 2",
    ),
    (
        "every other week on Monday, Wednesday, Friday", "19970901",
        "FREQ=WEEKLY;INTERVAL=2;UNTIL=19971224T000000Z;WKST=SU;\n BYDAY=MO,WE,FR",
        "1997 Sep 1 3 5 15 17 19 29 Oct 1 3 13 15 17 27 29 31 Nov 10 12 14 24 26 28 Dec 8 10 12 22",
    ),
    (
        "every other week on Tuesday and Thursday", SEPTEMBER_2, "FREQ=WEEKLY;INTERVAL=2;COUNT=8;WKST=SU;BYDAY=TU,TH",
        "1997 Sep 2 4 16 18 30 Oct 2 14 16",
    ),
    (
        "monthly on the first Friday for 10 occurrences", "19970905", "FREQ=MONTHLY;COUNT=10;BYDAY=1FR",
        "1997 Sep 5 Oct 3 Nov 7 Dec 5 1998 Jan 2 Feb 6 Mar 6 Apr 3 May 1 Jun 5",
    ),
    (
        "monthly on the first Friday until December 24", "19970905", "FREQ=MONTHLY;UNTIL=19971224T000000Z;BYDAY=1FR",
        "1997 Sep 5 Oct 3 Nov 7 Dec 5",
    ),
    (
        "every other month on the first and last Sunday", "19970907", "FREQ=MONTHLY;INTERVAL=2;COUNT=10;BYDAY=1SU,-1SU",
        "1997 Sep 7 28 Nov 2 30 1998 Jan 4 25 Mar 1 29 May 3 31",
    ),
    (
        "monthly on the second-to-last Monday", "19970922", "FREQ=MONTHLY;COUNT=6;BYDAY=-2MO",
        "1997 Sep 22 Oct 20 Nov 17 Dec 22 1998 Jan 19 Feb 16",
    ),
    (
        "monthly on the third-to-the-last day", "19970928", "FREQ=MONTHLY;BYMONTHDAY=-3",
        "1997 Sep 28 Oct 29 Nov 28 Dec 29 1998 Jan 29 Feb 26 ...",
    ),
    (
        "monthly on the 2nd and 15th", SEPTEMBER_2, "FREQ=MONTHLY;COUNT=10;BYMONTHDAY=2,15",
        "1997 Sep 2 15 Oct 2 15 Nov 2 15 Dec 2 15 1998 Jan 2 15",
    ),
    (
        "monthly on the first and last day", "19970930", "FREQ=MONTHLY;COUNT=10;BYMONTHDAY=1,-1",
        "1997 Sep 30 Oct 1 31 Nov 1 30 Dec 1 31 1998 Jan 1 31 Feb 1",
    ),
    (
        "every 18 months on the 10th thru 15th", "19970910", "FREQ=MONTHLY;INTERVAL=18;COUNT=10;BYMONTHDAY=10,11,12,\n 13,14,15",
        "1997 Sep 10-15 1999 Mar 10-13",
    ),
    (
        "every Tuesday, every other month", SEPTEMBER_2, "FREQ=MONTHLY;INTERVAL=2;BYDAY=TU",
        "1997 Sep 2 9 16 23 30 Nov 4 11 18 25 1998 Jan 6 13 20 27 Mar 3 10 17 24 31 ...",
    ),
    (
        "yearly in June and July", "19970610", "FREQ=YEARLY;COUNT=10;BYMONTH=6,7",
        "1997 Jun 10 Jul 10 1998 Jun 10 Jul 10 1999 Jun 10 Jul 10 2000 Jun 10 Jul 10 2001 Jun 10 Jul 10",
    ),
    (
        "every other year on January, February, and March", "19970310", "FREQ=YEARLY;INTERVAL=2;COUNT=10;BYMONTH=1,2,3",
        "1997 Mar 10 1999 Jan 10 Feb 10 Mar 10 2001 Jan 10 Feb 10 Mar 10 2003 Jan 10 Feb 10 Mar 10",
    ),
    (
        "every third year on the 1st, 100th, and 200th day", "19970101", "FREQ=YEARLY;INTERVAL=3;COUNT=10;BYYEARDAY=1,100,200",
        "1997 Jan 1 Apr 10 Jul 19 2000 Jan 1 Apr 9 Jul 18 2003 Jan 1 Apr 10 Jul 19 2006 Jan 1",
    ),
    ("every 20th Monday of the year", "19970519", "FREQ=YEARLY;BYDAY=20MO", "1997 May 19 1998 May 18 1999 May 17 ..."),
    ("Monday of week number 20", "19970512", "FREQ=YEARLY;BYWEEKNO=20;BYDAY=MO", "1997 May 12 1998 May 11 1999 May 17 ..."),
    (
        "every Thursday in March", "19970313", "FREQ=YEARLY;BYMONTH=3;BYDAY=TH",
        "1997 Mar 13 20 27 1998 Mar 5 12 19 26 1999 Mar 4 11 18 25 ...",
    ),
    (
        "every Thursday during June, July, and August", "19970605", "FREQ=YEARLY;BYDAY=TH;BYMONTH=6,7,8",
        " ".join(SUMMERS),
    ),
    (
        "every Friday the 13th, the first date left out", SEPTEMBER_2,
        "FREQ=MONTHLY;BYDAY=FR;BYMONTHDAY=13\nEXDATE;TZID=America/New_York:19970902T090000",
        "1998 Feb 13 Mar 13 Nov 13 1999 Aug 13 2000 Oct 13 ...",
    ),
    (
        "the first Saturday that follows the first Sunday", "19970913", "FREQ=MONTHLY;BYDAY=SA;BYMONTHDAY=7,8,9,10,11,12,13",
        "1997 Sep 13 Oct 11 Nov 8 Dec 13 1998 Jan 10 Feb 7 Mar 7 Apr 11 May 9 Jun 13 ...",
    ),
    (
        "every 4 years, the first Tuesday after a Monday in November", "19961105",
        "FREQ=YEARLY;INTERVAL=4;BYMONTH=11;BYDAY=TU;\n BYMONTHDAY=2,3,4,5,6,7,8", "1996 Nov 5 2000 Nov 7 2004 Nov 2 ...",
    ),
    (
        "the third instance of Tuesday, Wednesday, or Thursday", "19970904", "FREQ=MONTHLY;COUNT=3;BYDAY=TU,WE,TH;BYSETPOS=3",
        "1997 Sep 4 Oct 7 Nov 6",
    ),
    (
        "the second-to-last weekday of the month", "19970929", "FREQ=MONTHLY;BYDAY=MO,TU,WE,TH,FR;BYSETPOS=-2",
        "1997 Sep 29 Oct 30 Nov 27 Dec 30 1998 Jan 29 Feb 26 Mar 30 ...",
    ),
    ("weeks that begin on Monday", "19970805", "FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU;WKST=MO", "1997 Aug 5 10 19 24"),
    ("weeks that begin on Sunday", "19970805", "FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU;WKST=SU", "1997 Aug 5 17 19 31"),
    ("February 30 is ignored", "20070115", "FREQ=MONTHLY;BYMONTHDAY=15,30;COUNT=5", "2007 Jan 15 30 Feb 15 Mar 15 30"),
)  # fmt: skip

TWENTY_MINUTES = [f"{hour:02d}:{minute:02d}" for hour in range(9, 17) for minute in (0, 20, 40)]

CLOCKS = (
    ("every 15 minutes for 6 occurrences", "FREQ=MINUTELY;INTERVAL=15;COUNT=6", ["09:00", "09:15", "09:30", "09:45", "10:00", "10:15"]),
    ("every hour and a half for 4 occurrences", "FREQ=MINUTELY;INTERVAL=90;COUNT=4", ["09:00", "10:30", "12:00", "13:30"]),
    ("every 20 minutes, by day", "FREQ=DAILY;BYHOUR=9,10,11,12,13,14,15,16;BYMINUTE=0,20,40", 2 * TWENTY_MINUTES),
    ("every 20 minutes, by minute", "FREQ=MINUTELY;INTERVAL=20;BYHOUR=9,10,11,12,13,14,15,16", 2 * TWENTY_MINUTES),
)


def printed(text: str) -> list[date]:
    """Read "1997 Sep 2-11 Oct 2" as dates."""
    found, year, month = [], 0, 0
    for word in text.removesuffix("...").split():
        if word in MONTHS:
            month = MONTHS[word]
        elif len(word) == 4 and word.isdigit():
            year = int(word)
        else:
            first, _, last = word.partition("-")
            found += [date(year, month, day) for day in range(int(first), int(last or first) + 1)]
    return found


def event_of(first: str, rule: str) -> Event:
    lines = ("BEGIN:VEVENT", f"DTSTART;TZID=America/New_York:{first}T090000", f"RRULE:{rule}", "END:VEVENT")
    (event,) = read_events("\n".join(lines))
    assert isinstance(event, Event)
    return event


@pytest.mark.parametrize(("first", "rule", "text"), [each[1:] for each in EXAMPLES], ids=[each[0] for each in EXAMPLES])
def test_dates_of_the_examples(first: str, rule: str, text: str) -> None:
    """The dates are those that the standard prints; one that goes on is compared up to the last one printed, and does go on."""
    expected = printed(text)
    endless = text.endswith("...")
    last = expected[-1] if endless else date(2010, 12, 31)
    found = list(dated([event_of(first, rule)], date(1996, 1, 1), last, EASTERN))
    assert [(each.first, each.last) for each in found if isinstance(each, Dated)] == [(day, day) for day in expected]
    later = list(dated([event_of(first, rule)], last, date(2010, 12, 31), EASTERN))
    assert (len(later) > 1) == endless


@pytest.mark.parametrize(("rule", "expected"), [each[1:] for each in CLOCKS], ids=[each[0] for each in CLOCKS])
def test_clocks_of_the_examples(rule: str, expected: list[str]) -> None:
    """The clock times are those that the standard prints, for two days where it goes on."""
    event = event_of(SEPTEMBER_2, rule)
    assert event.rule is not None
    times = repeats(event.start.at, event.rule, datetime(1997, 9, 3, 23)).times
    assert [f"{at:%H:%M}" for at in times] == expected


def test_the_example_that_contradicts_itself() -> None:
    """Every 3 hours until 17:00 UTC, 13:00 local, is 9:00 and 12:00; the standard prints 15:00 too, which only 17:00 local would hold.

    The rule is followed, not the print, and a reader is told that the two differ.
    """
    event = event_of(SEPTEMBER_2, "FREQ=HOURLY;INTERVAL=3;UNTIL=19970902T170000Z")
    assert event.rule is not None
    found = list(dated([event], date(1997, 1, 1), date(1998, 1, 1), EASTERN))
    assert [each.first for each in found if isinstance(each, Dated)] == [date(1997, 9, 2)] * 2
    (doubt,) = [each for each in found if not isinstance(each, Dated)]
    assert doubt.what.startswith("this event repeats until 17:00 UTC, which is 13:00 here")
