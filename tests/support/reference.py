"""Two guide pages that are made from the schemas and the examples, so that they never lag: every key, and every message.

`TRIVET_REFRESH=1 python -m pytest tests/test_reference.py` writes them again.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from tests.examples.harness import cases, department_of
from tests.support.private_slips import private_problems
from trivet.command.check import problems_of
from trivet.model.problem import Problem, Severity
from trivet.reading.source import read_source

ROOT = Path(__file__).resolve().parent.parent.parent
PAGES = {"every-key": "units/guide/every-key.md", "every-message": "units/guide/every-message.md"}
FILES = {
    "unit": "`units/<slug>/index.md`",
    "unit-translation": "`units/<slug>/index.es.md`, a translation",
    "school": "`school/school.yml`",
    "bells": "`school/bells.yml`",
    "calendar": "`school/calendar.yml`",
    "classes": "`school/classes.yml`",
    "rooms": "`school/rooms.yml`",
    "roles": "`school/roles.yml`",
    "expectations": "`school/expectations.yml`",
    "inventory": "`school/inventory.yml`",
    "runs": "`school/runs.yml`",
    "roster": "`private/roster-<class>.csv`",
    "lock": "`school/groups/<class>/<slug>.yml`, written by the draw",
    "plan": "`/data/<class>/<slug>.json`, written for other programs",
    "class-file": "The class file, written for a teacher's own device",
}
"""Every schema with the heading of its file. A schema that is not here fails a test."""

GROUPS = {
    "unit": "Units",
    "school": "The school's files and kept groups",
    "plan": "Plans: dates, stations, classes, store",
    "text": "Signs, lines and files that can't be read as typed",
    "roster": "The private list of a class",
}
FIRST = {
    "roster": "`trivet check` opens no private list. `trivet groups` and `trivet class-file` say these, and quote nothing from it.",
}
"""What stands under the heading of a group before its messages."""

NAMES = {"string": "text", "integer": "a whole number", "number": "a number", "boolean": "`true` or `false`"}


def schema(name: str) -> dict[str, Any]:
    """One schema file as data."""
    loaded: dict[str, Any] = json.loads((ROOT / "schema" / f"{name}.schema.json").read_text(encoding="utf-8"))
    return loaded


def resolved(node: dict[str, Any], whole: dict[str, Any]) -> dict[str, Any]:
    """A part of a schema with what its reference says; what stands beside the reference wins."""
    while "$ref" in node:
        target: Any = whole
        for part in node["$ref"].removeprefix("#/").split("/"):
            target = target[part]
        node = {**target, **{key: value for key, value in node.items() if key != "$ref"}}
    return node


def properties(node: Any, whole: dict[str, Any], path: tuple[str, ...] = ()) -> Iterator[tuple[tuple[str, ...], dict[str, Any], bool]]:
    """Yield every property below `node`: its path of keys, its schema, and whether it must be there; in the schema's order."""
    if not isinstance(node, dict):
        return
    node = resolved(node, whole)
    for key, value in node.get("properties", {}).items():
        yield (*path, key), resolved(value, whole), key in node.get("required", ())
        yield from properties(value, whole, (*path, key))
    for form, value in node.get("patternProperties", {}).items():
        yield from properties(value, whole, (*path, _name_of(form)))
    for key in ("additionalProperties", "items"):
        if isinstance(node.get(key), dict):
            yield from properties(node[key], whole, path if key == "items" else (*path, "…"))
    for value in node.get("prefixItems", ()):
        yield from properties(value, whole, path)


def _name_of(_form: str) -> str:
    return "…"


def every_key() -> str:
    """The guide page with every key of every file."""
    lines = [
        "---",
        "title: Every key",
        "description: What may stand in each file, with an example of each key.",
        "---",
        "",
        "# Every key",
        "",
    ]
    lines += [
        "What may stand in each file. A key with a dot • must be there where the part that it belongs to is; all others may be left out.",
        "This page is made from the schemas in `schema/`, so it says what `trivet check` asks for.",
        "",
    ]
    for name, title in FILES.items():
        whole = schema(name)
        lines += [f"## {title}", "", _code_safe(str(whole.get("description", ""))), ""]
        parts: dict[tuple[str, ...], list[str]] = {}
        for path, part, needed in properties(whole, whole):
            parts.setdefault(path[:-1], []).append(f"- `{path[-1]}`{' •' if needed else ''} {_said(part)}")
        for above, keys in parts.items():
            lines += [f"Under {' › '.join(f'`{key}`' for key in above)}:", ""] if above else []
            lines += [*keys, ""]
    return _tidy(lines)


def _said(part: dict[str, Any]) -> str:
    said = _code_safe(str(part.get("description", "")))
    if "enum" in part:
        said += f" One of: {', '.join(f'`{word}`' for word in part['enum'])}."
    elif "const" not in part and isinstance(part.get("type"), str) and part["type"] in ("boolean",):
        said += f" Write {NAMES[part['type']]}."
    plain = [each for each in part.get("examples", []) if isinstance(each, str | int | float | bool) and each != ""]
    if plain and "enum" not in part and part.get("type") != "boolean":
        said += f" Example: {_code(json.dumps(plain[0]) if isinstance(plain[0], bool) else str(plain[0]))}"
    return said


def _code_safe(text: str) -> str:
    """Text of a schema with its placeholders in backticks: `<slug>` would be taken for HTML."""
    parts = text.split("`")
    for index in range(0, len(parts), 2):
        words = [f"`{word}`" if "<" in word and not word.endswith((".", ",")) else _trailing(word) for word in parts[index].split(" ")]
        parts[index] = " ".join(words)
    return "`".join(parts)


def _trailing(word: str) -> str:
    return f"`{word[:-1]}`{word[-1]}" if "<" in word else word


def _code(text: str) -> str:
    """Text as code, whatever backticks it has."""
    text = " ".join(text.split())
    if "`" not in text:
        return f"`{text}`"
    fence = "``" if "``" not in text else "```"
    return f"{fence} {text} {fence}"


@cache
def messages() -> dict[str, dict[str, Problem]]:
    """By group and code: one exact problem of each, from the bad examples of the tests and from lists with slips."""
    found: dict[str, dict[str, Problem]] = {group: {} for group in GROUPS}
    seen: set[str] = set()
    with TemporaryDirectory() as folder:
        for group in GROUPS:
            for case in cases("bad"):
                if case.name.partition("-")[0] == group:
                    _keep(found[group], seen, problems_of(department_of(case, Path(folder) / case.name)).problems)
    _keep(found["roster"], seen, private_problems())
    _keep(found["text"], seen, read_source(Path("name\0"), "units/name/index.md").problems)
    return found


def _keep(kept: dict[str, Problem], seen: set[str], problems: Any) -> None:
    for problem in problems:
        if problem.code not in seen:
            seen.add(problem.code)
            kept[problem.code] = problem


def every_message() -> str:
    """The guide page with one exact message for every code."""
    lines = [
        "---",
        "title: Every message",
        "description: What trivet check may say, one example of each, with what to write instead.",
        "---",
        "",
        "# Every message",
        "",
        "What `trivet check` may say, one example of each. In front of a message stands the file with line and column.",
        "Behind the semicolon stands what to do. The short name is what `--format json` and CI hosts show.",
        "",
        "- An **error** keeps the unit, or what the file describes, from being used.",
        "- A **warning** lets it pass, unless `--strict` is given.",
        "- **Advice** is shown with `--all`.",
        "",
    ]
    for group, found in messages().items():
        lines += [f"## {GROUPS[group]}", "", *([FIRST[group], ""] if group in FIRST else [])]
        for code, problem in sorted(found.items()):
            kind = "" if problem.severity is Severity.ERROR else f" ({problem.severity})"
            lines += [f"- **{code}**{kind}  ", f"  {_code(_printable(problem.sentence))}"]
        lines.append("")
    return _tidy(lines)


def _printable(text: str) -> str:
    return "".join(each if each.isprintable() else " " for each in text)


def _tidy(lines: list[str]) -> str:
    kept: list[str] = []
    for line in lines:
        if line or (kept and kept[-1]):
            kept.append(line)
    return "\n".join(kept).rstrip("\n") + "\n"
