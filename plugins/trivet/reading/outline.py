"""Questions asked of a schema while wording a problem: what may stand here, where does this key belong, how does one look?

Keywords of our own in the schemas, which other programs pass over: `x-hint` (what to write instead, in plain words), `x-hint-keys` (the
same for keys that are names), `x-instead` (what to do instead of one value), `x-code` (the code of the problem when the key is
missing), `x-form` (the sentence form that words the answer, `trivet.reading.form_problems.FORMS`).
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

from trivet.model.places import Path
from trivet.reading.where import words

Part = dict[str, Any]


def resolved(part: Part, rules: Part) -> Part:
    """Return the part with its reference followed; what stands beside the reference wins."""
    while "$ref" in part:
        target = rules["$defs"][part["$ref"].removeprefix("#/$defs/")]
        part = {**target, **{key: said for key, said in part.items() if key != "$ref"}}
    return part


def part_at(rules: Part, path: Path) -> Part:
    """Return the schema of the value at `path`, {} where the schema knows no such place."""
    part = resolved(rules, rules)
    for step in path:
        part = resolved(_child(part, step), rules)
    return part


def _child(part: Part, step: str | int) -> Part:
    if isinstance(step, int):
        child: Part = part.get("items", {})
        return child
    named: Part | None = part.get("properties", {}).get(step)
    if named is not None:
        return named
    return next((said for form, said in part.get("patternProperties", {}).items() if re.search(form, step)), {})


def allowed_keys(part: Part) -> tuple[str, ...]:
    """Return the keys with a fixed name that may stand in a mapping, in the order of the schema."""
    return tuple(part.get("properties", {}))


def is_named(key: str, part: Part) -> bool:
    """Say whether a key fits the form of names that a mapping allows, as the ids of classes do."""
    return any(re.search(form, key) for form in part.get("patternProperties", {}))


def homes_of(key: str, rules: Part) -> tuple[str, ...]:
    """Return the places, in the reader's words, in which a key of this name is known."""
    mappings = _mappings(resolved(rules, rules), rules, ())
    return tuple(words(path) or "the top level" for path, part in mappings if key in part.get("properties", {}))


def _mappings(part: Part, rules: Part, path: Path) -> Iterator[tuple[Path, Part]]:
    yield path, part
    for key, said in part.get("properties", {}).items():
        yield from _mappings(resolved(said, rules), rules, (*path, key))
    if "items" in part:
        yield from _mappings(resolved(part["items"], rules), rules, (*path, 0))


def example_of(part: Part, rules: Part) -> str:
    """Return one line that shows how such a value is written."""
    part = resolved(part, rules)
    examples = part.get("examples", [])
    if examples:
        return in_one_line(examples[0])
    if "items" in part:
        return f"and under it - {example_of(part['items'], rules).removeprefix('and under it ')}"
    if "properties" in part:
        key = str([*part.get("required", ()), *part["properties"]][0])
        return f"and under it {key}: {example_of(part['properties'][key], rules)}"
    return "..."


def in_one_line(value: Any) -> str:
    """Return an example value as one line of a remedy."""
    if isinstance(value, bool):
        return "true" if value else "false"
    if value in ([], {}):
        return "[]" if isinstance(value, list) else "{}"
    if isinstance(value, list):
        return f"and under it - {in_one_line(value[0]).removeprefix('and under it ')}"
    if isinstance(value, dict):
        key, child = next(iter(value.items()))
        return f"and under it {key}: {in_one_line(child)}"
    return str(value)
