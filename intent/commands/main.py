"""The command line: the group of all commands, each imported when it is called, and how it ends."""

from __future__ import annotations

import gc
import io
import os
import sys
from importlib import import_module
from typing import NoReturn

import click

COMMANDS = {
    "new": "documenting",
    "validate": "documenting",
    "check": "installing",
    "cards": "installing",
    "packing": "installing",
    "prepare": "installing",
    "explain": "looking",
    "history": "looking",
    "compare": "looking",
    "questions": "looking",
    "terms": "documenting",
    "convert": "documenting",
    "sheet": "documenting",
    "pack": "exchanging",
    "receive": "exchanging",
    "export": "exchanging",
}
"""Each command with the module that holds it, in the order of the help."""


class Commands(click.Group):
    """The commands; a module is imported only when one of its commands, or the help of all, is asked for."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        """The names, in the order of the help."""
        return list(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        """The command of a name."""
        room = COMMANDS.get(cmd_name)
        if room is None:
            return None
        found: click.Command = getattr(import_module(f"intent.commands.{room}"), cmd_name)
        return found


@click.group(cls=Commands, context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100})
@click.version_option(package_name="intent-record", prog_name="intent")
def intent() -> None:
    """What the artist requires, allows and forbids, and how a proposed installation stands to it."""


def main() -> NoReturn:
    """Run the command; every fault of an input or call ends in a message and exit code 2."""
    gc.disable()  # a command lives for less than a second; collecting would take a tenth of it
    from intent.commands.printing import print_diagnostics  # after the collector is off: it imports much
    from intent.diagnostics import Unusable

    if sys.stdout is None:
        click.echo(
            "standard output is closed; let it go somewhere, and write to a file with --output", err=True
        )
        sys.exit(2)
    _lose_no_character()
    try:
        code = intent.main(prog_name="intent", standalone_mode=False)
        sys.stdout.flush()  # here, where a full disk can still be told
        sys.exit(code)
    except Unusable as error:
        print_diagnostics(error.diagnostics)
    except click.exceptions.Exit as error:
        sys.exit(error.exit_code)
    except click.Abort:
        click.echo("stopped", err=True)
    except click.ClickException as error:
        error.show()
    except BrokenPipeError:
        sys.stderr.close()
    except OSError as error:
        click.echo(f"what was to be printed cannot be written: {error.strerror or error}", err=True)
    except MemoryError:
        click.echo("there is not enough memory for this", err=True)
    _let_go()
    sys.exit(2)


def _lose_no_character() -> None:
    """Let an output that cannot hold every character show those that it cannot by their numbers."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="backslashreplace")


def _let_go() -> None:
    """Let the program end without another attempt to print what could not be printed."""
    try:
        sys.stdout.flush()
    except OSError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
