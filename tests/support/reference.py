"""Two guide pages that are made from the code, so that they never lag: every key, and every message.

`TRIVET_REFRESH=1 python -m pytest tests/test_reference.py` writes them again.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

ROOT = Path(__file__).resolve().parent.parent.parent
FILES = {
    "unit": "units/<slug>/index.md",
    "unit-translation": "units/<slug>/index.es.md (a translation)",
    "school": "school/school.yml",
    "bells": "school/bells.yml",
    "calendar": "school/calendar.yml",
    "classes": "school/classes.yml",
    "rooms": "school/rooms.yml",
    "roles": "school/roles.yml",
    "expectations": "school/expectations.yml",
    "inventory": "school/inventory.yml",
    "runs": "school/runs.yml",
    "roster": "private/roster-<class>.csv",
    "lock": "school/groups/<class>/<slug>.yml (written by trivet groups)",
}


def schema(name: str) -> dict[str, Any]:
    """One schema file as data."""
    loaded: dict[str, Any] = json.loads((ROOT / "schema" / f"{name}.schema.json").read_text(encoding="utf-8"))
    return loaded


def properties(node: Any, whole: dict[str, Any], path: tuple[str, ...] = ()) -> Iterator[tuple[tuple[str, ...], dict[str, Any]]]:
    """Yield every property below `node` with its path of keys, in the schema's order."""
    if isinstance(node, dict) and "$ref" in node:
        target: Any = whole
        for part in node["$ref"].removeprefix("#/").split("/"):
            target = target[part]
        node = {**target, **{k: v for k, v in node.items() if k != "$ref"}}
    if not isinstance(node, dict):
        return
    for key, value in node.get("properties", {}).items():
        yield (*path, key), value
        yield from properties(value, whole, (*path, key))
    for value in node.get("patternProperties", {}).values():
        yield from properties(value, whole, (*path, "…"))
    if isinstance(node.get("additionalProperties"), dict):
        yield from properties(node["additionalProperties"], whole, (*path, "…"))
    if "items" in node:
        yield from properties(node["items"], whole, path)


def described(value: dict[str, Any], whole: dict[str, Any]) -> dict[str, Any]:
    """A property with what its reference says."""
    if "$ref" not in value:
        return value
    target: Any = whole
    for part in value["$ref"].removeprefix("#/").split("/"):
        target = target[part]
    return {**target, **value}


def example(value: dict[str, Any]) -> str:
    """The first plain example, as code."""
    plain = [e for e in value.get("examples", []) if isinstance(e, str | int | float | bool) and e != ""]
    return f" Example: `{json.dumps(plain[0]) if isinstance(plain[0], bool) else plain[0]}`" if plain else ""


def every_key() -> str:
    """The guide page with every key of every file."""
    lines = ["---", "title: Every key", "---", "", "# Every key", ""]
    lines += ["What may stand in each file. Only the first few keys of a unit are needed; all others have a default.", ""]
    for name, file in FILES.items():
        whole = schema(name)
        lines += [f"## `{file}`", "", whole.get("description", ""), ""]
        for path, value in properties(whole, whole):
            full = described(value, whole)
            lines.append(f"- **{' › '.join(path)}**: {full.get('description', '')}{example(full)}")
        lines.append("")
    return "\n".join(lines)


def messages() -> dict[str, str]:
    """One exact message for each problem code, from the bad examples of the tests."""
    found: dict[str, str] = {}
    for path in sorted((ROOT / "tests" / "examples" / "bad").rglob("expected.txt")):
        for line in path.read_text(encoding="utf-8").splitlines():
            if " [" in line and line.endswith("]"):
                message, _, tail = line.rpartition(" [")
                found.setdefault(tail.rstrip("]").split()[-1], message)
    return found
