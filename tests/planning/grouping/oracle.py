"""Set partitioning by HiGHS, an independent solver: the fewest repeats of a unit over all teams. For tests alone."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from itertools import combinations

import highspy
import numpy as np


def fewest_repeats(
    students: int, met: Mapping[tuple[int, int], int], sizes: Sequence[int], *, seconds: float | None = None
) -> tuple[float, bool]:
    """Return the least sum of earlier meetings over teams of these `sizes` that cover seats 1 to `students`, and whether it is whole.

    Without `seconds` the linear relaxation; with it the integer program, whose best bound comes back where time runs out.
    """
    wanted = Counter(sizes)
    columns = [team for size in sorted(wanted) for team in combinations(range(1, students + 1), size)]
    kinds = {size: students + place for place, size in enumerate(sorted(wanted))}
    cost = np.array([sum(met.get(two, 0) for two in combinations(team, 2)) for team in columns], dtype=float)
    starts, index = [0], []
    for team in columns:
        index += [seat - 1 for seat in team] + [kinds[len(team)]]
        starts.append(len(index))
    sides = np.array([1.0] * students + [float(wanted[size]) for size in sorted(wanted)])
    model = highspy.HighsLp()
    model.num_col_, model.num_row_ = len(columns), len(sides)
    model.col_cost_, model.col_lower_, model.col_upper_ = cost, np.zeros(len(columns)), np.ones(len(columns))
    model.row_lower_ = model.row_upper_ = sides
    model.a_matrix_.format_ = highspy.MatrixFormat.kColwise
    model.a_matrix_.start_, model.a_matrix_.index_ = np.array(starts), np.array(index)
    model.a_matrix_.value_ = np.ones(len(index))
    if seconds is not None:
        model.integrality_ = [highspy.HighsVarType.kInteger] * len(columns)
    solver = highspy.Highs()
    solver.setOptionValue("output_flag", False)
    solver.setOptionValue("threads", 1)
    if seconds is not None:
        solver.setOptionValue("time_limit", seconds)
    solver.passModel(model)
    solver.run()
    if seconds is None:
        return solver.getInfo().objective_function_value, False
    solved = solver.getModelStatus() == highspy.HighsModelStatus.kOptimal
    return (solver.getInfo().objective_function_value if solved else solver.getInfo().mip_dual_bound), solved
