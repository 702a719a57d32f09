"""Are the hazards words of the closed list? Cautions are printed by these words, so one that is not known would print none."""

from __future__ import annotations

from collections.abc import Iterator

from trivet.model.hazard import HAZARDS
from trivet.model.problem import Problem
from trivet.reading.draft import Draft
from trivet.reading.near import nearest

NONE = "none"
SAID_OTHERWISE = {
    "fire": "open flame", "flame": "open flame", "candle": "open flame", "burner": "open flame", "hot": "heat", "hot water": "heat",
    "hot plate": "heat", "burn": "heat", "glassware": "glass", "knife": "sharp", "scissors": "sharp", "blade": "sharp", "needle": "sharp",
    "acid": "chemical", "base": "chemical", "chemicals": "chemical", "reagent": "chemical", "bacteria": "biological",
    "mold": "biological", "soil": "biological", "electric": "electricity", "current": "electricity", "voltage": "electricity",
    "laser": "light", "lamp": "light", "bright light": "light", "uv": "light", "noise": "sound", "loud": "sound", "flashing": "strobe",
    "latex": "allergen", "nuts": "allergen", "allergy": "allergen", "water": "spill", "slip": "spill", "wet floor": "spill",
    "weight": "lifting", "heavy": "lifting", "spring": "projectile", "elastic": "projectile", "rubber band": "projectile",
    "choking": "small parts", "balloon": "pressure", "vacuum": "pressure", "cell": "battery",
}  # fmt: skip
"""What people write for a hazard that has another word here."""


def check(draft: Draft) -> Iterator[Problem]:
    """Yield an error for each word that is not a hazard, and for `none` beside one."""
    entries = list(draft.listed("stations", "hands-on", "hazards"))
    for entry in entries:
        word = " ".join(entry.text.lower().split())
        if word == NONE:
            if len(entries) > 1:
                what = "none stands here beside hazards"
                yield draft.error("hazard-none-and-some", entry, what, "take out none, or write hazards: none alone")
        elif word not in HAZARDS:
            near = SAID_OTHERWISE.get(word) or nearest(word, HAZARDS)
            remedy = f"write {near}" if near else f"write one of: {', '.join(HAZARDS)}"
            yield draft.error("unknown-hazard", entry, f'"{entry.text}" is not one of the hazard words', remedy)
