"""Can a question be answered with yes or no? Such an answer tells a teacher nothing."""

from __future__ import annotations

import re
from collections.abc import Iterator

from trivet.model.problem import Problem
from trivet.model.unit import Unit
from trivet.reading.checks.remarks import advice, warning

_AUXILIARIES = (
    "do", "does", "did", "is", "are", "was", "were", "am", "can", "could", "will", "would", "shall", "should", "has", "have", "had",
    "may", "might", "must", "don't", "doesn't", "didn't", "isn't", "aren't", "wasn't", "weren't", "can't", "couldn't", "won't",
    "wouldn't", "shouldn't", "haven't", "hasn't",
)  # fmt: skip
_CLOSED = re.compile(rf"(?:{'|'.join(_AUXILIARIES)})\b", re.IGNORECASE)
_UNDERSTOOD = re.compile(
    r"\b(?:understand|understood|clear|ready|got (?:it|that)|makes? sense|any questions|everyone (?:ok|okay|good)|all (?:set|good))\b",
    re.IGNORECASE,
)
_KNOW_HOW = re.compile(r"do you (?:all )?(?:know|remember|see) (how|what|where|when|who|which) to (.+?)\?*$", re.IGNORECASE)
_CAN_TELL = re.compile(
    r"(?:can|could|will|would) (?:you|anyone|someone) (?:please )?(?:tell (?:me|us)|say|explain|describe|show (?:me|us)) (.+?)\?*$",
    re.IGNORECASE,
)
_OPEN = re.compile(r"\b(?:why|how|what|which|where|when|who)\b", re.IGNORECASE)
_LEAD_IN = re.compile(r"^(?:so|ok|okay|now|well|and|but|then)\b[\s,]*", re.IGNORECASE)

INSTEAD_OF_UNDERSTOOD = "What will you do first, and how will you know that you are done?"


def rewrite(ask: str) -> str:
    """Return an open question in place of a closed one, "" where the question is open already."""
    plain = _LEAD_IN.sub("", " ".join(ask.replace("’", "'").split()))
    closed = _CLOSED.match(plain) is not None
    if (closed or plain.lower().startswith(("everyone", "any ", "all ", "ready", "got it"))) and _UNDERSTOOD.search(plain):
        return INSTEAD_OF_UNDERSTOOD
    if not closed:
        return ""
    if found := _KNOW_HOW.match(plain):
        return f"{found[1].capitalize()} will you {found[2]}?"
    if found := _CAN_TELL.match(plain):
        said = found[1]
        return f"What can you say about {said}?" if not _OPEN.match(said) else f"Explain {said}."
    # "Is it heavier? Why?" asks for more than yes or no.
    if _OPEN.search(plain):
        return ""
    return f"How could you find out: {plain[0].lower()}{plain[1:].rstrip('?. ')}?"


def check(unit: Unit) -> Iterator[Problem]:
    """Yield a warning for each closed spot check and advice for each closed question, with a rewrite."""
    what = "this can be answered with yes or no"
    for index, line in enumerate(unit.spot_checks):
        if better := rewrite(line.ask):
            yield warning(unit, "closed-spot-check", ("spot checks", index, "ask"), what, f"write ask: {_quoted(better)}")
    for index, question in enumerate(unit.teacher_led.questions):
        if better := rewrite(question.ask):
            path = ("stations", "teacher-led", "questions", index, "ask")
            yield advice(unit, "closed-question", path, what, f"write ask: {_quoted(better)}")


def _quoted(text: str) -> str:
    return f'"{text}"' if ": " in text else text
