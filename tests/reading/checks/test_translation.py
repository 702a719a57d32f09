"""A translation keeps to the unit that it translates."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.reading.translated import CAREFUL, NOTES, with_spanish
from tests.reading.unit_files import codes, only
from trivet.model.problem import Severity


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
