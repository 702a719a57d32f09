"""Drawing groups, against an independent solver (HiGHS set partitioning) on the same histories in the same run.

Run: python -m benchmarks.grouping. Classes have levels from 1 to 4 and the usual tolerance; each unit is drawn after those before it.
It prints, in CPU seconds (on a busy machine a clock says little),

- one unit of 36 students, over three years of twelve units: without and with proof, the medians of all units and of those with
  repeats. For these it proves the fewest repeats of all teams once more, and has HiGHS work out the linear bound of set partitioning
  (its model built beforehand): the ratio of ours to it, and how often ours proves as much;
- 30 classes of 24 to 40 students with twelve units each, 360 draws without proof, in one process and in a pool of two: their groups
  must be the same, or the run stops. --classes 834 makes it 10,000 draws;
- memory: the most that a process holds which draws a year of 36 with proof, a bare interpreter, and HiGHS on one unit of 36.

With --year it prints instead, for classes of 18 to 40 without levels, the repeats of years of 6 to 12 units beside the least that
counting allows, and how many units pass before the first repeat. That takes some minutes.
"""

from __future__ import annotations

import argparse
import hashlib
import time
from collections.abc import Iterator
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass, replace
from multiprocessing import get_context
from pathlib import Path
from random import Random
from statistics import median

from tests.planning.grouping.oracle import set_partitioning, solved

from benchmarks.measure import peak_mib_of
from trivet.planning.grouping.certificate import met_matrix
from trivet.planning.grouping.draw import draw
from trivet.planning.grouping.ledger import Ledger
from trivet.planning.grouping.minimum import minimum
from trivet.planning.grouping.request import Draw, Request
from trivet.planning.grouping.weeks import counting_bound, weeks
from trivet.planning.team_sizes import class_shape

ROOT = Path(__file__).resolve().parent.parent
STUDENTS, CLASSES, UNITS, YEARS = 36, 30, 12, 3
SMALLEST, LARGEST = 24, 40
PROCESSES = 2
YEAR_SIZES = range(18, 41)
YEAR_LENGTHS = (6, 8, 9, 10, 11, 12)


@dataclass(frozen=True, slots=True)
class Unit:
    """One draw: what was asked, what came of it, and the CPU seconds it took."""

    request: Request
    drawn: Draw
    seconds: float


def levels_of(students: int, seed: int) -> dict[int, int]:
    """Return levels from 1 to 4 by seat: ability normally distributed, cut into four."""
    chance = Random(seed)
    abilities = [chance.gauss(0, 1) for _ in range(students)]
    return {seat: 1 + sum(ability > cut for cut in (-0.7, 0.0, 0.7)) for seat, ability in enumerate(abilities, 1)}


def year(students: int, seed: int, *, certify: bool) -> Iterator[Unit]:
    """Yield the units of one class, each drawn after those before it."""
    ledger = Ledger()
    for number in range(UNITS):
        request = Request(
            class_id="p1",
            seats=tuple(range(1, students + 1)),
            seed=f"{seed} {number}",
            levels=levels_of(students, seed),
            ledger=ledger,
            certify=certify,
        )
        start = time.process_time()
        drawn = draw(request)
        seconds = time.process_time() - start
        if not isinstance(drawn, Draw):
            raise AssertionError("without rules there is no conflict")
        yield Unit(request, drawn, seconds)
        ledger = ledger.plus(drawn.groups)


def one_unit() -> None:
    """Draw the units of some years without and with proof after the same history, and let the solver bound those with repeats."""
    proved, plain, hard, ours, theirs, as_much = [], [], [], [], [], 0
    for unit in (unit for seed in range(YEARS) for unit in year(STUDENTS, seed, certify=True)):
        start = time.process_time()
        draw(replace(unit.request, certify=False))
        plain.append(time.process_time() - start)
        proved.append(unit.seconds)
        if unit.drawn.own_repeats:
            hard.append((plain[-1], proved[-1]))
            least, seconds = bounded(unit)
            ours.append(seconds[0])
            theirs.append(seconds[1])
            as_much += least[0] >= least[1]
    print(
        f"one unit of {STUDENTS}: {median(plain):.3f} s without proof, {median(proved):.3f} s with proof (medians of {len(plain)}); ",
        end="",
    )
    without, with_proof = zip(*hard, strict=True)
    print(f"of the {len(hard)} with repeats {median(without):.3f} s and {median(with_proof):.3f} s, longest {max(with_proof):.2f} s")
    print(f"the fewest repeats of all teams, after the same histories: ours {median(ours):.3f} s, HiGHS's linear bound ", end="")
    print(f"{median(theirs):.3f} s, ratio {sum(ours) / sum(theirs):.2f}; ours proves as much in {as_much} of {len(hard)}")
    ratios = [sum(mine) / sum(theirs) for mine in (without, with_proof)]
    print(f"a whole draw of those to HiGHS's linear bound alone: ratio {ratios[0]:.2f} without proof, {ratios[1]:.2f} with proof")


def bounded(unit: Unit) -> tuple[tuple[int, int], tuple[float, float]]:
    """Return the fewest repeats of all teams as ours and as HiGHS's linear relaxation prove them, and the seconds of both."""
    met, seats = unit.request.ledger.teams, unit.request.seats
    sizes = [size for group in unit.request.shape(len(seats)) for size in group]
    start = time.process_time()
    mine = minimum(met_matrix(seats, met), sizes, unit.drawn.repeats).bound.repeats
    between = time.process_time()
    model = set_partitioning(len(seats), met, sizes)
    built = time.process_time()
    yours = solved(model, None)[0]
    return (mine, int(-(-(yours - 1e-6) // 1))), (between - start, time.process_time() - built)


def class_size(number: int) -> int:
    """Return sizes from the smallest to the largest, in turn."""
    return SMALLEST + number % (LARGEST - SMALLEST + 1)


def groups_of_year(number: int) -> tuple[str, float, int]:
    """Draw a class's year without proof; return what tells its groups, the CPU seconds, and the repeats."""
    units = list(year(class_size(number), number, certify=False))
    text = repr([[sorted(group.teams.items()) for group in unit.drawn.groups.values()] for unit in units])
    return text, sum(unit.seconds for unit in units), sum(unit.drawn.repeats for unit in units)


def many(classes: int) -> None:
    """Draw the years of many classes in one process and in a pool, and compare."""
    start = time.monotonic()
    alone = [groups_of_year(number) for number in range(classes)]
    between = time.monotonic()
    with ProcessPoolExecutor(PROCESSES, mp_context=get_context("spawn")) as pool:
        pooled = list(pool.map(groups_of_year, range(classes)))
    end = time.monotonic()
    digests = [hashlib.sha256("".join(text for text, _, _ in each).encode()).hexdigest()[:16] for each in (alone, pooled)]
    if digests[0] != digests[1]:
        raise SystemExit("one process and several draw different groups")
    cpu = sum(seconds for _, seconds, _ in alone)
    print(f"{classes} classes, {classes * UNITS} draws without proof, {sum(r for _, _, r in alone)} repeats, groups {digests[0]}: ", end="")
    print(f"{cpu:.1f} s of CPU in one process ({1000 * cpu / classes / UNITS:.0f} ms each), {between - start:.1f} s by the clock; ", end="")
    print(f"{end - between:.1f} s by the clock in {PROCESSES} processes, their start included")


def memory() -> None:
    """Print what three processes hold at most."""
    engine, bare, solver = (peak_mib_of(code, ROOT) for code in (ENGINE, "pass", SOLVER))
    print(f"memory: {engine:.0f} MiB for a year of {STUDENTS} with proof, {bare:.0f} MiB of it the bare interpreter; ", end="")
    print(f"HiGHS's linear bound of one unit {solver:.0f} MiB, its model included, ratio {engine / solver:.2f}")


ENGINE = f"""
from trivet.planning.grouping.draw import draw
from trivet.planning.grouping.ledger import Ledger
from trivet.planning.grouping.request import Request
ledger, levels = Ledger(), {levels_of(STUDENTS, 0)}
for number in range({UNITS}):
    asked = Request(class_id="p1", seats=tuple(levels), seed="0 " + str(number), levels=levels, ledger=ledger)
    ledger = ledger.plus(draw(asked).groups)
"""

SOLVER = f"""
from tests.planning.grouping.oracle import fewest_repeats
fewest_repeats({STUDENTS}, {{(1, 2): 1, (3, 4): 1}}, [4] * {STUDENTS // 4})
"""


def years() -> None:
    """Print the repeats of years of several lengths for every class size, and how long each goes without one."""
    print(f"students: repeats over {', '.join(map(str, YEAR_LENGTHS))} units (least by counting); units without a repeat")
    for students in YEAR_SIZES:
        sizes = [size for group in class_shape(students) for size in group]
        sums = [sum(unit.repeats for unit in weeks(students, units=units)) for units in YEAR_LENGTHS]
        least = [counting_bound(students, sizes, units) for units in YEAR_LENGTHS]
        found = weeks(students)
        new = sum(not unit.repeats for unit in found)
        said = "proved unavoidable after" if found[-1].unavoidable else "not proved unavoidable after"
        print(f"{students}: {', '.join(f'{s} ({b})' for s, b in zip(sums, least, strict=True))}; {new}, a repeat {said}", flush=True)


def main() -> None:
    """Print the figures asked for."""
    asked = argparse.ArgumentParser(description="How long drawing takes, against an independent solver.")
    asked.add_argument("--classes", type=int, default=CLASSES, help="classes to draw a year for")
    asked.add_argument("--year", action="store_true", help="the repeats of a year by class size instead")
    given = asked.parse_args()
    if given.year:
        years()
        return
    one_unit()
    many(given.classes)
    memory()


if __name__ == "__main__":
    main()
