"""A translation carries student text alone, step for step."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.reading.unit_files import codes, only, read, unit_folder
from trivet.model.problem import Severity
from trivet.model.station import Kind
from trivet.reading.unit import ReadUnit, read_unit

SPANISH = """\
---
title: Carros que ruedan
question: ¿Qué hace que un carro ruede más lejos?
stations:
  online:
    goal: Descubre qué decide.
    steps:
      - Deja rodar el carro.
      - Cambia la pendiente.
    done when: Puedes decirlo.
    finished early: Prueba otra.
  hands-on:
    goal: Mide un carro real.
    materials:
      - carro
      - rampa
      - metro
    steps:
      - Mide.
      - Mide otra vez.
    done when: Hay diez medidas.
  teacher-led:
    goal: Juzga una afirmación.
    finished early: Escribe una pregunta.
write-up:
  claim starts: Depende de ...
---
"""


def with_spanish(root: Path, *changes: tuple[str, str], name: str = "index.es.md", unit: tuple[tuple[str, str], ...] = ()) -> ReadUnit:
    folder = unit_folder(root, *unit)
    text = SPANISH
    for old, new in changes:
        assert old in text
        text = text.replace(old, new, 1)
    (folder / name).write_text(text, encoding="utf-8")
    return read_unit(folder, "rolling-carts", root, (), ("float-or-sink", "rolling-carts"))


def test_translation_reaches_the_model(tmp_path: Path) -> None:
    """The texts stand under the same stations, steps without times."""
    found = with_spanish(tmp_path)
    assert found.problems == ()
    (spanish,) = found.unit.translations
    assert (spanish.language, spanish.title, spanish.claim_starts) == ("es", "Carros que ruedan", "Depende de ...")
    assert spanish.stations[Kind.ONLINE].steps == ("Deja rodar el carro.", "Cambia la pendiente.")
    assert spanish.stations[Kind.TEACHER_LED].finished_early == "Escribe una pregunta."
    assert spanish.places.find("stations", "online", "steps", 1).line == 9


def test_other_number_of_steps_stops(tmp_path: Path) -> None:
    """A step too few is an error at the list, since steps are matched by their place."""
    found = with_spanish(tmp_path, ("      - Cambia la pendiente.\n", ""))
    assert found.unit is None
    assert only(found, "translation-length").sentence == (
        "online, steps: there is 1 step here, and 2 in the unit; write 2, in the order of the unit"
    )


def test_missing_text_is_advice(tmp_path: Path) -> None:
    """Text that is not translated is advice, and the unit stays."""
    found = with_spanish(tmp_path, ("    finished early: Prueba otra.\n", ""))
    assert codes(found) == ["not-translated"]
    assert found.unit is not None


def test_odd_language_names_the_right_file(tmp_path: Path) -> None:
    """A language written out is answered with the name that the file should have."""
    assert only(with_spanish(tmp_path, name="index.Spanish.md"), "translation-name").remedy == "call the file index.es.md"
    assert codes(with_spanish(tmp_path, name="index.zh-Hans.md")).count("translation-name") == 1


def test_times_do_not_belong_into_a_translation(tmp_path: Path) -> None:
    """A key with numbers is refused in a translation, so that they stand in one place only."""
    found = with_spanish(tmp_path, ("    goal: Mide", "    clean up: 2 min\n    goal: Mide"))
    assert "unknown-key" in codes(found)


TWO_NOTES = "    safety notes:\n      - Stand aside.\n      - Sweep up sand.\n"
CAREFUL = (("hazards: none\n", f"hazards: small parts\n    instead: Keep the time.\n{TWO_NOTES}"),)
"""The plain unit with two safety notes and a sentence for who may not take part."""
NOTES = "    safety notes:\n      - Háganse a un lado.\n      - Barran la arena.\n    instead: Lleva el tiempo.\n"


def test_safety_notes_and_materials_reach_the_model(tmp_path: Path) -> None:
    """Safety notes, materials and the task instead stand under the hands-on station, in the unit's order."""
    found = with_spanish(tmp_path, ("    done when: Hay diez", f"{NOTES}    done when: Hay diez"), unit=CAREFUL)
    assert found.problems == ()
    text = found.unit.translations[0].stations[Kind.HANDS_ON]
    assert text.safety_notes == ("Háganse a un lado.", "Barran la arena.")
    assert text.materials == ("carro", "rampa", "metro")
    assert text.instead == "Lleva el tiempo."


def test_safety_notes_left_out_are_a_warning(tmp_path: Path) -> None:
    """Safety notes that are not translated are a warning of their own, and the unit stays."""
    found = with_spanish(tmp_path, unit=CAREFUL)
    assert only(found, "safety-not-translated").severity is Severity.WARNING
    assert only(found, "not-translated").what == "not translated: instead"
    assert found.unit is not None


def test_other_number_of_safety_notes_stops(tmp_path: Path) -> None:
    """A note too few is an error like a step too few: nobody must read fewer cautions than the others."""
    notes = NOTES.replace("      - Barran la arena.\n", "")
    found = with_spanish(tmp_path, ("    done when: Hay diez", f"{notes}    done when: Hay diez"), unit=CAREFUL)
    assert found.unit is None
    assert only(found, "translation-length").sentence == (
        "hands-on, safety notes: there is 1 safety note here, and 2 in the unit; write 2, in the order of the unit"
    )


def test_notes_that_the_unit_does_not_have_stop(tmp_path: Path) -> None:
    """A translation says nothing that the unit does not say."""
    found = with_spanish(tmp_path, ("    done when: Hay diez", f"{NOTES}    done when: Hay diez"))
    assert only(found, "translation-length").remedy == "leave this key out: there is nothing to translate"


@pytest.mark.parametrize(
    ("line", "said", "remedy"),
    [
        ("1 cart per team", "1 carro", "write - carro"),
        ("0.5 g sand per pair, used up", "0.5 g de arena", "write - de arena"),
        ("60 mL water per team, used up", "60 de agua", "write - de agua"),
        ("60 mL water per team, used up", "de agua", None),
        ("2 10 mL syringes per team", "jeringas de 10 mL", None),
        ("1 1 m ruler per team", "1 m de regla", None),
        ("2 carts per team", "20 carros", None),
    ],
)
def test_amounts_stay_in_the_unit(tmp_path: Path, line: str, said: str, remedy: str | None) -> None:
    """An amount that is written again is an error with the text that is left; a number that belongs to the thing stays."""
    found = with_spanish(tmp_path, ("- carro\n", f"- {said}\n"), unit=(("1 cart per team", line),))
    assert [problem.remedy for problem in found.problems if problem.code == "translation-amount"] == ([remedy] if remedy else [])


def test_unit_without_translations_has_none(tmp_path: Path) -> None:
    """No file, no translation."""
    assert read(tmp_path).unit.translations == ()
