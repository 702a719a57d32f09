"""The live preview: a broken unit shows its problems on its page, the rest works, and it heals."""

from __future__ import annotations

import os
import re
import socket
import subprocess
import sys
import time
import urllib.request
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from tests.support.project import copy_project


class Preview:
    """A running `mkdocs serve` over a copy of the demo."""

    def __init__(self, project: Path) -> None:
        self.project = project
        with socket.socket() as free:
            free.bind(("127.0.0.1", 0))
            self.port = free.getsockname()[1]
        self.log = (project / "log.txt").open("w+", encoding="utf-8")
        self.process = subprocess.Popen(
            [sys.executable, "-m", "mkdocs", "serve", "--dev-addr", f"127.0.0.1:{self.port}"],
            cwd=project,
            env={**os.environ, "NO_MKDOCS_2_WARNING": "1"},
            stdout=self.log,
            stderr=self.log,
        )

    def page(self, address: str) -> str:
        with urllib.request.urlopen(f"http://127.0.0.1:{self.port}{address}", timeout=30) as answer:
            return str(answer.read().decode("utf-8"))

    def wait(self, address: str, holds: Callable[[str], bool], seconds: float = 40) -> str:
        end = time.monotonic() + seconds
        page = ""
        while time.monotonic() < end:
            try:
                page = self.page(address)
            except OSError:
                page = ""
            if page and holds(page):
                return page
            time.sleep(0.3)
        self.log.seek(0)
        pytest.fail(f"{address} never came to hold it\n{page[-3000:]}\n{self.log.read()[-3000:]}")

    def stop(self) -> None:
        self.process.terminate()
        self.process.wait(20)
        self.log.close()


@pytest.fixture
def preview(tmp_path: Path) -> Iterator[Preview]:
    running = Preview(copy_project(tmp_path / "project"))
    yield running
    running.stop()


def test_a_broken_unit_shows_its_problems_and_heals(preview: Preview) -> None:
    """A step that can't be read is shown on the unit's page with the line to write; other pages work; mending the line heals it."""
    unit = preview.project / "units" / "float-or-sink" / "index.md"
    good = unit.read_text(encoding="utf-8")
    address = "/units/float-or-sink/"
    preview.wait(address, lambda page: "Float or sink?" in page)

    broken, count = re.subn(r"\((\d+) min, (\d+) times\)", r"(\1 min x \2)", good, count=1)
    assert count == 1
    unit.write_text(broken, encoding="utf-8")
    page = preview.wait(address, lambda page: "can't be read" in page or "can&#39;t be read" in page)
    assert "index.md" in page
    assert "Guide" in preview.page("/guide/")

    unit.write_text(good, encoding="utf-8")
    preview.wait(address, lambda page: "be read:" not in page and "Float or sink?" in page)


def test_a_broken_school_file_never_takes_the_preview_down(preview: Preview) -> None:
    """school/ is watched: broken bells are said on the pages, an empty or binary unit too, and everything heals."""
    preview.wait("/", lambda page: "<article" in page)
    bells = preview.project / "school" / "bells.yml"
    good = bells.read_text(encoding="utf-8")
    bells.write_text(good.replace("8:05-8:57", "8:05 to late", 1), encoding="utf-8")
    preview.wait("/", lambda page: "bells.yml" in page)
    bells.write_text(good, encoding="utf-8")
    preview.wait("/", lambda page: "bells.yml" not in page)

    unit = preview.project / "units" / "float-or-sink" / "index.md"
    kept = unit.read_bytes()
    for content in (b"", b"\x00\x01\x02", b"\xff\xfet\x00", b"---\n"):
        unit.write_bytes(content)
        preview.wait("/units/float-or-sink/", lambda page: "units/float-or-sink/index.md" in page)
    unit.write_bytes(kept)
    preview.wait("/units/float-or-sink/", lambda page: "Why does a lump of clay" in page)
    assert preview.process.poll() is None
