"""A translation carries student text alone, step for step."""

from __future__ import annotations

from pathlib import Path

from tests.reading.translated import CAREFUL, NOTES, with_spanish
from tests.reading.unit_files import codes, read
from trivet.model.station import Kind


def test_translation_reaches_the_model(tmp_path: Path) -> None:
    """The texts stand under the same stations, steps without times."""
    found = with_spanish(tmp_path)
    assert found.problems == ()
    (spanish,) = found.unit.translations
    assert (spanish.language, spanish.title, spanish.claim_starts) == ("es", "Carros que ruedan", "Depende de ...")
    assert spanish.stations[Kind.ONLINE].steps == ("Deja rodar el carro.", "Cambia la pendiente.")
    assert spanish.stations[Kind.TEACHER_LED].finished_early == "Escribe una pregunta."
    assert spanish.places.find("stations", "online", "steps", 1).line == 9


def test_times_do_not_belong_into_a_translation(tmp_path: Path) -> None:
    """A key with numbers is refused in a translation, so that they stand in one place only."""
    found = with_spanish(tmp_path, ("    goal: Mide", "    clean up: 2 min\n    goal: Mide"))
    assert "unknown-key" in codes(found)


def test_safety_notes_and_materials_reach_the_model(tmp_path: Path) -> None:
    """Safety notes, materials and the task instead stand under the hands-on station, in the unit's order."""
    found = with_spanish(tmp_path, ("    done when: Hay diez", f"{NOTES}    done when: Hay diez"), unit=CAREFUL)
    assert found.problems == ()
    text = found.unit.translations[0].stations[Kind.HANDS_ON]
    assert text.safety_notes == ("Háganse a un lado.", "Barran la arena.")
    assert text.materials == ("carro", "rampa", "metro")
    assert text.instead == "Lleva el tiempo."


def test_unit_without_translations_has_none(tmp_path: Path) -> None:
    """No file, no translation."""
    assert read(tmp_path).unit.translations == ()
