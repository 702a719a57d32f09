"""Rules for one student: `not in one team: 12, 20; same team: 5; fixed seat`, read from one cell of a roster."""

from __future__ import annotations

from collections.abc import Iterable

from trivet.model.roster import WRITTEN_KINDS, PairRule, RuleKind
from trivet.model.school import SchoolClass
from trivet.reading.near import nearest
from trivet.reading.table import Cell, Findings

Told = tuple[PairRule, Cell]
"""A rule with the cell that it stands in."""

FORM = "`not in one team: 12, 20; same team: 5; not in one station group: 3; same group: 7; language partner: 8; fixed seat`"
FIXED = "fixed seat"
"""A rule about one student alone: once groups are kept, a change moves others."""

CONTRARY = (
    (RuleKind.SAME_TEAM, RuleKind.NOT_ONE_TEAM),
    (RuleKind.SAME_TEAM, RuleKind.NOT_ONE_GROUP),
    (RuleKind.SAME_GROUP, RuleKind.NOT_ONE_GROUP),
    (RuleKind.LANGUAGE, RuleKind.NOT_ONE_TEAM),
    (RuleKind.LANGUAGE, RuleKind.NOT_ONE_GROUP),
)
"""Kinds that can't hold for the same two students: one team lies inside one station group."""


def rules_of(seat: int | None, cell: Cell | None, school_class: SchoolClass, found: Findings) -> list[Told]:
    """Return the rules of one student with another. What can't be read is answered without repeating it."""
    told: list[Told] = []
    for said, colon, numbers in _parts(cell):
        known = next((each for each in WRITTEN_KINDS if each.value == said), None)
        if cell is None or (said == FIXED and not numbers.strip()):
            continue
        if known is None or not colon:
            found.error("unreadable-rule", cell, "a rule here can't be read", _remedy(said), "rules")
            continue
        told += [(rule, cell) for rule in _pairs(known, seat, numbers, cell, school_class=school_class, found=found)]
    return told


def is_fixed(cell: Cell | None) -> bool:
    """Say whether the cell asks for a fixed seat."""
    return any(said == FIXED for said, _, _ in _parts(cell))


def _parts(cell: Cell | None) -> list[tuple[str, str, str]]:
    """Return what stands between semicolons: the words before a colon, the colon, and what comes after it."""
    parts = [part.partition(":") for part in cell.text.split(";") if part.strip()] if cell else []
    return [(" ".join(words.casefold().split()), colon, numbers) for words, colon, numbers in parts]


def _remedy(said: str) -> str:
    """Return the form of the rule that was probably meant, else all forms."""
    near = nearest(said, [*(kind.value for kind in WRITTEN_KINDS), FIXED], 0.75)
    if near:
        return f"write `{near}`" if near == FIXED else f"write `{near}: 12`, with the class number of the other student"
    return f"write {FORM}"


def _pairs(kind: RuleKind, seat: int | None, numbers: str, cell: Cell, *, school_class: SchoolClass, found: Findings) -> list[PairRule]:
    rules = []
    for text in numbers.split(","):
        number = text.strip().removeprefix(f"{school_class.id}-")
        if not (number.isascii() and number.isdigit() and len(number) <= 2):
            found.error("unreadable-rule", cell, "a rule here lacks a class number", f"write {FORM}", "rules")
        elif int(number) in school_class.gone:
            found.warning("rule-gone-seat", cell, "a rule here names a student who has left", "take the number out", "rules")
        elif int(number) not in school_class.seats:
            what = f"a rule here names a number that class {school_class.id} does not have"
            found.error("rule-unknown-seat", cell, what, "mend the number, or take the rule out", "rules")
        elif int(number) == seat:
            found.error(
                "rule-with-self", cell, "a rule here names the student of its own line", "write the number of the other student", "rules"
            )
        elif seat is not None:
            rules.append(PairRule(kind, min(seat, int(number)), max(seat, int(number))))
    return rules


def contradictions(told: Iterable[Told], found: Findings) -> None:
    """Answer each two students for whom rules say contrary things, at the later of the two cells."""
    by_pair: dict[tuple[int, int], dict[RuleKind, Cell]] = {}
    for rule, cell in told:
        by_pair.setdefault((rule.low, rule.high), {}).setdefault(rule.kind, cell)
    for kinds in by_pair.values():
        for together, apart in CONTRARY:
            if together in kinds and apart in kinds:
                first, last = sorted((kinds[together], kinds[apart]), key=lambda cell: (cell.line, cell.column))
                where = "this cell" if first.line == last.line else f"lines {first.line} and {last.line}"
                what = f"two rules of {where} can't both hold for the same two students"
                found.error("rules-contradict", last, what, "take one of the two rules out", "rules")
