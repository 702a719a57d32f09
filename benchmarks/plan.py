"""Planning a large department against reading it.

Run: python -m benchmarks.plan. It makes a department of 30 classes that each run 12 units, with kept groups, in a temporary folder,
reads it and plans it, and prints the CPU milliseconds of both (best of several), the ratio of planning to reading, and what that makes
a run.
"""

from __future__ import annotations

from pathlib import Path
from tempfile import TemporaryDirectory

from benchmarks.department import Size, department_at, write_department
from benchmarks.measure import best_cpu_ms
from trivet.planning.department import plan_department

SIZE = Size(units=12, classes=30, runs_each=12)
RUNS = 3


def main() -> None:
    """Print the two figures and their ratio."""
    with TemporaryDirectory() as name:
        root = write_department(Path(name) / "project", SIZE)
        department = department_at(root)
        plans = plan_department(department)
        read = best_cpu_ms(lambda: department_at(root), RUNS)
        planned = best_cpu_ms(lambda: plan_department(department), RUNS)
    print(f"{SIZE}: {len(plans.plans)} plans, {len(plans.not_planned)} runs without one")
    print(f"reading {read:.0f} ms, planning {planned:.0f} ms, ratio {planned / read:.2f}")
    print(f"planning takes {planned / len(plans.plans):.2f} ms a run")


if __name__ == "__main__":
    main()
