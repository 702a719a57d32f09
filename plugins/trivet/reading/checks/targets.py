"""What a path or an address in a unit may point at; pages follow the same rule when they make links."""

from __future__ import annotations

import posixpath
import re
from collections.abc import Collection
from dataclasses import dataclass

from trivet.reading.near import nearest

_SCHEME = re.compile(r"[a-z][a-z0-9+.\-]*:", re.IGNORECASE)
_UNSEEN = re.compile(r"[\x00-\x1f\x7f-\x9f\u00ad\u200b-\u200f\u202a-\u202e\u2060-\u2064\ufeff]")
_NAME_IT = "write the name of a file in the unit's folder"


@dataclass(frozen=True, slots=True)
class Fault:
    """Why a target is not followed."""

    code: str
    what: str
    remedy: str


@dataclass(frozen=True, slots=True)
class Surroundings:
    """What a target may be: a file of the folder of `slug`, or a unit."""

    slug: str
    files: Collection[str]
    units: Collection[str]


def link_fault(written: str, around: Surroundings) -> Fault | None:
    """Return what is wrong with the target of a link, None where it is an address or something that exists."""
    target = plain(written)
    return _address_fault(target) if _SCHEME.match(target) else _inside_fault(target, around)


def picture_fault(written: str, around: Surroundings) -> Fault | None:
    """Return what is wrong with the target of a picture: it must lie in the unit's folder."""
    target = plain(written)
    if _SCHEME.match(target) or target.startswith("//"):
        return Fault(
            "picture-from-elsewhere",
            f"a picture from elsewhere: {shown(target)}",
            "copy the picture into the unit's folder and write its name",
        )
    fault = _inside_fault(target, around)
    if fault is None and _inner(target, around.slug)[0] != around.slug:
        what = f"{shown(target)} is not in the unit's folder"
        return Fault("picture-from-elsewhere", what, "copy the picture into the unit's folder and write its name")
    return fault


def file_fault(written: str, files: Collection[str], *, page: bool = False) -> Fault | None:
    """Return what is wrong with the path of a file in the unit's folder; a folder with an index.html counts where `page`."""
    if _SCHEME.match(written) or written.startswith(("/", "//")) or "\\" in written or ".." in written.split("/"):
        what = f"{shown(written)} points outside the unit's folder"
        return Fault("path-outside", what, "copy the file into this folder and write its path from here on, such as data/results.csv")
    name = posixpath.normpath(written)
    if name != written.rstrip("/"):
        # Whoever uses the path compares it with the names of files, so there is one way to write each.
        return Fault("path-roundabout", f"{shown(written)} is a roundabout way to write a path", f"write {name}")
    if name in files or (page and posixpath.join(name, "index.html").removeprefix("./") in files):
        return None
    if page and "." not in name:
        return _no_page(written, name, files)
    what = f"there is no file {shown(written)} in the unit's folder"
    names = [each for each in sorted(files) if not page or not each.endswith(".md")]
    names += [each.removesuffix("index.html") for each in names if page and each.endswith("/index.html")]
    return Fault("file-not-there", what, _nearest(written, names))


def _no_page(written: str, name: str, files: Collection[str]) -> Fault:
    """A folder is opened for the page that lies in it."""
    near = nearest(written, [each.removesuffix("index.html") for each in sorted(files) if each.endswith("/index.html")], 0.5)
    what = f"there is no page {shown(name)}/index.html in the unit's folder"
    other = "" if near else ", or write an https address"
    return Fault("file-not-there", what, f"{f'write {near}, or ' if near else ''}save the page as {shown(name)}/index.html{other}")


def address_fault(written: str) -> Fault | None:
    """Return what is wrong with an https address."""
    target = plain(written)
    return _address_fault(target) or (
        Fault("address-not-safe", f"{shown(target)} is no page", "write an https address") if target[:7] == "mailto:" else None
    )


def is_address(written: str) -> bool:
    """Say whether a text begins like an address with a scheme."""
    return _SCHEME.match(written) is not None


def plain(written: str) -> str:
    """Return an address without entities and without characters that no one sees, as a browser would read it."""
    if "&" in written:
        from html import unescape  # noqa: PLC0415 - its table of entities takes a while to load, and links rarely need it

        for _ in range(3):
            written = unescape(written)
    return _UNSEEN.sub("", written).strip()


def shown(target: str) -> str:
    """Return an address cut to a readable length for a message."""
    return target if len(target) <= 60 else target[:57] + "..."


def _address_fault(target: str) -> Fault | None:
    scheme, _, rest = target.partition(":")
    scheme = scheme.lower()
    brackets = "[" in target or "]" in target
    host = re.match(r"//[^/?#]+", rest)
    if not brackets and ((scheme == "https" and host) or scheme == "mailto"):
        return None
    if scheme == "http":
        return Fault("address-not-safe", f"{shown(target)} is not a safe address", f"write https://{target[5:].lstrip('/')}")
    return Fault("address-not-safe", f"{shown(target)} is not a web address", "write an address that begins with https://")


def _path_of(target: str) -> str:
    path = target.partition("#")[0].partition("?")[0]
    if "%" in path:
        from urllib.parse import unquote  # noqa: PLC0415 - seldom needed

        return unquote(path)
    return path


def _inner(target: str, slug: str) -> tuple[str, str]:
    path = _path_of(target)
    whole = posixpath.normpath(posixpath.join(slug, path))
    first, _, inner = whole.partition("/")
    return first, inner


def _inside_fault(target: str, around: Surroundings) -> Fault | None:
    path = _path_of(target)
    slug, inner = _inner(target, around.slug)
    if target.startswith("//") or path.startswith("/") or "\\" in path or slug in ("..", "."):
        what = f"{shown(target)} points outside the unit's folder"
        return Fault("path-outside", what, "write the path from this file on, such as data/results.csv")
    if not path:
        return Fault("link-to-nothing", f"there is no place called {shown(target) or 'nothing'} on the page", _NAME_IT)
    return _missing(target, slug, inner, around)


def _missing(target: str, slug: str, inner: str, around: Surroundings) -> Fault | None:
    published = [name for name in sorted(around.files) if not name.endswith(".md")]
    if inner in ("", "index.md") and (slug == around.slug or slug in around.units):
        return None
    if slug != around.slug:
        return Fault("link-to-nothing", f"there is no {shown(target)}", _nearest(target, [f"../{unit}/" for unit in sorted(around.units)]))
    if inner in published or f"{inner}/index.html" in published:
        return None
    what = f"there is no {shown(target)} in the unit's folder"
    if inner in around.files:
        what = f"{shown(target)} is not published as a page of its own"
    return Fault("link-to-nothing", what, _nearest(inner, published))


def _nearest(target: str, names: list[str]) -> str:
    near = nearest(target, names, 0.5)
    return f"write {near}" if near else _NAME_IT
