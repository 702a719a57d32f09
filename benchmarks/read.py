"""Reading against a general YAML library on the same files.

Run: python -m benchmarks.read. Over the front matter of the demo's units and the files of its school it prints the CPU milliseconds
(best of several) of

- ours: strict YAML with the place of every value and with what a teacher should write instead;
- PyYAML's loaders, which give neither: SafeLoader (pure Python) and CSafeLoader (libyaml);

with the ratio of ours to each, and beside them what a whole unit costs: front matter, schema, sentence forms, checks and prose.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import yaml

from benchmarks.measure import best_cpu_ms
from trivet.reading.fence import split
from trivet.reading.front import read_front
from trivet.reading.school.units import unit_slugs
from trivet.reading.strict import load
from trivet.reading.unit import read_unit

ROOT = Path(__file__).resolve().parent.parent
RUNS = 20


def main() -> None:
    """Print the figures and their ratios."""
    slugs = unit_slugs(ROOT)
    units = {f"units/{slug}/index.md": (ROOT / "units" / slug / "index.md").read_text(encoding="utf-8") for slug in slugs}
    school = {f"school/{path.name}": path.read_text(encoding="utf-8") for path in sorted((ROOT / "school").glob("*.yml"))}
    fronts = [split(text, name).front for name, text in units.items()]
    compare("front matter of units", fronts, lambda: [read_front(text, name) for name, text in units.items()])
    compare("files of the school", list(school.values()), lambda: [load(text, name) for name, text in school.items()])
    whole = best_cpu_ms(lambda: [read_unit(ROOT / "units" / slug, slug, ROOT, slugs, slugs) for slug in slugs], RUNS)
    print(f"a whole unit, checked: {whole / len(slugs):.1f} ms")


def compare(what: str, texts: list[str], ours: Callable[[], object]) -> None:
    """Print what ours and the two loaders take on the same texts."""
    taken = best_cpu_ms(ours, RUNS)
    pure = best_cpu_ms(lambda: [yaml.load(text, Loader=yaml.SafeLoader) for text in texts], RUNS)
    fast = best_cpu_ms(lambda: [yaml.load(text, Loader=yaml.CSafeLoader) for text in texts], RUNS)
    size = sum(len(text.encode()) for text in texts) / 1024
    print(f"{what}, {size:.0f} KB: ours {taken:.1f} ms; SafeLoader {pure:.1f} ms, ratio {taken / pure:.2f}; ", end="")
    print(f"CSafeLoader {fast:.1f} ms, ratio {taken / fast:.2f}")


if __name__ == "__main__":
    main()
