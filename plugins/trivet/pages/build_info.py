"""When a site was built: the one thing on it that is not in its files."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date


@dataclass(frozen=True, slots=True)
class BuildInfo:
    """The day of the build, shown in page footers only, and a name for the version where there is one."""

    date: date
    version: str = ""
