"""Names on the teacher's own device: the class file opened on a lesson sheet, as `trivet class-file` wrote it and as it might be broken."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Page, expect

from tests.browser.screens import LAPTOP, NARROW, PHONE, opened
from tests.browser.test_screens import faults_of
from tests.command.small_project import run
from trivet.command.class_file import class_file

P1 = "/lesson/p1/float-or-sink/#2026-11-30-groups"
LEVELED = "/lesson/r5/float-or-sink/#2026-12-07"
SEATS = "[...e.querySelectorAll('[data-seat]')].map(s => s.dataset.seat)"
KEPT = "() => JSON.stringify(localStorage) + JSON.stringify(sessionStorage)"


@pytest.fixture(scope="session")
def files(root: Path, tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    """The class files of a class with public groups and of one with leveled ones."""
    folder = tmp_path_factory.mktemp("class-files")
    for each in ("p1", "r5"):
        done = run(class_file, root, [each, "--today", "2026-11-25", "--out", str(folder / f"{each}.json")])
        assert done.exit_code == 0, done.output + done.stderr
    return {each: folder / f"{each}.json" for each in ("p1", "r5")}


@pytest.fixture
def sheet(chromium: Browser, site_url: str) -> Iterator[Page]:
    """The lesson sheet of p1 on a phone; whatever the console says, or a request that leaves the page after it is loaded, is a fault."""
    with opened(chromium, site_url + P1, PHONE) as (page, faults):
        yield page
        assert not faults


def give(page: Page, file: Path | dict[str, Any]) -> str:
    """Press the button, choose the file, and return what the sheet says."""
    with page.expect_file_chooser() as chooser:
        page.locator("[data-names='open']:visible").first.click()
    payload = file if isinstance(file, Path) else [{"name": "f.json", "mimeType": "", "buffer": json.dumps(file).encode()}]
    chooser.value.set_files(payload)  # type: ignore[arg-type]
    said = page.locator("[data-names-said]").first
    expect(said).not_to_be_empty()
    return said.text_content() or ""


def data_of(path: Path) -> dict[str, Any]:
    found: dict[str, Any] = json.loads(path.read_text(encoding="utf-8"))
    return found


def test_names_stand_where_numbers_stood(sheet: Page, files: dict[str, Path]) -> None:
    """Every number of the groups and of the spot checks becomes that student's first name, and the number again on request."""
    names = {each["seat"]: each["name"].split()[0] for each in data_of(files["p1"])["students"]}
    assert len(set(names.values())) == len(names) == 31
    before = sheet.locator("[data-seat]").all_inner_texts()
    assert give(sheet, files["p1"]) == "Names show in this tab only. Class file of Nov 25."
    shown = sheet.locator("[data-seat]").evaluate_all("all => all.map(each => [each.dataset.seat, each.textContent])")
    assert {name for _, name in shown} == set(names.values())
    assert all(names[seat] == name for seat, name in shown)
    sheet.get_by_role("button", name="Show numbers").click()
    assert sheet.locator("[data-seat]").all_inner_texts() == before
    sheet.get_by_role("button", name="Show names").click()
    assert sheet.locator("[data-seat]").first.text_content() in names.values()


def test_names_stay_in_the_tab(chromium: Browser, site_url: str, files: dict[str, Path]) -> None:
    """No request leaves the page, no title tells a name, another tab knows nothing, the class's other sheets do, and forgotten is gone."""
    with opened(chromium, site_url + P1, PHONE) as (page, faults):
        asked: list[str] = []
        page.on("request", lambda request: asked.append(request.url))
        give(page, files["p1"])
        assert all(url.startswith(f"{site_url}/assets/trivet/") and url.endswith(".js") for url in asked)
        assert "Hana" not in page.title()
        page.goto(f"{site_url}/lesson/p1/beaks-and-seeds/")
        page.get_by_text("Hana", exact=True).first.wait_for(state="attached")
        page.goto(f"{site_url}/lesson/p2/float-or-sink/")
        assert "Hana" not in page.content()
        other = page.context.new_page()
        other.goto(f"{site_url}/lesson/p1/float-or-sink/")
        other.wait_for_timeout(200)
        assert "Hana" not in other.evaluate("document.body.textContent")
        assert "Hana" not in other.evaluate(KEPT)
        page.goto(site_url + P1)
        page.get_by_role("button", name="Forget names").click()
        assert "Hana" not in page.evaluate("document.body.textContent") + page.evaluate(KEPT)
        page.reload()
        assert "Hana" not in page.evaluate("document.body.textContent")
        assert not faults


def test_says_with_whom_a_student_has_not_worked(sheet: Page, files: dict[str, Path]) -> None:
    """For the chosen student the sentence names those of the file's list, by name."""
    assert sheet.locator("[data-not-yet]:visible").count() == 0
    give(sheet, files["p1"])
    sheet.locator("[data-not-yet]:visible summary").click()
    sheet.locator("[data-not-yet]:visible select").select_option("p1-05")
    students = {each["seat"]: each for each in data_of(files["p1"])["students"]}
    others = [students[seat]["name"].split()[0] for seat in students["p1-05"]["not_yet"]]
    said = sheet.locator("[data-not-yet]:visible [role=status]").inner_text()
    assert said == f"{students['p1-05']['name'].split()[0]} has not yet worked with {', '.join(others)}."


def test_leveled_groups_are_shown_from_the_file_alone(chromium: Browser, site_url: str, files: dict[str, Path]) -> None:
    """The blanks of a leveled unit fill with the file's groups, as its plan says on every day, and are blank again when forgotten."""
    plan = data_of(files["r5"])["plans"][0]
    with opened(chromium, site_url + LEVELED, LAPTOP) as (page, faults):
        blank = page.inner_text("article").split()
        give(page, files["r5"])
        page.get_by_role("button", name="Show numbers").first.click()
        for held in plan["rounds"]:
            page.goto(f"{site_url}/lesson/r5/float-or-sink/#{held['date']}")
            day = page.locator(f"[id='{held['date']}']")
            lanes = day.locator(".lane").evaluate_all(
                "all => all.map(e => [e.querySelector('.letter')?.textContent, e.querySelector('.station').textContent])"
            )
            assert {letter: name.lower().replace("-", "_") for letter, name in lanes} == held["stations"]
            for letter, group in plan["groups"].items():
                board = day.locator(".group").filter(has=page.locator(".letter", has_text=letter))
                teams = board.locator(".teams > div").evaluate_all(f"all => all.map(e => [e.querySelector('dt').textContent, {SEATS}])")
                assert dict(teams) == {code: sorted(team) for code, team in group["teams"].items()}
                devices = board.locator(".devices li").evaluate_all(f"all => all.map(e => {SEATS})")
                assert devices == (group["pairs"] if held["stations"][letter] == "online" else [])
            asked = day.locator(".check").evaluate_all(
                "all => all.map(e => [e.querySelector('[data-part=team]').textContent, e.querySelector('[data-seat]').dataset.seat])"
            )
            assert asked == [[each["team"], each["seat"]] for each in plan["spot_checks"] if each["round"] == held["round"]]
        page.goto(site_url + LEVELED)
        page.get_by_role("button", name="Forget names").first.click()
        assert page.inner_text("article").replace("Names are forgotten.", "").split() == blank
        assert not faults


def test_ticks_of_leveled_spot_checks_are_kept(chromium: Browser, site_url: str, files: dict[str, Path]) -> None:
    """A spot check that came from the file is ticked like any other, also after a reload."""
    with opened(chromium, site_url + LEVELED, PHONE) as (page, _):
        give(page, files["r5"])
        page.goto(f"{site_url}{LEVELED}-launch")
        box = page.locator(".check input:visible").first
        box.check()
        page.reload()
        page.locator(".check input:visible").first.wait_for()
        assert page.locator(".check input:visible").first.is_checked()


def broken(good: dict[str, Any]) -> list[tuple[dict[str, Any], str]]:
    """Files that are none, or of another class, or partly wrong, with what the sheet says."""
    no_file = "That is no class file. `trivet class-file p1` writes one."
    opened_ = "Names show in this tab only. Class file of Nov 25."
    return [
        ({}, no_file),
        ({**good, "class_file": 2}, no_file),
        ({**good, "students": "all"}, no_file),
        ({**good, "students": good["students"] * 9}, no_file),
        ({**good, "class": "<b>r5</b>"}, "That is the class file of <b>r5</b>. This sheet is for p1."),
        ({**good, "students": [None, 7, {"seat": "x"}, {"seat": "p1-01", "name": 7}]}, opened_),
        ({**good, "plans": [None, 7]}, opened_),
    ]


@pytest.mark.parametrize("number", range(7))
def test_a_file_that_is_none_is_answered(sheet: Page, files: dict[str, Path], number: int) -> None:
    """Whatever file is chosen, the sheet says what it is in a sentence and works on."""
    file, said = broken(data_of(files["p1"]))[number]
    assert give(sheet, file) == said
    assert sheet.locator("[data-seat]:visible").count() > 31


TEAM = {"A1": {"r5-01": ["leader"]}}
NO_PLANS: tuple[dict[str, Any], ...] = (
    {},
    {"groups": {"A": {"teams": 7}}},
    {"groups": {"A": {"teams": TEAM}}, "rounds": [], "spot_checks": []},
    {"groups": {"A": {"teams": TEAM, "pairs": [["r5-01"]]}}, "spot_checks": []},
    {"groups": {"A": {"teams": TEAM, "pairs": []}}, "rounds": [{"stations": {"constructor": "online"}}], "spot_checks": []},
    {"groups": {"A": {"teams": {"A1": {"r5-01": [7]}}, "pairs": []}}, "rounds": [], "spot_checks": []},
)
"""Parts of plans that are none: as the groups of a sheet with blanks they would stop its script half-way."""


@pytest.mark.parametrize("number", range(len(NO_PLANS)))
def test_a_plan_that_is_none_fills_no_blank(chromium: Browser, site_url: str, files: dict[str, Path], number: int) -> None:
    """Where the file's groups of the unit can't be read the names still open, the sheet says so, and its blanks stay."""
    data = data_of(files["r5"])
    data["plans"] = [{"unit": "float-or-sink", "class": "r5", **NO_PLANS[number]}]
    with opened(chromium, site_url + LEVELED, PHONE) as (page, faults):
        assert give(page, data).endswith(" It holds no groups of this unit.")
        assert page.locator(".lane .blank:visible").count() == 3
        assert page.locator("[data-drawn]").count() == 0
        assert not faults


def test_a_name_is_only_text(sheet: Page, files: dict[str, Path]) -> None:
    """A name with markup in it stands as it was written; two who share a first name are called by their whole names."""
    hostile = "<img src=x onerror=document.title='run'>"
    data = data_of(files["p1"])
    for student, name in zip(data["students"], (hostile, "Ada One", "Ada Two", "Long, Ivo"), strict=False):
        student["name"] = name
    give(sheet, data)
    texts = {each["seat"]: sheet.locator(f"[data-seat='{each['seat']}']").first.text_content() for each in data["students"][:4]}
    assert list(texts.values()) == [hostile.split(maxsplit=1)[0], "Ada One", "Ada Two", "Ivo"]
    assert "run" not in sheet.title()


@pytest.mark.parametrize("address", [P1, LEVELED, f"{LEVELED}-groups"])
def test_with_names_the_sheet_is_accessible_and_narrow(chromium: Browser, site_url: str, files: dict[str, Path], address: str) -> None:
    """With the file open axe-core finds nothing, in light and dark, and names of fifty letters do not widen the narrowest phone."""
    data = data_of(files["p1" if "p1" in address else "r5"])
    for scheme in ("light", "dark"):
        with opened(chromium, site_url + address, PHONE, scheme) as (page, faults):  # type: ignore[arg-type]
            give(page, data)
            for fold in page.locator("[data-not-yet]:visible summary").all():
                fold.click()
            assert faults_of(Axe().run(page)) + faults == []
    for student in data["students"]:
        student["name"] = "W" * 50
    with opened(chromium, site_url + address, NARROW) as (page, _):
        give(page, data)
        assert page.evaluate("document.documentElement.scrollWidth") <= NARROW["width"]
