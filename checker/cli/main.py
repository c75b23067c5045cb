"""The `dryfit` command."""

from __future__ import annotations

import sys
from typing import Any

import click

from checker import __version__

_COMMANDS = {
    "check": ("checker.cli.check", "check"),
    "rules": ("checker.cli.rules", "rules"),
    "facts": ("checker.cli.facts", "facts"),
    "glossary": ("checker.cli.glossary", "glossary"),
    "schema": ("checker.cli.schema", "schema"),
}


class _Commands(click.Group):
    """Imports a command's module only when it is called."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        return list(_COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        if cmd_name not in _COMMANDS:
            return None
        from importlib import import_module

        module, name = _COMMANDS[cmd_name]
        command: Any = getattr(import_module(module), name)
        return command  # type: ignore[no-any-return]

    def resolve_command(
        self, ctx: click.Context, args: list[str]
    ) -> tuple[str | None, click.Command | None, list[str]]:
        if args and not args[0].startswith("-") and args[0] not in _COMMANDS:
            from checker.problems import cut, nearest

            near = nearest(args[0], _COMMANDS)
            there = f"there are: {', '.join(_COMMANDS)}"
            hint = f" To check a plan: dryfit check {cut(args[0])}" if args[0].endswith((".yaml", ".yml")) else ""
            ctx.fail(f"there is no command “{cut(args[0])}”; {near or there}.{hint}")
        return super().resolve_command(ctx, args)


@click.group(cls=_Commands, context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 88})
@click.version_option(__version__, prog_name="dryfit")
def _dryfit() -> None:
    """Try a house-retrofit plan against the rules before you build it or hand it in.

    Start with: dryfit check PLAN.yaml
    """


def main() -> None:
    """Run the command line; problems of the user's files end with status 2 and no traceback."""
    try:
        _dryfit(prog_name="dryfit")
    except BrokenPipeError:
        sys.stderr.close()
        raise SystemExit(141) from None
