"""Minutes of a launch."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from tests.support.department import tiny_unit, words
from trivet.model.school import Defaults
from trivet.model.station import Step
from trivet.model.unit import Unit
from trivet.planning.headcount import by_size
from trivet.planning.launch import card_words, launch
from trivet.reading.cards import card_texts


def unit_with_card(count: int, grades: tuple[int, int] = (6, 8)) -> Unit:
    """A unit whose longest card, the hands-on one, has exactly `count` words."""
    bare = tiny_unit(hands_on={"goal": "Goal", "steps": (), "done_when": "", "title": ""}, grades=grades)
    unit = replace(bare, hands_on=replace(bare.hands_on, goal=words(count)))
    assert card_words(unit.hands_on) == count
    return unit


def test_parts_of_nine_teams() -> None:
    """36 students in nine teams with a card of 1.5 min: 1.5 + 1 + 1 + 3 = 6.5 min (the design's worked value)."""
    made = launch(unit_with_card(192), Defaults(), by_size(36, 4))
    assert made.parts == (("read", 1.5), ("explain", 1), ("ask", 1), ("spot_checks", 3))
    assert made.minutes == 6.5
    assert made.teams == 6


def test_reading_the_longest_card() -> None:
    """The longest card sets the reading: 193 to 256 words take grade 6 two minutes, and no card takes less than one."""
    assert launch(unit_with_card(193), Defaults(), by_size(31, 4)).minutes == 7
    assert launch(unit_with_card(256), Defaults(), by_size(31, 4)).minutes == 7
    assert launch(unit_with_card(257), Defaults(), by_size(31, 4)).minutes == 7.5
    assert launch(unit_with_card(257, (8, 8)), Defaults(), by_size(31, 4)).minutes == 7
    assert launch(unit_with_card(60), Defaults(), by_size(31, 4)).parts[0] == ("read", 1)


def test_whole_class_rounds_ask_while_teams_work() -> None:
    """In a whole-class round spot checks cost the launch nothing."""
    made = launch(unit_with_card(192), Defaults(), by_size(36, 4), whole_class=True)
    assert made.minutes == 3.5
    assert made.parts[-1] == ("spot_checks", 0)


def test_card_counts_directions_only() -> None:
    """Words of a card are its title, goal, steps, done when, finished early and keys of its kind; the table is not read."""
    unit = tiny_unit()
    online = unit.online
    text = " ".join([online.goal, *(s.text for s in online.steps), online.done_when, online.use, online.leave_alone])
    assert card_words(online) == len(text.split())
    assert card_words(replace(unit.hands_on, put_away="Rinse, dry, shelf.")) == card_words(unit.hands_on) + 3
    assert card_words(replace(unit.teacher_led, start_alone="")) == card_words(unit.teacher_led) - 4
    assert card_words(replace(online, goal="A – b … c")) == card_words(replace(online, goal="A b c"))


def test_reading_counts_the_same_card() -> None:
    """The texts whose words are counted are those whose reading level is worked out."""
    unit = tiny_unit(
        online={"title": "Blocks in water", "finished_early": "Try a block of your own."},
        hands_on={"put_away": "Rinse, dry, shelf.", "safety_notes": ("Wipe up at once.", "Hands off broken glass."), "title": "Metals"},
        teacher_led={"steps": (Step("Sort the cards.", 2),)},
    )
    for station in unit.stations:
        assert card_words(station) == sum(len(text.split()) for text in card_texts(station))


@settings(deadline=None)
@given(st.integers(1, 60), st.sampled_from((3, 4, 5)))
def test_teams_to_ask(students: int, wanted: int) -> None:
    """The teacher asks the teams of the two groups she leaves, at most: all but those of the group with fewest."""
    headcount = by_size(students, wanted)
    teams = [group.teams for group in headcount.groups.values()]
    most = max(sum(teams) - own for own in teams)
    assert launch(tiny_unit(), Defaults(), headcount).teams == most


def test_odd_seconds_round_up() -> None:
    """Seconds a department sets are rounded up to half minutes: 8 teams at 25 + 10 s take 4.67, so 5 min."""
    made = launch(tiny_unit(), replace(Defaults(), spot_check_seconds=25), by_size(42, 4))
    assert made.teams == 8
    assert made.parts[-1] == ("spot_checks", 5)
    assert launch(tiny_unit(), replace(Defaults(), spot_check_seconds=25), by_size(40, 4)).teams == 8
    assert launch(tiny_unit(), replace(Defaults(), spot_check_seconds=11), by_size(31, 4)).parts[-1] == ("spot_checks", 2.5)
