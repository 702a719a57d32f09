"""Who has things of a pool out at the same time, and how many."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from collections.abc import Set as AbstractSet
from dataclasses import dataclass
from datetime import date, time
from fractions import Fraction
from itertools import pairwise

from trivet.planning.stores.pools import Pool, Share
from trivet.planning.stores.uses import Use


@dataclass(frozen=True, slots=True, kw_only=True)
class Moment:
    """A stretch of a day, [start, end), in which the same classes have `need` of a pool out together; `short` of it is missing.

    `amounts` are what each of `uses` has out.
    """

    date: date
    start: time
    end: time
    uses: tuple[Use, ...]
    amounts: tuple[Fraction, ...]
    need: Fraction
    short: Fraction

    @property
    def classes(self) -> tuple[str, ...]:
        """The classes, in order of their bell."""
        return tuple(use.class_id for use in self.uses)

    @property
    def periods(self) -> tuple[str, ...]:
        """The names of their periods, each once."""
        return tuple(dict.fromkeys(use.period for use in self.uses))


def moments(pool: Pool, shares: Iterable[Share]) -> tuple[Moment, ...]:
    """Return the moments of a pool of reusable things by date and clock; one whose classes are all part of a larger one is left out."""
    by_date: defaultdict[date, list[Share]] = defaultdict(list)
    for share in shares:
        by_date[share.use.date].append(share)
    return tuple(moment for day in sorted(by_date) for moment in _of_day(pool, by_date[day]))


def peak(found: Sequence[Moment]) -> Moment | None:
    """Return the first moment with the largest need, None where nothing is needed."""
    return max(found, key=lambda moment: moment.need, default=None)


def short_without(pool: Pool, moment: Moment, runs: AbstractSet[tuple[str, str]]) -> Fraction:
    """Return how much is missing in a moment where some runs (class id, unit slug) have nothing out."""
    return pool.short(_by_store(pool, ((use, many) for use, many in zip(moment.uses, moment.amounts, strict=True) if use.run not in runs)))


def _of_day(pool: Pool, shares: Sequence[Share]) -> list[Moment]:
    bells = sorted({bell for share in shares for bell in (share.use.start, share.use.end)})
    stretches: dict[tuple[int, ...], tuple[time, time]] = {}
    for start, end in pairwise(bells):
        out = tuple(place for place, share in enumerate(shares) if share.use.start <= start and end <= share.use.end)
        if out:
            stretches[out] = (stretches[out][0] if out in stretches else start, end)
    largest = [out for out in stretches if not any(set(out) < set(other) for other in stretches)]
    return [_moment(pool, [shares[place] for place in out], *stretches[out]) for out in largest]


def _moment(pool: Pool, shares: Sequence[Share], start: time, end: time) -> Moment:
    uses, amounts = tuple(share.use for share in shares), tuple(share.tally.with_spare(0) for share in shares)
    return Moment(
        date=uses[0].date,
        start=start,
        end=end,
        uses=uses,
        amounts=amounts,
        need=sum(amounts, start=Fraction(0)),
        short=pool.short(_by_store(pool, zip(uses, amounts, strict=True))),
    )


def _by_store(pool: Pool, out: Iterable[tuple[Use, Fraction]]) -> Mapping[str, Fraction]:
    """What is out at once, by the store of the rooms that have it; devices stay in their room."""
    found: defaultdict[str, Fraction] = defaultdict(Fraction)
    for use, amount in out:
        found["" if pool.device else use.store] += amount
    return found
