"""Every color of the site, once: paper, ink and the three stations, for light, dark and print.

Stations start from Okabe and Ito 2008 (blue #0072B2, vermilion #D55E00, reddish purple #CC79A7), moved along OKLab lightness
at constant hue until the ratio holds on this paper. Tests work out each ratio with the WCAG 2 formula.
"""

from __future__ import annotations

from collections.abc import Mapping

LIGHT: Mapping[str, str] = {
    "paper": "#fbfbf8",
    "paper-2": "#f2f4f3",
    "ink": "#18212b",
    "ink-2": "#4a5561",
    "ink-3": "#636e79",
    "rule-mark": "#838d96",
    "rule": "#c9d0d4",
    "grid": "#e3e8ea",
    "online": "#006aa6",
    "hands-on": "#bd5303",
    "teacher-led": "#6e2351",
}

DARK: Mapping[str, str] = {
    "paper": "#12181d",
    "paper-2": "#1a2229",
    "ink": "#e9eeec",
    "ink-2": "#b3bdc3",
    "ink-3": "#8b97a0",
    "rule-mark": "#66727b",
    "rule": "#34404a",
    "grid": "#222c34",
    "online": "#3794d6",
    "hands-on": "#f87e36",
    "teacher-led": "#f0b6d5",
}

PRINT: Mapping[str, str] = {
    "paper": "#ffffff",
    "paper-2": "#ffffff",
    "ink": "#000000",
    "ink-2": "#333333",
    "ink-3": "#555555",
    "rule-mark": "#555555",
    "rule": "#999999",
    "grid": "#d5d9db",
    "online": "#000000",
    "hands-on": "#000000",
    "teacher-led": "#000000",
}

TEXT = ("ink", "ink-2", "ink-3")
"""What words are set in: 4.5:1 on both papers."""

MARKS = ("online", "hands-on", "teacher-led", "rule-mark")
"""What carries meaning without being words: 3:1 on both papers. `rule` and `grid` are decoration."""

_LIGHT_IS_CHOSEN = ':root, [data-md-color-scheme="default"]'
_DARK_IS_CHOSEN = '[data-md-color-scheme="slate"]'
_DARK_IS_ASKED_FOR = ':root, .no-js [data-md-color-scheme="default"]'


def color_css() -> str:
    """Return the colors as custom properties.

    Where a palette switch runs, its choice stands on `body`; without script, and on any host without a switch, the device decides.
    """
    return (
        f"{_LIGHT_IS_CHOSEN} {{ color-scheme: light; {_declared(LIGHT)} }}\n"
        f"@media screen and (prefers-color-scheme: dark) {{ {_DARK_IS_ASKED_FOR} {{ color-scheme: dark; {_declared(DARK)} }} }}\n"
        f"@media screen {{ {_DARK_IS_CHOSEN} {{ color-scheme: dark; {_declared(DARK)} }} }}\n"
        f"@media print {{ :root, [data-md-color-scheme] {{ color-scheme: light; {_declared(PRINT)} }} }}\n"
        "@media (prefers-contrast: more) { :root, [data-md-color-scheme] "
        "{ --rule: var(--rule-mark); --ink-2: var(--ink); --ink-3: var(--ink); } }\n"
    )


def _declared(table: Mapping[str, str]) -> str:
    return " ".join(f"--{name}: {value};" for name, value in table.items())
