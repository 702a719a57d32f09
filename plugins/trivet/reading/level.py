"""The reading level of a text: the Flesch-Kincaid grade, with new words left out.

Kincaid, Fishburne, Rogers and Chissom 1975, Derivation of new readability formulas for Navy enlisted personnel, Research Branch
Report 8-75. The syllable counter is ours and declared in `syllables`.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterable
from dataclasses import dataclass

from trivet.reading.syllables import syllables

LEAST_WORDS = 30
"""Shorter texts get no level: one long word would move it by a grade (ours, no source)."""

_WORD = re.compile(r"[^\W_](?:[\w'’.,‐‑-]*[^\W_])?")
_SENTENCE_END = re.compile(r"(?<=[.!?…])[\"”’)]*\s+|\n+")
_LETTER = re.compile(r"[^\W\d_]")


@dataclass(frozen=True, slots=True)
class Sentence:
    """A sentence with its counted words and their syllables."""

    text: str
    words: int
    syllables: int

    @property
    def grade(self) -> float:
        """The grade of this sentence taken alone."""
        return flesch_kincaid_grade(self.words, 1, self.syllables)


@dataclass(frozen=True, slots=True)
class Level:
    """The reading level of a text. `hardest` are its hardest sentences, hardest first."""

    words: int
    sentences: int
    syllables: int
    hardest: tuple[str, ...] = ()

    @property
    def grade(self) -> float:
        """The Flesch-Kincaid grade."""
        return flesch_kincaid_grade(self.words, self.sentences, self.syllables)

    @property
    def band(self) -> tuple[int, int]:
        """The two grades it lies between, from (0, 1) on; a decimal would claim more than the formula knows."""
        low = max(0, math.floor(self.grade))
        return low, low + 1

    @property
    def words_for_band(self) -> str:
        """The band in words."""
        low, high = self.band
        return "grade 2 or easier" if high <= 2 else f"grades {low} to {high}"


def flesch_kincaid_grade(words: int, sentences: int, syllable_count: int) -> float:
    """Return 0.39 words a sentence + 11.8 syllables a word - 15.59. All counts at least 1."""
    return 0.39 * words / sentences + 11.8 * syllable_count / words - 15.59


def flesch_reading_ease(words: int, sentences: int, syllable_count: int) -> float:
    """Return 206.835 - 1.015 words a sentence - 84.6 syllables a word. All counts at least 1."""
    return 206.835 - 1.015 * words / sentences - 84.6 * syllable_count / words


def count_words(text: str) -> int:
    """Return the number of words, numbers among them."""
    return len(_WORD.findall(text))


def sentences(texts: Iterable[str], exempt: Iterable[str] = ()) -> tuple[Sentence, ...]:
    """Return the sentences of several texts, each of which ends a sentence; words of `exempt` and their plurals do not count."""
    left_out = _exempt(exempt)
    found = []
    for text in texts:
        for part in _SENTENCE_END.split(text):
            words = _WORD.findall(left_out.sub(" ", part) if left_out else part)
            if words:
                found.append(Sentence(" ".join(part.split()), len(words), sum(_spoken(word) for word in words)))
    return tuple(found)


def level(texts: Iterable[str], exempt: Iterable[str] = ()) -> Level | None:
    """Return the level of several texts taken together, None for fewer than `LEAST_WORDS` words."""
    found = sentences(texts, exempt)
    words = sum(sentence.words for sentence in found)
    if words < LEAST_WORDS:
        return None
    hardest = sorted(found, key=lambda sentence: -sentence.grade)
    return Level(words, len(found), sum(sentence.syllables for sentence in found), tuple(sentence.text for sentence in hardest[:3]))


def _spoken(word: str) -> int:
    return syllables(word) if _LETTER.search(word) else 1


def _exempt(words: Iterable[str]) -> re.Pattern[str] | None:
    named = sorted({word.strip().lower() for word in words if word.strip()}, key=len, reverse=True)
    if not named:
        return None
    return re.compile(rf"\b(?:{'|'.join(re.escape(word) for word in named)})(?:e?s)?\b", re.IGNORECASE)
