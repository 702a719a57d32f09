"""Do links and pictures in prose lead somewhere, and does the prose keep to Markdown?"""

from __future__ import annotations

from collections.abc import Iterator

from trivet.model.problem import Place, Problem, Severity
from trivet.reading.checks.targets import Surroundings, link_fault, picture_fault
from trivet.reading.prose import Spot, links, tags


def check(file: str, prose: str, first_line: int, around: Surroundings) -> Iterator[Problem]:
    """Yield the problems of the prose that begins at `first_line` of `file`."""
    for link in links(prose, first_line):
        fault = (picture_fault if link.image else link_fault)(link.target.text, around)
        where = "picture" if link.image else "link"
        if fault:
            yield Problem(fault.code, Severity.ERROR, _place(file, link.target), fault.what, fault.remedy, where)
        if link.image and not link.words:
            what = "no words say what the picture shows, for those who can't see it"
            remedy = f"write ![what it shows]({link.target.text})"
            yield Problem("picture-without-words", Severity.WARNING, _place(file, link.target), what, remedy, where)
    for tag in tags(prose, first_line):
        what = f"HTML is not used in prose, so {_shown(tag.text)} will show as text"
        yield Problem("html-in-prose", Severity.ADVICE, _place(file, tag), what, "take it out, or write it in Markdown")


def _shown(tag: str) -> str:
    return tag if len(tag) <= 40 else tag[:37] + "..."


def _place(file: str, spot: Spot) -> Place:
    return Place(file, spot.line, spot.column, max(1, len(spot.text)))
