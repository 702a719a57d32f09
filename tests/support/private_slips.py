"""Slips in the private list of a class, for one message of each code: `trivet check` never opens such a list, so no example can."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.support.department import tiny_class
from trivet.model.problem import Problem
from trivet.reading.absences import absences_of
from trivet.reading.pre_check import pre_checks_of
from trivet.reading.private import check_local
from trivet.reading.roster import roster_of

FILE = "private/roster-p1.csv"
LISTS = (
    "seat,level\n1,5.5\n1,2\n7,3\n9,3\nx,3\n2,120\n",
    "name,level\na,3\n",
    "seat,seat,nickname\n1,1,x\n",
    "seat,agreement,adult\n1,perhaps,yes\n2,yes,no,more\n",
    "seat,rules\n1,not in one team: 1\n2,not in one team: 40; same team: 6\n3,far from 4\n4,same team: 5; not in one team: 5\n",
    'seat,name\n1,"a\n',
    "seat\n1\n",
    "seat\n6\n",
)
ABSENCES = ("date,seat\n2026-11-30,1\nlast Tuesday,2\n2026-11-30,40\n", "who\n1\n")
PRE_CHECKS = (
    "unit,seat,score\nmoving-plates,1,3/5\nmoving-plates,1,4/5\nmoving-plate,2,3/5\nmoving-plates,9,3/5\nmoving-plates,3,many\n",
    "who\n1\n",
)
LOCAL = ("folder:\n", "folder: nowhere\n", "folder: units\n")


def private_problems() -> Iterator[Problem]:
    """Yield what is wrong in lists of a class of six, whose seat 6 has left, and in files that name a private folder."""
    for text in LISTS:
        yield from roster_of(text, FILE, tiny_class(size=6, gone=(6,)))[1]
    for text in ABSENCES:
        yield from absences_of(text, "private/absences-p1.csv", tiny_class(size=6))[1]
    for text in PRE_CHECKS:
        yield from pre_checks_of(text, "private/pre-check-p1.csv", tiny_class(size=6), ("moving-plates",))[1]
    with TemporaryDirectory() as folder:
        (Path(folder) / "units").mkdir()
        for text in LOCAL:
            (Path(folder) / "trivet.local.yml").write_text(text, encoding="utf-8")
            yield from check_local(Path(folder))
