"""Do the files that the keys of a unit name lie in its folder?"""

from __future__ import annotations

import re
from collections.abc import Iterator

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
    instead = draft.text("stations", "hands-on", "instead")
    if instead and _PATH.fullmatch(instead.text):
        yield from _said(draft, instead, file_fault(instead.text, draft.files))


def _said(draft: Draft, said: Said, fault: Fault | None) -> Iterator[Problem]:
    if fault:
        yield draft.error(fault.code, said, fault.what, fault.remedy)
