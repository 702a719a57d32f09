"""The direction of imports: model knows nothing, reading makes models, planning plans, pages pages, hosts and command at the edge."""

from __future__ import annotations

import ast
import sys
from collections.abc import Iterator
from graphlib import TopologicalSorter
from pathlib import Path

import pytest

PACKAGE = Path(__file__).resolve().parent.parent / "plugins" / "trivet"
ALLOWED = {
    "model": ({"model"}, set()),
    "reading": ({"model", "reading"}, {"yaml", "jsonschema", "icalendar", "dateutil"}),
    "planning": ({"model", "planning"}, {"pint", "dateutil"}),
    "results": ({"model", "results"}, set()),
    "pages": ({"model", "planning", "pages"}, {"jinja2", "markdown", "markupsafe", "nh3", "segno"}),
    "hosts": ({"model", "reading", "planning", "results", "pages", "hosts"}, {"jinja2"}),
    "command": ({"model", "reading", "planning", "results", "pages", "hosts", "command"}, {"click"}),
}
"""Folder: which of our folders, and which packages from outside, it may import."""
PRIVATE_READERS = {"trivet.reading.private", "trivet.reading.roster"}


def imported(path: Path) -> Iterator[str]:
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom) and node.module:
            yield node.module
            yield from (f"{node.module}.{alias.name}" for alias in node.names)


def sources() -> list[Path]:
    return sorted(PACKAGE.rglob("*.py"))


def test_there_is_something_to_guard() -> None:
    """The package is found, so that the guards below can fail."""
    assert len(sources()) > 40


@pytest.mark.parametrize("path", sources(), ids=lambda p: str(p.relative_to(PACKAGE)))
def test_each_file_imports_only_what_its_folder_may(path: Path) -> None:
    """A file imports from the folders and packages that its own folder is allowed, and only the MkDocs host imports mkdocs."""
    folder = path.relative_to(PACKAGE).parts[0]
    if folder in ("__init__.py", "__main__.py"):
        return
    ours, outside = ALLOWED[folder]
    for name in imported(path):
        top = name.split(".")[0]
        if top == "trivet":
            parts = name.split(".")
            assert len(parts) == 1 or parts[1] in ours, f"{path.name} imports {name}"
        elif top == "mkdocs":
            assert path == PACKAGE / "hosts" / "mkdocs.py", f"{path.name} imports {name}"
        elif top not in sys.stdlib_module_names:
            assert top in outside, f"{path.name} imports {name}"


def test_the_site_cannot_read_what_is_private() -> None:
    """Only commands import the readers of the private folder: hosts, pages and planning never do."""
    for path in sources():
        if path.relative_to(PACKAGE).parts[0] not in ("command", "reading"):
            assert not PRIVATE_READERS & set(imported(path)), path
    for name in ("department", "unit"):
        assert not PRIVATE_READERS & set(imported(PACKAGE / "reading" / f"{name}.py"))


def test_no_two_files_need_each_other() -> None:
    """Imports run one way, those inside functions included, so each file can be read with only what lies below it in mind."""
    files = {".".join(path.relative_to(PACKAGE.parent).with_suffix("").parts).removesuffix(".__init__"): path for path in sources()}
    needs = {name: {other for other in imported(path) if other in files and other != name} for name, path in files.items()}
    assert len(list(TopologicalSorter(needs).static_order())) == len(files)
