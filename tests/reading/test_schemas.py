"""The schema files are found in a wheel and in a checkout, and are well formed."""

from __future__ import annotations

import json
import os
import shutil
import subprocess
import sys
import zipfile
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from tests.reading.unit_files import PLAIN
from trivet.reading import schemas
from trivet.reading.fits import compiled

NAMES = sorted(path.name.removesuffix(".schema.json") for path in schemas.folder().glob("*.schema.json"))


def parts(schema: Any) -> list[dict[str, Any]]:
    """All schemas inside a schema, itself among them."""
    found = [schema]
    for keyword in ("properties", "patternProperties", "$defs"):
        for child in schema.get(keyword, {}).values():
            found += parts(child)
    for keyword in ("items", "then"):
        if keyword in schema:
            found += parts(schema[keyword])
    return found


def test_checkout_schemas_lie_beside_the_package(root: Path) -> None:
    """In a checkout the schemas are those of the top-level folder."""
    assert schemas.folder() == root / "schema"


def test_wheel_schemas_lie_inside_the_package(tmp_path: Path) -> None:
    """In an installed package the schemas inside it win over anything beside it."""
    package = tmp_path / "site-packages" / "trivet"
    for place in (package / "schema", tmp_path / "schema"):
        place.mkdir(parents=True)
        (place / "unit.schema.json").write_text("{}")
    assert schemas.folder(package) == package / "schema"


def test_installation_without_schemas_says_so(tmp_path: Path) -> None:
    """A package without schemas is refused by name of both places."""
    with pytest.raises(FileNotFoundError, match="no schema files in"):
        schemas.folder(tmp_path / "plugins" / "trivet")


def test_wheel_works_away_from_the_checkout(root: Path, tmp_path: Path) -> None:
    """A built wheel carries the schemas and the files of a new unit, and checks a department by itself."""
    build = [sys.executable, "-m", "hatchling", "build", "-t", "wheel", "-d", str(tmp_path / "wheel")]
    subprocess.run(build, cwd=root, check=True, capture_output=True)
    (wheel,) = (tmp_path / "wheel").glob("*.whl")
    zipfile.ZipFile(wheel).extractall(tmp_path / "installed")
    project = tmp_path / "project"
    shutil.copytree(PLAIN, project)
    code = (
        "import sys; from trivet.command.main import main; from trivet.reading import schemas;"
        "sys.stderr.write(str(schemas.folder())); sys.argv = ['trivet', *sys.argv[1:]]; main()"
    )
    alone = {**os.environ, "PYTHONPATH": str(tmp_path / "installed")}
    for words in (["new", "unit", "heat-it-up"], ["check"]):
        done = subprocess.run([sys.executable, "-c", code, *words], cwd=project, env=alone, capture_output=True, text=True, check=False)
        assert done.returncode == 0, done.stdout + done.stderr
        assert done.stderr == str(tmp_path / "installed" / "trivet" / "schema")


@pytest.mark.parametrize("name", NAMES)
def test_schema_is_draft_2020_12_under_our_name(name: str) -> None:
    """Every schema is a valid draft 2020-12 schema with our `$id`, and the quick walk knows all its keywords."""
    schema = schemas.schema(name)
    Draft202012Validator.check_schema(schema)
    assert schema["$schema"] == "https://json-schema.org/draft/2020-12/schema"
    assert schema["$id"] == f"urn:trivet:{name}:1"
    compiled(schema)


@pytest.mark.parametrize("name", NAMES)
def test_every_mapping_is_closed_and_nothing_branches(name: str) -> None:
    """`additionalProperties` is false wherever there are properties, and no schema offers alternatives that blur a message."""
    text = json.dumps(schemas.schema(name), default=str)
    assert "oneOf" not in text
    assert "anyOf" not in text
    for part in parts(schemas.schema(name)):
        if "properties" in part or "patternProperties" in part:
            assert part.get("additionalProperties") is False, part


@pytest.mark.parametrize("name", ["unit", "unit-translation"])
def test_every_property_is_described_with_examples_that_fit(name: str) -> None:
    """Every property of a unit says what it is and shows how it is written, and what it shows is accepted."""
    schema = schemas.schema(name)
    for part in parts(schema):
        for key, said in part.get("properties", {}).items():
            assert said.get("description"), key
            assert said.get("examples"), key
    for part in parts(schema):
        if part.get("type") != "object" and "$ref" not in part:
            for example in part.get("examples", []):
                errors = list(Draft202012Validator({**part, "$defs": schema.get("$defs", {})}).iter_errors(example))
                assert not errors, (part["description"], example)


@pytest.mark.parametrize("name", NAMES)
def test_patterns_are_anchored(name: str) -> None:
    """A pattern is about the whole text: draft 2020-12 searches, so each has both anchors."""
    for part in parts(schemas.schema(name)):
        for pattern in [*part.get("patternProperties", {}), *([part["pattern"]] if "pattern" in part else [])]:
            assert pattern.startswith("^"), pattern
            assert pattern.endswith("$"), pattern
