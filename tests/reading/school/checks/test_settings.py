from __future__ import annotations

from pathlib import Path

import pytest

from tests.support.sheets import said, sheet
from trivet.reading.school.checks.settings import check_simulations, check_site, published_address
from trivet.reading.school.settings import read_settings

TEXT = "name: School\ntime zone: America/Chicago\nsite: https://trivet.example/\nteachers:\n  rowan: Ms. Rowan\n"


def site(tmp_path: Path, mkdocs: str) -> list[str]:
    """Hold the address of school.yml against a mkdocs.yml."""
    (tmp_path / "mkdocs.yml").write_text(mkdocs, encoding="utf-8")
    written = sheet("school", TEXT)
    return said(check_site(written, read_settings(written)[0], tmp_path / "mkdocs.yml"))


@pytest.mark.parametrize(
    "mkdocs",
    [
        "site_url: https://trivet.example/\n",
        "site_name: x\nsite_url: 'https://trivet.example'  # where it is\n",
        "site_name: x\n",
        "site_url: !ENV SITE\n",
        "theme:\n  site_url: https://elsewhere.example/\n",
        "site_url: [broken\n",
        "",
    ],
)
def test_the_same_address_or_none_passes(tmp_path: Path, mkdocs: str) -> None:
    """A slash at the end makes no difference, and a line that is no plain address says nothing."""
    assert site(tmp_path, mkdocs) == []


def test_another_address_is_a_warning_that_shows_both(tmp_path: Path) -> None:
    """Cards would print an address at which nothing is published."""
    what = "cards print https://trivet.example/, and mkdocs.yml publishes at https://school.example/science/"
    remedy = "write site: https://school.example/science/, or mend site_url in mkdocs.yml"
    assert site(tmp_path, 'nav: !!python/name:x\nsite_url: "https://school.example/science/"\n') == [f"3: site: {what}; {remedy}"]


def test_without_mkdocs_yml_nothing_is_said(tmp_path: Path) -> None:
    """Another generator may publish the pages."""
    assert published_address(tmp_path / "mkdocs.yml") == ""


def test_a_reviewed_simulation_belongs_to_a_unit() -> None:
    """A misspelled unit would leave its simulation refused, so it is answered with the nearest one."""
    written = sheet("school", TEXT + "simulations:\n  - float-or-sink\n  - float-or-sinks\n")
    settings, _ = read_settings(written)
    assert said(check_simulations(written, settings, ("float-or-sink", "moving-plates"))) == [
        '8: simulations, line 2: there is no unit "float-or-sinks"; write float-or-sink'
    ]
