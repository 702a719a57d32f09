"""What a teacher's link may point at: https and mail addresses, files of the unit's folder, other units."""

from __future__ import annotations

import difflib
import html
import posixpath
import re
from collections.abc import Collection
from dataclasses import dataclass
from urllib.parse import quote, unquote, urlsplit

from trivet.pages.links import relative, unit_address

SCHEMES = ("https", "mailto")
_SCHEME = re.compile(r"[a-z][a-z0-9+.\-]*:", re.IGNORECASE)
_COPY = "copy the picture into the unit's folder and give its name"
_NAME = "name a file in the unit's folder"
_UNSEEN = re.compile(r"[\x00-\x1f\x7f-\x9f\u00ad\u200b-\u200f\u202a-\u202e\u2060-\u2064\ufeff]")


@dataclass(frozen=True, slots=True)
class Refused:
    """A link that is not followed: what is wrong with it and what to write."""

    what: str
    remedy: str


@dataclass(frozen=True, slots=True, kw_only=True)
class UnitLinks:
    """Resolves the links in the prose of one unit, as seen from one page.

    `files` are the paths in the unit's folder, `units` the slugs of all units; `page` is the address of the page that carries the prose.
    """

    slug: str
    files: Collection[str]
    units: Collection[str]
    page: str

    def link(self, written: str) -> str | Refused:
        """Return the address to put into `href`, or why there is none."""
        target = plain(written)
        if _SCHEME.match(target):
            return outside(target)
        found = self._inside(target)
        return found if isinstance(found, Refused) else relative(self.page, found)

    def image(self, written: str) -> str | Refused:
        """Return the address to put into `src`, or why there is none: pictures come from the unit's folder alone."""
        target = plain(written)
        if _SCHEME.match(target) or target.startswith("//"):
            return Refused(f"a picture from elsewhere: {shown(target)}", _COPY)
        found = self._inside(target)
        if isinstance(found, str) and not found.startswith(unit_address(self.slug)):
            return Refused(f"{shown(target)} is not in the unit's folder", _COPY)
        return found if isinstance(found, Refused) else relative(self.page, found)

    def _inside(self, target: str) -> str | Refused:
        path, mark, anchor = target.partition("#")
        path = unquote(path.partition("?")[0])
        if target.startswith("//") or path.startswith("/") or "\\" in path:
            return Refused(f"{shown(target)} points outside the unit's folder", "give the path from this file on, such as data/results.csv")
        if not path:
            return Refused(f"there is no place called {shown(target)} on the page", _NAME)
        whole = posixpath.normpath(posixpath.join(self.slug, path))
        if whole.startswith("..") or whole == ".":
            return Refused(f"{shown(target)} points outside the units", _NAME)
        slug, _, inner = whole.partition("/")
        if slug != self.slug:
            if slug in self.units and inner in ("", "index.md"):
                return unit_address(slug) + mark + anchor
            return Refused(f"there is no {shown(target)}", _nearest(target, [f"../{u}/" for u in sorted(self.units)]))
        if inner in ("", "index.md"):
            return unit_address(slug) + mark + anchor
        if inner.endswith(".md") and inner in self.files:
            return Refused(f"{inner} has no page of its own", "say what it is, without a link")
        for name in (inner, f"{inner}/index.html"):
            if name in self.files:
                return unit_address(slug) + quote(inner + ("/" if name != inner else "")) + mark + anchor
        return Refused(f"there is no {shown(target)} in the unit's folder", _nearest(inner, sorted(f for f in self.files if not f.endswith(".md"))))


def plain(written: str) -> str:
    """Return an address without entities and without characters that no one sees, as a browser would read it."""
    for _ in range(3):
        written = html.unescape(written)
    return _UNSEEN.sub("", written).strip()


def outside(target: str) -> str | Refused:
    """Return an address with a scheme where the scheme is on the list."""
    parts = urlsplit(target) if target.count("[") == target.count("]") == 0 else None
    if parts and parts.scheme.lower() in SCHEMES and (parts.netloc or parts.scheme.lower() == "mailto"):
        return target
    if target.lower().startswith("http:"):
        return Refused(f"{shown(target)} is not a safe address", f"write https://{target[5:].lstrip('/')}")
    return Refused(f"{shown(target)} is not a web address", "begin the address with https://")


def shown(target: str) -> str:
    """Return an address cut to a readable length for a message."""
    return target if len(target) <= 60 else target[:57] + "..."


def _nearest(target: str, names: list[str]) -> str:
    near = difflib.get_close_matches(target, names, 1, 0.5)
    return f"write {near[0]}" if near else _NAME
