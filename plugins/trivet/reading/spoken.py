"""The one table that maps the keys of a unit file to the fields of the model."""

from __future__ import annotations

from trivet.model.station import Kind

STATIONS = {"online": Kind.ONLINE, "hands-on": Kind.HANDS_ON, "teacher-led": Kind.TEACHER_LED}

UNIT = {
    "title": "title",
    "question": "question",
    "grades": "grades",
    "standards": "standards",
    "new words": "new_words",
    "round": "round_minutes",
    "stretch": "stretch",
    "prefer": "prefer",
    "group by": "group_by",
    "level tolerance": "level_tolerance_percent",
    "roles": "roles",
    "returns to": "returns_to",
    "pre-check": "pre_check",
    "spot checks": "spot_checks",
    "reflection": "reflection",
    "write-up": "write_up",
    "rubric": "rubric",
}
"""Top-level keys; the stations stand in `STATIONS`."""

STATION = {
    "title": "title",
    "goal": "goal",
    "steps": "steps",
    "done when": "done_when",
    "finished early": "finished_early",
    "work in": "work_in",
    "again": "again",
    "variables": "variables",
    "record": "record",
}
"""Keys that every station has."""

OF_STATION = {
    Kind.ONLINE: {
        **STATION,
        "open": "open",
        "use": "use",
        "leave alone": "leave_alone",
        "explore": "explore_minutes",
        "if down": "if_down",
    },
    Kind.HANDS_ON: {
        **STATION,
        "materials": "materials",
        "hazards": "hazards",
        "set up": "set_up_minutes",
        "clean up": "clean_up_minutes",
        "instead": "instead",
        "put away": "put_away",
        "safety notes": "safety_notes",
        "expected": "expected",
        "watch": "watch_seconds",
    },
    Kind.TEACHER_LED: {
        **STATION,
        "read": "read",
        "start alone": "start_alone",
        "data": "data",
        "questions": "questions",
        "misconceptions": "misconceptions",
        "quick check": "quick_check",
    },
}

QUESTION = {"ask": "ask", "listen for": "listen_for"}
CHECK_ITEM = {"ask": "ask", "answer": "answer", "skill": "skill"}
SPOT_CHECK = {"station": "station", "ask": "ask", "listen for": "listen_for"}
VARIABLES = {"change": "change", "measure": "measure", "keep": "keep", "printed": "printed"}
RECORD = {"columns": "columns", "rows": "rows"}
EXPECTED = {"of": "of", "value": "value", "tolerance": "tolerance", "source": "source"}
DATA = {"columns": "columns", "rows": "rows", "show": "drawn"}
MISCONCEPTION = {"hear": "hear", "do": "do"}
WRITE_UP = {"claim starts": "claim_starts", "evidence": "evidence", "reasoning": "reasoning", "at home": "at_home"}
RUBRIC = {"part": "part", "levels": "levels"}

TRANSLATED = {"title": "title", "question": "question"}
TRANSLATED_STATION = {
    "title": "title",
    "goal": "goal",
    "steps": "steps",
    "done when": "done_when",
    "finished early": "finished_early",
    "start alone": "start_alone",
    "put away": "put_away",
    "use": "use",
    "leave alone": "leave_alone",
    "materials": "materials",
    "safety notes": "safety_notes",
    "instead": "instead",
}
"""Student text of a station in another language; `record` becomes two fields of its own."""

TRANSLATED_LISTS = ("steps", "materials", "safety notes")
"""Those of them that are lists, as long as the unit's."""


def station_of(spoken: str) -> Kind:
    """Return the kind of station with a spoken name."""
    return STATIONS[spoken]


def spoken_of(kind: Kind) -> str:
    """Return the spoken name of a kind of station."""
    return next(spoken for spoken, each in STATIONS.items() if each is kind)
