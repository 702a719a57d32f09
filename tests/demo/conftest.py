"""The demo department, read once."""

from __future__ import annotations

from pathlib import Path

import pytest

from trivet.model.department import Department
from trivet.reading.department import read_department


@pytest.fixture(scope="session")
def demo(root: Path) -> Department:
    """The department of the demo school, which must read without any problem."""
    read = read_department(root)
    assert [problem.sentence for problem in read.problems] == []
    assert read.department is not None
    return read.department
