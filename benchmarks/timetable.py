"""How long one timetable takes.

Run: python -m benchmarks.timetable. It lays the three rounds and the write-up of one unit on random calendars of ten meetings, of
38 to 90 minutes, for classes of 1 to 48 students, and prints the median, the 99th of a hundred and the longest in milliseconds.
"""

from __future__ import annotations

import random
import time
from statistics import median, quantiles

from trivet.model.school import Defaults
from trivet.planning.costs import Costs, costs
from trivet.planning.headcount import by_size
from trivet.planning.minutes import RoundRange
from trivet.planning.timetable import NoTimetable, timetable

CALENDARS = 10_000
MEETINGS = 10
SHORTEST, LONGEST = 38, 90
SEED = 20261130


def some_costs(chance: random.Random) -> Costs:
    """Return the costs of a class of any size with a launch of 3 to 10 minutes."""
    return costs(
        Defaults(),
        by_size(chance.randint(1, 48), 4),
        chance.randint(6, 20),
        full_expectations=chance.random() < 0.3,
        at_home=chance.random() < 0.2,
    )


def main() -> None:
    """Print the milliseconds."""
    chance = random.Random(SEED)
    times, none = [], 0
    for _ in range(CALENDARS):
        periods = [chance.randint(SHORTEST, LONGEST) for _ in range(MEETINGS)]
        low = chance.randint(20, 28)
        made, allowed = some_costs(chance), RoundRange(low, low + chance.randint(0, 10))
        start = time.perf_counter()
        found = timetable(periods, allowed, made, 2)
        times.append(1000 * (time.perf_counter() - start))
        none += isinstance(found, NoTimetable)
    rare = quantiles(times, n=100)[-1]
    print(f"{CALENDARS} random calendars of {MEETINGS} meetings, {none} of them without a timetable")
    print(f"median {median(times):.2f} ms, 99 of 100 within {rare:.2f} ms, longest {max(times):.2f} ms")


if __name__ == "__main__":
    main()
