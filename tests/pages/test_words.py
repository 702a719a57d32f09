"""The words of pages: none in a template, none missing, none left over, the same in every language."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any

import pytest

from tests.conftest import ROOT
from trivet.pages.words import languages, load_words

PAGES = ROOT / "plugins" / "trivet" / "pages"
TEMPLATES = sorted([*(PAGES / "templates").glob("*.html"), *(PAGES / "theme").rglob("*.html")])
SPOKEN_ATTRIBUTES = ("aria-label", "title", "alt", "placeholder", "aria-description", "content")
IN_OTHER_LANGUAGES = ("frame", "date", "time", "station", "danger", "card", "hazards", "made", "prose", "languages")
"""What a page in another language needs: the card and the frame around it."""


def flat(table: dict[str, Any], before: str = "") -> dict[str, str]:
    """Every sentence by its dotted key."""
    found: dict[str, str] = {}
    for key, value in table.items():
        found |= {f"{before}{key}": value} if isinstance(value, str) else flat(value, f"{before}{key}.")
    return found


def words_of(language: str) -> dict[str, str]:
    return flat(json.loads((PAGES / "words" / f"{language}.json").read_text(encoding="utf-8")))


def bare(template: str) -> list[str]:
    """Text of a template that is neither Jinja nor markup nor punctuation."""
    text = re.sub(r"\{#.*?#\}", "", template, flags=re.DOTALL)
    text = re.sub(r"\{[{%].*?[%}]\}", " ", text, flags=re.DOTALL)
    spoken = [m[2] for m in re.finditer(rf"\b({'|'.join(SPOKEN_ATTRIBUTES)})=\"([^\"]*)\"", text)]
    text = re.sub(r"<[^>]*>", " ", text, flags=re.DOTALL)
    return [
        each.strip() for each in (text, *spoken) if re.search(r"[^\W\d_]", re.sub(r"\bwidth=device-width, initial-scale=1\b", "", each))
    ]


@pytest.mark.parametrize("path", TEMPLATES, ids=lambda p: p.name)
def test_no_template_holds_words(path: Path) -> None:
    """All text and every spoken attribute of a template comes from the words."""
    assert bare(path.read_text(encoding="utf-8")) == []


def test_the_guard_sees_bare_words() -> None:
    """The search above finds a word in text and in an attribute."""
    assert bare('<p class="x">{{ t("a") }} Hello</p>') == ["Hello"]
    assert bare('<a aria-label="Close {{ x }}">–</a>') == ["Close"]
    assert bare("{# Words #}<p>{% if a %}–{% endif %}</p>") == []


def test_every_key_that_is_asked_for_exists() -> None:
    """Each key written out in a template or a module is in the English words."""
    known = words_of("en")
    asked = set()
    for path in [*TEMPLATES, *PAGES.glob("*.py")]:
        asked |= set(re.findall(r"\b(?:t|words)\(\s*[\"']([a-z_.0-9]+)[\"'](?! ~)", path.read_text(encoding="utf-8")))
    plural = {key.rpartition(".")[0] for key in known if key.endswith((".one", ".other"))}
    assert len(asked) > 100
    assert sorted(asked - set(known) - plural) == []


def test_no_word_is_left_over() -> None:
    """Each English key is named somewhere, whole or by the place it stands in."""
    code = "\n".join(path.read_text(encoding="utf-8") for path in [*TEMPLATES, *PAGES.rglob("*.py")])
    left = []
    known = words_of("en")
    for whole in known:
        key = re.sub(r"\.(one|other)$", "", whole) if f"{whole.rpartition('.')[0]}.other" in known else whole
        places = [key.rsplit(".", count)[0] for count in range(1, key.count(".") + 1)]
        # a place whose last part is put in: f"block.{kind}", "station." ~ each
        put_in = any(re.search(rf"[\"']{re.escape(place)}\.(\{{|[\"'] ~)", code) for place in places)
        if f'"{key}"' not in code and f"'{key}'" not in code and not put_in:
            left.append(key)
    assert left == []


@pytest.mark.parametrize("language", [each for each in languages() if each != "en"])
def test_another_language_says_everything_a_card_needs(language: str) -> None:
    """The card's words exist under the same keys and with the same places for values; nothing else is asked of a translator."""
    english = {key: text for key, text in words_of("en").items() if key.startswith(tuple(f"{part}." for part in IN_OTHER_LANGUAGES))}
    english = {key: text for key, text in english.items() if key != "made.drawn"}
    other = words_of(language)
    assert sorted(set(english) - set(other)) == []
    for key, text in english.items():
        assert set(re.findall(r"\{(\w+)\}", text)) == set(re.findall(r"\{(\w+)\}", other[key])), key


def test_a_number_chooses_its_form() -> None:
    """One and many have their own sentence; a missing key is named in the error; an unknown language speaks English."""
    words = load_words()
    assert words("lesson.teams", n=1) == "1 team"
    assert words("lesson.teams", n=9) == "9 teams"
    assert load_words("es-MX").language == "es"
    assert load_words("xx").language == "en"
    with pytest.raises(KeyError, match=r"lesson\.nothing is not in pages/words/en\.json"):
        words("lesson.nothing")
    with pytest.raises(KeyError, match="lesson is no sentence"):
        words("lesson")
