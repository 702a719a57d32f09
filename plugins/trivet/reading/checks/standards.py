"""Are the standards codes that exist?"""

from __future__ import annotations

from collections.abc import Iterator

from trivet.model.problem import Problem
from trivet.model.standards import CODES, HOW_MANY
from trivet.reading.draft import Draft
from trivet.reading.near import nearest


def check(draft: Draft) -> Iterator[Problem]:
    """Yield an error for a middle-school code that does not exist, a warning for any other code."""
    for entry in draft.listed("standards"):
        if entry.text in CODES:
            continue
        what = f'there is no middle-school standard "{entry.text}"'
        sounds = entry.text.upper().replace("–", "-").replace(" ", "")
        if sounds in CODES:
            yield draft.error("unknown-standard", entry, what, f"write {sounds}")
        elif sounds.startswith("MS"):
            idea = sounds.removeprefix("MS-").rpartition("-")[0]
            last = f"MS-{idea}-{HOW_MANY[idea]}" if idea in HOW_MANY else ""
            remedy = f"the last one of this idea is {last}" if last else f"write {nearest(sounds, CODES) or 'a code such as MS-PS1-2'}"
            yield draft.error("unknown-standard", entry, what, remedy)
        else:
            remedy = "write a code such as MS-PS1-2, or keep it if your state has codes of its own"
            yield draft.warning("foreign-standard", entry, f'"{entry.text}" is not a middle-school code of the NGSS', remedy)
