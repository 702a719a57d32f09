"""The groups of a round as written lists: teams in the margin, numbers with their duties, pairs at one device."""

from __future__ import annotations

from dataclasses import dataclass

from trivet.model.lock import StationGroup
from trivet.model.plan import Day
from trivet.model.school import Role
from trivet.model.station import Kind
from trivet.pages.lesson_run import LessonRun
from trivet.pages.spoken import number_of, sentence_list
from trivet.pages.stations import Tag, tag
from trivet.pages.when import run_in
from trivet.planning.team_sizes import LETTERS


@dataclass(frozen=True, slots=True)
class Member:
    """A student by number, with the duty or the team that stands behind it."""

    seat: str
    number: str
    says: str


@dataclass(frozen=True, slots=True)
class Team:
    """A team and its members."""

    code: str
    members: tuple[Member, ...]


@dataclass(frozen=True, slots=True)
class GroupBoard:
    """A station group in a round. `pairs`, and who works `alone` there, only where it is at the online station."""

    letter: str
    station: Tag
    place: str
    count: str
    pairs: tuple[tuple[Member, ...], ...]
    alone: tuple[Member, ...]
    teams: tuple[Team, ...]


def boards(run: LessonRun, day: Day, number: int) -> tuple[GroupBoard, ...]:
    """Return the boards of a round on a day, A to C; () where groups are not public."""
    held = next((each for each in run.plan.rounds if (each.round, each.date) == (number, day.date)), None)
    where, groups = held.stations if held else None, run.plan.groups
    if groups is None or where is None:
        return ()
    shown = [letter for letter in LETTERS if letter in where and letter in groups and groups[letter].teams]
    return tuple(_board(run, letter, groups[letter], where[letter]) for letter in shown)


def without_station(run: LessonRun, day: Day, number: int) -> tuple[str, ...]:
    """Return which groups have no station in a round that groups missed, or that is held for those; () where groups are not public."""
    held = next((each for each in run.plan.rounds if (each.round, each.date) == (number, day.date)), None)
    groups = run.plan.groups
    if groups is None or held is None or held.stations is None:
        return ()
    record = run_in(run.school, run.plan)
    done = [each for each in (record.done if record else ()) if each.date == day.date and number in each.rounds]
    missed = {letter for each in done for letter in each.without}
    gone = [letter for letter in LETTERS if letter in groups and groups[letter].teams and letter not in held.stations]
    found = []
    for key, letters in (("missed", [each for each in gone if each in missed]), ("waiting", [each for each in gone if each not in missed])):
        if letters:
            found.append(run.words(f"lesson.{key}", groups=sentence_list(letters, run.words), n=len(letters), round=number))
    return tuple(found)


def _board(run: LessonRun, letter: str, group: StationGroup, kind: Kind) -> GroupBoard:
    names = {role.id: role for role in run.school.roles}
    shown = run.unit.roles != "students"
    team_of = {student: code for code, members in group.teams.items() for student in members}
    teams = tuple(
        Team(code, tuple(Member(s, number_of(s), _duties(roles, names) if shown else "") for s, roles in members.items()))
        for code, members in group.teams.items()
    )
    pairs = group.pairs if kind is Kind.ONLINE else ()
    return GroupBoard(
        letter=letter,
        station=tag(kind, run.words),
        place=run.room.stands.get(kind, "") if run.room else "",
        count=run.words("lesson.students", n=len(team_of)),
        pairs=tuple(tuple(Member(s, number_of(s), team_of.get(s, "")) for s in pair) for pair in pairs if len(pair) > 1),
        alone=tuple(Member(pair[0], number_of(pair[0]), run.words("lesson.by_oneself")) for pair in pairs if len(pair) == 1),
        teams=teams,
    )


def _duties(roles: tuple[str, ...], names: dict[str, Role]) -> str:
    return ", ".join(names[role].name.lower() if role in names else role for role in roles)
