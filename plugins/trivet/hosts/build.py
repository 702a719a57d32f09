"""From a project folder to a site's pages: what both hosts share."""

from __future__ import annotations

import gc
import os
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

from trivet.hosts.only import alone, plans_of, problems_of, unknown, with_its_classes
from trivet.hosts.unit_files import unit_assets
from trivet.model.page import Site
from trivet.model.plan import Plans
from trivet.model.problem import Problem, Severity, in_order
from trivet.pages.site import BuildInfo, make_site
from trivet.planning.department import plan_department
from trivet.planning.timed_runs import settled
from trivet.reading.department import read_department


@dataclass(frozen=True, slots=True)
class Built:
    """A site, and every problem met on the way."""

    site: Site
    problems: tuple[Problem, ...]
    sources: dict[str, str]

    @property
    def errors(self) -> tuple[Problem, ...]:
        """The problems that stop a build."""
        return tuple(p for p in self.problems if p.severity is Severity.ERROR)


def build_site(root: Path, only: str = "") -> Built:
    """Read, plan and lay out the department under `root`; `only`: one unit, with the pages that stand for the whole department.

    Reads committed files alone, never the private folder.
    """
    with _uncollected():
        return _built(root, only)


@contextmanager
def _uncollected() -> Iterator[None]:
    """Put off the search for circular garbage: nearly all that is made here stays, so that each search would go through it for nothing."""
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_on:
            gc.enable()


def _built(root: Path, only: str) -> Built:
    read = read_department(root, only)
    department = with_its_classes(read.department, only) if read.department and only else read.department
    department = settled(department) if department else None
    plans = plan_department(department) if department else Plans((), (), ())
    problems = [*read.problems, *plans.problems]
    if only:
        department, plans = department and alone(department, only), plans_of(plans, only)
        problems = [*problems_of(problems, only), *unknown(root, only)]
    ordered = in_order(problems)
    site = make_site(department, plans, ordered, build_info(), read.sources)
    # A file with an error, such as a list of names, is not published: not even in a preview, which goes on beside errors.
    faulty = {problem.place.file for problem in ordered if problem.severity is Severity.ERROR}
    found = (asset for unit in (department.units.values() if department else ()) for asset in unit_assets(root, unit))
    files = [asset for asset in found if asset.path not in faulty]
    return Built(Site(site.pages, (*site.assets, *files)), ordered, dict(read.sources))


def build_info() -> BuildInfo:
    """The date of this build: from SOURCE_DATE_EPOCH where it is set, else today (UTC)."""
    epoch = os.environ.get("SOURCE_DATE_EPOCH", "")
    when = datetime.fromtimestamp(int(epoch), UTC) if epoch.isdigit() else datetime.now(UTC)
    return BuildInfo(when.date())
