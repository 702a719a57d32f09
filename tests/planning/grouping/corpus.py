"""A fixed corpus of draws and one figure for all their groups, for any Python there is: the standard library and our own code alone."""

from __future__ import annotations

import hashlib
import json
from typing import Any

from trivet.model.roster import PairRule, RuleKind
from trivet.planning.grouping.draw import draw
from trivet.planning.grouping.kept import plain_groups
from trivet.planning.grouping.ledger import Ledger
from trivet.planning.grouping.request import Draw, Request, Way

CLASSES: tuple[tuple[int, dict[str, Any]], ...] = (
    (7, {}),
    (24, {}),
    (31, {"levels": {s: 1 + s % 4 for s in range(1, 32)}}),
    (
        36,
        {
            "levels": {s: (s * 37) % 101 for s in range(1, 37)},
            "rules": (PairRule(RuleKind.NOT_ONE_TEAM, 1, 2), PairRule(RuleKind.SAME_TEAM, 3, 9), PairRule(RuleKind.NOT_ONE_GROUP, 4, 5)),
        },
    ),
    (30, {"levels": {s: s * 3 for s in range(1, 31)}, "way": Way.LEVELED}),
)
UNITS = 2


def drawn(place: int) -> str:
    """Return the groups of one class of the corpus, unit after unit, as text."""
    students, changes = CLASSES[place]
    ledger, texts = Ledger(), []
    for unit in range(UNITS):
        request = Request(class_id="p1", seats=tuple(range(1, students + 1)), seed=f"corpus {unit}", ledger=ledger, **changes)
        one = draw(request)
        assert isinstance(one, Draw)
        ledger = ledger.plus(one.groups)
        texts.append(json.dumps([plain_groups(one.groups), one.repeats, one.pair_repeats]))
    return "\n".join(texts)


def digest(texts: list[str]) -> str:
    """Return one figure for all groups."""
    return hashlib.sha256("\n".join(texts).encode()).hexdigest()[:16]


def digest_of_all() -> str:
    """Draw the whole corpus and return its figure."""
    return digest([drawn(place) for place in range(len(CLASSES))])
