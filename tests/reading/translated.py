"""A translation of the plain unit, for tests that change one thing in it."""

from __future__ import annotations

from pathlib import Path

from tests.reading.unit_files import unit_folder
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


TWO_NOTES = "    safety notes:\n      - Stand aside.\n      - Sweep up sand.\n"


CAREFUL = (("hazards: none\n", f"hazards: small parts\n    instead: Keep the time.\n{TWO_NOTES}"),)
"""The plain unit with two safety notes and a sentence for who may not take part."""


NOTES = "    safety notes:\n      - Háganse a un lado.\n      - Barran la arena.\n    instead: Lleva el tiempo.\n"
