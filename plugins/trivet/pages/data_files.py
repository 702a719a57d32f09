"""The published data: one file a plan, and one for the build."""

from __future__ import annotations

import json
from collections.abc import Iterator
from typing import Any

from trivet.model.page import Asset
from trivet.model.plan import Plans
from trivet.pages.build_info import BuildInfo
from trivet.planning.plan_data import plan_json


def data_files(plans: Plans, build: BuildInfo) -> Iterator[Asset]:
    """Yield `data/<class>/<unit>.json` for each plan, as schema/plan.schema.json says, and `data/build.json`."""
    for plan in plans.plans:
        yield Asset(f"data/{plan.class_id}/{plan.unit}.json", _text(plan_json(plan)))
    yield Asset("data/build.json", _text({"date": build.date.isoformat()}))


def _text(data: Any) -> bytes:
    return (json.dumps(data, ensure_ascii=False, indent=1) + "\n").encode("utf-8")
