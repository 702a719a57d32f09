"""Materials counted minute by minute and hand by hand, from the words of the design alone: nothing of the planner's own counting is used.

A class has its kit out from bell to bell on each day on which somebody is at the station. Where groups are not public, any group
may be at the station in a rotating round; A, B, C use things up in that order.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator, Sequence
from datetime import date, time
from fractions import Fraction

from trivet.model.department import Department
from trivet.model.plan import Day, Plan
from trivet.model.station import Kind, Material, Per

Third = dict[str, list[object]]
"""Who of a station group can be handed something: its students, its pairs, its teams."""
Item = tuple[str, str]
"""An item and the store it comes from."""


def minute_of(clock: time) -> int:
    return clock.hour * 60 + clock.minute


def thirds(department: Department, plan: Plan) -> list[Third]:
    """The station groups in order of letter, with what is written about sizes where the groups themselves are not public."""
    found: list[Third] = []
    if plan.groups is not None:
        return [
            {"student": [*group.students], "pair": [*group.pairs], "team": [*group.teams], "letter": [letter]}
            for letter, group in plan.groups.items()
        ]
    run = next(run for run in department.school.runs if (run.class_id, run.unit) == (plan.class_id, plan.unit))
    own = department.school.classes[plan.class_id]
    present = [seat for seat in own.seats if not any(late.seat == seat and late.first > run.starts for late in own.late)]
    for letter in range(3):
        students: list[object] = list(present[letter::3])
        pairs: list[object] = [students[i : i + 2] for i in range(0, len(students) - 1, 2)] or students[:1]
        found.append({"student": students, "pair": pairs, "team": list(range(teams_of(len(students)))), "letter": ["ABC"[letter]]})
    return found


def teams_of(students: int) -> int:
    """How many teams: none of five where threes and fours do, none under three where there are three students, then as few as can be."""
    if not students:
        return 0

    def wrong(teams: int) -> tuple[bool, bool, int]:
        sizes = [students // teams + (place < students % teams) for place in range(teams)]
        return (students >= 3 and min(sizes) < 3, max(sizes) > 4, teams)

    return min(range(1, students + 1), key=wrong)


def handed_out(line: Material, who: Third) -> int:
    """Hand the things of a line out to one station group, and count."""
    if line.per in (Per.STATION, Per.CLASS):
        waiting: list[object] = ["all"]
    else:
        waiting = list(who[line.per.value])
    times = 0
    while waiting:
        waiting = waiting[line.per_count :] if line.per is not Per.CLASS else []
        times += 1
    return times * int(line.quantity)


def together(groups: Iterable[Third]) -> Third:
    whole: Third = {"student": [], "pair": [], "team": [], "letter": []}
    for group in groups:
        for what, members in group.items():
            whole[what] = [
                *whole[what],
                *((letter, member) for letter, member in zip(group["letter"] * len(members), members, strict=True)),
            ]
    return whole


def rounds_at(department: Department, plan: Plan, kind: Kind) -> Iterator[tuple[date, list[Third], Third | None]]:
    """Each round with somebody at the station: its date, the groups that may be there, and the one whose things are used up."""
    groups = [group for group in thirds(department, plan) if group["student"]]
    for number, each in enumerate(plan.rounds):
        if each.stations is None:
            if groups:
                yield each.date, groups, groups[number] if number < len(groups) else None
        elif plan.way == "whole_class":
            if set(each.stations.values()) == {kind}:
                yield each.date, [together(groups)], together(groups)
        else:
            here = [group for group in groups if each.stations[str(group["letter"][0])] is kind]
            if here:
                yield each.date, here, here[0]


def store_of(department: Department, plan: Plan, item: str) -> str:
    """The store an item comes from: the room's; "" where some of it stands in no store, or some room that needs it has none."""
    lines = [line for line in department.school.inventory if line.item == item]
    rooms = department.school.rooms
    asking = {
        rooms[department.school.classes[run.class_id].room].store
        for run in department.school.runs
        if any(line.item == item for line in department.units[run.unit].hands_on.materials)
    }
    if "" in asking or any(line.store == "" for line in lines):
        return ""
    return rooms[department.school.classes[plan.class_id].room].store


def out_on(department: Department, plan: Plan, day: Day) -> Counter[Item]:
    """What stands on the benches, and which devices are in use, while the class is in the room on one day."""
    kit: Counter[Item] = Counter()
    for when, groups, _ in rounds_at(department, plan, Kind.HANDS_ON):
        if when == day.date:
            lines = [line for line in department.units[plan.unit].hands_on.materials if not line.used_up]
            for item in dict.fromkeys(line.item for line in lines):
                # lines about one thing are added up, each for the group that needs most of it
                many = sum(max(handed_out(line, group) for group in groups) for line in lines if line.item == item)
                many += sum(int(line.spare or 0) for line in lines if line.item == item)
                where = (item, store_of(department, plan, item))
                kit[where] = max(kit[where], many)
    room = department.school.classes[plan.class_id].room
    work_in = department.units[plan.unit].online.work_in
    for when, groups, _ in rounds_at(department, plan, Kind.ONLINE):
        if when == day.date:
            who = {"alone": "student", "team": "team"}.get(work_in, "pair")
            kit["device", room] = max(kit["device", room], *(len(group[who]) for group in groups))
    return kit


def most_at_one_minute(department: Department, plans: Sequence[Plan], first: date, last: date) -> dict[Item, int]:
    """Look at every minute of every day from `first` to `last` and keep the largest sum of each item of each store."""
    most: dict[Item, int] = {}
    by_day: defaultdict[date, list[tuple[Day, Counter[Item]]]] = defaultdict(list)
    for plan in plans:
        for day in plan.days:
            if first <= day.date <= last:
                by_day[day.date].append((day, out_on(department, plan, day)))
    for meetings in by_day.values():
        for minute in range(min(minute_of(day.start) for day, _ in meetings), max(minute_of(day.end) for day, _ in meetings)):
            now: Counter[Item] = Counter()
            for day, kit in meetings:
                if minute_of(day.start) <= minute < minute_of(day.end):
                    now.update(kit)
            for item, many in now.items():
                most[item] = max(most.get(item, 0), many)
    return {item: many for item, many in most.items() if many}


def used_in_all(department: Department, plans: Sequence[Plan], first: date, last: date) -> dict[Item, Fraction]:
    """Hand out what is used up, round after round, and add the spare: what a line says, else ten percent, a whole thing where counted."""
    counted: defaultdict[Item, Fraction] = defaultdict(Fraction)
    own_spare: defaultdict[Item, Fraction] = defaultdict(Fraction)
    shared: defaultdict[Item, Fraction] = defaultdict(Fraction)
    measured = set()
    for plan in plans:
        for line in department.units[plan.unit].hands_on.materials:
            if not line.used_up:
                continue
            item = (line.item, store_of(department, plan, line.item))
            if line.unit:
                measured.add(item)
            begun = False
            for when, _, who in rounds_at(department, plan, Kind.HANDS_ON):
                again, begun = begun, True
                if not first <= when <= last:
                    continue
                if line.spare is not None and not again:
                    own_spare[item] += Fraction(line.spare)
                if who is None or (again and line.per is Per.CLASS):
                    continue
                many = Fraction(handed_out(line, who))
                counted[item] += many
                if line.spare is None:
                    shared[item] += many
    total = {}
    for item, many in counted.items():
        spare = own_spare[item] + shared[item] / 10
        if item not in measured:
            spare = Fraction(-(-spare.numerator // spare.denominator))
        if many:
            total[item] = many + spare
    return total
