"""How long `trivet check` takes on the demo department, against starting the interpreter and against the schema library alone.

Run: python -m benchmarks.check. Figures are the best of several runs, since a busy machine only ever adds.
"""

from __future__ import annotations

import subprocess
import sys
import time
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
RUNS = 10
CHECK = "import sys; sys.argv = ['trivet', 'check']; from trivet.command.main import main; main()"


def best(code: str) -> float:
    """Return the shortest wall time in seconds of several interpreters that run `code`."""
    times = []
    for _ in range(RUNS):
        start = time.perf_counter()
        subprocess.run([sys.executable, "-c", code], cwd=ROOT, check=True, stdout=subprocess.DEVNULL)
        times.append(time.perf_counter() - start)
    return min(times)


def main() -> None:
    """Print the three figures and their ratios."""
    bare, library, check = best("pass"), best("import jsonschema"), best(CHECK)
    print(f"interpreter {bare * 1000:.0f} ms; import jsonschema {library * 1000:.0f} ms; trivet check {check * 1000:.0f} ms")
    print(f"trivet check is {check / bare:.1f} times the bare interpreter, {check / library:.1f} times the schema library's import")


if __name__ == "__main__":
    main()
