"""Count the syllables of an English word by a declared rule, so that the same text has the same level everywhere.

The rule: each run of vowel letters is one syllable; an e that is not spoken (at the end, in -es and -ed, before -ly and its like,
inside words such as notebook) is none; vowels that are spoken apart (vide-o, flu-id, audi-ence) are two, but -tion, -cial and
their like are one. Common words that break the rule stand in a list. A number or a symbol such as mL is one syllable.
"""

from __future__ import annotations

import re
from functools import cache

EXCEPTIONS = {
    "acne": 2, "aged": 1, "algorithm": 4, "alien": 3, "aliens": 3, "ambiguous": 4, "anybody": 4, "anyone": 3, "apostrophe": 4, "area": 3,
    "areas": 3, "argue": 2, "argued": 2, "arguing": 3, "argument": 3, "arguments": 3, "behaviour": 3, "bicycle": 3, "business": 2,
    "catastrophe": 4, "cement": 2, "colonel": 2, "conscience": 2, "coyote": 3, "crooked": 2, "cruel": 2, "cyan": 2, "diesel": 2,
    "drawer": 1, "drawers": 1, "dye": 1, "dyed": 1, "european": 4, "evening": 2, "every": 2, "everybody": 4, "everyday": 3, "everyone": 3,
    "everything": 3, "everywhere": 3, "eye": 1, "eyed": 1, "eyepiece": 2, "eyes": 1, "february": 4, "forever": 3, "fuel": 2, "fuels": 2,
    "george": 1, "hundred": 2, "idea": 3, "ideas": 3, "interview": 3, "january": 4, "karate": 3, "laboratory": 5, "liar": 2,
    "likelihood": 3, "likewise": 2, "lion": 2, "lions": 2, "maybe": 2, "microbe": 2, "mosaic": 3, "museum": 3, "museums": 3, "naive": 2,
    "naked": 2, "ocean": 2, "oceans": 2, "once": 1, "one": 1, "people": 2, "people's": 2, "persuade": 2, "pier": 1, "preschool": 2,
    "queue": 1, "queues": 1, "ratio": 3, "ratios": 3, "real": 1, "reality": 4, "realize": 3, "realized": 3, "really": 2, "recipe": 3,
    "recipes": 3, "rely": 2, "renewable": 4, "rugged": 2, "sacred": 2, "safety": 2, "science": 2, "sciences": 3, "shoelace": 2,
    "simile": 3, "soldier": 2, "soldiers": 2, "somebody": 3, "someone": 2, "suite": 1, "theorem": 3, "theorems": 3, "therefore": 2,
    "tier": 1, "valuable": 3, "wednesday": 2, "wednesdays": 2, "wherever": 3, "whoever": 3, "wicked": 2,
}  # fmt: skip
"""Words that the rule would get wrong, counted by hand."""

_NOT_LETTERS = re.compile(r"[^a-z]")
_VOWELS = re.compile(r"[aeiouy]+")
_Y_BETWEEN = re.compile(r"(?<=[aeiou])y(?=[aeiou])")
_U_UNSPOKEN = re.compile(r"(?<=q)u|(?<=g)u(?=[aeiou])(?!ing|ou)")
_E_UNSPOKEN = re.compile(
    r"(?<=[^aeiouy])e(?=(?:ly|full?(?:y|ness)?|less(?:ly|ness)?|ness|some)$)|(?<=[^aeiouyl])(?<!cr)e(?=ments?$)"  # closely, movement
    r"|(?<=ic)al(?=ly$)"  # basically, in which it is an a
)
_COMPOUND = re.compile(
    r"^((?:an)?(?:som|tim|lin|nam|hom|not|fir|lif|sid|wav|bas|for|wir|tap|fac|lak|gat|mak|whit)|fram|guid|pip|mor|trad|wher|ther|her|spac|plac)e"
    r"(?=[bcdfghjklmpqtvwz]..|side|sight|see|noon|sh[aei])"
)
_E_AT_END = re.compile(r"(?:[^aeiouyl]|[aeiouylrw]l)e$|(?:[^aeiouylsxzcgh]|[^cs]h|[aeiouylrw]l)es$|(?:[^aeiouyltd]|[aeiouylrw]l)ed$")
_APART = re.compile(
    r"(?<![cstgxnlh])io(?=n|u)|(?<![nv])io(?=r)|io(?![nur])"  # period, previous; not nation, onion, behavior
    r"|ia(?![lnr]|ge)|(?<![cstg])ia(?=l)|(?<![cstl])ia(?=n)|ia(?=n[ct])|(?<!l)ia(?=r)"  # media, trial; not special, Italian, marriage
    r"|iu(?=m|s)|ii|(?<![ct])ie(?=n[ct])|ie(?=t(?!ch))|ie(?=rs?$|st$)"  # radius, client, diet, easier
    r"|(?<=^sc)ie|^re(?=o|u[sn]|in[vtf]|e[nx]|act|app|arr|it)|^co(?=ex|inci|oper|ord)"  # scientist, reopen, coexist
    r"|eo(?=$|s$|l|g(?!e)|m|r|d|n[^s])|(?<!g)eo(?=us)|eu(?=ms?$|s$)"  # video, nucleus
    r"|(?:cr|lin|ucl|rm)ea(?=t[eio])(?!ture)|(?:lin|ucl)ea(?=r)"  # create, linear
    r"|(?<![qg])ua(?!rd)|uo(?=us)|ue(?=n[ct])|ui(?=d|n(?!g)|t[iy])|[eou]i(?=ng)"  # actual, continuous, influence, fluid, going
    r"|oe(?=m|ts?$|tr|f)|ai(?=c)|ao|(?<=[^aeiou])y(?:i|e(?=rs?$|st$))"  # poem, algebraic, chaos, trying, dryer
)
_NO_VOWEL = re.compile(r"(?:sm|thm)s?$|[^aeiouyr]nt$")
_HISS = re.compile(r"(?:[sxz]|[cs]h|[cgsz]e)$")
"""Endings after which the s of an owner is a syllable: class's, page's."""


@cache
def syllables(word: str) -> int:
    """Return the number of syllables of `word`, at least 1; parts joined by a hyphen or slash add up."""
    parts = [part for part in re.split(r"[-‐‑–/]", word.lower().replace("’", "'")) if part]
    return sum(_of_part(part) for part in parts) or 1


def _of_part(part: str) -> int:
    stem = part.removesuffix("'s").strip("'")
    if stem in EXCEPTIONS:
        return EXCEPTIONS[stem]
    letters = _COMPOUND.sub(r"\1", _E_UNSPOKEN.sub("", _U_UNSPOKEN.sub("", _Y_BETWEEN.sub("j", _NOT_LETTERS.sub("", stem)))))
    hiss = stem != part and _HISS.search(letters) is not None
    count = len(_VOWELS.findall(letters)) + len(_APART.findall(letters))
    if _E_AT_END.search(letters) and count > 1 and not hiss:
        count -= 1
    elif hiss and not letters.endswith("e"):
        count += 1
    # In prism and rhythm a syllable stands without a vowel, and in couldn't the apostrophe hides one.
    ending = _NO_VOWEL.search(letters)
    if ending and count and (ending[0].startswith(("s", "t")) or stem.endswith("n't")):
        count += 1
    return max(1, count)
