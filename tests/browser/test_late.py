"""The clock's rule for running late, in the browser, on the cases that Python answers."""

from __future__ import annotations

import json
from collections.abc import Callable
from importlib.resources import files
from pathlib import Path

from playwright.sync_api import Browser

from tests.shared.late import FILE, load


def test_the_script_answers_as_python_does(tmp_path: Path, chromium: Browser, serve: Callable[[Path], str]) -> None:
    """On every shared case the script's answer is the one in the file, to the half minute; and it refuses what can't be."""
    (tmp_path / "late.js").write_text((files("trivet.pages") / "assets" / "js" / "late.js").read_text(encoding="utf-8"), encoding="utf-8")
    (tmp_path / "late.json").write_bytes(FILE.read_bytes())
    (tmp_path / "index.html").write_text("<!doctype html><title>Late</title>", encoding="utf-8")
    page = chromium.new_page()
    page.goto(f"{serve(tmp_path)}/index.html")
    answers = page.evaluate(
        """async () => {
          const { late, RULES } = await import("/late.js");
          const cases = await (await fetch("/late.json")).json();
          return cases.map(({ parts, done, left, rules }) => JSON.stringify(late(parts, done, left, { ...RULES, ...rules })));
        }"""
    )
    cases = load()
    assert len(answers) == len(cases) >= 200
    for case, answer in zip(cases, answers, strict=True):
        assert json.loads(answer) == case["answer"], case
    refused = page.evaluate("import('/late.js').then(({ late }) => { try { late([], -1, 3); return false; } catch { return true; } })")
    assert refused
    page.close()
