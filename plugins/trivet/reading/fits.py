"""A quick yes or no: does a value fit a schema?

The jsonschema library words and proves what is wrong, but importing it costs more than reading a whole department.
So a good file is waved through here, and only a file that does not fit is handed on. A test holds the two to the same answer.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from decimal import Decimal
from typing import Any

Test = Callable[[Any], bool]

ANNOTATIONS = frozenset({"$schema", "$id", "$defs", "$comment", "title", "description", "examples", "default"})


class UnknownKeywordError(ValueError):
    """A schema uses a keyword that this file does not know, so it must not be trusted to say yes."""


def compiled(schema: dict[str, Any]) -> Test:
    """Turn a schema into one function. Raises UnknownKeywordError for a keyword outside `KEYWORDS`."""
    made: dict[str, Test] = {}

    def compile_one(part: dict[str, Any]) -> Test:
        tests = []
        for keyword, said in part.items():
            if keyword in ANNOTATIONS or keyword.startswith("x-") or keyword in ("then", "else"):
                continue
            if keyword == "$ref":
                tests.append(refer(said))
            elif keyword in KEYWORDS:
                tests.append(KEYWORDS[keyword](said, part, compile_one))
            else:
                raise UnknownKeywordError(f'the schema keyword "{keyword}" is not known to trivet.reading.fits')
        return every(tests)

    def refer(name: str) -> Test:
        # Looked up when called, so that a definition may refer to itself.
        if name not in made:
            made[name] = lambda _value: True
            made[name] = compile_one(schema["$defs"][name.removeprefix("#/$defs/")])
        return lambda value: made[name](value)  # noqa: PLW0108 - while it is being made, the entry is a stand-in

    return compile_one(schema)


def every(tests: list[Test]) -> Test:
    """Say yes where all tests do."""
    if len(tests) == 1:
        return tests[0]

    def all_hold(value: Any) -> bool:
        for test in tests:  # noqa: SIM110 - a generator costs more than the tests themselves
            if not test(value):
                return False
        return True

    return all_hold


def any_of(tests: list[Test]) -> Test:
    """Say yes where one test does."""
    if len(tests) == 1:
        return tests[0]
    return lambda value: any(test(value) for test in tests)


KINDS: dict[str, Test] = {
    "string": lambda value: isinstance(value, str),
    "object": lambda value: isinstance(value, dict),
    "array": lambda value: isinstance(value, list),
    "boolean": lambda value: isinstance(value, bool),
    "null": lambda value: value is None,
    "integer": lambda value: isinstance(value, int) and not isinstance(value, bool),
    "number": lambda value: isinstance(value, int | Decimal) and not isinstance(value, bool),
}


def _type(said: Any, _part: dict[str, Any], _compile: Any) -> Test:
    kinds = [said] if isinstance(said, str) else list(said)
    if unknown := [kind for kind in kinds if kind not in KINDS]:
        raise UnknownKeywordError(f'the schema type "{unknown[0]}" is not known to trivet.reading.fits')
    return any_of([KINDS[kind] for kind in kinds])


def _properties(said: Any, _part: dict[str, Any], compile_one: Any) -> Test:
    parts = {key: compile_one(schema) for key, schema in said.items()}

    def each_fits(value: Any) -> bool:
        if isinstance(value, dict):
            for key, child in value.items():
                if key in parts and not parts[key](child):
                    return False
        return True

    return each_fits


def _pattern_properties(said: Any, _part: dict[str, Any], compile_one: Any) -> Test:
    parts = [(re.compile(pattern), compile_one(schema)) for pattern, schema in said.items()]
    return lambda value: (
        not isinstance(value, dict) or all(test(child) for key, child in value.items() for form, test in parts if form.search(key))
    )


def _additional(said: Any, part: dict[str, Any], _compile: Any) -> Test:
    if said is not False:
        raise UnknownKeywordError("additionalProperties must be false")
    known = frozenset(part.get("properties", {}))
    forms = [re.compile(pattern) for pattern in part.get("patternProperties", {})]
    return lambda value: (
        not isinstance(value, dict)
        or value.keys() <= known
        or all(key in known or any(form.search(key) for form in forms) for key in value)
    )


def _required(said: Any, _part: dict[str, Any], _compile: Any) -> Test:
    asked = frozenset(said)
    return lambda value: not isinstance(value, dict) or value.keys() >= asked


def _items(said: Any, _part: dict[str, Any], compile_one: Any) -> Test:
    test = compile_one(said)

    def each_fits(value: Any) -> bool:
        if isinstance(value, list):
            for child in value:
                if not test(child):
                    return False
        return True

    return each_fits


def _names(said: Any, _part: dict[str, Any], compile_one: Any) -> Test:
    test = compile_one(said)
    return lambda value: not isinstance(value, dict) or all(test(key) for key in value)


def _pattern(said: Any, _part: dict[str, Any], _compile: Any) -> Test:
    # Compiled when first asked, and kept by re: most patterns of a schema are never met by a file.
    return lambda value: not isinstance(value, str) or re.search(said, value) is not None


def _all_of(said: Any, _part: dict[str, Any], compile_one: Any) -> Test:
    return every([compile_one(schema) for schema in said])


def _if(said: Any, part: dict[str, Any], compile_one: Any) -> Test:
    asked, then, otherwise = compile_one(said), compile_one(part.get("then", {})), compile_one(part.get("else", {}))
    return lambda value: then(value) if asked(value) else otherwise(value)


def _number(test: Callable[[Any, Any], bool]) -> Callable[..., Test]:
    return lambda said, _part, _compile: lambda value: not KINDS["number"](value) or test(value, said)


def _sized(kind: type[str] | type[list[Any]] | type[dict[str, Any]], test: Callable[[int, int], bool]) -> Callable[..., Test]:
    return lambda said, _part, _compile: lambda value: not isinstance(value, kind) or test(len(value), said)


def _not_twice(values: list[Any]) -> bool:
    return all(value not in values[:index] for index, value in enumerate(values))


KEYWORDS: dict[str, Callable[..., Test]] = {
    "type": _type,
    "enum": lambda said, _part, _compile: lambda value: isinstance(value, str) and value in said,
    "const": lambda said, _part, _compile: lambda value: not isinstance(value, bool) and value == said,
    "properties": _properties,
    "patternProperties": _pattern_properties,
    "additionalProperties": _additional,
    "propertyNames": _names,
    "required": _required,
    "items": _items,
    "pattern": _pattern,
    "allOf": _all_of,
    "if": _if,
    "minimum": _number(lambda value, said: value >= said),
    "maximum": _number(lambda value, said: value <= said),
    "exclusiveMinimum": _number(lambda value, said: value > said),
    "multipleOf": _number(lambda value, said: value % said == 0),
    "minLength": _sized(str, lambda length, said: length >= said),
    "maxLength": _sized(str, lambda length, said: length <= said),
    "minItems": _sized(list, lambda length, said: length >= said),
    "maxItems": _sized(list, lambda length, said: length <= said),
    "minProperties": _sized(dict, lambda length, said: length >= said),
    "maxProperties": _sized(dict, lambda length, said: length <= said),
    "uniqueItems": lambda said, _part, _compile: lambda value: not (said and isinstance(value, list)) or _not_twice(value),
}
