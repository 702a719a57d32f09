"""`trivet write DIR`: the same pages as files."""

from __future__ import annotations

from pathlib import Path

import click

from trivet.command.root import root_of


@click.command(short_help="Write all pages as files, for any generator.")
@click.argument("folder", metavar="DIR", type=click.Path(file_okay=False, path_type=Path))
@click.pass_context
def write(context: click.Context, folder: Path) -> None:
    """Write every page (Markdown with front matter) and file of the site below DIR, for any generator to publish."""
    from trivet.hosts.build import build_site
    from trivet.hosts.folder import write_site
    from trivet.reading import report

    built = build_site(root_of(context))
    if built.errors:
        click.echo(report.text(built.errors, built.sources), nl=False)
        context.exit(1)
    click.echo(f"{write_site(built.site, folder)} files written below {folder}")
