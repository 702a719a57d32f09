"""The launch of a round as a checklist: read, explain, ask, then the spot checks team by team."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from trivet.model.plan import Block, Day, Plan
from trivet.model.station import Kind
from trivet.pages.days import stations_of
from trivet.pages.lesson_run import LessonRun
from trivet.pages.scale import length_class
from trivet.pages.spoken import clock, minutes, number_of
from trivet.pages.stations import Segment, Tag, tag
from trivet.pages.words import Words
from trivet.planning.launch import Launch, launch
from trivet.planning.spot_check_lines import lines


@dataclass(frozen=True, slots=True)
class Check:
    """One spot check. `key` is what the device remembers its tick by."""

    key: str
    team: str
    seat: str
    number: str
    station: Tag | None
    kind: str
    ask: str
    listen_for: str


@dataclass(frozen=True, slots=True)
class StationChecks:
    """What may be asked at a station where no one knows yet who is asked: questions, each with what to listen for."""

    station: Tag
    lines: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class First:
    """One of the three things that students do before the teacher asks."""

    key: str
    text: str
    length: str


@dataclass(frozen=True, slots=True)
class LaunchView:
    """The launch of a round: its minutes to scale, what students do, whom the teacher asks, who starts alone."""

    round: int
    title: str
    clock: str
    over: str
    segments: tuple[Segment, ...]
    first: tuple[First, ...]
    checks: tuple[Check, ...]
    undrawn: tuple[StationChecks, ...]
    teams: int
    while_working: bool
    alone_letter: str
    alone_station: Tag
    alone: str


def launches(run: LessonRun, day: Day) -> tuple[LaunchView, ...]:
    """Return the launches of a day, in order; a round that opens with a recap has none."""
    parts = launch(run.unit, run.school.settings.defaults, run.headcount(day), whole_class=run.whole_class)
    return tuple(_launch(run, day, block, block.round, parts) for block in day.blocks if block.kind == "launch" and block.round)


def teams_asked(run: LessonRun, number: int, by_size: int) -> int:
    """Return how many teams are asked in the launch of a round; `by_size` where groups are not public."""
    return sum(check.round == number for check in run.plan.spot_checks) if run.plan.spot_checks else by_size


def _launch(run: LessonRun, day: Day, block: Block, number: int, parts: Launch) -> LaunchView:
    words = run.words
    where = stations_of(run.plan, number, day.date) or {}
    alone = "" if run.whole_class else next((letter for letter, kind in where.items() if kind is Kind.TEACHER_LED), "")
    somebody = not run.whole_class and (not where or bool(alone))
    asked = teams_asked(run, number, parts.teams)
    end = next((later.start for later in day.blocks if later.at >= block.at + block.minutes), day.end)
    return LaunchView(
        round=number,
        title=words("lesson.launch_title", n=number),
        clock=words("lesson.from_to", start=clock(block.start), end=clock(end)),
        over=length_class("n", block.minutes),
        segments=_segments(parts, block.minutes, asked, words),
        first=tuple(
            First(f"r{number}-{name}", words(f"lesson.launch.{name}"), words("time.min", minutes=minutes(length)))
            for name, length in parts.parts
            if name != "spot_checks"
        ),
        checks=_checks(run.plan, where, number, words),
        undrawn=_undrawn(run, where),
        teams=asked,
        while_working=run.whole_class,
        alone_letter=alone,
        alone_station=tag(Kind.TEACHER_LED, words),
        alone=run.unit.teacher_led.start_alone if somebody else "",
    )


def _segments(parts: Launch, whole: float, asked: int, words: Words) -> tuple[Segment, ...]:
    """Return the parts to scale over the whole block, so that what planning rounded up stands at the end."""
    segments = []
    at = 0.0
    for name, needed in parts.parts:
        length = min(needed, whole - at)
        if length <= 0:
            continue
        full = words("bar.part", name=words(f"lesson.launch.{name}", n=asked), minutes=minutes(length))
        short = words("lesson.checks_short", minutes=minutes(length), n=asked) if name == "spot_checks" else minutes(length)
        segments.append(Segment(f"{length_class('at', at)} {length_class('m', length)}", short, full))
        at += length
    return tuple(segments)


def _undrawn(run: LessonRun, where: Mapping[str, Kind]) -> tuple[StationChecks, ...]:
    """Return the questions of each station that is asked in a round, () where the plan names teams and students.

    The author's own stand in place of those that any station has; at a station with hazards safety is always asked.
    """
    if run.plan.spot_checks:
        return ()
    kinds = dict.fromkeys(where.values()) if run.whole_class else (Kind.ONLINE, Kind.HANDS_ON)
    found = []
    for kind in kinds:
        all_lines = lines(run.unit, kind, ())
        own = [line for line in all_lines if line.kind == "own"]
        shown = [line for line in all_lines if line.kind == "safety" or not own or line.kind == "own"]
        found.append(StationChecks(tag(kind, run.words), tuple((line.ask, line.listen_for) for line in shown)))
    return tuple(found)


def _checks(plan: Plan, where: Mapping[str, Kind], number: int, words: Words) -> tuple[Check, ...]:
    found = []
    for check in plan.spot_checks:
        if check.round != number:
            continue
        kind = where.get(check.team[:1])
        found.append(
            Check(
                key=f"r{number}-{check.team.lower()}",
                team=check.team,
                seat=check.seat,
                number=number_of(check.seat),
                station=tag(kind, words) if kind else None,
                kind=words(f"lesson.check.{check.kind}"),
                ask=check.ask,
                listen_for=check.listen_for,
            )
        )
    return tuple(found)
