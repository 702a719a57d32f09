"""What a teacher's link may point at: https and mail addresses, files of the unit's folder, other units.

A link that leads nowhere is a problem when the unit is read; here it is only never made, whatever was read before.
"""

from __future__ import annotations

import html
import posixpath
import re
from collections.abc import Collection
from dataclasses import dataclass
from urllib.parse import quote, unquote, urlsplit

from trivet.pages.links import relative, unit_address

SCHEMES = ("https", "mailto")
_SCHEME = re.compile(r"[a-z][a-z0-9+.\-]*:", re.IGNORECASE)
_UNSEEN = re.compile(r"[\x00-\x1f\x7f-\x9f\u00ad\u200b-\u200f\u202a-\u202e\u2060-\u2064\ufeff]")


@dataclass(frozen=True, slots=True, kw_only=True)
class UnitLinks:
    """Resolves the addresses in one unit, as seen from the page at `page`.

    `files` are the paths in the unit's folder, `units` the slugs of all units.
    """

    slug: str
    files: Collection[str]
    units: Collection[str]
    page: str

    def link(self, written: str) -> str | None:
        """Return the address to put into `href`, None where there is to be no link."""
        target = plain(written)
        if _SCHEME.match(target):
            return outside(target)
        found = self._inside(target)
        return found and relative(self.page, found)

    def image(self, written: str) -> str | None:
        """Return the address to put into `src`: pictures come from the unit's folder alone."""
        target = plain(written)
        found = None if _SCHEME.match(target) else self._inside(target)
        if found is None or not found.startswith(unit_address(self.slug)):
            return None
        return relative(self.page, found)

    def _inside(self, target: str) -> str | None:
        """Return where a path leads, from the site's root."""
        path, mark, anchor = target.partition("#")
        path = unquote(path.partition("?")[0])
        if not path or path.startswith("/") or "\\" in path:
            return None
        slug, _, inner = posixpath.normpath(posixpath.join(self.slug, path)).partition("/")
        if inner in ("", "index.md"):
            known = slug == self.slug or slug in self.units
            return unit_address(slug) + mark + anchor if known else None
        published = {name for name in self.files if not name.endswith(".md")} if slug == self.slug else set()
        if inner in published:
            return unit_address(slug) + quote(inner) + mark + anchor
        if f"{inner}/index.html" in published:
            return unit_address(slug) + quote(inner) + "/" + mark + anchor
        return None


def plain(written: str) -> str:
    """Return an address without entities and without characters that no one sees, as a browser would read it."""
    for _ in range(3):
        written = html.unescape(written)
    return _UNSEEN.sub("", written).strip()


def outside(target: str) -> str | None:
    """Return an address with a scheme where the scheme is on the list, else None."""
    if "[" in target or "]" in target:
        return None
    parts = urlsplit(target)
    scheme = parts.scheme.lower()
    return target if scheme in SCHEMES and (parts.netloc or scheme == "mailto") else None
