"""How good kept groups are, in one plain sentence."""

from __future__ import annotations

from collections.abc import Mapping

from trivet.model.department import Department
from trivet.model.lock import Lock
from trivet.model.plan import Plan
from trivet.pages.words import Words
from trivet.planning.grouping.ledger import counted_ledger, repeated_pairs


def locks_of(department: Department, class_id: str) -> dict[str, Lock]:
    """Return the kept groups of a class by unit."""
    return {unit: lock for (of, unit), lock in department.locks.items() if of == class_id}


def quality_of(plan: Plan, department: Department, words: Words) -> str:
    """Return the sentence for the groups of a plan; "" where they are not public."""
    if plan.quality is None:
        return ""
    locks = locks_of(department, plan.class_id)
    lock = locks.get(plan.unit)
    pairs = pairs_again(lock, locks) if lock is not None else plan.quality.repeats
    return sentence(plan.quality.repeats, pairs, plan.quality.proved_minimum, words)


def pairs_again(lock: Lock, locks: Mapping[str, Lock]) -> int:
    """Return how many pairs of teammates were teammates before, each once."""
    return repeated_pairs(lock.groups, counted_ledger(lock, locks))


def sentence(repeats: int, pairs: int, proved: int | None, words: Words) -> str:
    """Return the sentence; "fewer is not possible" stands only where that is proved."""
    if not repeats:
        return words("quality.none")
    said = words("quality.pairs", n=pairs or repeats)
    if 0 < pairs < repeats:
        said = words("quality.times", said=said, n=repeats)
    if proved == repeats:
        return words("quality.proved", said=said)
    return words("quality.at_least", said=said, n=proved) if proved else words("quality.plain", said=said)
