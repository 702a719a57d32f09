"""`trivet check`: all that is wrong in a department, with what to write instead."""

from __future__ import annotations

import gc
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path

import click

from trivet.command.root import root_of
from trivet.model.department import Department
from trivet.model.problem import Problem, Severity, in_order
from trivet.reading import report
from trivet.reading.department import read_department
from trivet.reading.near import nearest

REPORTERS: Mapping[str, Callable[..., str]] = {
    "text": report.text,
    "json": lambda problems, _sources, advice: report.json(problems, advice=advice),
    "annotations": lambda problems, _sources, advice: report.annotations(problems, advice=advice),
}


@dataclass(frozen=True, slots=True)
class Checked:
    """Everything that was found, with the texts to quote from; `department` is None where the school can't be read.

    `left_out` are the units with an error, which the department does without.
    """

    problems: tuple[Problem, ...]
    sources: Mapping[str, str]
    department: Department | None
    left_out: tuple[str, ...] = ()

    @property
    def failed(self) -> bool:
        """Whether there is an error."""
        return any(problem.severity is Severity.ERROR for problem in self.problems)


def problems_of(root: Path) -> Checked:
    """Read the department at `root`, plan what can be planned, and return all problems in order."""
    from trivet.planning.department import plan_department

    read = read_department(root)
    planned = plan_department(read.department).problems if read.department else ()
    return Checked(in_order([*read.problems, *planned]), read.sources, read.department, read.units_with_problems)


def _known(_context: click.Context, _option: click.Parameter, form: str) -> str:
    if form not in REPORTERS:
        near = nearest(form, REPORTERS)
        raise click.UsageError(f'there is no report "{form}"; ' + (f"write {near}" if near else f"write one of: {', '.join(REPORTERS)}"))
    return form


_HELP = "A report for people, for programs, or for the pages of a git host."


@click.command(short_help="Check all units and the school.", context_settings={"allow_extra_args": True})
@click.option("--all", "advice", is_flag=True, help="Show advice and the reading level of each student card too.")
@click.option("--strict", is_flag=True, help="Count warnings as errors.")
@click.option("--format", "form", metavar="|".join(REPORTERS), default="text", show_default=True, callback=_known, help=_HELP)
@click.pass_context
def check(context: click.Context, advice: bool, strict: bool, form: str) -> None:
    """Check all units and the school: each problem with its file, line, column and remedy.

    Exits with 1 where there is an error (with --strict also a warning), else with 0.
    """
    if context.args:
        said = " ".join(context.args)
        raise click.UsageError(f"trivet check looks at everything; leave out {said}, and look for its lines in the report")
    # Everything made here lives until the report is out, so looking for garbage would only cost time.
    gc.disable()
    try:
        checked = problems_of(root_of(context))
    finally:
        gc.enable()
    if advice and form == "text" and checked.department:
        click.echo(levels(checked.department, checked.left_out), nl=False)
    click.echo(REPORTERS[form](checked.problems, checked.sources, advice=advice), nl=False)
    warned = any(problem.severity is Severity.WARNING for problem in checked.problems)
    context.exit(1 if checked.failed or (strict and warned) else 0)


def levels(department: Department, left_out: tuple[str, ...] = ()) -> str:
    """Return the reading level of each student card, one line each, with its hardest sentence; a unit with an error says so."""
    from trivet.reading.checks.student_cards import card_levels

    lines = []
    for slug, unit in department.units.items():
        for name, found in card_levels(unit):
            said = f"{found.words_for_band}; hardest: {found.hardest[0]}" if found else "too short for a reading level"
            lines.append(f"{slug}, {name}: {said}")
    lines += (f"{slug}: left out until its errors are mended" for slug in left_out)
    return "\n".join(["Reading levels (Flesch-Kincaid, new words left out)", *lines, "", ""]) if lines else ""
