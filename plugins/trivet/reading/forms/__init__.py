"""Sentence forms: what teachers write in one line, read and written."""

from trivet.reading.forms.counts import (
    GRADES_PATTERN,
    LATE_PATTERN,
    NUMBERS_PATTERN,
    grades,
    late,
    listed,
    numbers,
    write_numbers,
)
from trivet.reading.forms.dates import (
    CLOCK_RANGE_PATTERN,
    DATE_PATTERN,
    DATE_RANGE_PATTERN,
    TERM_PATTERN,
    clock_range,
    date_of,
    date_range,
    term,
)
from trivet.reading.forms.materials import MATERIAL_PATTERN, material, write_material
from trivet.reading.forms.measures import AMOUNT_PATTERN, AREA_PATTERN, PERCENT_PATTERN, UNITS, Amount, amount, area, percent
from trivet.reading.forms.minutes import MINUTES_PATTERN, ROUND_PATTERN, SECONDS_PATTERN, minutes, round_bounds, seconds
from trivet.reading.forms.orders import ORDER_PATTERN, order, write_order
from trivet.reading.forms.records import DONE_PATTERN, GAP_PATTERN, HALF_PATTERN, done, gap, half_done
from trivet.reading.forms.steps import STEP_PATTERN, step, write_step
from trivet.reading.forms.unreadable import Unreadable
from trivet.reading.forms.what_if import what_if

__all__ = [
    "AMOUNT_PATTERN",
    "AREA_PATTERN",
    "CLOCK_RANGE_PATTERN",
    "DATE_PATTERN",
    "DATE_RANGE_PATTERN",
    "DONE_PATTERN",
    "GAP_PATTERN",
    "GRADES_PATTERN",
    "HALF_PATTERN",
    "LATE_PATTERN",
    "MATERIAL_PATTERN",
    "MINUTES_PATTERN",
    "NUMBERS_PATTERN",
    "ORDER_PATTERN",
    "PERCENT_PATTERN",
    "ROUND_PATTERN",
    "SECONDS_PATTERN",
    "STEP_PATTERN",
    "TERM_PATTERN",
    "UNITS",
    "Amount",
    "Unreadable",
    "amount",
    "area",
    "clock_range",
    "date_of",
    "date_range",
    "done",
    "gap",
    "grades",
    "half_done",
    "late",
    "listed",
    "material",
    "minutes",
    "numbers",
    "order",
    "percent",
    "round_bounds",
    "seconds",
    "step",
    "term",
    "what_if",
    "write_material",
    "write_numbers",
    "write_order",
    "write_step",
]
