"""Problems that reports are made of."""

from __future__ import annotations

from trivet.model.problem import Place, Problem, Severity

SOURCES = {"units/a/index.md": "---\n      - Weigh the dry solid. (1 min x 3)\n" + "word " * 60 + "\n"}
STEP = Problem(
    "step-unreadable",
    Severity.ERROR,
    Place("units/a/index.md", 2, 31, 9),
    "the time of this step can't be read: (1 min x 3)",
    "write - Weigh the dry solid. (1 min, 3 times)",
    "hands-on, step 1",
)
WARNING = Problem("card-long", Severity.WARNING, Place("units/a/index.md", 3, 251, 4), "this is long", "write it shorter")
ADVICE = Problem("level-high", Severity.ADVICE, Place("units/a/index.md"), "this is hard to read")
ALL = [WARNING, ADVICE, STEP, STEP]
