"""The command line: one file a command, heavy imports inside."""

from checker.cli.main import main

__all__ = ["main"]
