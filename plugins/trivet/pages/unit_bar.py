"""The bar of a unit's own pages: the unit, its cards, its lesson sheets; never more than seven links."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from trivet.model.plan import Plan, Plans
from trivet.model.unit import Unit
from trivet.pages.links import lesson_address, relative, student_address, unit_address
from trivet.pages.words import Words

MOST = 7


@dataclass(frozen=True, slots=True)
class Link:
    """A link as a page shows it. `current` says that it is the page itself; `label` is its text in full where it is cut short."""

    text: str
    href: str
    current: bool = False
    lang: str = ""
    label: str = ""


def unit_bar(unit: Unit, plans: Plans, page: str, words: Words) -> tuple[Link, ...]:
    """Return the links of the bar as the page at `page` shows them; where there are too many sheets, the last leads to all of them."""
    first = [_link(words("bar_of_unit.unit"), unit_address(unit.slug), page), *card_links(unit, page, words)[:3]]
    sheets = [_sheet(plan, page, words) for plan in plans_of(unit, plans)]
    room = MOST - len(first)
    if len(sheets) > room:
        all_of_them = _link(words("bar_of_unit.all", n=len(sheets)), f"{unit_address(unit.slug)}#runs", page)
        sheets = [*_with_current(sheets, room - 1), all_of_them]
    if sheets and sheets[0].label:
        sheets[0] = replace(sheets[0], text=sheets[0].label, label="")  # the first one says what the others are
    return (*first, *sheets)


def _sheet(plan: Plan, page: str, words: Words) -> Link:
    link = _link(plan.class_id, lesson_address(plan.class_id, plan.unit), page)
    return replace(link, label=words("bar_of_unit.lesson", class_id=plan.class_id))


def card_links(unit: Unit, page: str, words: Words) -> list[Link]:
    """Return the links to the student cards: English first, then each other language by its own name."""
    links = [_link(words("bar_of_unit.cards"), student_address(unit.slug), page)]
    for translation in unit.translations:
        name = words(f"languages.{translation.language}") if words.knows(f"languages.{translation.language}") else translation.language
        link = _link(name, student_address(unit.slug, translation.language), page)
        links.append(Link(link.text, link.href, link.current, translation.language))
    return links


def plans_of(unit: Unit, plans: Plans) -> tuple[Plan, ...]:
    """Return the plans of a unit in the order of runs.yml."""
    return tuple(plan for plan in plans.plans if plan.unit == unit.slug)


def _link(text: str, target: str, page: str) -> Link:
    return Link(text, relative(page, target), target == page)


def _with_current(sheets: Sequence[Link], count: int) -> tuple[Link, ...]:
    """Keep the first links, and the page's own in any case."""
    kept = list(sheets[:count])
    here = next((link for link in sheets if link.current), None)
    if here and here not in kept:
        kept[-1:] = [here]
    return tuple(kept)
