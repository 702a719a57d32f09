"""The 59 middle-school performance expectations of the Next Generation Science Standards, by number alone."""

from __future__ import annotations

HOW_MANY = {
    "PS1": 6, "PS2": 5, "PS3": 5, "PS4": 3, "LS1": 8, "LS2": 5, "LS3": 2, "LS4": 6, "ESS1": 4, "ESS2": 6, "ESS3": 5, "ETS1": 4,
}  # fmt: skip
"""How many there are for each core idea."""

CODES = tuple(f"MS-{idea}-{number}" for idea, most in HOW_MANY.items() for number in range(1, most + 1))
