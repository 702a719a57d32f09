"""Words for a department that has not written its own: roles and expectations. Common practice, no source."""

from __future__ import annotations

from trivet.model.school import Role

ROLES = (
    Role("leader", "Leader", "Reads each step aloud and keeps the team on it.", "asks before telling"),
    Role("recorder", "Recorder", "Writes down what the team finds, with units.", "writes while it happens, not from memory"),
    Role(
        "materials",
        "Materials manager",
        "Fetches, counts and returns things, and keeps the team safe.",
        "stops the team at a spill or a crack",
    ),
    Role("reporter", "Reporter", "Tells the class what the team learned.", "checks the sentence with the team first"),
    Role("timekeeper", "Timekeeper", "Says when half the time is gone, and when two minutes are left.", "looks at the clock unasked"),
)

EXPECTATIONS = (
    "We read the directions before we touch anything.",
    "We keep hands, feet and things where they belong.",
    "We ask three classmates at our station before we ask the teacher.",
    "Anything hurt, broken, spilled, smoking or frightening goes to the nearest adult at once.",
    "We leave the station ready for the next team.",
)
"""The fourth stands wherever the third does: danger is never a matter for classmates."""
