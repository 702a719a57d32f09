"""One direction with its time: `Weigh the dry solid. (1 min, 3 times)`."""

from __future__ import annotations

import re
from decimal import Decimal

from trivet.model.station import Step
from trivet.reading.forms.minutes import HALVES, MINUTE_WORD, loose_minutes
from trivet.reading.forms.unreadable import NUMBER_WORDS, Unreadable, instead, plain, said

STEP_PATTERN = rf"^(\S(?:.*\S)?)\s*\(\s*({HALVES})\s+{MINUTE_WORD}(?:\s*,\s*([2-9]|[1-9][0-9])\s+times)?\s*\)$"

_EXAMPLE = "- Weigh the dry solid. (1 min, 3 times)"
_COUNT = r"\d{1,3}|" + "|".join(word for word in NUMBER_WORDS if len(word) > 2)
_TIMES = re.compile(
    rf"(?P<front>{_COUNT})\s*[x×*]\s*(?=\d)|[x×*]\s*(?P<back>{_COUNT})(?![\w.])|"
    rf"\b(?P<word>{_COUNT})\s*(?:times?|repeats?|trials?|x|×)(?!\w)|,\s*(?P<bare>\d{{1,2}})\s*$|\b(?P<twice>once|twice|thrice)\b",
    re.IGNORECASE,
)
_BRACKETS = re.compile(r"[(\[{（][^()\[\]{}（）]*(?:[)\]}）]|$)")
_UNIT = r"(?:hours?|hrs?|h|minutes?|mins?|seconds?|secs?|s|m)"
_TAIL = re.compile(
    rf"(?:[,;:–—-]|\babout\b|\bfor\b|\s)\s*((?:(?:{_COUNT})\s*[x×*]\s*)?(?:\d{{1,3}}(?:[.,]\d)?\s*½?|½|{'|'.join(NUMBER_WORDS)})\s*{_UNIT}"
    rf"(?:\s*[,;]?\s*(?:[x×*]\s*\d{{1,2}}|(?:{_COUNT})\s*(?:times?|x|×)|twice|once))?)\s*[)\]]?\.?$",
    re.IGNORECASE,
)
_TIME_INSIDE = re.compile(
    rf"\d\s*{_UNIT}(?!\w)|\d:\d\d|\b(?:{'|'.join(NUMBER_WORDS)}|half\s+an?)\s+{_UNIT}\b|½|\d\s*['’′]|^\W*\d{{1,2}}(?:\.\d)?\W*$",
    re.IGNORECASE,
)


def step(value: object) -> Step | Unreadable:
    """Read one step; minutes are for one time, from 0.5 to 60 in halves, times from 2 to 99."""
    text = said(value)
    found = re.fullmatch(STEP_PATTERN[1:-1], text)
    if found:
        return Step(found[1], float(found[2]), int(found[3] or 1))
    if not isinstance(value, str) or not text:
        return Unreadable("this is no step", f"write it as one text with its time: {_EXAMPLE}")
    return _nearest(text)


def write_step(each: Step) -> str:
    """Write a step as `step` reads it."""
    times = f", {each.times} times" if each.times > 1 else ""
    return f"{each.text} ({plain(each.minutes)} min{times})"


def _nearest(text: str) -> Unreadable:
    rest, typed, spelled = _time_of(text)
    if spelled is None:
        if re.fullmatch(r"\W*", rest):
            return Unreadable("this step says nothing", f"write what to do and how long it takes: {_EXAMPLE}")
        return _answer("this step does not say how long it takes", rest, Decimal(2), 1)
    minutes, times = spelled
    what = f"the time of this step can't be read: {typed}"
    if not rest:
        return Unreadable(f"this step has a time and no text: {typed}", f"write what to do before it: {_EXAMPLE}")
    if minutes > 60:
        return Unreadable(f"a step takes 60 minutes at most: {typed}", "split it into shorter steps")
    if times > 99:
        return Unreadable(f"a step is done 99 times at most: {typed}", "split it into shorter steps")
    return _answer(what, rest, minutes, times)


def _answer(what: str, rest: str, minutes: Decimal, times: int) -> Unreadable:
    corrected = write_step(Step(rest, float(minutes), max(times, 1)))
    if isinstance(step(corrected), Unreadable):
        return Unreadable(what, f"write it like {_EXAMPLE}")
    return instead(what, corrected, item=True)


def _time_of(text: str) -> tuple[str, str, tuple[Decimal, int] | None]:
    """The text without its time, the time as typed, and what it probably means."""
    for found in reversed(list(_BRACKETS.finditer(text))):
        spelled = _spelled(found[0].strip("()[]{}（） "))
        if spelled:
            before, after = text[: found.start()].strip(), text[found.end() :].strip()
            # A full stop that was left behind the time belongs to the sentence.
            joined = before.rstrip(".") + after if re.fullmatch(r"[.!?]", after) else f"{before} {after}".strip()
            return joined, found[0], spelled
    tail = _TAIL.search(text)
    if tail:
        spelled = _spelled(tail[1])
        if spelled:
            return text[: tail.start()].rstrip(" ,;:–—-(["), tail[1], spelled
    return text, "", None


def _spelled(inner: str) -> tuple[Decimal, int] | None:
    """Minutes and times that the inside of a bracket means, or None if it is no time."""
    times, rest = 1, inner
    found = _TIMES.search(inner)
    if found:
        word = (found["front"] or found["back"] or found["word"] or found["bare"] or found["twice"]).lower()
        times = {"once": 1, "twice": 2, "thrice": 3}.get(word) or NUMBER_WORDS.get(word) or int(word)
        rest = inner[: found.start()] + " " + inner[found.end() :]
    if _TIME_INSIDE.search(rest):
        minutes = loose_minutes(rest)
        if minutes is not None:
            return minutes, times
    return None
