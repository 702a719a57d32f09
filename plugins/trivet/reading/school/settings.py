"""`school/school.yml`: the school's name, its teachers, and what it changes of the defaults."""

from __future__ import annotations

from dataclasses import fields, replace
from typing import Any

from trivet.model.problem import Problem
from trivet.model.school import Defaults, Settings
from trivet.reading.school.sheet import Sheet
from trivet.reading.school.values import listed, snake

PERCENT = {"spare": "spare_percent", "level tolerance": "level_tolerance_percent"}
LEAST_AND_MOST = (
    ("reflection least", "reflection most"),
    ("pack up", "pack up most"),
    ("round least", "round most"),
    ("late floor", "round most"),
)

FALLBACK = "UTC"
"""Where the time zone is unknown, which is an error, so that the rest can be shown beside it."""


def read_settings(sheet: Sheet) -> tuple[Settings, tuple[Problem, ...]]:
    """Return the settings, and what is wrong among them."""
    data = sheet.data
    defaults, problems = _defaults(sheet)
    unknown = _time_zone(sheet)
    settings = Settings(
        name=data["name"],
        time_zone=FALLBACK if unknown else data["time zone"],
        locale=data.get("locale", "en-US"),
        paper=data.get("paper", "letter"),
        site=_with_slash(data.get("site", "")),
        demo=data.get("demo", False),
        teachers=dict(data["teachers"]),
        simulations=listed(data.get("simulations")),
        defaults=defaults,
    )
    return settings, (*problems, *unknown)


def _with_slash(address: str) -> str:
    return address if not address or address.endswith("/") else address + "/"


def _defaults(sheet: Sheet) -> tuple[Defaults, tuple[Problem, ...]]:
    kinds = {field.name: type(field.default) for field in fields(Defaults)}
    changes: dict[str, Any] = {}
    for key, value in {**sheet.data.get("minutes", {}), **sheet.data.get("defaults", {})}.items():
        if key in PERCENT:
            changes[PERCENT[key]] = int(str(value).removesuffix("%"))
        else:
            # Every amount is a multiple of a half, so that nothing is lost on the way to a float.
            changes[snake(key)] = int(value) if kinds[snake(key)] is int and value == int(value) else float(value)
    defaults = replace(Defaults(), **changes)
    problems = tuple(_least_above_most(sheet, defaults))
    # Nothing sensible could be planned with them, and one problem would look like many.
    return Defaults() if problems else defaults, problems


def _least_above_most(sheet: Sheet, defaults: Defaults) -> list[Problem]:
    problems = []
    minutes = sheet.data.get("minutes", {})
    for least, most in LEAST_AND_MOST:
        low, high = getattr(defaults, snake(least)), getattr(defaults, snake(most))
        if low > high:
            key = least if least in minutes else most
            what = f'"{least}" is {low:g} min, more than "{most}", which is {high:g} min'
            problems.append(sheet.error("least-above-most", ("minutes", key), what, f"write {least}: {high:g}, or raise {most}"))
    return problems


def _time_zone(sheet: Sheet) -> list[Problem]:
    from zoneinfo import ZoneInfo  # noqa: PLC0415 - and the list of all zones below - only where it is needed

    name = sheet.data["time zone"]
    try:
        ZoneInfo(name)
    except (LookupError, ValueError, OSError):
        return _unknown_zone(sheet, name)
    return []


def _unknown_zone(sheet: Sheet, name: str) -> list[Problem]:
    from zoneinfo import available_timezones  # noqa: PLC0415

    from trivet.reading.near import nearest  # noqa: PLC0415

    zones = sorted(available_timezones())
    if not zones:  # a machine without a tz database can't tell a good name from a bad one
        return []
    cities = {zone.rpartition("/")[2]: zone for zone in zones}
    near = nearest(name, zones, 0.8) or cities.get(nearest(name.rpartition("/")[2], cities, 0.8), "")
    remedy = f"write {near}" if near else "write a region and a city, such as America/Chicago"
    return [sheet.error("unknown-time-zone", ("time zone",), f'there is no time zone "{name}"', remedy)]
