"""Building a large department against its floor: the same visible text as plain Markdown, through Material alone.

Run: python -m benchmarks.build. It makes a department of 100 units, 7 classes and 56 runs with kept groups, in a temporary folder,
builds it with `mkdocs build`, and builds the floor (benchmarks/floor.py): the same words on the same pages with the same settings of
the theme and search on for the same pages. It prints

- words: the visible words of both sites, which must agree within 2 %, or the comparison is void;
- CPU: the CPU seconds of each build, user and system, interpreter and imports included (best of several, taken in turn), and the
  ratio, ours to the floor;
- memory: the most that each build held at once;
- only: what `mkdocs serve` takes with `only: float-or-sink` when that unit is edited: the rebuild as MkDocs counts it, and the time
  from the edit to the new page, which has MkDocs' own waiting in it (it looks every 0.5 s and then waits 0.25 s); medians.
"""

from __future__ import annotations

import re
import socket
import statistics
import subprocess
import sys
import time
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory

from benchmarks.department import Size, write_department
from benchmarks.floor import words, write_floor
from benchmarks.measure import cost_of, environment
from trivet.hosts.build import build_site

SIZE = Size(units=100, classes=7, runs_each=8)
RUNS = 3
EDITS = 5
ONLY = "float-or-sink"
WORDS_APART_PERCENT = 2


def build(project: Path, site: Path) -> list[str]:
    """Return the arguments that build a project into a folder."""
    return ["-m", "mkdocs", "build", "--quiet", "--config-file", str(project / "mkdocs.yml"), "--site-dir", str(site)]


def words_of(site: Path) -> int:
    """Count the visible words of all pages of a site; a unit's own pages (simulations) are no pages of the site."""
    return sum(words(path.read_text(encoding="utf-8")) for path in site.rglob("index.html") if path.parent.name != "sim")


def compare(project: Path, floor: Path, folder: Path) -> None:
    """Build both in turn and print what they cost."""
    ours, plain = [], []
    for _ in range(RUNS):
        ours.append(cost_of(build(project, folder / "ours"), folder))
        plain.append(cost_of(build(floor, folder / "plain"), folder))
    counted, against = words_of(folder / "ours"), words_of(folder / "plain")
    print(f"words: {counted} against {against}, {100 * abs(counted - against) / against:.2f} % apart")
    if 100 * abs(counted - against) > WORDS_APART_PERCENT * against:
        raise SystemExit("the two sites do not say the same, so their costs can't be compared")
    print(f"CPU: {min(ours).cpu_seconds:.2f} s against {min(plain).cpu_seconds:.2f} s", end=", ")
    print(f"ratio {min(ours).cpu_seconds / min(plain).cpu_seconds:.2f}")
    print(f"memory: {max(cost.peak_mib for cost in ours):.0f} MiB against {max(cost.peak_mib for cost in plain):.0f} MiB")


@contextmanager
def serving(project: Path, log: Path) -> Iterator[str]:
    """Serve one unit of a project and give the address of its page."""
    settings = (project / "mkdocs.yml").read_text(encoding="utf-8")
    asked = project / "only.yml"
    asked.write_text(settings.replace("  - trivet\n", f"  - trivet:\n      only: {ONLY}\n"), encoding="utf-8")
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        place = f"127.0.0.1:{free.getsockname()[1]}"
    command = [sys.executable, "-m", "mkdocs", "serve", "--config-file", str(asked), "--dev-addr", place]
    with log.open("w", encoding="utf-8") as out, subprocess.Popen(command, env=environment(), stdout=out, stderr=out) as server:
        try:
            yield f"http://{place}/units/{ONLY}/"
        finally:
            server.terminate()


def wait_for(address: str, text: str) -> float:
    """Return how many seconds it takes until the page at `address` holds `text`."""
    start = time.monotonic()
    while time.monotonic() < start + 120:
        try:
            with urllib.request.urlopen(address, timeout=30) as answer:
                if text in answer.read().decode("utf-8"):
                    return time.monotonic() - start
        except OSError:
            pass
        time.sleep(0.05)
    raise SystemExit(f"{address} never came to hold {text}")


def preview(project: Path, log: Path) -> None:
    """Edit one unit a few times while it is served alone, and print how long it takes to see it."""
    unit = project / "units" / ONLY / "index.md"
    text = unit.read_text(encoding="utf-8")
    seen = []
    with serving(project, log) as address:
        wait_for(address, "lump of clay")
        for number in range(EDITS):
            time.sleep(1)
            unit.write_text(text.replace("lump of clay", f"lump {number} of clay"), encoding="utf-8")
            seen.append(wait_for(address, f"lump {number} of clay"))
    rebuilds = [float(found) for found in re.findall(r"built in ([\d.]+) seconds", log.read_text(encoding="utf-8"))][1:]
    print(f"only: rebuilt in {statistics.median(rebuilds):.2f} s, seen {statistics.median(seen):.2f} s after the edit")


def main() -> None:
    """Make the department and its floor, and print all figures."""
    with TemporaryDirectory() as name:
        folder = Path(name)
        project = write_department(folder / "project", SIZE)
        site = build_site(project).site
        print(f"{SIZE}: {len(site.pages)} pages and the guide")
        compare(project, write_floor(folder / "floor", project, site), folder)
        preview(project, folder / "log.txt")


if __name__ == "__main__":
    main()
