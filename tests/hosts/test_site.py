"""The whole site, built by the real commands."""

from __future__ import annotations

import csv
import filecmp
import html
import io
import json
import os
import random
import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from markdown_it import MarkdownIt

from tests.conftest import EPOCH, mkdocs_build
from tests.support.project import copy_project

ARTICLE = re.compile(r"<article\b.*</article>", re.DOTALL)


def words(markup: str) -> list[str]:
    """The visible words of some HTML, in order."""
    without = re.sub(r"<(script|style)\b.*?</\1>|<!--.*?-->", " ", markup, flags=re.DOTALL)
    return html.unescape(re.sub(r"<[^>]+>", " ", without)).split()


def differing(one: Path, two: Path) -> list[str]:
    """Paths that are not the same bytes in both folders."""
    names = {p.relative_to(base).as_posix() for base in (one, two) for p in base.rglob("*") if p.is_file()}
    return sorted(
        n for n in names if not (one / n).is_file() or not (two / n).is_file() or not filecmp.cmp(one / n, two / n, shallow=False)
    )


def test_the_strict_build_says_nothing_to_mend(root: Path, tmp_path: Path) -> None:
    """`mkdocs build --strict` exits 0 on the demo with no WARNING line."""
    done = mkdocs_build(root, tmp_path / "site")
    assert done.returncode == 0, done.stderr
    assert "WARNING" not in done.stderr + done.stdout


def test_two_builds_are_the_same_bytes(root: Path, built_site: Path, tmp_path: Path) -> None:
    """With SOURCE_DATE_EPOCH set, a second build of the same files gives the same site."""
    assert mkdocs_build(root, tmp_path / "site").returncode == 0
    assert differing(built_site, tmp_path / "site") == []


def test_properdocs_builds_the_same_site(root: Path, built_site: Path, tmp_path: Path) -> None:
    """ProperDocs runs the same plugin and gives the same words on the same pages."""
    done = mkdocs_build(root, tmp_path / "site", program="properdocs", strict=False)
    assert done.returncode == 0, done.stderr
    pages = {p.relative_to(built_site) for p in built_site.rglob("*.html")}
    assert pages == {p.relative_to(tmp_path / "site") for p in (tmp_path / "site").rglob("*.html")}
    for page in pages:
        ours, theirs = ((base / page).read_text(encoding="utf-8") for base in (built_site, tmp_path / "site"))
        assert words(ours) == words(theirs), page


def test_written_pages_say_what_the_site_says(root: Path, built_site: Path, tmp_path: Path) -> None:
    """What `trivet write` writes, read by a CommonMark reader (markdown-it, CommonMark preset), has the words of the site's pages."""
    done = subprocess.run(
        [sys.executable, "-m", "trivet", "--root", str(root), "write", str(tmp_path)],
        capture_output=True,
        text=True,
        check=False,
        env={"SOURCE_DATE_EPOCH": "1795564800"},
    )
    assert done.returncode == 0, done.stdout + done.stderr
    reader = MarkdownIt("commonmark")
    written = sorted(tmp_path.rglob("index.md"))
    assert len(written) > 5
    for path in written:
        body = path.read_text(encoding="utf-8").split("\n---\n", 1)[1]
        page = built_site / path.parent.relative_to(tmp_path) / "index.html"
        article = ARTICLE.search(page.read_text(encoding="utf-8"))
        assert article, page
        assert words(reader.render(body)) == words(article.group()), page
    for asset in (p for p in tmp_path.rglob("*") if p.is_file() and p.name != "index.md"):
        assert filecmp.cmp(asset, built_site / asset.relative_to(tmp_path), shallow=False), asset


def many_units(project: Path, count: int) -> Path:
    """The demo project with `count` units in all: copies of float-or-sink under other names."""
    first = project / "units" / "float-or-sink"
    for number in range(count - sum(1 for p in (project / "units").iterdir() if p.is_dir() and p.name != "guide")):
        copy = project / "units" / f"copy-{number}"
        shutil.copytree(first, copy, ignore=shutil.ignore_patterns("sim"))
        text = (copy / "index.md").read_text(encoding="utf-8")
        (copy / "index.md").write_text(re.sub(r"open: sim/\S*", "open: https://simulation.example/", text), encoding="utf-8")
    return project


def test_a_page_does_not_grow_with_the_number_of_units(tmp_path: Path) -> None:
    """A unit's page and cards are the same size with 30 units as with 3: no page holds a list of all."""
    sizes = []
    for count in (3, 30):
        project = many_units(copy_project(tmp_path / f"p{count}"), count)
        assert mkdocs_build(project, tmp_path / f"s{count}").returncode == 0
        page = tmp_path / f"s{count}" / "units" / "float-or-sink"
        sizes.append([(page / name).stat().st_size for name in ("index.html", "student/index.html")])
    assert sizes[0] == sizes[1]


def private_words(root: Path) -> set[str]:
    """Every name and need in the example rosters that is more than one word, so that no ordinary word is taken for it."""
    found: set[str] = set()
    for path in (root / "private" / "example").glob("roster-*.csv"):
        with path.open(encoding="utf-8-sig", newline="") as file:
            for row in csv.DictReader(file):
                found |= {row[key].strip() for key in ("name", "needs") if " " in (row.get(key) or "").strip()}
    return found


def test_nothing_private_is_on_the_site(root: Path, built_site: Path) -> None:
    """No name or need of the example rosters stands in any file under site/."""
    canaries = private_words(root)
    assert len(canaries) > 150
    for path in built_site.rglob("*"):
        if path.is_file():
            text = path.read_bytes().decode("utf-8", "replace")
            assert not [word for word in canaries if word in text], path


def shuffled(text: str) -> str:
    """A class list that still reads: names, levels, tables, rules, needs and the rest dealt to other seats, column by column."""
    rows = list(csv.DictReader(io.StringIO(text)))
    for place, column in enumerate(list(rows[0])[1:], start=1):
        cells = [row[column] for row in rows]
        random.Random(place).shuffle(cells)
        for row, cell in zip(rows, cells, strict=True):
            row[column] = cell
    out = io.StringIO()
    writer = csv.DictWriter(out, fieldnames=list(rows[0]), lineterminator="\n")
    writer.writeheader()
    writer.writerows(rows)
    return out.getvalue()


@pytest.mark.parametrize("private", ["as shipped", "deleted", "shuffled", "garbled"])
def test_the_site_does_not_depend_on_the_private_folder(root: Path, built_site: Path, tmp_path: Path, private: str) -> None:
    """The site is the same bytes with private/ as shipped, deleted, with names, levels, rules and needs at other seats, and unreadable."""
    project = copy_project(tmp_path / "project", private=private != "deleted")
    lists = sorted((project / "private").rglob("*.csv"))
    assert bool(lists) == (private != "deleted")
    for path in lists:
        text = path.read_text(encoding="utf-8")
        if private == "shuffled":
            path.write_text(shuffled(text), encoding="utf-8")
            assert shuffled(text) != text
        elif private == "garbled":
            head, *rows = text.splitlines()
            path.write_text("\n".join([head, *(row[::-1] for row in rows)]), encoding="utf-8")
    assert mkdocs_build(project, tmp_path / "site").returncode == 0
    assert differing(built_site, tmp_path / "site") == []


def test_build_date_stands_in_one_file_and_in_footers(built_site: Path) -> None:
    """data/build.json says the date of the build."""
    assert json.loads((built_site / "data" / "build.json").read_text(encoding="utf-8"))["date"] == "2026-11-25"


def test_what_is_rendered_once_is_what_each_page_would_render(root: Path, built_site: Path, tmp_path: Path) -> None:
    """Headers and settings that pages share are the same bytes as where every page renders its own."""
    script = (
        "import trivet.hosts.mkdocs as host\n"
        "from mkdocs.__main__ import cli\n"
        "made = host.template_globals\n"
        "host.template_globals = lambda: {**made(), 'trivet_kept': lambda *key, caller: caller()}\n"
        f"cli(['build', '--quiet', '--strict', '--site-dir', {str(tmp_path / 'site')!r}])\n"
    )
    environment = {**os.environ, "SOURCE_DATE_EPOCH": EPOCH, "NO_MKDOCS_2_WARNING": "1"}
    done = subprocess.run([sys.executable, "-c", script], cwd=root, env=environment, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    assert differing(built_site, tmp_path / "site") == []
