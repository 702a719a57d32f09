"""What `trivet groups` was asked to do, and which of its jobs that is."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from datetime import date
from pathlib import Path

import click

from trivet.planning.grouping.request import Wanted, Way

HOW = ("mixed", "usual", "leveled", "auto")
"""The ways to group that a teacher may choose at the draw; auto draws mixed groups, with advice from the pre-check."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """The options of one call."""

    unit: str | None
    class_id: str | None
    year: bool
    how: str | None
    leveled: bool
    change: bool
    day: date | None
    absent: str | None
    write: bool
    force: bool
    explain: bool
    check: Path | None
    students: int | None
    team: int | None
    units: int | None
    whole_class: bool
    json: bool
    today: date

    def job(self) -> Callable[[click.Context, Asked], Iterable[str]]:
        """Return the job; misuse (exit 2) where the options don't go together."""
        if self.students is not None:
            self._refuse(("UNIT", self.unit), ("--class", self.class_id), ("--year", self.year), ("--write", self.write), to="--students")
            self._refuse(("--how", self.how), ("--leveled", self.leveled), ("--change", self.change), to="--students")
            from trivet.command.draw_weeks import draw_weeks

            return draw_weeks
        self._refuse(("--units", self.units), ("--whole-class", self.whole_class), to="a class of the department")
        if self.leveled and self.how not in (None, "leveled"):
            raise click.UsageError(f"--leveled and --how {self.how} ask for two ways; leave one out")
        if self.check is not None:
            self._refuse(("UNIT", self.unit), ("--year", self.year), ("--write", self.write), to="--check")
            from trivet.command.check_groups import check_groups

            return check_groups
        if self.class_id is None:
            raise click.UsageError("which class? write --class and its id, such as --class p1; or --students N for a class of that size")
        if self.year:
            self._refuse(("UNIT", self.unit), ("--how", self.how), ("--leveled", self.leveled), ("--day", self.day), to="--year")
            if self.change:
                from trivet.command.year_change import year_change

                return year_change
            from trivet.command.year_groups import year_groups

            return year_groups
        if self.unit is None:
            raise click.UsageError("which unit? write its folder's name before --class, or --year for all units of the class")
        if self.day or self.absent:
            self._refuse(("--change", self.change), ("--write", self.write), ("--how", self.how), ("--leveled", self.leveled), to="--day")
            from trivet.command.day_groups import day_groups

            return day_groups
        from trivet.command.unit_groups import unit_groups

        return unit_groups

    @property
    def wanted(self) -> Wanted:
        """Return what the teacher chose of a draw."""
        how = "leveled" if self.leveled else "mixed" if self.how == "auto" else self.how
        return Wanted(Way(how) if how else None, self.team)

    @staticmethod
    def _refuse(*given: tuple[str, object], to: str) -> None:
        for name, value in given:
            if value:
                raise click.UsageError(f"{name} does not go with {to}; leave it out")
