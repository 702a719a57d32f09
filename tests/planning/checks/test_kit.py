"""Kit that lessons at one time have not enough of, and kit that one run alone has not enough of."""

from __future__ import annotations

from decimal import Decimal

from tests.planning.checks.two_units import classes, department, rewritten, run, said
from tests.support.department import tiny_room
from trivet.model.school import StockItem
from trivet.planning.department import plan_department


def stock(cylinders: int) -> list[StockItem]:
    return [StockItem(item="graduated cylinder 25 mL", have=Decimal(cylinders)), StockItem(item="balance 0.1 g", have=Decimal(20))]


def test_kit_at_one_time() -> None:
    """Two classes that have more of a thing out together than there is are told once, and the line of the remedy cures it."""
    rooms = [tiny_room(), tiny_room("r14")]
    two = classes(room="r14", teacher="teller")
    made = department(run(), run("p2"), classes=two, rooms=rooms, inventory=stock(5))
    (sentence,) = said(made, "kit-clash")
    assert "short of 1 × graduated cylinder 25 mL on Monday, November 30: p1 and p2 need 3 each at the same time" in sentence
    assert said(rewritten(made, 1, sentence), "kit-clash") == []
    assert said(department(run(), run("p2"), classes=two, rooms=rooms, inventory=stock(6)), "kit-clash") == []


def test_too_little_for_one_class() -> None:
    """What a run alone has not enough of is a warning for kit and advice for devices, which students can share."""
    made = department(run(), inventory=stock(2), rooms=[tiny_room(devices=3)])
    found = {problem.sentence: str(problem.severity) for problem in plan_department(made).problems if problem.code == "kit-short"}
    assert list(found.values()) == ["warning", "advice"]
    assert "needs 3 × graduated cylinder 25 mL, and there are 2" in next(iter(found))
    assert said(made, "kit-clash") == []
