"""A department's materials as plain data: `materials: 1`."""

from __future__ import annotations

from typing import Any

from trivet.model.department import Department
from trivet.planning.department_materials import DepartmentMaterials, Shortage, Span
from trivet.planning.plan_data import number
from trivet.planning.stores.moments import Moment
from trivet.planning.stores.needs import Reusable, UsedUp
from trivet.planning.stores.purchases import Purchase, total
from trivet.planning.stores.sentences import clash, headline, place, quantity
from trivet.planning.stores.tasks import Task

VERSION = 1


def materials_json(found: DepartmentMaterials, department: Department) -> dict[str, Any]:
    """Return everything: weeks, terms, the whole year."""
    return {
        "materials": VERSION,
        "weeks": [span_json(week, department) for week in found.weeks],
        "terms": [span_json(term, department) for term in found.terms],
        "year": None if found.year is None else span_json(found.year, department),
    }


def span_json(span: Span, department: Department) -> dict[str, Any]:
    """Return one stretch of the year: dates and clock times as text, amounts as numbers, money as text with two decimals."""
    rooms = department.school.rooms
    return {
        "name": span.name,
        "first": span.first.isoformat(),
        "last": span.last.isoformat(),
        "runs": [{"class": run.class_id, "unit": run.unit, "teams": run.teams} for run in span.runs],
        "reusable": [{"item": each.pool.item, "store": each.pool.place, **_at_once(each)} for each in span.reusable],
        "used_up": [_in_all(each) for each in span.used_up],
        "devices": [{"room": each.pool.place, "name": place(each.pool, rooms), **_at_once(each)} for each in span.devices],
        "shortages": [_shortage(each, department) for each in span.shortages],
        "shopping": [_purchase(each) for each in span.purchases],
        "cost": f"{total(span.purchases):.2f}",
        "prints": [
            {
                "kind": each.kind,
                "count": each.count,
                "pages": each.pages,
                "parts": [{"class": class_id, "unit": unit, "count": count} for class_id, unit, count in each.parts],
            }
            for each in span.prints
        ],
        "tasks": [
            {"room": each.room, "dates": [day.isoformat() for day in each.dates], "tasks": [_task(task) for task in each.tasks]}
            for each in span.tasks
        ],
        "turn_rounds": [
            {
                "room": each.room,
                "first": each.first,
                "second": each.second,
                "unit": each.unit,
                "minutes": each.minutes,
                "needs": number(each.needs / 2),
                "dates": [day.isoformat() for day in each.dates],
            }
            for each in span.turn_rounds
        ],
    }


def _at_once(need: Reusable) -> dict[str, Any]:
    return {
        "need": number(need.need),
        "have": None if need.have is None else number(need.have),
        "short": number(need.short),
        "most": _moment(need.peak),
        "clashes": [_moment(moment) for moment in need.lacking],
    }


def _moment(moment: Moment) -> dict[str, Any]:
    return {
        "date": moment.date.isoformat(),
        "start": f"{moment.start:%H:%M}",
        "end": f"{moment.end:%H:%M}",
        "periods": list(moment.periods),
        "classes": list(moment.classes),
    }


def _in_all(need: UsedUp) -> dict[str, Any]:
    return {
        "item": need.pool.item,
        "store": need.pool.place,
        "need": number(need.need),
        "unit": need.unit,
        "spare": number(need.spare),
        "have": None if need.have is None else number(need.have),
        "short": number(need.short),
        "parts": [{"class": class_id, "unit": unit, "amount": number(amount)} for class_id, unit, amount in need.parts],
    }


def _shortage(shortage: Shortage, department: Department) -> dict[str, Any]:
    rooms = department.school.rooms
    return {
        "text": headline(shortage.lack, rooms),
        "clash": clash(shortage.lack, rooms),
        "cures": [
            {
                "kind": cure.kind,
                "text": cure.title,
                "then": list(cure.then),
                "write": [{"line": line, "file": at.file, "at": [at.line, at.column]} for line, at in cure.writes],
            }
            for cure in shortage.cures
        ],
    }


def _purchase(each: Purchase) -> dict[str, Any]:
    return {
        "item": each.item,
        "store": each.place,
        "use": each.use,
        "amount": number(each.amount),
        "unit": each.unit,
        "packs": each.packs,
        "pack": None if each.pack is None else number(each.pack),
        "price": None if each.price is None else f"{each.price}",
        "cost": None if each.cost is None else f"{each.cost}",
    }


def _task(task: Task) -> dict[str, Any]:
    return {
        "kind": task.kind,
        "at": f"{task.at:%H:%M}",
        "class": task.class_id,
        "unit": task.unit,
        "minutes": task.minutes,
        "things": [{"item": each.item, "amount": quantity(each.with_spare(0), each.unit)} for each in task.things],
    }
