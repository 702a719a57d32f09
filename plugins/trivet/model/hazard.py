"""The closed list of hazard words."""

from __future__ import annotations

HAZARDS = (
    "heat", "open flame", "glass", "sharp", "chemical", "biological", "electricity", "battery", "magnet", "projectile",
    "pressure", "light", "sound", "strobe", "allergen", "food", "spill", "lifting", "small parts",
)  # fmt: skip
"""In the order in which cautions are printed."""

SOFT_HAZARDS = frozenset({"sound", "food", "spill", "lifting", "small parts"})
"""Hazards whose missing caution is a warning; for all others it stops the build."""
