"""What a stretch of the year needs of each pool, against what it holds."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from trivet.planning.materials import add_up
from trivet.planning.measures import as_decimal, briefly, factor
from trivet.planning.stores.moments import Moment, peak
from trivet.planning.stores.pools import Pool, Share


@dataclass(frozen=True, slots=True, kw_only=True)
class Reusable:
    """The most of a pool that is out at one time. `moments` are all of the stretch, `peak` the first of those that need most.

    `short` (`missing` as a fraction) is the most that is missing at one time; `have` and `short` are None and 0 where the inventory does
    not know the item.
    """

    pool: Pool
    need: Decimal
    have: Decimal | None
    short: Decimal
    missing: Fraction
    peak: Moment
    moments: tuple[Moment, ...]

    @property
    def lacking(self) -> tuple[Moment, ...]:
        """The moments in which something is missing."""
        return tuple(moment for moment in self.moments if moment.short)


@dataclass(frozen=True, slots=True, kw_only=True)
class UsedUp:
    """All that is used of a pool, in `unit` ("each" = counted): `need` is the sum of `parts` (class, unit slug, amount) and `spare`.

    `missing` is what is short, in the pool's own unit.
    """

    pool: Pool
    unit: str
    need: Decimal
    spare: Decimal
    have: Decimal | None
    short: Decimal
    missing: Fraction
    parts: tuple[tuple[str, str, Decimal], ...]


def reusable(pool: Pool, moments: Sequence[Moment]) -> Reusable | None:
    """Return what the moments of a stretch need at one time, None where it has none."""
    most = peak(moments)
    if most is None or not most.need:
        return None
    missing = max(moment.short for moment in moments)
    return Reusable(
        pool=pool,
        need=as_decimal(most.need),
        have=None if pool.have is None else as_decimal(pool.have, up=False),
        short=as_decimal(missing),
        missing=missing,
        peak=most,
        moments=tuple(moments),
    )


def used_up(pool: Pool, shares: Sequence[Share], spare_percent: int) -> UsedUp | None:
    """Return what the meetings of a stretch use in all, with spare that is rounded up once, None where they use nothing."""
    if not any(share.tally.need for share in shares):
        return None
    everything = add_up(share.tally for share in shares)[0]
    with_spare = everything.with_spare(spare_percent)
    missing = Fraction(0) if pool.have is None else max(Fraction(0), with_spare - pool.have)
    need, unit = briefly(with_spare, pool.unit)
    many = factor(pool.unit, unit) or Fraction(1)
    parts: dict[tuple[str, str], Fraction] = {}
    for share in shares:
        run = (share.use.class_id, share.use.unit)
        parts[run] = parts.get(run, Fraction(0)) + share.tally.need * many
    return UsedUp(
        pool=pool,
        unit=unit or "each",
        need=as_decimal(need),
        spare=as_decimal((with_spare - everything.need) * many),
        have=None if pool.have is None else as_decimal(pool.have * many, up=False),
        short=as_decimal(missing * many),
        missing=missing,
        parts=tuple((class_id, slug, as_decimal(amount)) for (class_id, slug), amount in parts.items()),
    )
