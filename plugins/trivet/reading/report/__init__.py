"""Problems as text for people, as JSON for programs, and as annotations for CI hosts."""

from trivet.reading.report.counts import counted, shown
from trivet.reading.report.for_ci import ci_lines as annotations
from trivet.reading.report.for_people import text
from trivet.reading.report.for_programs import json

__all__ = ["annotations", "counted", "json", "shown", "text"]
