"""What every part of a lesson sheet is made from."""

from __future__ import annotations

from dataclasses import dataclass

from trivet.model.plan import Day, Plan
from trivet.model.school import Room, School, SchoolClass
from trivet.model.unit import Unit
from trivet.pages.words import Words
from trivet.planning.headcount import Headcount, by_groups, by_size, seats_on


@dataclass(frozen=True, slots=True)
class LessonRun:
    """One run with its unit and its school, in the words of one language."""

    plan: Plan
    unit: Unit
    school: School
    words: Words

    @property
    def school_class(self) -> SchoolClass:
        """The class that runs the unit."""
        return self.school.classes[self.plan.class_id]

    @property
    def room(self) -> Room | None:
        """Where it meets, None where rooms.yml does not know the room."""
        return self.school.rooms.get(self.school_class.room)

    @property
    def whole_class(self) -> bool:
        """Whether everyone is at the same kind of station in a round."""
        return self.plan.way == "whole_class"

    def headcount(self, day: Day) -> Headcount:
        """Count the groups of a day: the kept ones, or by the size of the class."""
        if self.plan.groups is not None:
            return by_groups(self.plan.groups)
        return by_size(len(seats_on(self.school_class, day.date)), self.school.settings.defaults.team_size)
