"""`calendar/<class>.ics`: a class's lessons for any calendar program, by RFC 5545."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, datetime, time

from trivet.model.department import Department
from trivet.model.page import Asset
from trivet.model.plan import Plan, Plans
from trivet.pages.days import stations_of
from trivet.pages.ical import component, file_of, text
from trivet.pages.lesson_page import rounds_of
from trivet.pages.links import calendar_address, lesson_address
from trivet.pages.spoken import amount, clock, minutes, sentence_list
from trivet.pages.stations import tag
from trivet.pages.time_zone import time_zone_lines
from trivet.pages.words import Words
from trivet.planning.calendar_events import LessonEvent, calendar_events

PRODUCT = "-//Trivet//Trivet//EN"
COUNTED = "each"


def calendar_files(department: Department, plans: Plans, words: Words) -> Iterator[Asset]:
    """Yield one file for each class, also for one without a lesson yet, so that an address given to a program early stays good."""
    for class_id in department.school.classes:
        yield Asset(calendar_address(class_id), calendar_file(department, plans, class_id, words))


def calendar_file(department: Department, plans: Plans, class_id: str, words: Words) -> bytes:
    """Return the calendar of one class. Times are local with the school's named zone, so that a change of the clock moves no lesson."""
    school = department.school
    name = text(words("calendar.name", class_name=school.classes[class_id].name, school=school.settings.name))
    events = calendar_events(department, plans, class_id)
    return file_of(
        component(
            "VCALENDAR",
            [
                "VERSION:2.0",
                f"PRODID:{PRODUCT}",
                "CALSCALE:GREGORIAN",
                f"NAME:{name}",  # RFC 7986 5.1, and the older name that more programs read
                f"X-WR-CALNAME:{name}",
                "REFRESH-INTERVAL;VALUE=DURATION:P1D",
                *time_zone_lines(school.settings.time_zone, school.calendar.first, school.calendar.last),
                *(line for event in events for line in _event(department, event, words)),
            ],
        )
    )


def _event(department: Department, event: LessonEvent, words: Words) -> list[str]:
    school = department.school
    room = school.rooms.get(school.classes[event.plan.class_id].room)
    lines = [
        f"UID:{event.uid}",
        f"DTSTAMP:{event.stamp:%Y%m%d}T000000Z",
        f"SEQUENCE:{event.sequence}",
        f"DTSTART;TZID={school.settings.time_zone}:{_local(event.date, event.start)}",
        f"DTEND;TZID={school.settings.time_zone}:{_local(event.date, event.end)}",
        f"SUMMARY:{text(_summary(department, event, words))}",
    ]
    if room is not None:
        lines.append(f"LOCATION:{text(room.name)}")
    link = _link(department, event)
    lines.append(f"DESCRIPTION:{text(chr(10).join(_description(event, link, words)))}")
    if link:
        lines.append(f"URL:{link}")
    return component("VEVENT", lines)


def _local(day: date, at: time) -> str:
    return f"{datetime.combine(day, at):%Y%m%dT%H%M%S}"


def _summary(department: Department, event: LessonEvent, words: Words) -> str:
    title = department.units[event.plan.unit].title
    what = words("calendar.pre_check") if event.day is None else rounds_of(event.day, event.plan, words)
    return words("calendar.summary", class_id=event.plan.class_id, unit=title, what=what)


def _link(department: Department, event: LessonEvent) -> str:
    site = department.school.settings.site
    anchor = f"#{event.date.isoformat()}" if event.day else ""
    return f"{site}{lesson_address(event.plan.class_id, event.plan.unit)}{anchor}" if site else ""


def _description(event: LessonEvent, link: str, words: Words) -> Iterator[str]:
    if event.day is None:
        yield words("calendar.pre_check_why")
    else:
        for block in event.day.blocks:
            if block.kind == "station" and block.round is not None:
                where = _where(event.plan, block.round, event.date, words)
                yield words("calendar.round", n=block.round, clock=clock(block.start), minutes=minutes(block.minutes), where=where)
            elif block.kind == "write_up":
                yield words("calendar.write_up", clock=clock(block.start), minutes=minutes(block.minutes))
        if any(block.kind == "station" for block in event.day.blocks):
            yield from _materials(event.plan, words)
    if link:
        yield words("calendar.sheet", link=link)


def _where(plan: Plan, number: int, on: date, words: Words) -> str:
    """Who is where in a round, "" where groups are not public or all of them missed it."""
    stations = stations_of(plan, number, on)
    if not stations:
        return ""
    if plan.way == "whole_class":
        return words("calendar.whole_class", station=tag(next(iter(stations.values())), words).name)
    parts = [words("calendar.group", letter=letter, station=tag(kind, words).name) for letter, kind in stations.items()]
    return words("calendar.groups", groups=sentence_list(parts, words))


def _materials(plan: Plan, words: Words) -> Iterator[str]:
    parts = [
        words("calendar.counted", count=amount(each.need, ""), item=each.item)
        if each.unit == COUNTED
        else f"{amount(each.need, each.unit)} {each.item}"
        for each in plan.materials
        if each.need
    ]
    if parts:
        yield words("calendar.materials", things=", ".join(parts))
