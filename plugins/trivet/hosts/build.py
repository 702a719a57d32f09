"""From a project folder to a site's pages: what both hosts share."""

from __future__ import annotations

import os
from dataclasses import dataclass, replace
from datetime import UTC, datetime
from pathlib import Path

from trivet.hosts.unit_files import unit_assets
from trivet.model.department import Department
from trivet.model.page import Site
from trivet.model.plan import Plans
from trivet.model.problem import Problem, Severity, in_order
from trivet.pages.site import BuildInfo, make_site
from trivet.planning.department import plan_department
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
    """Read, plan and lay out the department under `root`; `only` keeps the pages of one unit and what all pages need.

    Reads committed files alone, never the private folder.
    """
    read = read_department(root)
    problems = list(read.problems)
    plans = Plans((), (), ())
    if read.department is not None:
        plans = plan_department(_only(read.department, only))
        problems += plans.problems
    ordered = in_order(problems)
    site = make_site(read.department, plans, ordered, build_info(), read.sources)
    return Built(_with_files(site, read.department, root, only), ordered, dict(read.sources))


def _only(department: Department, only: str) -> Department:
    if not only:
        return department
    runs = tuple(run for run in department.school.runs if run.unit == only)
    units = {slug: unit for slug, unit in department.units.items() if slug == only}
    return replace(department, units=units, school=replace(department.school, runs=runs))


def _with_files(site: Site, department: Department | None, root: Path, only: str) -> Site:
    units = department.units.values() if department else ()
    files = [asset for unit in units if only in ("", unit.slug) for asset in unit_assets(root, unit)]
    return Site(tuple(p for p in site.pages if _kept(p.path, only)), (*site.assets, *files))


def _kept(path: str, only: str) -> bool:
    return not only or path.count("/") < 2 or only in path.split("/")


def build_info() -> BuildInfo:
    """The date of this build: from SOURCE_DATE_EPOCH where it is set, else today (UTC)."""
    epoch = os.environ.get("SOURCE_DATE_EPOCH", "")
    when = datetime.fromtimestamp(int(epoch), UTC) if epoch.isdigit() else datetime.now(UTC)
    return BuildInfo(when.date())
