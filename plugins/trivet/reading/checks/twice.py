"""Does a list of short things say one of them twice?"""

from __future__ import annotations

from collections.abc import Iterator

from trivet.model.problem import Problem
from trivet.reading.draft import Draft

LISTS = (("standards",), ("new words",), ("returns to",), ("stations", "hands-on", "hazards"))


def check(draft: Draft) -> Iterator[Problem]:
    """Yield an error for each entry that stands in its list before."""
    for path in LISTS:
        seen: set[str] = set()
        for entry in draft.listed(*path):
            word = " ".join(entry.text.casefold().split())
            if word in seen:
                yield draft.error("said-twice", entry, f'"{entry.text}" stands here twice', "leave one of them out")
            seen.add(word)
