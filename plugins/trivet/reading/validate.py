"""Check a value against a schema and answer in plain words, each at its line and column."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from itertools import islice
from typing import Any

from trivet.model.places import Places
from trivet.model.problem import Problem
from trivet.reading.fault import FormAnswer
from trivet.reading.fits import Test, compiled
from trivet.reading.limit import limited
from trivet.reading.schemas import schema

FAULTS_MOST = 1000
"""How many faults of a file are looked at: each costs a search for the nearest word."""


def validate(value: Any, schema_name: str, places: Places, file: str, form: FormAnswer | None = None) -> tuple[Problem, ...]:
    """Return all that keeps `value` from fitting the schema called `schema_name`, in the order of the file; () where it fits.

    `value` is plain data as `strict.load` gives it, `places` the places of its keys and values in `file`.
    `form` words a value that should have a sentence form and has not.
    """
    if places.file != file:
        places = replace(places, file=file)
    if _quick(schema_name)(value):
        return ()
    # Imported only for a file with a fault: the library takes longer to load than a good department to be read.
    from trivet.reading.explain import explain  # noqa: PLC0415

    rules = schema(schema_name)
    faults = islice(_authority(schema_name).iter_errors(value), FAULTS_MOST)
    return limited([problem for fault in faults for problem in explain(fault, rules, places, form)])


@cache
def _quick(schema_name: str) -> Test:
    return compiled(schema(schema_name))


@cache
def _authority(schema_name: str) -> Any:
    from jsonschema import Draft202012Validator  # noqa: PLC0415

    return Draft202012Validator(schema(schema_name))
