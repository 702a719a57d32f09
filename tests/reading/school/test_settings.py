from __future__ import annotations

from dataclasses import fields

import pytest

from tests.support.sheets import said, schema_problems, sheet
from trivet.model.school import Defaults
from trivet.reading.schemas import schema
from trivet.reading.school.settings import PERCENT, read_settings
from trivet.reading.school.values import snake

LEAST = """
    name: Marsh Lane Middle School
    time zone: America/Chicago
    teachers:
      rowan: Ms. Rowan
    """


def test_everything_but_name_zone_and_teachers_has_a_default() -> None:
    """Three keys are enough, and then every number is the built-in one."""
    settings, problems = read_settings(sheet("school", LEAST))
    assert problems == ()
    assert settings.defaults == Defaults()
    assert (settings.paper, settings.locale, settings.site, settings.demo, settings.simulations) == ("letter", "en-US", "", False, ())


def test_every_number_of_the_model_can_be_changed_under_its_spoken_name() -> None:
    """The keys of `minutes` and `defaults` are the model's fields, word for word, and no field lacks a key."""
    said = schema("school")["properties"]
    keys = [*said["minutes"]["properties"], *said["defaults"]["properties"]]
    assert sorted(PERCENT.get(key, snake(key)) for key in keys) == sorted(field.name for field in fields(Defaults))


def test_changed_numbers_reach_the_model_exactly() -> None:
    """Halves of minutes, whole numbers and shares arrive as written."""
    settings, problems = read_settings(
        sheet(
            "school",
            LEAST + "minutes:\n      settle in: 4.5\n      round least: 18\n    defaults:\n      team size: 3\n      spare: 15 %\n",
        )
    )
    assert problems == ()
    changed = settings.defaults
    assert (changed.settle_in, changed.round_least, changed.team_size, changed.spare_percent) == (4.5, 18, 3, 15)
    assert changed.move == Defaults().move


def test_the_address_always_ends_with_a_slash() -> None:
    """Cards append to the address, so it ends where a path may begin."""
    settings, _ = read_settings(sheet("school", LEAST + "site: https://trivet.example/science\n"))
    assert settings.site == "https://trivet.example/science/"


@pytest.mark.parametrize(
    ("zone", "remedy"),
    [("America/Chigaco", "write America/Chicago"), ("Chicago", "write America/Chicago"), ("Moon/Base", "write a region and a city")],
)
def test_an_unknown_time_zone_is_answered_with_the_nearest(zone: str, remedy: str) -> None:
    """A mistyped city or a city without its region finds its zone; anything else is shown the form."""
    _, problems = read_settings(sheet("school", LEAST.replace("America/Chicago", zone)))
    assert [problem.code for problem in problems] == ["unknown-time-zone"]
    assert problems[0].remedy.startswith(remedy)


@pytest.mark.parametrize("zone", ["America/Chicago", "America/Indiana/Indianapolis", "Pacific/Honolulu", "America/New_York", "UTC"])
def test_zones_of_the_tz_database_are_known(zone: str) -> None:
    """Names with underscores, three parts or one part pass."""
    assert read_settings(sheet("school", LEAST.replace("America/Chicago", zone)))[1] == ()


def test_a_least_above_its_most_is_answered_where_it_stands() -> None:
    """A shortest round longer than the longest can't be planned."""
    _, problems = read_settings(sheet("school", LEAST + "minutes:\n      round least: 35\n"))
    what = '"round least" is 35 min, more than "round most", which is 30 min'
    assert said(problems) == [f"6: minutes, round least: {what}; write round least: 30, or raise round most"]


def test_minutes_come_in_halves() -> None:
    """A third of a minute is on no teacher's clock."""
    assert schema_problems("school", LEAST + "minutes:\n      settle in: 4.3\n") == [
        "6: minutes, settle in: 4.3 is out of range: this must be a multiple of 0.5; write minutes in halves, from 0 to 60, such as 4"
    ]


def test_a_reflection_can_not_be_made_shorter_than_five_minutes() -> None:
    """No setting undercuts the floor of the reflection."""
    assert len(schema_problems("school", LEAST + "minutes:\n      reflection least: 4\n")) == 1
