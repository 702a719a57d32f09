"""Planning a department against reading it: a year of 7 classes with 8 units each, and a large one of 30 classes with 12 each.

Run: python -m benchmarks.plan. It makes each of them, with kept groups, in a temporary folder, reads it and plans it, and prints the
CPU milliseconds of both (best of several) and together, the ratio of planning to reading, and what planning makes a run.
"""

from __future__ import annotations

from pathlib import Path
from tempfile import TemporaryDirectory

from benchmarks.department import Size, department_at, write_department
from benchmarks.measure import best_cpu_ms
from trivet.planning.department import plan_department

SIZES = (Size(units=8, classes=7, runs_each=8), Size(units=12, classes=30, runs_each=12))
RUNS = 3


def main() -> None:
    """Print the figures of each size."""
    for size in SIZES:
        with TemporaryDirectory() as name:
            root = write_department(Path(name) / "project", size)
            department = department_at(root)
            plans = plan_department(department)
            read = best_cpu_ms(lambda root=root: department_at(root), RUNS)
            planned = best_cpu_ms(lambda department=department: plan_department(department), RUNS)
        print(f"{size}: {len(plans.plans)} plans, {len(plans.not_planned)} runs without one")
        print(f"reading {read:.0f} ms, planning {planned:.0f} ms, together {(read + planned) / 1000:.2f} s, ratio {planned / read:.2f}")
        print(f"planning takes {planned / len(plans.plans):.2f} ms a run")


if __name__ == "__main__":
    main()
