"""One station's student card as a value: what it says, in one language, without any answer."""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from trivet.model.department import Department
from trivet.model.school import Settings
from trivet.model.station import AnyStation, HandsOnStation, Kind, Material, OnlineStation, Per, Record, TeacherLedStation, Variables
from trivet.model.unit import StationText, Translation, Unit
from trivet.pages.card_length import SHEET_MM, SHORT_BY_MM, print_length_mm
from trivet.pages.links import student_address
from trivet.pages.qr import qr_svg
from trivet.pages.spoken import amount, minutes, times
from trivet.pages.stations import Tag, tag
from trivet.pages.unit_links import FileLink, open_link, unit_links
from trivet.pages.words import Words
from trivet.planning.minutes import needed

MANY_ROWS = 5
"""More rows than these are lower on paper."""

ROWS_WITHOUT_A_NUMBER = 4
_FETCHED = (Per.TEAM, Per.PAIR, Per.STUDENT)


@dataclass(frozen=True, slots=True)
class StepView:
    """A direction and its time."""

    text: str
    time: str


@dataclass(frozen=True, slots=True)
class Column:
    """A column of the table to fill in; `unit` is what stood in brackets after its name."""

    name: str
    unit: str

    @property
    def label(self) -> str:
        """Name and unit in one, for a cell that stands alone."""
        return f"{self.name}, {self.unit}" if self.unit else self.name


@dataclass(frozen=True, slots=True)
class RecordView:
    """The table to fill in. `labels` are what stands in the first column, () where that is to be filled in too."""

    columns: tuple[Column, ...]
    rows: tuple[str, ...]
    labeled: bool
    dense: bool


@dataclass(frozen=True, slots=True)
class Line:
    """A named line: with text, or empty to write on."""

    name: str
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Card:
    """One station's card."""

    tag: Tag
    title: str
    goal: str
    work_in: str
    open: FileLink | None
    lines: tuple[Line, ...]
    steps: tuple[StepView, ...]
    careful: tuple[str, ...]
    careful_title: str
    roles: tuple[Line, ...]
    variables: tuple[Line, ...]
    record: RecordView | None
    done_when: str
    finished_early: str
    put_away: str
    need: str
    qr: Markup | str

    @property
    def tight(self) -> bool:
        """Whether the card is set tighter on paper, so that it still fits one sheet."""
        length = print_length_mm(
            lines=[f"{line.name} {line.text}" for line in self.lines],
            steps=[step.text for step in self.steps],
            careful=self.careful,
            roles=[f"{line.name} {line.text}" for line in self.roles],
            finish=[text for text in (self.done_when, self.finished_early, self.put_away) if text],
            rows=len(self.record.rows) if self.record else 0,
            dense=self.record.dense if self.record else False,
        )
        return length > SHEET_MM - SHORT_BY_MM


def make_card(station: AnyStation, unit: Unit, department: Department, translation: Translation | None, words: Words) -> Card:
    """Return the card of one station; `translation` is None for English."""
    page = student_address(unit.slug, translation.language if translation else "")
    text = _text(station, translation)
    settings = department.school.settings
    careful, careful_title = _careful(station, translation, words)
    url = card_url(settings, unit.slug, translation)
    name = tag(station.kind, words)
    return Card(
        tag=name,
        title=text.title or words(f"station.titles.{station.kind}"),
        goal=text.goal,
        work_in=_work_in(station, words),
        open=open_link(unit, unit_links(unit, department, page), words) if station.kind is Kind.ONLINE else None,
        lines=_lines(station, text, words),
        steps=_steps(station, text, words),
        careful=careful,
        careful_title=careful_title,
        roles=_roles(station, unit, department, words),
        variables=_variables(station.variables, station.kind, translation, words),
        record=_record(station.record, text),
        done_when=text.done_when,
        finished_early=text.finished_early,
        put_away=text.put_away,
        need=minutes(needed(unit, settings.defaults).of(station.kind).minutes),
        qr=qr_svg(f"{url}#{name.css}", words("card.qr", title=unit.title)) if url else "",
    )


def _text(station: AnyStation, translation: Translation | None) -> StationText:
    """The student's text in the page's language; what is not translated stays in English."""
    own = StationText(
        title=station.title,
        goal=station.goal,
        steps=tuple(step.text for step in station.steps),
        done_when=station.done_when,
        finished_early=station.finished_early,
        start_alone=station.start_alone if isinstance(station, TeacherLedStation) else "",
        put_away=station.put_away if isinstance(station, HandsOnStation) else "",
        use=station.use if isinstance(station, OnlineStation) else "",
        leave_alone=station.leave_alone if isinstance(station, OnlineStation) else "",
        record_columns=station.record.columns if station.record else (),
        record_rows=station.record.rows if station.record else (),
    )
    other = translation.stations.get(station.kind) if translation else None
    if other is None:
        return own
    fields = {name: getattr(other, name) or getattr(own, name) for name in StationText.__slots__}
    if len(fields["steps"]) != len(own.steps):
        fields["steps"] = own.steps
    return StationText(**fields)


def _steps(station: AnyStation, text: StationText, words: Words) -> tuple[StepView, ...]:
    return tuple(StepView(line, times(step.minutes, step.times, words)) for line, step in zip(text.steps, station.steps, strict=True))


def _lines(station: AnyStation, text: StationText, words: Words) -> tuple[Line, ...]:
    lines = [("use", text.use), ("leave_alone", text.leave_alone), ("start_alone", text.start_alone)]
    if isinstance(station, HandsOnStation) and words.language == "en":
        # the names of things are not translated, so the list stands on the English card alone
        lines.append(("fetch", "; ".join(_thing(m, words) for m in station.materials if m.per in _FETCHED)))
    return tuple(Line(words(f"card.{key}"), value) for key, value in lines if value)


def _thing(line: Material, words: Words) -> str:
    thing = f"{amount(line.quantity, line.unit)} {line.item}"
    key = f"card.for.{line.per}"
    return words(key, n=line.per_count, thing=thing) if line.per is not Per.TEAM or line.per_count > 1 else thing


def _careful(station: AnyStation, translation: Translation | None, words: Words) -> tuple[tuple[str, ...], str]:
    if not isinstance(station, HandsOnStation) or not (station.hazards or station.safety_notes):
        return (), ""
    names = ", ".join(words(f"hazards.{tag_}.name") for tag_ in station.hazards)
    title = words("card.careful", names=names) if names else words("card.careful_plain")
    if station.safety_notes and translation is None:
        return station.safety_notes, title
    return tuple(words(f"hazards.{tag_}.say") for tag_ in station.hazards), title


def _roles(station: AnyStation, unit: Unit, department: Department, words: Words) -> tuple[Line, ...]:
    if station.kind is Kind.ONLINE and station.work_in in ("", "pairs"):
        return (Line(words("card.taps"), words("card.taps_does")), Line(words("card.writes"), words("card.writes_does")))
    if station.kind is not Kind.HANDS_ON and station.work_in != "team":
        return ()
    # a team has a fifth member only where the department asks for teams of five
    roles = department.school.roles[: max(4, department.school.settings.defaults.team_size)]
    if words.language == "en":
        return tuple(Line(role.name, role.does) for role in roles)
    return tuple(Line(words(f"roles.{role.id}.name"), words(f"roles.{role.id}.does")) for role in roles)


def _variables(found: Variables | None, kind: Kind, translation: Translation | None, words: Words) -> tuple[Line, ...]:
    """Three lines to write on, or what the unit says where it says it openly; about others' experiment at the teacher-led station."""
    place = "theirs" if kind is Kind.TEACHER_LED else "ours"
    show = found is not None and found.printed and translation is None
    return tuple(Line(words(f"card.variables.{place}.{key}"), getattr(found, key) if show else "") for key in ("change", "measure", "keep"))


def _record(record: Record | None, text: StationText) -> RecordView | None:
    if record is None or not record.columns:
        return None
    columns = tuple(_column(name) for name in text.record_columns)
    rows = text.record_rows or ("",) * ROWS_WITHOUT_A_NUMBER
    return RecordView(columns, rows, any(rows), len(rows) > MANY_ROWS)


def _column(name: str) -> Column:
    head, mark, unit = name.rpartition(" (")
    return Column(head, unit.removesuffix(")")) if mark and unit.endswith(")") else Column(name, "")


def _work_in(station: AnyStation, words: Words) -> str:
    default = {Kind.ONLINE: "pairs", Kind.HANDS_ON: "team", Kind.TEACHER_LED: "group"}[station.kind]
    return words(f"card.work_in.{station.work_in or default}")


def card_url(settings: Settings, slug: str, translation: Translation | None) -> str:
    """Return the address that a printed card leads to, "" where school.yml names no site."""
    base = settings.site.rstrip("/")
    return f"{base}/{student_address(slug, translation.language if translation else '')}" if base else ""
