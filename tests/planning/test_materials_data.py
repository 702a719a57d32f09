"""The materials as data."""

from __future__ import annotations

import json

from tests.planning.test_department_materials import planned, scene
from trivet.planning.materials_data import materials_json


def test_data_say_what_the_values_say() -> None:
    """The data hold every number of the worked week, and are plain JSON."""
    department = scene()
    data = json.loads(json.dumps(materials_json(planned(department)[1], department)))
    assert data["materials"] == 1
    week = data["weeks"][0]
    assert (week["first"], week["last"]) == ("2026-11-30", "2026-12-06")
    cylinder = week["reusable"][0]
    assert [cylinder[key] for key in ("item", "store", "need", "have", "short")] == ["graduated cylinder 25 mL", "north prep room", 6, 4, 2]
    assert cylinder["clashes"][0] == {"date": "2026-12-01", "start": "09:01", "end": "09:53", "periods": ["P2"], "classes": ["p2", "r2"]}
    assert [week["used_up"][0][key] for key in ("item", "need", "unit", "spare", "have", "short")] == ["water", 1782, "mL", 162, 1000, 782]
    assert week["cost"] == "15.00"
    assert [each["cost"] for each in week["shopping"]] == ["13.00", "2.00"]
    assert week["shortages"][0]["cures"][0]["kind"] == "borrow"
    assert {task["kind"] for each in week["tasks"] for task in each["tasks"]} == {"set_out", "refill", "take_in"}
    assert week["prints"][2]["parts"] == [
        {"class": name, "unit": "float-or-sink", "count": many} for name, many in (("p1", 31), ("p2", 36), ("r2", 28))
    ]
    assert data["year"]["reusable"][0]["need"] == 6
    assert data["year"]["tasks"] == []
