"""How long `trivet check` takes: on the demo department, against starting the interpreter and against the schema library alone;
and where 30 classes share the kit of one, so that almost every lesson clashes and many cures are tried, against kit for all.

Run: python -m benchmarks.check. Figures are the best of several runs, since a busy machine only ever adds: wall time of whole programs
for the demo, CPU time in this process for the 30 classes.
"""

from __future__ import annotations

import subprocess
import sys
import time
from pathlib import Path
from tempfile import TemporaryDirectory

from benchmarks.department import Size, write_department
from benchmarks.measure import best_cpu_ms
from trivet.command.check import problems_of

ROOT = Path(__file__).resolve().parent.parent
RUNS = 10
LARGE = {"kit for all": Size(units=12, classes=30, runs_each=12), "the kit of one": Size(units=12, classes=30, runs_each=12, kits=1)}
LARGE_RUNS = 3
CHECK = "import sys; sys.argv = ['trivet', 'check']; from trivet.command.main import main; main()"


def best(code: str) -> float:
    """Return the shortest wall time in seconds of several interpreters that run `code`."""
    times = []
    for _ in range(RUNS):
        start = time.perf_counter()
        subprocess.run([sys.executable, "-c", code], cwd=ROOT, check=True, stdout=subprocess.DEVNULL)
        times.append(time.perf_counter() - start)
    return min(times)


def large(size: Size) -> tuple[float, int]:
    """Return the CPU milliseconds of checking a department, and how many problems are found."""
    with TemporaryDirectory() as name:
        root = write_department(Path(name) / "project", size)
        return best_cpu_ms(lambda: problems_of(root), LARGE_RUNS), len(problems_of(root).problems)


def main() -> None:
    """Print the figures and their ratios."""
    bare, library, check = best("pass"), best("import jsonschema"), best(CHECK)
    print(f"interpreter {bare * 1000:.0f} ms; import jsonschema {library * 1000:.0f} ms; trivet check {check * 1000:.0f} ms")
    print(f"trivet check is {check / bare:.1f} times the bare interpreter, {check / library:.1f} times the schema library's import")
    found = {words: large(size) for words, size in LARGE.items()}
    for words, (ms, problems) in found.items():
        print(f"30 classes with {words}: {ms:.0f} ms, {problems} problems")
    (enough, _), (short, _) = found.values()
    print(f"short of kit, the check takes {short / enough:.1f} times as long")


if __name__ == "__main__":
    main()
