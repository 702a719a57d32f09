"""A translation carries student text alone, step for step."""

from __future__ import annotations

from pathlib import Path

from tests.reading.unit_files import codes, only, read, unit_folder
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


def with_spanish(root: Path, *changes: tuple[str, str], name: str = "index.es.md") -> ReadUnit:
    folder = unit_folder(root)
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
    found = with_spanish(tmp_path, ("    goal: Mide", "    materials: nada\n    goal: Mide"))
    assert "unknown-key" in codes(found)


def test_unit_without_translations_has_none(tmp_path: Path) -> None:
    """No file, no translation."""
    assert read(tmp_path).unit.translations == ()
