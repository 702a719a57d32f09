"""From a view value to a page's body: Jinja with autoescape, no blank line in the result."""

from __future__ import annotations

from functools import cache
from typing import Any

from jinja2 import Environment, PackageLoader, StrictUndefined

from trivet.pages.words import Words


@cache
def environment() -> Environment:
    """Return the templates of pages; an unknown name is an error, never an empty place."""
    return Environment(
        loader=PackageLoader("trivet.pages", "templates"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )


def render(template: str, words: Words, **view: Any) -> str:
    """Return the body of a page: `t` gives templates their words, everything else comes in `view`."""
    html = environment().get_template(template).render(t=words, **view)
    return "\n".join(line.strip() for line in html.splitlines() if line.strip())
