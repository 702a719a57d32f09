"""The sentences of built spot checks: open questions, as a teacher says them."""

from __future__ import annotations

from collections.abc import Mapping

from trivet.model.station import Kind

FIRST_STEP: Mapping[Kind, str] = {
    Kind.ONLINE: "What will you do first, and what do you expect to see?",
    Kind.HANDS_ON: "Show me what you will do first.",
    Kind.TEACHER_LED: "What will you do first, before I come to you?",
}
YOUR_JOB = "What is your job today, and what will I see you do?"
RECORD: Mapping[Kind, str] = {
    Kind.ONLINE: "What will you write down, and when will you write it?",
    Kind.HANDS_ON: "Show me where your results go. What goes into each column?",
    Kind.TEACHER_LED: "What will you write down here, and where?",
}
DONE: Mapping[Kind, str] = {
    Kind.ONLINE: "How will you know that you are done here?",
    Kind.HANDS_ON: "How will your team know that it is done?",
    Kind.TEACHER_LED: "How will you know that you are done here?",
}

TIMES = "{text} ({times} times)"
READS = "reads the text first"
DUTY = "{name}: {does}"
DUTY_CHOSEN_BY_STUDENTS = "names the duty on the team's card and one thing it means today"
ROWS = "{columns}; {rows} rows"
