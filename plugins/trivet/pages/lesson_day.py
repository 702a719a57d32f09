"""A day of a lesson sheet to scale: blocks with clock times down the margin, three lanes in each round."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import time

from trivet.model.plan import Block, Day, Plan
from trivet.model.station import Kind
from trivet.pages.days import Lane, block_name, lanes
from trivet.pages.lesson_launch import teams_asked
from trivet.pages.lesson_run import LessonRun
from trivet.pages.scale import length_class
from trivet.pages.spoken import clock, minutes
from trivet.planning.costs import Costs, costs
from trivet.planning.headcount import Headcount
from trivet.planning.team_sizes import LETTERS

THIN = 2
"""A block of fewer minutes is thinner than its words: they stand on it and break its rules."""

APART = 1.8
"""Two clock times that are fewer minutes apart would touch; the earlier one stands."""


@dataclass(frozen=True, slots=True)
class LessonLane:
    """A lane of a round: who, at which station, where in the room."""

    lane: Lane
    place: str
    who: str
    teams: str


@dataclass(frozen=True, slots=True)
class LessonBlock:
    """A block of the timeline. `start` is its clock time, for the list that replaces the scale at large type; `round` where it is one."""

    css: str
    start: str
    name: str
    length: str
    lanes: tuple[LessonLane, ...] = ()
    round: int | None = None


@dataclass(frozen=True, slots=True)
class Label:
    """A clock time in the margin."""

    css: str
    text: str
    strong: bool


@dataclass(frozen=True, slots=True)
class Timeline:
    """One day: the classes of its scale, its times and its blocks."""

    css: str
    labels: tuple[Label, ...]
    blocks: tuple[LessonBlock, ...]


def timeline(run: LessonRun, day: Day) -> Timeline:
    """Return a day to scale."""
    counted = run.headcount(day)
    fixed = costs(run.school.settings.defaults, counted, 0, full_expectations=False, at_home=False)
    blocks = [_block(run, day, block, counted, fixed) for block in day.blocks]
    if day.surplus_minutes:
        at = day.minutes - day.surplus_minutes
        thin = "thin " if day.surplus_minutes < THIN else ""
        placed = f"spare {thin}{length_class('at', at)} {length_class('m', day.surplus_minutes)}"
        left = run.words("time.min", minutes=minutes(day.surplus_minutes))
        blocks.append(LessonBlock(placed, "", run.words("lesson.left"), left))
    rounds = [int(block.minutes) for block in day.blocks if block.kind == "station"]
    scale = f"{length_class('n', day.minutes)} {length_class('r', min(rounds, default=day.minutes))}"
    return Timeline(scale, tuple(_labels(day)), tuple(blocks))


def _block(run: LessonRun, day: Day, block: Block, counted: Headcount, fixed: Costs) -> LessonBlock:
    placed = f"{length_class('at', block.at)} {length_class('m', block.minutes)}"
    name = block_name(block, run.words)
    length = _length(run, block, fixed)
    if block.kind == "station" and block.round is not None:
        found = tuple(_lane(run, lane, counted) for lane in lanes(run.plan, block.round, day.date, run.words))
        return LessonBlock(f"lanes {placed}", clock(block.start), name, length, found, block.round)
    if block.kind == "launch" and not run.whole_class:
        asked = teams_asked(run, block.round or 0, counted.teams_to_ask)
        name = run.words("lesson.launch_and_checks", n=asked) if asked else name
    thin = "thin " if block.minutes < THIN else ""
    return LessonBlock(f"{thin}{placed}", clock(block.start), name, length)


def _length(run: LessonRun, block: Block, fixed: Costs) -> str:
    """Return the minutes of a block; what was added to its least is shown as a sum."""
    least = {"reflection": fixed.reflection / 2, "pack_up": fixed.pack_up / 2}.get(block.kind, block.minutes)
    if 0 < least < block.minutes and block.minutes >= THIN:
        return run.words("lesson.sum", least=minutes(least), more=minutes(block.minutes - least), minutes=minutes(block.minutes))
    return run.words("time.min", minutes=minutes(block.minutes))


def _lane(run: LessonRun, lane: Lane, counted: Headcount) -> LessonLane:
    kind = Kind(lane.station.css.replace("-", "_"))
    place = run.room.stands.get(kind, "") if run.room else ""
    if not lane.letters:
        return LessonLane(lane, place, "", "")
    students = sum(counted.groups[letter].students for letter in lane.letters)
    teams = _teams(run.plan, lane.letters, counted)
    return LessonLane(lane, place, run.words("lesson.students", n=students), " ".join(teams))


def _teams(plan: Plan, letters: str, counted: Headcount) -> Iterable[str]:
    if plan.groups is not None:
        return [team for letter in letters if letter in plan.groups for team in plan.groups[letter].teams]
    return [f"{letter}{number + 1}" for letter in letters for number in range(counted.groups[letter].teams) if letter in LETTERS]


def _labels(day: Day) -> Iterable[Label]:
    """Return the clock times that stand in the margin: each block's start that keeps its distance, and the bell."""
    starts = [(block.at, block.start, block.kind) for block in day.blocks]
    if day.surplus_minutes:
        starts.append((day.minutes - day.surplus_minutes, _after(day), "spare"))
    before = -APART
    for at, when, kind in starts:
        if at - before >= APART and day.minutes - at >= APART:
            yield Label(length_class("at", at), clock(when), kind in ("clean_up", "settle_in"))
            before = at
    yield Label(length_class("at", day.minutes), clock(day.end), True)


def _after(day: Day) -> time:
    last = day.blocks[-1]
    total = last.start.hour * 60 + last.start.minute + int(last.minutes + last.at % 1)
    return time(total // 60 % 24, total % 60)
