"""A question for yes or no gets an open one."""

from __future__ import annotations

import pytest

from trivet.reading.checks import closed_questions
from trivet.reading.checks.closed_questions import rewrite


@pytest.mark.parametrize(
    ("ask", "better"),
    [
        ("What will you do first?", ""),
        ("Why do you measure five times?", ""),
        ("Is it heavier? How do you know?", ""),
        ("Do you understand the steps?", closed_questions.INSTEAD_OF_UNDERSTOOD),
        ("Everyone ready?", closed_questions.INSTEAD_OF_UNDERSTOOD),
        ("OK, got it?", closed_questions.INSTEAD_OF_UNDERSTOOD),
        ("Do you know how to read the scale?", "How will you read the scale?"),
        ("Do you all know what to write?", "What will you write?"),
        ("Can you tell me why it floats?", "Explain why it floats."),
        ("Could you describe the curve?", "What can you say about the curve?"),
        ("Does the block float?", "How could you find out: does the block float?"),
        ("Don’t heavy things sink?", "How could you find out: don't heavy things sink?"),
        ("So, did it sink?", "How could you find out: did it sink?"),
    ],
)
def test_closed_question_gets_an_open_one(ask: str, better: str) -> None:
    """A question for yes or no is rewritten, an open one is let be, and a rewrite is open itself."""
    assert rewrite(ask) == better
    assert rewrite(rewrite(ask) or "What?") == ""
