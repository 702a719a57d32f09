"""Compiled templates are kept."""

from __future__ import annotations

from collections.abc import Callable

from jinja2 import DictLoader, Environment

from trivet.hosts.kept_templates import KeptTemplates


def test_templates_are_compiled_once_and_again_when_they_change() -> None:
    """A second environment takes a template's code from what was kept, unless its text changed."""
    kept = KeptTemplates()

    def shown(text: str, compiled: Callable[[], None]) -> str:
        env = Environment(loader=DictLoader({"page.html": text}), bytecode_cache=kept, autoescape=True)
        compile_ = env.compile
        env.compile = lambda *a, **k: (compiled(), compile_(*a, **k))[1]  # type: ignore[method-assign, assignment, func-returns-value]
        return env.get_template("page.html").render()

    times: list[int] = []
    said = [shown(text, lambda: times.append(1)) for text in ("one", "one", "two")]
    assert (said, len(times)) == (["one", "one", "two"], 2)
