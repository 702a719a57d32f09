"""The `trivet` command: finds the project and calls one command, importing no other."""

from __future__ import annotations

import difflib
import importlib
from pathlib import Path

import click

from trivet.command.root import find_root, root_of

COMMANDS = {
    "check": "trivet.command.check:check",
    "class-file": "trivet.command.class_file:class_file",
    "groups": "trivet.command.groups:groups",
    "materials": "trivet.command.materials:materials",
    "new": "trivet.command.new_unit:new",
    "plan": "trivet.command.plan:plan",
    "write": "trivet.command.write:write",
}
WITHOUT_ROOT = ("groups",)
"""Commands that can do part of their work outside a project."""


class OneAtATime(click.Group):
    """A group that imports a command when it is asked for, so that each starts quickly."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        """All names, in order."""
        return sorted(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        """Import and return one command, with `--root` accepted after its name too."""
        target = COMMANDS.get(cmd_name)
        if target is None:
            return None
        module, name = target.split(":")
        command: click.Command = getattr(importlib.import_module(module), name)
        for each in (command, *getattr(command, "commands", {}).values()):
            if not any(p.name == "root" for p in each.params):
                each.params.append(_root_option())
        return command

    def resolve_command(self, ctx: click.Context, args: list[str]) -> tuple[str | None, click.Command | None, list[str]]:
        """Name the nearest command where one is misspelled."""
        if args and not args[0].startswith("-") and args[0] not in COMMANDS:
            near = difflib.get_close_matches(args[0], COMMANDS, 1)
            hint = f"did you mean {near[0]}?" if near else f"write one of: {', '.join(sorted(COMMANDS))}"
            ctx.fail(f"there is no command {args[0]!r}; {hint}")
        return super().resolve_command(ctx, args)


def _root_option() -> click.Option:
    return click.Option(
        ["--root"],
        type=click.Path(file_okay=False, path_type=Path),
        callback=_use_root,
        expose_value=False,
        help="The project's folder; else the nearest one above that holds school/school.yml.",
    )


def _use_root(context: click.Context, _: click.Parameter, given: Path | None) -> None:
    if given is not None:
        if not (given / "school" / "school.yml").is_file():
            raise click.UsageError(f"{given} holds no school/school.yml; write --root with the project's folder")
        context.obj = given.resolve()
    elif context.obj is None:
        context.obj = find_root(Path.cwd().resolve())
    if context.info_name not in WITHOUT_ROOT and context.parent is not None:
        root_of(context)


@click.command(cls=OneAtATime, params=[_root_option()], context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(package_name="trivet", message="trivet %(version)s")
def main() -> None:
    """Plan and publish three-station science units."""
