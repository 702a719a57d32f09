"""What leaves the core: pages and assets, for any host to publish."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True)
class Page:
    """A page: `path` is its address without the leading slash and with the trailing one (`units/float-or-sink/`; "" is home).

    `meta` is plain front matter: `title` always, then `description`, `kind` (a kind of page, for the template), `lang`, `search` (bool).
    `body` is HTML with no blank line in it.
    """

    path: str
    meta: Mapping[str, str | bool]
    body: str


@dataclass(frozen=True, slots=True)
class Asset:
    """A file of the site as it stands."""

    path: str
    content: bytes


@dataclass(frozen=True, slots=True)
class Site:
    """All pages and assets."""

    pages: tuple[Page, ...] = ()
    assets: tuple[Asset, ...] = field(default=())
