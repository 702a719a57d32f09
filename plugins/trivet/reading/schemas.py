"""The schema files: found inside an installed package, else beside it in a checkout."""

from __future__ import annotations

import json
from decimal import Decimal
from functools import cache
from pathlib import Path
from typing import Any

PACKAGE = Path(__file__).resolve().parents[1]


def folder(package: Path = PACKAGE) -> Path:
    """Return the folder that holds the schemas: `schema/` inside the package, else that of the checkout around it.

    Raises FileNotFoundError where neither holds one, which means a broken installation.
    """
    inside, beside = package / "schema", package.parents[1] / "schema"
    for place in (inside, beside):
        if (place / "unit.schema.json").is_file():
            return place
    raise FileNotFoundError(f"no schema files in {inside} or {beside}")


@cache
def schema(name: str) -> dict[str, Any]:
    """Return the schema called `name` ("unit", "unit-translation", "bells"); treat it as read-only."""
    loaded: dict[str, Any] = json.loads((folder() / f"{name}.schema.json").read_text(encoding="utf-8"), parse_float=Decimal)
    return loaded
