"""Run a program and say what it cost."""

from __future__ import annotations

import os
import subprocess
import sys
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path

EPOCH = "1795564800"
"""2026-11-25 00:00 UTC: the date of every site that benchmarks build."""


@dataclass(frozen=True, slots=True, order=True)
class Cost:
    """What one child process cost: CPU seconds (user and system), and the most memory it held in MiB."""

    cpu_seconds: float
    peak_mib: float


def environment() -> dict[str, str]:
    """Return the environment of every child.

    Python keeps compiled modules there, as it does unless told otherwise: those of installed packages are compiled already, and to
    compile ours at every start would be counted for one side alone.
    """
    usual = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
    return {**usual, "SOURCE_DATE_EPOCH": EPOCH, "NO_MKDOCS_2_WARNING": "1"}


def cost_of(arguments: Sequence[str], folder: Path) -> Cost:
    """Run Python with `arguments` in `folder` and return its cost; stops with what it said where it fails."""
    child = subprocess.Popen(
        [sys.executable, *arguments], cwd=folder, env=environment(), stdout=subprocess.DEVNULL, stderr=subprocess.PIPE, text=True
    )
    said = child.stderr.read() if child.stderr else ""
    _, status, usage = os.wait4(child.pid, 0)
    child.returncode = os.waitstatus_to_exitcode(status)
    if child.returncode:
        raise SystemExit(f"{' '.join(arguments)} failed\n{said}")
    return Cost(usage.ru_utime + usage.ru_stime, usage.ru_maxrss / 1024)


def peak_mib_of(code: str, folder: Path) -> float:
    """Return the most memory in MiB that Python held while it ran `code` in `folder`.

    A process counts what its parent held when it began, so a small one stands between this one and it.
    """
    between = "import os, subprocess, sys; child = subprocess.Popen([sys.executable, '-c', sys.argv[1]], stdout=subprocess.DEVNULL); "
    between += "_, status, usage = os.wait4(child.pid, 0); print(usage.ru_maxrss / 1024); sys.exit(status != 0)"
    done = subprocess.run(
        [sys.executable, "-c", between, code], cwd=folder, env=environment(), stdout=subprocess.PIPE, text=True, check=True
    )
    return float(done.stdout)


def best_cpu_ms(job: Callable[[], object], runs: int) -> float:
    """Return the least CPU milliseconds of several calls in this process."""
    times = []
    for _ in range(runs):
        start = time.process_time()
        job()
        times.append(time.process_time() - start)
    return 1000 * min(times)
