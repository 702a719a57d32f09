"""A step is a text with its time, and every common slip is answered with the line that was meant."""

from __future__ import annotations

import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from trivet.model.station import Step
from trivet.reading.forms import STEP_PATTERN, Unreadable, step, write_step


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("Weigh the dry solid. (1 min, 3 times)", Step("Weigh the dry solid.", 1, 3)),
        ("Find where sinking begins. Do it again for 50 mL. (6 min)", Step("Find where sinking begins. Do it again for 50 mL.", 6)),
        ("Wait (0.5 min)", Step("Wait", 0.5)),
        ("Wait (60 minutes)", Step("Wait", 60)),
        ("Wait (2.5 mins, 99 times)", Step("Wait", 2.5, 99)),
        ("Wait (1 minute)", Step("Wait", 1)),
        ("Wait\u00a0(1\u00a0min,\u00a03\u00a0times)", Step("Wait", 1, 3)),
        ("Say “now” – then wait (1 min)", Step("Say “now” – then wait", 1)),
        ("Wait (2 min) and look (3 min)", Step("Wait (2 min) and look", 3)),
        ("Look at picture (2). (3 min)", Step("Look at picture (2).", 3)),
        ("Wait(3 min)", Step("Wait", 3)),
        ("Wait ( 3 min )", Step("Wait", 3)),
    ],
)
def test_read(text: str, expected: Step) -> None:
    """Minutes in halves up to 60, times from 2 to 99, spaces of any kind, curly quotes and dashes."""
    assert step(text) == expected
    assert re.search(STEP_PATTERN, text)


@pytest.mark.parametrize(
    ("text", "what", "corrected"),
    [
        ("Weigh it. (1 min x 3)", "the time of this step can't be read: (1 min x 3)", "Weigh it. (1 min, 3 times)"),
        ("Weigh it. (1 min × 3)", "the time of this step can't be read: (1 min × 3)", "Weigh it. (1 min, 3 times)"),
        ("Weigh it. (3x1 min)", "the time of this step can't be read: (3x1 min)", "Weigh it. (1 min, 3 times)"),
        ("Weigh it. (3 x 1 min)", "the time of this step can't be read: (3 x 1 min)", "Weigh it. (1 min, 3 times)"),
        ("Weigh it. (3 times, 1 min)", "the time of this step can't be read: (3 times, 1 min)", "Weigh it. (1 min, 3 times)"),
        ("Weigh it. (1 min, 3)", "the time of this step can't be read: (1 min, 3)", "Weigh it. (1 min, 3 times)"),
        ("Weigh it. (1 min each, 3 times)", "the time of this step can't be read: (1 min each, 3 times)", "Weigh it. (1 min, 3 times)"),
        ("Weigh it. (1 min, twice)", "the time of this step can't be read: (1 min, twice)", "Weigh it. (1 min, 2 times)"),
        ("Weigh it. (1 min, three times)", "the time of this step can't be read: (1 min, three times)", "Weigh it. (1 min, 3 times)"),
        ("Weigh it. (1 min, 1 times)", "the time of this step can't be read: (1 min, 1 times)", "Weigh it. (1 min)"),
        ("Weigh it. [2 min]", "the time of this step can't be read: [2 min]", "Weigh it. (2 min)"),
        ("Weigh it. {2 min}", "the time of this step can't be read: {2 min}", "Weigh it. (2 min)"),
        ("Weigh it. (2min)", "the time of this step can't be read: (2min)", "Weigh it. (2 min)"),
        ("Weigh it. (2 Min.)", "the time of this step can't be read: (2 Min.)", "Weigh it. (2 min)"),
        ("Weigh it. (2 m)", "the time of this step can't be read: (2 m)", "Weigh it. (2 min)"),
        ("Weigh it. (2)", "the time of this step can't be read: (2)", "Weigh it. (2 min)"),
        ("Weigh it. (2 min", "the time of this step can't be read: (2 min", "Weigh it. (2 min)"),
        ("Weigh it. 2 min", "the time of this step can't be read: 2 min", "Weigh it. (2 min)"),
        ("Weigh it, 2 minutes.", "the time of this step can't be read: 2 minutes", "Weigh it (2 min)"),
        ("Weigh it. 3 x 2 min", "the time of this step can't be read: 3 x 2 min", "Weigh it. (2 min, 3 times)"),
        ("Weigh it (2 min).", "the time of this step can't be read: (2 min)", "Weigh it. (2 min)"),
        ("(2 min) Weigh it.", "the time of this step can't be read: (2 min)", "Weigh it. (2 min)"),
        ("Weigh it. (two minutes)", "the time of this step can't be read: (two minutes)", "Weigh it. (2 min)"),
        ("Weigh it. (half a minute)", "the time of this step can't be read: (half a minute)", "Weigh it. (0.5 min)"),
        ("Weigh it. (1½ min)", "the time of this step can't be read: (1½ min)", "Weigh it. (1.5 min)"),
        ("Weigh it. (1,5 min)", "the time of this step can't be read: (1,5 min)", "Weigh it. (1.5 min)"),
        ("Weigh it. (1:30)", "the time of this step can't be read: (1:30)", "Weigh it. (1.5 min)"),
        ("Weigh it. (30 s)", "the time of this step can't be read: (30 s)", "Weigh it. (0.5 min)"),
        ("Weigh it. (90 seconds)", "the time of this step can't be read: (90 seconds)", "Weigh it. (1.5 min)"),
        ("Weigh it. (1 h)", "the time of this step can't be read: (1 h)", "Weigh it. (60 min)"),
        ("Weigh it. (1.3 min)", "the time of this step can't be read: (1.3 min)", "Weigh it. (1.5 min)"),
        ("Weigh it. (0 min)", "the time of this step can't be read: (0 min)", "Weigh it. (0.5 min)"),
        ("Weigh it. (2-3 min)", "the time of this step can't be read: (2-3 min)", "Weigh it. (3 min)"),
        ("Weigh it. (2–3 min)", "the time of this step can't be read: (2–3 min)", "Weigh it. (3 min)"),
        ("Weigh it.", "this step does not say how long it takes", "Weigh it. (2 min)"),
        ("Weigh it (don't spill).", "this step does not say how long it takes", "Weigh it (don't spill). (2 min)"),
        ("Look at page 5 (see the map) often", "this step does not say how long it takes", "Look at page 5 (see the map) often (2 min)"),
    ],
)
def test_slips(text: str, what: str, corrected: str) -> None:
    """The answer says what is wrong, the corrected line is read, and it stands in the remedy after a dash."""
    answer = step(text)
    assert answer == Unreadable(what, f"write - {corrected}", corrected)
    assert isinstance(step(corrected), Step)
    assert not re.search(STEP_PATTERN, text)


def test_a_colon_in_the_corrected_line_is_quoted() -> None:
    """The remedy is a line that YAML reads as it is."""
    answer = step("Record: the mass (2min)")
    assert isinstance(answer, Unreadable)
    assert answer.remedy == 'write - "Record: the mass (2 min)"'


@pytest.mark.parametrize(
    ("value", "sentence"),
    [
        ("Wait (90 min)", "a step takes 60 minutes at most: (90 min); split it into shorter steps"),
        ("Wait (1 min, 100 times)", "a step is done 99 times at most: (1 min, 100 times); split it into shorter steps"),
        ("(2 min)", "this step has a time and no text: (2 min); write what to do before it: - Weigh the dry solid. (1 min, 3 times)"),
        ("...", "this step says nothing; write what to do and how long it takes: - Weigh the dry solid. (1 min, 3 times)"),
        ("", "this is no step; write it as one text with its time: - Weigh the dry solid. (1 min, 3 times)"),
        (None, "this is no step; write it as one text with its time: - Weigh the dry solid. (1 min, 3 times)"),
        (5, "this is no step; write it as one text with its time: - Weigh the dry solid. (1 min, 3 times)"),
        ({"Record": "the mass"}, "this is no step; write it as one text with its time: - Weigh the dry solid. (1 min, 3 times)"),
    ],
)
def test_what_has_no_corrected_line(value: object, sentence: str) -> None:
    """Where no line can be guessed, the remedy says what to do."""
    answer = step(value)
    assert isinstance(answer, Unreadable)
    assert f"{answer.what}; {answer.remedy}" == sentence
    assert answer.corrected == ""


WORDS = st.lists(st.text("abcdefghij ABC.,;:!?'\"()[]–—“”éñ0123456789%#-", min_size=1, max_size=12), min_size=1, max_size=8)
TEXTS = WORDS.map(" ".join).map(lambda text: " ".join(text.split())).filter(bool)
STEPS = st.builds(Step, TEXTS, st.integers(1, 120).map(lambda halves: halves / 2), st.integers(1, 99))


@settings(max_examples=200, deadline=None)
@given(STEPS)
def test_round_trip(each: Step) -> None:
    """What is written is read back as the same step, and fits the pattern of the schema."""
    assert step(write_step(each)) == each
    assert re.search(STEP_PATTERN, write_step(each))


@settings(max_examples=300, deadline=None)
@given(
    st.one_of(
        st.text(max_size=200),
        st.lists(
            st.sampled_from(["Weigh", " ", "(", ")", "2", "0", ".5", "min", "x", ",", "3", "times", "[", "h", ":", "½", "a"]), max_size=20
        ).map("".join),
    )
)
def test_any_text(text: str) -> None:
    """Any text is a step exactly where the pattern says so, else it is answered; a corrected line is itself a step."""
    answer = step(text)
    assert isinstance(answer, Step) == bool(re.search(STEP_PATTERN, " ".join(text.split())))
    if isinstance(answer, Unreadable):
        assert answer.what
        assert answer.remedy
        assert answer.corrected == "" or isinstance(step(answer.corrected), Step)
