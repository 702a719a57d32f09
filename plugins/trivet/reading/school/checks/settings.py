"""Does school.yml list units that exist, and the address that the site is published at?"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator
from pathlib import Path

from trivet.model.problem import Problem
from trivet.model.school import Settings
from trivet.reading.school.checks.known import not_known
from trivet.reading.school.sheet import Sheet
from trivet.reading.school.values import entries

SITE_URL = re.compile(r"""^site_url\s*:\s*(?P<quote>["']?)(?P<address>https?://[^\s"'#]+)(?P=quote)\s*(?:#.*)?$""", re.MULTILINE)


def check_simulations(sheet: Sheet, settings: Settings, units: Collection[str]) -> Iterator[Problem]:
    """Yield reviewed simulations of units that do not exist."""
    where = dict(entries(sheet.data.get("simulations", []), ("simulations",)))
    for slug in settings.simulations:
        if slug not in units:
            yield not_known(sheet, where[slug], "unit", slug, units, home="units/")


def check_site(sheet: Sheet, settings: Settings, mkdocs: Path) -> Iterator[Problem]:
    """Yield a warning where mkdocs.yml publishes at another address than `site` says; nothing else of that file is read."""
    published = published_address(mkdocs)
    if published and settings.site and published.rstrip("/") != settings.site.rstrip("/"):
        what = f"cards print {settings.site}, and mkdocs.yml publishes at {published}"
        yield sheet.warning("other-site-address", ("site",), what, f"write site: {published}, or mend site_url in mkdocs.yml")


def published_address(mkdocs: Path) -> str:
    """Return the address on the `site_url:` line, "" where there is none or it is not a plain address."""
    try:
        text = mkdocs.read_text(encoding="utf-8-sig", errors="replace")
    except OSError:
        return ""
    found = SITE_URL.search(text)
    return found["address"] if found else ""
