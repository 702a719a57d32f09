"""How many problems of one file are told at once: whoever pasted a table into a unit needs one sentence, and not ten thousand."""

from __future__ import annotations

from dataclasses import replace

from trivet.model.problem import Problem, Severity, in_order

PROBLEMS_MOST = 100


def limited(problems: list[Problem] | tuple[Problem, ...]) -> tuple[Problem, ...]:
    """Return the problems of one file in order: the first hundred, and one that counts the rest."""
    ordered = in_order(problems)
    if len(ordered) <= PROBLEMS_MOST:
        return ordered
    rest = len(ordered) - PROBLEMS_MOST
    place = replace(ordered[PROBLEMS_MOST].place, length=1)
    what = f"from here on there are {rest:,} more problems" if rest > 1 else "from here on there is one more problem"
    more = Problem("many-problems", Severity.ERROR, place, what, "mend those above first, then check again")
    return (*ordered[:PROBLEMS_MOST], more)
