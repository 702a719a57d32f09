"""Say where a value stands in the reader's words: "hands-on, step 1", "class p1, numbers"."""

from __future__ import annotations

from trivet.model.places import Path

NAMED = {
    "classes": "class",
    "rooms": "room",
    "roles": "role",
    "day types": "day type",
    "days": "day",
    "teachers": "teacher",
    "teams": "team",
}
"""Mappings whose keys are names that the department chose."""

COUNTED = {
    "steps": "step",
    "materials": "material",
    "quick check": "quick check item",
    "pre-check": "pre-check item",
    "expected": "expected value",
    "evidence": "evidence line",
    "rubric": "rubric row",
    "standards": "standard",
    "new words": "new word",
    "hazards": "hazard",
    "questions": "question",
    "misconceptions": "misconception",
    "spot checks": "spot check",
    "runs": "run",
    "closures": "closure",
    "files": "file",
    "terms": "term",
    "items": "item",
    "columns": "column",
    "rows": "row",
    "levels": "level",
    "pairs": "pair",
    "lost": "lost day",
    "done": "done line",
    "half": "half line",
    "safety notes": "safety note",
}
"""Lists whose entries have a word of their own; entries of other lists are called lines."""


def words(path: Path) -> str:
    """Return the reader's words for a path of spoken keys and list positions; "" for the whole file."""
    said: list[str] = []
    above: str | int = ""
    for step in path:
        if isinstance(step, int):
            if above in COUNTED:
                said[-1] = f"{COUNTED[str(above)]} {step + 1}"
            else:
                said.append(f"line {step + 1}")
        elif above in NAMED:
            said[-1] = f"{NAMED[str(above)]} {step}"
        elif step != "stations":
            said.append(step)
        above = step
    return ", ".join(said)
