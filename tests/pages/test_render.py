"""From values to a page's body."""

from __future__ import annotations

import pytest
from jinja2 import DictLoader, UndefinedError

from trivet.pages.render import environment, render
from trivet.pages.words import load_words

WORDS = load_words()


def shown(template: str, **view: object) -> str:
    own = environment(WORDS).overlay(loader=DictLoader({"x.html": template}))
    return own.get_template("x.html").render(view)


@pytest.mark.parametrize("call", ['{{ t("home.no_term") }}', "{{ t('home.no_term') }}"])
def test_a_sentence_without_values_is_put_in_when_the_template_is_made(call: str) -> None:
    """What is put in once is what each page would ask for, escaped as any text is."""
    assert shown(call) == shown("{{ said }}", said=WORDS("home.no_term"))


def test_a_name_that_nothing_was_given_for_is_a_fault() -> None:
    """An unknown name never becomes an empty place, and an unknown sentence is a fault at once."""
    with pytest.raises(UndefinedError):
        shown("{{ missing }}")
    with pytest.raises(KeyError):
        shown('{{ t("no.such.sentence") }}')


def test_text_is_escaped() -> None:
    """Markup in a value shows as text."""
    assert shown("{{ x }}", x="<b>&") == "&lt;b&gt;&amp;"


def test_a_body_has_no_blank_line_and_begins_with_a_block() -> None:
    """A CommonMark reader carries the whole body through as one block of HTML."""
    body = render("problem.html", WORDS, title="Wrong & odd", problems=())
    assert body.startswith("<")
    assert all(line and line == line.strip() for line in body.split("\n"))
