"""Minutes as whole numbers of half minutes, so that sums and comparisons are exact."""

from __future__ import annotations

from fractions import Fraction


def halves(minutes: float | Fraction) -> int:
    """Return `minutes` in half minutes, rounded up."""
    if isinstance(minutes, int):
        return 2 * minutes
    if isinstance(minutes, float) and (2 * minutes).is_integer():  # doubling is exact in binary
        return int(2 * minutes)
    exact = minutes if isinstance(minutes, Fraction) else Fraction(str(minutes))
    return -((-2 * exact.numerator) // exact.denominator)


def minutes(half_minutes: int) -> float:
    """Return half minutes as minutes: a multiple of 0.5, exact in binary."""
    return half_minutes / 2


def spoken(half_minutes: int) -> str:
    """Return half minutes as people write minutes: 7, 7½, ½."""
    whole, half = divmod(half_minutes, 2)
    if not half:
        return str(whole)
    return f"{whole}½" if whole else "½"
