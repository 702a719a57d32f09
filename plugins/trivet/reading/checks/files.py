"""Do the files that the keys of a unit name lie in its folder?"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator

from trivet.model.problem import Problem
from trivet.reading.checks.targets import Fault, address_fault, file_fault, is_address
from trivet.reading.draft import Draft, Said

TEXTS = (".md", ".txt")
_PATH = re.compile(r"\S+/\S*|\S+\.[A-Za-z0-9]{1,5}")
"""A path has no blanks, and a slash or an ending; anything else is a sentence."""


def check(draft: Draft) -> Iterator[Problem]:
    """Yield an error for each file under `open`, `read` and `instead` that is not there."""
    if opened := draft.text("stations", "online", "open"):
        fault = address_fault(opened.text) if is_address(opened.text) else file_fault(opened.text, draft.files, page=True)
        yield from _said(draft, opened, fault)
    if read := draft.text("stations", "teacher-led", "read"):
        fault = file_fault(read.text, draft.files)
        if fault is None and not read.text.endswith(TEXTS):
            fault = Fault(
                "reading-not-text", f"{read.text} is not a text that can be printed", "write the name of a file that ends in .md or .txt"
            )
        yield from _said(draft, read, fault)
    yield from check_instead(draft, draft.files)


def check_instead(draft: Draft, files: Collection[str]) -> Iterator[Problem]:
    """Yield an error where `instead` is a path and there is no such file; a translation says it under the same key."""
    instead = draft.text("stations", "hands-on", "instead")
    if instead and is_path(instead.text):
        fault = file_fault(instead.text, files)
        if fault is None and instead.text.endswith(".md"):
            what = f"{instead.text} is not published as a page of its own, so nobody could open it"
            remedy = f"save it as {instead.text[:-3]}.txt, or write what the student does as a sentence"
            fault = Fault("instead-not-published", what, remedy)
        yield from _said(draft, instead, fault)


def is_path(written: str) -> bool:
    """Say whether a text is a path and no sentence."""
    return _PATH.fullmatch(written) is not None


def _said(draft: Draft, said: Said, fault: Fault | None) -> Iterator[Problem]:
    if fault:
        yield draft.error(fault.code, said, fault.what, fault.remedy)
