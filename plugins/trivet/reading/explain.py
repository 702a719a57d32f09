"""Turn what the schema library found into problems in plain words."""

from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal
from itertools import islice
from typing import Any

from trivet.model.places import Places
from trivet.model.problem import Problem
from trivet.reading.fault import Fault, FormAnswer, shown
from trivet.reading.near import nearest
from trivet.reading.outline import allowed_keys, homes_of, is_named, part_at
from trivet.reading.quoting import plain_or_quoted

KINDS = {
    "string": "text",
    "object": "keys with values under it",
    "array": "a list",
    "boolean": "true or false",
    "integer": "a whole number",
    "number": "a number",
}


KEYS_MOST = 20
"""How many unknown keys of one place are answered one by one."""


def explain(found: Any, rules: dict[str, Any], places: Places, form: FormAnswer | None = None) -> list[Problem]:
    """Return the problems behind one `jsonschema.ValidationError`: one, or one for each key concerned."""
    schema = found.schema if isinstance(found.schema, dict) else {}
    fault = Fault(tuple(found.absolute_path), found.validator, found.validator_value, found.instance, schema, rules, places, form)
    if form and "x-form" in schema and fault.keyword in ("pattern", "type") and fault.value not in (None, ""):
        answer = form(fault.path, schema["x-form"], fault.value)
        if answer is not None:
            return [answer]
    return WORDINGS.get(fault.keyword, _anything_else)(fault)


def _unknown_keys(fault: Fault) -> list[Problem]:
    part = part_at(fault.rules, fault.path)
    known = allowed_keys(part)
    problems: list[Problem] = []
    for key in fault.value:
        if key in known or is_named(key, part):
            continue
        if len(problems) == KEYS_MOST:
            rest = sum(1 for each in fault.value if each not in known and not is_named(each, part)) - KEYS_MOST
            what = f"{rest:,} more keys are not known here" if rest > 1 else "one more key is not known here"
            problems.append(fault.at_key("unknown-key", what, "mend those above first, then check again", key))
            break
        near = nearest(key, (each for each in known if each not in fault.value), 0.75)
        above = _empty_above(key, fault)
        if above:
            remedy = f"put two more spaces before it, so that it stands under {above}:"
        elif near:
            remedy = f"write {near}"
        elif hint := part.get("x-hint-keys"):
            remedy = str(hint)
        elif homes := homes_of(key, fault.rules):
            remedy = f"move it under {homes[0]}"
        elif near := nearest(key, known):
            remedy = f"write {near}" if near not in fault.value else "leave it out"
        else:
            remedy = "leave it out, or write one of: " + ", ".join(known)
        problems.append(fault.at_key("unknown-key", f'the key "{shown(key)}" is not known here', remedy, key))
    return problems


def _empty_above(key: str, fault: Fault) -> str:
    """The key just above this one if nothing is written there and this one may stand under it."""
    order = list(fault.value)
    for above in reversed(order[: order.index(key)]):
        part = part_at(fault.rules, (*fault.path, above))
        if fault.value[above] is None:
            return above if key in allowed_keys(part) or is_named(key, part) else ""
        if above in allowed_keys(part_at(fault.rules, fault.path)) or is_named(above, part_at(fault.rules, fault.path)):
            return ""
    return ""


def _missing_key(fault: Fault) -> list[Problem]:
    problems = []
    # The library reports each missing key by itself and names it only in its sentence, so every report answers for all of them.
    for key in fault.said:
        if key not in fault.value and not _misspelled(key, fault):
            part = part_at(fault.rules, (*fault.path, key))
            code = str(part.get("x-code", "missing-key"))
            problems.append(fault.at_key(code, f'"{key}" is missing', fault.remedy_for((*fault.path, key), f"{key}: ")))
    return problems


def _misspelled(key: str, fault: Fault) -> bool:
    """Whether a key stands there that the answer to unknown keys takes for this one."""
    part = part_at(fault.rules, fault.path)
    known = allowed_keys(part)
    strange = islice((each for each in fault.value if each not in known and not is_named(each, part)), KEYS_MOST)
    return any(nearest(each, (other for other in known if other not in fault.value), 0.75) == key for each in strange)


def _wrong_type(fault: Fault) -> list[Problem]:
    kinds = [fault.said] if isinstance(fault.said, str) else list(fault.said)
    value = fault.value
    if value is None or value == "":
        return [fault.at_key("empty-value", "nothing is written here", fault.remedy)]
    if "string" in kinds and "pattern" not in fault.schema and isinstance(value, bool | int | Decimal):
        what = f"this must be text, and {shown(value)} alone is read as {_kind_of(value)}"
        return [fault.at_value("needs-quotes", what, f'put quotes around it: write {fault.lead}"{shown(value)}"')]
    if isinstance(value, str) and _reads_as(value, kinds):
        return [fault.at_value("remove-quotes", f'"{value}" in quotes is text', f"write {value} without quotes")]
    wanted = " or ".join(KINDS[kind] for kind in kinds)
    if kinds == ["array"] and isinstance(value, str) and len(value) <= 60 and fault.path:
        remedy = f"write {fault.lead.strip()} and below it - {plain_or_quoted(value.lstrip('- '))}"
        return [fault.at_value("wrong-shape", f'this must be a list, not "{shown(value)}"', remedy)]
    if "string" in kinds and isinstance(value, list) and len(value) == 1 and isinstance(value[0], str):
        remedy = f"write it on one line: {fault.lead}{plain_or_quoted(value[0])}"
        return [fault.at_value("wrong-shape", f"this must be {wanted}, not a list", remedy)]
    return [fault.at_value("wrong-shape", f"this must be {wanted}, not {_kind_of(value)}", fault.remedy)]


def _kind_of(value: Any) -> str:
    if isinstance(value, dict):
        return "keys with values"
    if isinstance(value, list):
        return "a list"
    if isinstance(value, bool):
        return shown(value)
    return f'"{shown(value)}"' if isinstance(value, str) else f"the number {shown(value)}"


def _reads_as(value: str, kinds: list[str]) -> bool:
    if "boolean" in kinds and value in ("true", "false"):
        return True
    digits = value.removeprefix("-")
    whole, decimal = digits.isdigit(), digits.replace(".", "", 1).isdigit()
    return digits.isascii() and (("integer" in kinds and whole) or ("number" in kinds and decimal))


def _not_in_list(fault: Fault) -> list[Problem]:
    if fault.value in (None, ""):
        return [fault.at_key("empty-value", "nothing is written here", fault.remedy)]
    known = [str(each) for each in fault.said]
    near = nearest(shown(fault.value), known)
    instead = part_at(fault.rules, fault.path).get("x-instead", {}).get(shown(fault.value))
    remedy = instead or (f"write {near}" if near else "write one of: " + ", ".join(known))
    return [fault.at_value("not-in-list", f'"{shown(fault.value)}" is not one of the words known here', remedy)]


def _unreadable(fault: Fault) -> list[Problem]:
    if not fault.value.strip():
        return [fault.at_key("empty-value", "nothing is written here", fault.remedy)]
    return [fault.at_value("unreadable-value", f"this can't be read: {shown(fault.value)}", fault.remedy)]


def _too_few(fault: Fault) -> list[Problem]:
    least = fault.said
    if not fault.value:
        return [fault.at_key("empty-value", "nothing is written here", fault.remedy)]
    return [fault.at_key("too-few", f"there are {len(fault.value)} here, and at least {least} are needed", fault.remedy)]


def _too_many(fault: Fault) -> list[Problem]:
    most = fault.said
    extra = most if isinstance(fault.value, list) else next(islice(fault.value, most, None))
    remedy = str(part_at(fault.rules, fault.path).get("x-hint") or f"keep {most}")
    return [fault.at_value("too-many", f"there are {len(fault.value)} here, and at most {most} are read", remedy, extra)]


def _too_long(fault: Fault) -> list[Problem]:
    what = f"this has {len(fault.value)} characters, and at most {fault.said} are read"
    return [fault.at_value("too-long", what, "write it shorter, or move the rest into the text below the second ---")]


def _out_of_range(fault: Fault) -> list[Problem]:
    bounds = {
        "minimum": f"at least {fault.said}",
        "maximum": f"at most {fault.said}",
        "exclusiveMinimum": f"more than {fault.said}",
        "multipleOf": f"a multiple of {fault.said}",
    }
    return [fault.at_value("out-of-range", f"{shown(fault.value)} is out of range: this must be {bounds[fault.keyword]}", fault.remedy)]


def _said_twice(fault: Fault) -> list[Problem]:
    doubles = [index for index, value in enumerate(fault.value) if value in fault.value[:index]]
    return [
        fault.at_value("said-twice", f'"{shown(fault.value[index])}" stands here twice', "leave one of them out", index)
        for index in doubles
    ]


def _anything_else(fault: Fault) -> list[Problem]:
    return [fault.at_value("does-not-fit", f"this does not fit here: {shown(fault.value)}", fault.remedy)]


WORDINGS: dict[str, Callable[[Fault], list[Problem]]] = {
    "additionalProperties": _unknown_keys,
    "required": _missing_key,
    "type": _wrong_type,
    "enum": _not_in_list,
    "const": _anything_else,
    "pattern": _unreadable,
    "minLength": _too_few,
    "minItems": _too_few,
    "minProperties": _too_few,
    "maxItems": _too_many,
    "maxProperties": _too_many,
    "maxLength": _too_long,
    "minimum": _out_of_range,
    "maximum": _out_of_range,
    "exclusiveMinimum": _out_of_range,
    "multipleOf": _out_of_range,
    "uniqueItems": _said_twice,
}
