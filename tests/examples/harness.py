"""Lay the files of a case over the plain department and report on it."""

from __future__ import annotations

import shutil
import sys
import tempfile
from pathlib import Path

from click.testing import CliRunner

from trivet.command.check import problems_of
from trivet.command.main import main as trivet
from trivet.reading import report

HERE = Path(__file__).resolve().parent
PLAIN = HERE / "good" / "plain"
OWN_FILES = ("expected.txt", "options.txt", "changes.txt", "command.txt")


def cases(kind: str) -> list[Path]:
    """The folders of all cases of a kind, `good` or `bad`."""
    return sorted(path for path in (HERE / kind).iterdir() if path.is_dir())


def department_of(case: Path, folder: Path) -> Path:
    """Write the department of a case into `folder` and return it."""
    shutil.copytree(PLAIN, folder, dirs_exist_ok=True, ignore=shutil.ignore_patterns(*OWN_FILES))
    for line in _lines(case / "changes.txt"):
        _change(folder, *line.split(" ", 2))
    if case != PLAIN:
        shutil.copytree(case, folder, dirs_exist_ok=True, ignore=shutil.ignore_patterns(*OWN_FILES))
    return folder


def _change(folder: Path, verb: str, path: str, rest: str = "") -> None:
    target = folder / path
    target.parent.mkdir(parents=True, exist_ok=True)
    if verb == "delete":
        shutil.rmtree(target) if target.is_dir() else target.unlink()
    elif verb == "link":
        target.symlink_to(rest.removeprefix("-> "))
    elif verb == "repeat":
        count, _, line = rest.partition(" ")
        target.write_text(f"{line}\n" * int(count), encoding="utf-8")
    else:
        raise ValueError(f"{verb} {path} {rest}")


def report_on(case: Path, folder: Path) -> str:
    """Return what `trivet check`, or the command of the case, says about it; its department is written into `folder`."""
    asked = command_of(case)
    if asked:
        done = CliRunner().invoke(trivet, ["--root", str(department_of(case, folder)), *asked], catch_exceptions=False)
        return f"{done.stderr}exit {done.exit_code}\n"
    found = problems_of(department_of(case, folder))
    return report.text(found.problems, found.sources, advice="--all" in _lines(case / "options.txt"))


def command_of(case: Path) -> list[str]:
    """Return the words of the command that a case is about; [] where that is `trivet check`."""
    return [word for line in _lines(case / "command.txt") for word in line.split()]


def _lines(path: Path) -> list[str]:
    return path.read_text(encoding="utf-8").splitlines() if path.is_file() else []


def main(names: list[str]) -> None:
    """Write `expected.txt` of the cases that are named (or of all), to be read before they are committed."""
    for case in [*cases("bad"), *cases("good")]:
        if not names or case.name in names:
            with tempfile.TemporaryDirectory() as folder:
                said = report_on(case, Path(folder))
            (case / "expected.txt").write_text(said, encoding="utf-8")
            sys.stdout.write(f"== {case.name}\n{said}")


if __name__ == "__main__":
    if "--write" not in sys.argv:
        sys.exit("write: python -m tests.examples.harness --write [CASE ...]")
    main([name for name in sys.argv[1:] if not name.startswith("-")])
