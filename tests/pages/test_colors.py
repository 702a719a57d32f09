"""Contrast and color vision, worked out from the table of colors."""

from __future__ import annotations

from itertools import combinations
from math import atan2, degrees

import pytest

from trivet.pages.colors import DARK, LIGHT, MARKS, PRINT, TEXT, color_css

STATIONS = ("online", "hands-on", "teacher-led")
Rgb = tuple[float, float, float]

# Machado, Oliveira and Fernandes 2009, severity 1.0, in linear RGB (the matrices from memory; the tritan one is an approximation)
VISION: dict[str, tuple[Rgb, Rgb, Rgb]] = {
    "normal": ((1, 0, 0), (0, 1, 0), (0, 0, 1)),
    "protanopia": ((0.152286, 1.052583, -0.204868), (0.114503, 0.786281, 0.099216), (-0.003882, -0.048116, 1.051998)),
    "deuteranopia": ((0.367322, 0.860646, -0.227968), (0.280085, 0.672501, 0.047413), (-0.011820, 0.042940, 0.968881)),
    "tritanopia": ((1.255528, -0.076749, -0.178779), (-0.078411, 0.930809, 0.147602), (0.004733, 0.691367, 0.303900)),
}
LEAST_DISTANCE = {
    "light": {"normal": 22.3, "protanopia": 20.1, "deuteranopia": 14.5, "tritanopia": 20.1},
    "dark": {"normal": 19.1, "protanopia": 15.6, "deuteranopia": 18.1, "tritanopia": 17.7},
}
"""Smallest distance between two stations, 100 x OKLab, as the design's look says it."""


def linear(color: str) -> Rgb:
    """A hex color in linear RGB (IEC 61966-2-1)."""
    channels = (int(color[i : i + 2], 16) / 255 for i in (1, 3, 5))
    red, green, blue = (c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels)
    return (red, green, blue)


def contrast(one: str, two: str) -> float:
    """The WCAG 2 contrast ratio of two colors."""
    light, dark = sorted((0.2126 * r + 0.7152 * g + 0.0722 * b for r, g, b in map(linear, (one, two))), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def oklab(rgb: Rgb) -> Rgb:
    """Linear RGB in OKLab (Ottosson 2020, from memory)."""
    r, g, b = rgb
    long = max(0.4122214708 * r + 0.5363325363 * g + 0.0514459929 * b, 0) ** (1 / 3)
    middle = max(0.2119034982 * r + 0.6806995451 * g + 0.1073969566 * b, 0) ** (1 / 3)
    short = max(0.0883024619 * r + 0.2817188376 * g + 0.6299787005 * b, 0) ** (1 / 3)
    return (
        0.2104542553 * long + 0.7936177850 * middle - 0.0040720468 * short,
        1.9779984951 * long - 2.4285922050 * middle + 0.4505937099 * short,
        0.0259040371 * long + 0.7827717662 * middle - 0.8086757660 * short,
    )


def seen(color: str, vision: str) -> Rgb:
    """How a color lies in OKLab for an eye with this deficiency."""
    rgb = linear(color)
    red, green, blue = (min(1.0, max(0.0, sum(m * c for m, c in zip(row, rgb, strict=True)))) for row in VISION[vision])
    return oklab((red, green, blue))


@pytest.mark.parametrize(
    ("color", "ratio"),
    [
        # the design's references, row 25 and section 6 (WCAG 2.2, 1.4.3 and 1.4.11; worked out there)
        ("#767676", 4.5422), ("#777777", 4.4781), ("#949494", 3.0335), ("#959595", 2.9953), ("#000000", 21.0),
        ("#ff0000", 3.9985), ("#0000ff", 8.5925), ("#00ff00", 1.3722), ("#595959", 7.0047), ("#5a5a5a", 6.8969),
    ],
)  # fmt: skip
def test_the_formula_gives_the_published_ratios(color: str, ratio: float) -> None:
    """Known colors on white have their known ratios to four places."""
    assert contrast(color, "#ffffff") == pytest.approx(ratio, abs=5e-5)


@pytest.mark.parametrize("table", [LIGHT, DARK, PRINT], ids=["light", "dark", "print"])
@pytest.mark.parametrize("paper", ["paper", "paper-2"])
def test_words_and_marks_stand_out_from_both_papers(table: dict[str, str], paper: str) -> None:
    """Words have 4.5:1 and marks that carry meaning 3:1 on either paper, without rounding up."""
    assert {name: contrast(table[name], table[paper]) for name in TEXT if contrast(table[name], table[paper]) < 4.5} == {}
    assert {name: contrast(table[name], table[paper]) for name in MARKS if contrast(table[name], table[paper]) < 3} == {}


@pytest.mark.parametrize("table", [LIGHT, DARK], ids=["light", "dark"])
def test_ink_on_what_is_filled_can_be_read(table: dict[str, str]) -> None:
    """Paper on ink (the one action, what is chosen) and paper on ink-3 (what is done) have 4.5:1."""
    for ground in ("ink", "ink-3"):
        assert contrast(table["paper"], table[ground]) >= 4.5


@pytest.mark.parametrize(("scheme", "table"), [("light", LIGHT), ("dark", DARK)], ids=["light", "dark"])
@pytest.mark.parametrize("vision", VISION)
def test_stations_stay_apart_for_every_eye(scheme: str, table: dict[str, str], vision: str) -> None:
    """The two nearest stations are as far apart in OKLab as the design says (to 0.3), for each deficiency."""
    distances = [
        100 * sum((a - b) ** 2 for a, b in zip(seen(table[one], vision), seen(table[two], vision), strict=True)) ** 0.5
        for one, two in combinations(STATIONS, 2)
    ]
    assert min(distances) == pytest.approx(LEAST_DISTANCE[scheme][vision], abs=0.3)


# Okabe and Ito, Color Universal Design (2002, revised 2008), as printed by Wong, Points of view: Color blindness, Nature Methods 8 (2011)
OKABE_ITO = {"online": (0, 114, 178), "hands-on": (213, 94, 0), "teacher-led": (204, 121, 167)}


@pytest.mark.parametrize("table", [LIGHT, DARK], ids=["light", "dark"])
@pytest.mark.parametrize("station", STATIONS)
def test_stations_keep_the_hues_of_a_published_palette(station: str, table: dict[str, str]) -> None:
    """Each station has the hue of its color in Okabe and Ito's set (blue, vermilion, reddish purple) within a degree, and no other."""

    def hue(color: str) -> float:
        _, a, b = oklab(linear(color))
        return degrees(atan2(b, a))

    def apart(one: str, two: str) -> float:
        return abs((hue(one) - hue(two) + 180) % 360 - 180)

    published = {name: "#{:02x}{:02x}{:02x}".format(*rgb) for name, rgb in OKABE_ITO.items()}
    assert apart(table[station], published[station]) < 1
    assert all(apart(table[station], published[other]) > 45 for other in STATIONS if other != station)


def test_every_scheme_names_the_same_colors() -> None:
    """Light, dark and print have the same names, and the stylesheet declares each of them for all four ways a scheme is chosen."""
    assert set(LIGHT) == set(DARK) == set(PRINT)
    css = color_css()
    assert css.count("--teacher-led:") == 4
    assert '.no-js [data-md-color-scheme="default"]' in css
