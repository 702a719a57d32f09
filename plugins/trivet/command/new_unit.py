"""`trivet new unit SLUG`: the files of a unit, ready to be filled in."""

from __future__ import annotations

from pathlib import Path

import click

from trivet.command.new_run import run
from trivet.command.root import root_of
from trivet.reading.checks.folders import slug_fault

FILES = Path(__file__).resolve().parent / "new_files"


@click.group(short_help="Start a unit or a run.")
def new() -> None:
    """Write files to start from."""


new.add_command(run)


@new.command(short_help="Write a unit to fill in.")
@click.argument("slug")
@click.pass_context
def unit(context: click.Context, slug: str) -> None:
    """Write units/SLUG/ with a unit to fill in; it passes `trivet check` as it is.

    SLUG is its name in web addresses: 2 to 40 small letters, digits and hyphens, such as float-or-sink. Nothing is overwritten.
    """
    root = root_of(context)
    if fault := slug_fault(slug):
        raise click.UsageError(f"{fault[0]}; {fault[1]}")
    folder = root / "units" / slug
    if folder.exists() or folder.is_symlink():
        raise click.UsageError(f"units/{slug} is there already; choose another name, or delete it first")
    for name, text in new_unit(slug).items():
        folder.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text(text, encoding="utf-8")
        click.echo(f"units/{slug}/{name}")
    click.echo("Fill them in, then run: trivet check")


def new_unit(slug: str) -> dict[str, str]:
    """Return the files of a new unit by name, its title made from its slug."""
    title = slug.replace("-", " ").capitalize()
    return {path.name: path.read_text(encoding="utf-8").replace("TITLE", title) for path in sorted(FILES.glob("*.md"))}
