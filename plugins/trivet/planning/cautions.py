"""The cautions of a unit, and how near an adult must be."""

from __future__ import annotations

from trivet.model.plan import Caution
from trivet.model.unit import Unit
from trivet.planning.hazards import HAZARDS, Hazard


def hazards_of(unit: Unit) -> tuple[Hazard, ...]:
    """Return the hazards of the hands-on station in the order of the list, each once; a word that is not in it is left out."""
    return tuple(hazard for tag, hazard in HAZARDS.items() if tag in unit.hands_on.hazards)


def cautions(unit: Unit) -> tuple[Caution, ...]:
    """Return what to say and what protects, one caution a hazard; () for a hands-on station without hazards."""
    return tuple(Caution(hazard.tag, hazard.caution, hazard.protect) for hazard in hazards_of(unit))


def at_hand(unit: Unit) -> tuple[Hazard, ...]:
    """Return the hazards for which an adult must stand at the hands-on station."""
    return tuple(hazard for hazard in hazards_of(unit) if hazard.at_hand)
