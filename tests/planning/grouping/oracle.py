"""Set partitioning by HiGHS, an independent solver: the fewest repeats of a unit over all teams. For tests alone."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from itertools import combinations

import highspy
import numpy as np

from trivet.model.roster import PairRule


def fewest_repeats(
    students: int, met: Mapping[tuple[int, int], int], sizes: Sequence[int], *, seconds: float | None = None
) -> tuple[float, bool]:
    """Return the least sum of earlier meetings over teams of these `sizes` that cover seats 1 to `students`, and whether it is whole.

    Without `seconds` the linear relaxation; with it the integer program, whose best bound comes back where time runs out.
    """
    return solved(set_partitioning(students, met, sizes), seconds)


def set_partitioning(students: int, met: Mapping[tuple[int, int], int], sizes: Sequence[int]) -> highspy.HighsLp:
    """Return the model: a column for each team of each size, a row for each student and each size."""
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
    return model


def solved(model: highspy.HighsLp, seconds: float | None) -> tuple[float, bool]:
    """Return the least cost of a model, and whether it is the whole-number one: as `fewest_repeats` does."""
    if seconds is not None:
        model.integrality_ = [highspy.HighsVarType.kInteger] * model.num_col_
    solver = highspy.Highs()
    solver.setOptionValue("output_flag", False)
    solver.setOptionValue("threads", 1)
    if seconds is not None:
        solver.setOptionValue("time_limit", seconds)
    solver.passModel(model)
    solver.run()
    if seconds is None:
        return solver.getInfo().objective_function_value, False
    whole = solver.getModelStatus() == highspy.HighsModelStatus.kOptimal
    return (solver.getInfo().objective_function_value if whole else solver.getInfo().mip_dual_bound), whole


def rules_can_hold(rules: Sequence[PairRule], shape: Sequence[Sequence[int]]) -> bool:
    """Say by an integer program whether all rules can hold: a 0-1 variable for each named seat at each team."""
    teams = [(group, size) for group, sizes in enumerate(shape) for size in sizes]
    named = sorted({seat for rule in rules for seat in (rule.low, rule.high)})
    at = {(seat, team): number for number, (seat, team) in enumerate((s, t) for s in named for t in range(len(teams)))}
    groups = [[t for t, (group, _) in enumerate(teams) if group == each] for each in range(len(shape))]
    rows: list[tuple[list[int], list[float], float, float]] = [
        ([at[s, t] for t in range(len(teams))], [1.0] * len(teams), 1, 1) for s in named
    ]
    rows += [([at[s, t] for s in named], [1.0] * len(named), 0, size) for t, (_, size) in enumerate(teams)]
    for rule in rules:
        places = groups if "group" in rule.kind.asks.value else [[t] for t in range(len(teams))]
        for place in places:
            one, other = [at[rule.low, t] for t in place], [at[rule.high, t] for t in place]
            if rule.kind.asks.value.startswith("not"):
                rows.append((one + other, [1.0] * (2 * len(place)), 0, 1))
            else:
                rows.append((one + other, [1.0] * len(place) + [-1.0] * len(place), 0, 0))
    solver = highspy.Highs()
    solver.setOptionValue("output_flag", False)
    solver.setOptionValue("threads", 1)
    for _ in at:
        solver.addVar(0, 1)
    solver.changeColsIntegrality(len(at), np.arange(len(at), dtype=np.int32), np.array([highspy.HighsVarType.kInteger] * len(at)))
    for index, values, low, high in rows:
        solver.addRow(low, high, len(index), np.array(index, dtype=np.int32), np.array(values))
    solver.run()
    status = solver.getModelStatus()
    assert status in (highspy.HighsModelStatus.kOptimal, highspy.HighsModelStatus.kInfeasible)
    return bool(status == highspy.HighsModelStatus.kOptimal)
