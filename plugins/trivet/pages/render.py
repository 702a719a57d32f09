"""From a view value to a page's body: Jinja with autoescape, no blank line in the result."""

from __future__ import annotations

import re
from functools import cache
from typing import Any

from jinja2 import Environment, PackageLoader, StrictUndefined
from jinja2.ext import Extension

from trivet.pages.words import Words

_SAID = re.compile(r"""\bt\((["'])([a-z_.0-9]+)\1\)""")


class SaidOnce(Extension):
    """Puts each sentence that needs no value into its template when that is compiled, and not anew on every page."""

    def preprocess(self, source: str, name: str | None, filename: str | None = None) -> str:
        """Replace each call of `t` with a key alone by its sentence. Raises KeyError with the key where it does not exist."""
        words = self.environment.globals["t"]
        assert isinstance(words, Words)
        return _SAID.sub(lambda found: _literal(words(found[2])), source)


def _literal(sentence: str) -> str:
    """Write a text as a Jinja string."""
    escaped = sentence.encode("unicode_escape").decode("ascii").replace('"', r"\x22")
    return f'"{escaped}"'


@cache
def environment(words: Words) -> Environment:
    """Return the templates of pages in one language; an unknown name is an error, never an empty place.

    `t` gives templates their words; everything else comes with the page.
    """
    made = Environment(
        loader=PackageLoader("trivet.pages", "templates"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        auto_reload=False,
    )
    made.globals["t"] = words
    made.add_extension(SaidOnce)
    return made


def render(template: str, words: Words, **view: Any) -> str:
    """Return the body of a page from what is to be shown."""
    html = environment(words).get_template(template).render(view)
    return "\n".join([said for line in html.splitlines() if (said := line.strip())])
