"""What a lesson sheet keeps ready for a teacher's own device: words for its scripts, and blanks for groups that the site does not tell.

A unit whose groups are private looks, byte for byte, like one that is not drawn: the blanks hold nothing of either.
"""

from __future__ import annotations

import json

from trivet.model.station import Kind
from trivet.pages.lesson_groups import GroupBoard, Member, Team
from trivet.pages.lesson_launch import Check
from trivet.pages.lesson_run import LessonRun
from trivet.pages.stations import tag
from trivet.pages.words import Words

NOBODY = Member("", "", "")
FOR_NAMES = (
    "names.opened",
    "names.forgotten",
    "names.no_file",
    "names.other_class",
    "names.no_groups",
    "names.hide",
    "names.show",
    "names.not_yet",
    "names.everyone",
)


def for_script(run: LessonRun) -> str:
    """Return the words that scripts fill in, as JSON: sentences with their places, duties and kinds of spot check by id."""
    table = run.words.table
    roles = {} if run.unit.roles == "students" else {role.id: role.name.lower() for role in run.school.roles}
    found = {
        **{key.rpartition(".")[2]: table[key] for key in FOR_NAMES},
        "students": table["lesson.students"],
        "alone": table["lesson.by_oneself"],
        "check": table["lesson.check"],
        "roles": roles,
    }
    return json.dumps(found, ensure_ascii=False, separators=(",", ":"))


def blank_boards(run: LessonRun) -> tuple[GroupBoard, ...]:
    """Return a board for each station with one team, and one device where it has some, of nobody."""
    return tuple(
        GroupBoard(
            letter="",
            station=tag(kind, run.words),
            place=run.room.stands.get(kind, "") if run.room else "",
            count="",
            pairs=((NOBODY,),) if kind is Kind.ONLINE else (),
            alone=(),
            teams=(Team("", (NOBODY,)),),
        )
        for kind in Kind
    )


def blank_checks(words: Words) -> tuple[Check, ...]:
    """Return a spot check at each station, of nobody."""
    return tuple(Check("", "", "", "", tag(kind, words), "", "", "") for kind in Kind)
