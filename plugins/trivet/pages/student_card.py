"""One station's student card as a value: what it says, in one language, without any answer."""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from trivet.model.department import Department
from trivet.model.school import Settings
from trivet.model.station import AnyStation, HandsOnStation, Kind, Material, OnlineStation, Per, Record, TeacherLedStation, Variables
from trivet.model.unit import StationText, Translation, Unit
from trivet.pages.card_length import print_length_mm, setting
from trivet.pages.links import student_address
from trivet.pages.qr import qr_svg
from trivet.pages.spoken import amount, minutes, times
from trivet.pages.stations import Tag, tag
from trivet.pages.unit_links import FileLink, Task, open_link, task, unit_links
from trivet.pages.words import SOURCE, Words, load_words

MANY_ROWS = 5
"""More rows than these are lower, on paper and on the phone."""

COLUMNS_ON_A_PHONE, COLUMNS_OF_MANY_ROWS = 3, 5
"""More columns than these do not fit beside each other on a phone: where there is room to write, and where rows are low."""

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

    @property
    def broad(self) -> bool:
        """Whether each row is a small form on the phone; many rows would be a long way to scroll, so they stay a table if they can."""
        return len(self.columns) > (COLUMNS_OF_MANY_ROWS if self.dense else COLUMNS_ON_A_PHONE)


@dataclass(frozen=True, slots=True)
class Line:
    """A named line: with text, or empty to write on. `lang` is the text's language where it is not the page's."""

    name: str
    text: str
    lang: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Card:
    """One station's card. `untranslated` are the fields of `StationText` that stand in the unit's own language."""

    tag: Tag
    title: str
    goal: str
    work_in: str
    open: FileLink | None
    lines: tuple[Line, ...]
    steps: tuple[StepView, ...]
    careful: tuple[Line, ...]
    careful_title: str
    instead: Task | None
    roles: tuple[Line, ...]
    plan: str
    variables: tuple[Line, ...]
    record: RecordView | None
    done_when: str
    finished_early: str
    put_away: str
    help: tuple[str, str]
    need: str
    qr: Markup | str
    untranslated: frozenset[str] = frozenset()

    def lang(self, name: str) -> Markup | str:
        """Return the attribute that names the unit's own language, where a field stands in it on a page of another."""
        return Markup(' lang="{}"').format(SOURCE) if name in self.untranslated else ""

    @property
    def setting(self) -> str:
        """How the card is set on paper, so that it still fits one sheet: "" as usual, else the classes that make it smaller."""
        length = print_length_mm(
            lines=[f"{line.name} {line.text}" for line in self.lines],
            steps=[step.text for step in self.steps],
            careful=[line.text for line in self.careful],
            roles=[f"{line.name} {line.text}" for line in self.roles],
            finish=[text for text in (self.done_when, self.finished_early, self.put_away, *self.help) if text],
            instead=self.instead.text if self.instead else "",
            rows=len(self.record.rows) if self.record else 0,
            dense=self.record.dense if self.record else False,
        )
        return setting(length)


def make_card(
    station: AnyStation, unit: Unit, department: Department, translation: Translation | None, words: Words, *, need: float
) -> Card:
    """Return the card of one station, which needs so many minutes; `translation` is None for English."""
    page = student_address(unit.slug, translation.language if translation else "")
    text, untranslated = _text(station, translation)
    settings = department.school.settings
    links = unit_links(unit, department, page)
    careful, careful_title = _careful(station, text, untranslated, words)
    url = card_url(settings, unit.slug, translation)
    name = tag(station.kind, words)
    return Card(
        tag=name,
        title=text.title or words(f"station.titles.{station.kind}"),
        goal=text.goal,
        work_in=_work_in(station, words),
        open=open_link(unit, links, words) if station.kind is Kind.ONLINE else None,
        lines=_lines(station, text, untranslated, words),
        steps=_steps(station, text, words),
        careful=careful,
        careful_title=careful_title,
        instead=task(unit, links, words, text.instead, to_student=True) if station.kind is Kind.HANDS_ON else None,
        roles=_roles(station, unit, department, words),
        plan=words(f"card.plan.{_whose(station.kind)}"),
        variables=_variables(station.variables, station.kind, translation, words),
        record=_record(station.record, text),
        done_when=text.done_when,
        finished_early=text.finished_early,
        put_away=text.put_away,
        help=(f"{words('danger.ask')} {words('danger.peers')}", f"{words('danger.hurt')} {words('danger.adult')}"),
        need=minutes(need),
        qr=qr_svg(f"{url}#{name.css}", words("card.qr", title=(translation and translation.title) or unit.title)) if url else "",
        untranslated=untranslated,
    )


def _text(station: AnyStation, translation: Translation | None) -> tuple[StationText, frozenset[str]]:
    """The student's text in the page's language, and the names of what is not translated and stays in the unit's own."""
    hands_on = station if isinstance(station, HandsOnStation) else None
    own = StationText(
        title=station.title,
        goal=station.goal,
        steps=tuple(step.text for step in station.steps),
        done_when=station.done_when,
        finished_early=station.finished_early,
        start_alone=station.start_alone if isinstance(station, TeacherLedStation) else "",
        put_away=hands_on.put_away if hands_on else "",
        use=station.use if isinstance(station, OnlineStation) else "",
        leave_alone=station.leave_alone if isinstance(station, OnlineStation) else "",
        materials=tuple(line.item for line in hands_on.materials) if hands_on else (),
        safety_notes=hands_on.safety_notes if hands_on else (),
        instead=hands_on.instead if hands_on else "",
        record_columns=station.record.columns if station.record else (),
        record_rows=station.record.rows if station.record else (),
    )
    if translation is None:
        return own, frozenset()
    other = translation.stations.get(station.kind, StationText())
    fields = {name: (getattr(own, name), getattr(other, name)) for name in StationText.__slots__}
    kept = frozenset(name for name, (said, there) in fields.items() if said and not _stands_for(there, said))
    return StationText(**{name: said if name in kept else there or said for name, (said, there) in fields.items()}), kept


def _stands_for(there: str | tuple[str, ...], said: str | tuple[str, ...]) -> bool:
    """Whether something is translated; lists are matched by their places, so one of another length is no translation."""
    return bool(there) and (isinstance(there, str) or len(there) == len(said))


def _steps(station: AnyStation, text: StationText, words: Words) -> tuple[StepView, ...]:
    return tuple(StepView(line, times(step.minutes, step.times, words)) for line, step in zip(text.steps, station.steps, strict=True))


def _lines(station: AnyStation, text: StationText, untranslated: frozenset[str], words: Words) -> tuple[Line, ...]:
    lines = [("use", "use", text.use), ("leave_alone", "leave_alone", text.leave_alone), ("start_alone", "start_alone", text.start_alone)]
    if isinstance(station, HandsOnStation):
        said = load_words(SOURCE) if "materials" in untranslated else words
        things = zip(station.materials, text.materials, strict=True)
        lines.append(("fetch", "materials", "; ".join(_thing(line, item, said) for line, item in things if line.per in _FETCHED)))
    return tuple(Line(words(f"card.{key}"), value, SOURCE if name in untranslated else "") for key, name, value in lines if value)


def _thing(line: Material, item: str, words: Words) -> str:
    thing = f"{amount(line.quantity, line.unit)} {item}"
    key = f"card.for.{line.per}"
    return words(key, n=line.per_count, thing=thing) if line.per is not Per.TEAM or line.per_count > 1 else thing


def _careful(station: AnyStation, text: StationText, untranslated: frozenset[str], words: Words) -> tuple[tuple[Line, ...], str]:
    """The unit's safety notes, else the usual cautions; both where the notes stand in a language that not all can read."""
    if not isinstance(station, HandsOnStation) or not (station.hazards or station.safety_notes):
        return (), ""
    names = ", ".join(words(f"hazards.{tag_}.name") for tag_ in station.hazards)
    title = words("card.careful", names=names) if names else words("card.careful_plain")
    lang = SOURCE if "safety_notes" in untranslated else ""
    notes = tuple(Line("", note, lang) for note in text.safety_notes)
    if notes and lang in ("", words.language):
        return notes, title
    return (*(Line("", words(f"hazards.{tag_}.say")) for tag_ in station.hazards), *notes), title


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
    place = _whose(kind)
    show = found is not None and found.printed and translation is None
    return tuple(Line(words(f"card.variables.{place}.{key}"), getattr(found, key) if show else "") for key in ("change", "measure", "keep"))


def _whose(kind: Kind) -> str:
    """Whose experiment the card is about: at the teacher-led station students judge what others did."""
    return "theirs" if kind is Kind.TEACHER_LED else "ours"


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
