"""What a command on a class's whole year works with."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date

import click

from trivet.command.asked import department_of, remedy
from trivet.command.draw_unit import experience_of, roster_of
from trivet.command.groups_asked import Asked
from trivet.command.private_side import PrivateSide, private_side
from trivet.command.root import root_of
from trivet.model.department import Department
from trivet.model.lock import Lock
from trivet.model.roster import Roster
from trivet.model.school import Run, SchoolClass
from trivet.planning.grouping.experience import Experience
from trivet.planning.grouping.for_class import runs_in_order
from trivet.planning.grouping.kept import keep
from trivet.planning.grouping.request import Draw, Request


@dataclass(frozen=True, slots=True)
class WholeYear:
    """One class with its runs in order of date, its private list and what else is known privately."""

    department: Department
    school_class: SchoolClass
    private: PrivateSide
    roster: Roster | None
    own: Experience
    today: date
    key: bytes

    @property
    def class_id(self) -> str:
        """The class's id."""
        return self.school_class.id

    @property
    def runs(self) -> tuple[Run, ...]:
        """The runs of this school year, in order."""
        return runs_in_order(self.department, self.class_id)

    @property
    def names(self) -> Mapping[int, str]:
        """A student's number by seat, those who have left included."""
        return {seat: self.number(seat) for seat in (*self.school_class.seats, *self.school_class.gone)}

    def number(self, seat: int) -> str:
        """Return a student's number."""
        return self.school_class.number(seat)

    def keeper(self, drawn: Draw, request: Request, run: Run, counted: Sequence[Lock]) -> Lock:
        """Return a draw as a lock of today."""
        return keep(drawn, request, run, counted, drawn_on=self.today, from_roster=self.roster is not None, key=self.key)


def whole_year(context: click.Context, asked: Asked) -> WholeYear:
    """Return the year of the class asked for; exits where the class is not known, or its lists can't be read."""
    department = department_of(context, "")
    class_id = asked.class_id or ""
    if class_id not in department.school.classes:
        raise click.UsageError(f"there is no class {class_id}; {remedy(class_id, department.school.classes, 'school/classes.yml')}")
    school_class = department.school.classes[class_id]
    private = private_side(root_of(context), department)
    roster = roster_of(context, school_class, private)
    own = experience_of(context, department, school_class, private)
    key = private.key() if roster is not None and asked.write else b""
    return WholeYear(department, school_class, private, roster, own, asked.today, key)
