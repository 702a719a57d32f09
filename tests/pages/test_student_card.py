"""Student cards in other languages: cautions, things to get, and what a student does who may not take part."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from tests.pages.scenario import BUILD, SPANISH, department
from trivet.model.department import Department
from trivet.model.station import Kind, Record
from trivet.model.unit import StationText
from trivet.pages.card_length import SHEET_MM, setting
from trivet.pages.student_page import student_pages

NOTES = ("Wear safety glasses.", "Keep the glass in the tray.")
TRANSLATED = StationText(
    goal="Descubran cuál es cuál.",
    steps=("Pesen.", "Lean el agua.", "Dividan."),
    materials=("cilindro graduado de 25 mL", "balanza de 0.1 g", "de agua"),
    safety_notes=("Usen gafas de seguridad.", "Dejen el vidrio en la bandeja."),
    instead="Lleva el tiempo del equipo.",
)


def with_hands_on(text: StationText | None = None, **changes: object) -> Department:
    """The scenario with another hands-on station, and with this Spanish text of it (None for the scenario's)."""
    made = department()
    unit = made.units["float-or-sink"]
    spanish = replace(SPANISH, stations={**SPANISH.stations, **({Kind.HANDS_ON: text} if text else {})})
    unit = replace(unit, hands_on=replace(unit.hands_on, **changes), translations=(spanish,))  # type: ignore[arg-type]
    return replace(made, units={**made.units, "float-or-sink": unit})


def cards(made: Department) -> tuple[str, str]:
    """The hands-on card in English and in Spanish."""
    english, spanish = (page.body for page in student_pages(made.units["float-or-sink"], made, BUILD))
    return tuple(body.partition('id="hands-on"')[2].partition('id="teacher-led"')[0] for body in (english, spanish))  # type: ignore[return-value]


def test_translated_safety_notes_stand_on_the_card() -> None:
    """The Spanish card has the Spanish notes in place of the English ones, and marks none of them as English."""
    english, spanish = cards(with_hands_on(TRANSLATED, safety_notes=NOTES))
    for note, said in zip(NOTES, TRANSLATED.safety_notes, strict=True):
        assert f">{note}</p>" in english
        assert f'<p class="say">{said}</p>' in spanish
        assert note not in spanish


def test_safety_notes_are_never_left_out() -> None:
    """Notes that are not translated stand in English, marked as English, below the usual cautions in Spanish."""
    _, spanish = cards(with_hands_on(safety_notes=NOTES))
    for note in NOTES:
        assert f'<p class="say" lang="en">{note}</p>' in spanish
    assert "Aleja el vidrio del borde." in spanish
    assert spanish.index("Aleja el vidrio") < spanish.index(NOTES[0])


def test_notes_of_another_number_are_no_translation() -> None:
    """Fewer notes than the unit has never replace it: the unit's own stand there."""
    _, spanish = cards(with_hands_on(replace(TRANSLATED, safety_notes=("Usen gafas.",)), safety_notes=NOTES))
    assert "Usen gafas." not in spanish
    assert all(f'lang="en">{note}' in spanish for note in NOTES)


def test_a_card_without_notes_has_the_usual_cautions() -> None:
    """A unit that writes no safety notes has the sentences of its hazards, in the language of the card."""
    english, spanish = cards(with_hands_on())
    assert "Keep glass away from the edge." in english
    assert "Aleja el vidrio del borde." in spanish


def test_things_to_get_stand_on_every_card() -> None:
    """The list of things to get is on the Spanish card too: translated with the unit's amounts, else in English and marked so."""
    english, spanish = cards(with_hands_on(TRANSLATED))
    assert "<b>Get</b> 1 graduated cylinder 25 mL; 1 balance 0.1 g for 2 teams; 60 mL water</p>" in english
    assert "<b>Trae</b> 1 cilindro graduado de 25 mL; 1 balanza de 0.1 g para 2 equipos; 60 mL de agua</p>" in spanish
    _, spanish = cards(with_hands_on())
    own = "1 graduated cylinder 25 mL; 1 balance 0.1 g for 2 teams; 60 mL water"
    assert f'<b>Trae</b> <span lang="en">{own}</span></p>' in spanish


def test_a_task_in_a_file_is_said_in_words() -> None:
    """A table instead of the station comes with what to do with it, in both languages, and the link stands inside the sentence."""
    english, spanish = cards(with_hands_on())
    link = '<a href="../../../units/float-or-sink/data/another-class.csv">data/another-class.csv</a>'
    assert "If you may not do this today:" in english
    found = re.search(r'<p class="instead">(.*?)</p>', english)
    assert found
    assert re.sub(r"<.*?>", "", found[1]).endswith(
        "Work with the results of another class, data/another-class.csv. "
        "Work out from its numbers what the steps ask for, and answer the same question."
    )
    assert 'another-class.csv">data/another-class.csv</a>. Usa sus números para calcular' in spanish
    assert 'lang="en"' not in re.search(r'<p class="instead">(.*?)</p>', spanish)[1]  # type: ignore[index]
    assert link.partition("data")[2] in english


def test_a_task_in_another_file_is_no_table() -> None:
    """A file that is no table is not called the results of another class."""
    made = with_hands_on(instead="task.pdf")
    unit = made.units["float-or-sink"]
    made = replace(made, units={**made.units, "float-or-sink": replace(unit, files=(*unit.files, "task.pdf"))})
    english, spanish = cards(made)
    assert "task.pdf</a>. Then answer the same question." in english
    assert "results of another class" not in english
    assert "task.pdf</a>. Después contesta la misma pregunta." in spanish


def test_a_task_in_a_sentence_is_translated_or_marked() -> None:
    """The unit's sentence stands on the Spanish card in Spanish where it is translated, else in English and marked so."""
    _, spanish = cards(with_hands_on(TRANSLATED, instead="Keep the time for the team."))
    assert "<span>Lleva el tiempo del equipo.</span>" in spanish
    _, spanish = cards(with_hands_on(instead="Keep the time for the team."))
    assert '<span lang="en">Keep the time for the team.</span>' in spanish


def test_a_translated_sentence_keeps_the_file() -> None:
    """Where the unit names a file, a translator's sentence comes with the link to it."""
    _, spanish = cards(with_hands_on(TRANSLATED))
    assert re.search(r'Lleva el tiempo del equipo\. <a href="[^"]+another-class\.csv">', spanish)


def test_text_that_is_not_translated_is_marked() -> None:
    """Each English text on the Spanish card says its language (WCAG 2.2, 3.1.2 Language of Parts), and no Spanish one does."""
    english, spanish = cards(with_hands_on())
    assert '<p class="say goal">Descubran cuál es cuál.</p>' in spanish
    assert '<span lang="en">Three densities stand in the table' in spanish
    assert '<tbody lang="en">' in spanish
    assert " lang=" not in english


def test_a_card_without_hazards_still_says_what_to_do_instead() -> None:
    """A unit without hazards that names a task for who may not take part has it on its card, without a heading about care."""
    english, _ = cards(with_hands_on(hazards=(), instead="Keep the time."))
    assert "Keep the time." in english
    assert "Careful" not in english


@pytest.mark.parametrize(
    ("length_mm", "said"),
    [(0, ""), (SHEET_MM - 20, ""), (SHEET_MM - 19, "tight"), (262, "tight"), (263, "tight packed"), (400, "tight packed")],
)
def test_longer_cards_are_set_smaller(length_mm: int, said: str) -> None:
    """A card that may not fit a Letter sheet is set tight, and tighter still where that may not be enough."""
    assert setting(length_mm) == said


@pytest.mark.parametrize(
    ("columns", "rows", "broad"), [(3, 9, False), (4, 5, True), (4, 9, False), (5, 6, False), (6, 3, True), (6, 9, True)]
)
def test_many_rows_stay_a_table_on_the_phone(columns: int, rows: int, broad: bool) -> None:
    """Up to five rows of more than three columns are small forms; more rows stay a table as long as five columns hold them."""
    record = Record(tuple(f"column {n}" for n in range(columns)), ("",) * rows)
    english, _ = cards(with_hands_on(record=record))
    assert (" broad" in english) == broad


def test_a_code_is_named_in_the_language_of_its_card() -> None:
    """What a screen reader says of the QR code has the title of the page it stands on, and a page without one the unit's."""
    made = department()
    unit = made.units["float-or-sink"]
    english, spanish = (page.body for page in student_pages(unit, made, BUILD))
    assert english.count(f'aria-label="Code that opens the card of {unit.title} on a phone"') == 3
    assert spanish.count(f'aria-label="Código que abre en un teléfono la tarjeta de {SPANISH.title}"') == 3
    assert SPANISH.title != unit.title
    untitled = replace(unit, translations=(replace(SPANISH, title=""),))
    _, spanish = (page.body for page in student_pages(untitled, made, BUILD))
    assert spanish.count(f'aria-label="Código que abre en un teléfono la tarjeta de {unit.title}"') == 3
