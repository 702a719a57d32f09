"""How long a launch takes: read, explain to a partner, ask your partner, the teacher's spot checks."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

from trivet.model.school import Defaults
from trivet.model.station import AnyStation, HandsOnStation, OnlineStation, TeacherLedStation
from trivet.model.unit import Unit
from trivet.planning.halves import halves
from trivet.planning.halves import minutes as in_minutes
from trivet.planning.headcount import Headcount
from trivet.planning.reading_rates import reading_halves, words_a_minute

LEAST_TO_READ = 2
"""Half minutes: even the shortest card is read for one minute."""

_WORD = re.compile(r"\S*\w\S*")


@dataclass(frozen=True, slots=True)
class Launch:
    """A launch in half minutes, with what its parts come from: the longest card, the reading rate, the teams to ask."""

    read: int
    explain: int
    ask: int
    spot_checks: int
    words: int
    words_a_minute: int
    grade: int
    teams: int

    @property
    def half_minutes(self) -> int:
        """The whole launch in half minutes."""
        return self.read + self.explain + self.ask + self.spot_checks

    @property
    def minutes(self) -> float:
        """The whole launch in minutes."""
        return in_minutes(self.half_minutes)

    @property
    def parts(self) -> tuple[tuple[str, float], ...]:
        """Name and minutes of each part, in order; they sum to `minutes`."""
        parts = (("read", self.read), ("explain", self.explain), ("ask", self.ask), ("spot_checks", self.spot_checks))
        return tuple((name, in_minutes(part)) for name, part in parts)


def card_words(station: AnyStation) -> int:
    """Count the words that a student reads on the card of a station: all of the author's directions, without the table to fill in.

    These are the texts of `reading.cards.card_texts`, which planning may not import; a test holds the two together.
    """
    texts = [station.title, station.goal, *(step.text for step in station.steps), station.done_when, station.finished_early]
    match station:
        case OnlineStation():
            texts += [station.use, station.leave_alone]
        case HandsOnStation():
            texts += [*station.safety_notes, station.put_away]
        case TeacherLedStation():
            texts += [station.start_alone]
    return sum(len(_WORD.findall(text)) for text in texts)


def launch(unit: Unit, defaults: Defaults, headcount: Headcount, *, whole_class: bool = False) -> Launch:
    """Work out the launch of a round of `unit`, the same in every round.

    Every part is rounded up to a half minute. In a whole-class round the teacher is free and asks while teams work: no minutes.
    """
    grade = unit.grades[0]
    words = max(card_words(station) for station in unit.stations)
    teams = 0 if whole_class else headcount.teams_to_ask
    seconds = teams * (defaults.spot_check_seconds + defaults.walk_seconds)
    return Launch(
        read=max(LEAST_TO_READ, reading_halves(words, grade)),
        explain=halves(defaults.explain),
        ask=halves(defaults.ask),
        spot_checks=halves(Fraction(seconds, 60)),
        words=words,
        words_a_minute=words_a_minute(grade),
        grade=grade,
        teams=teams,
    )
