"""Is there code in a unit folder whose units nobody has reviewed?"""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path, PurePosixPath

from trivet.model.problem import Place, Problem, Severity

CODE = frozenset({
    ".js", ".mjs", ".cjs", ".jsx", ".ts", ".tsx", ".wasm", ".html", ".htm", ".xhtml", ".shtml", ".mht", ".mhtml", ".css", ".php", ".swf",
    ".xml", ".xsl", ".xslt", ".hta", ".jar", ".webmanifest",
})  # fmt: skip
"""Files that a browser would run, or that change how a page looks."""

_SVG_CODE = re.compile(
    r"<\s*script|<\s*foreignobject|\son[a-z]+\s*=|(?:java|vb)script:|(?:href|src)\s*=\s*[\"']?\s*(?:https?:)?//|<!entity|@import",
    re.IGNORECASE,
)


def check(folder: Path, where: str, files: tuple[str, ...], *, reviewed: bool, slug: str) -> Iterator[Problem]:
    """Yield an error for each file with code, where the unit is not `reviewed`; a picture that holds code is never let pass.

    `folder` is called `where` in problems (`units/float-or-sink/`); `files` are the paths inside it.
    """
    for name in files:
        suffix = PurePosixPath(name).suffix.lower()
        if suffix in CODE and not reviewed:
            remedy = (
                f"have it reviewed and write {slug} under simulations in school/school.yml, or take the file out"
                if slug
                else "take the file out"
            )
            yield Problem("code-not-listed", Severity.ERROR, Place(where + name), "this file holds code that a browser would run", remedy)
        elif suffix == ".svg":
            yield from _picture(folder / name, where + name)


def _picture(path: Path, file: str) -> Iterator[Problem]:
    try:
        text = path.read_text(encoding="utf-8", errors="replace")
    except OSError as error:
        yield Problem(
            "file-unreadable", Severity.ERROR, Place(file), f"this file can't be opened ({error.strerror})", "check who may read it"
        )
        return
    found = _SVG_CODE.search(text)
    if found:
        line = text.count("\n", 0, found.start()) + 1
        place = Place(file, line, found.start() - text.rfind("\n", 0, found.start()), len(found[0]))
        what = f"this picture holds code or loads something: {found[0].strip()}"
        yield Problem("picture-with-code", Severity.ERROR, place, what, "save it as a plain SVG or as PNG")
