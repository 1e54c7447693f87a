"""The command line: the group of all commands, and how it ends."""

from __future__ import annotations

import sys
from typing import NoReturn

import click

from intent.commands import documenting, exchanging, installing, looking
from intent.commands.printing import print_diagnostics


def main() -> NoReturn:
    """Run the command; every fault of an input or call ends in a message and exit code 2."""
    import gc

    gc.disable()  # a command lives for less than a second; collecting would take a tenth of it
    from intent.diagnostics import Unusable

    try:
        sys.exit(intent.main(prog_name="intent", standalone_mode=False))
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
    sys.exit(2)


@click.group(context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100})
@click.version_option(package_name="intent-record", prog_name="intent")
def intent() -> None:
    """What the artist requires, allows and forbids, and how a proposed installation stands to it."""


for command in (
    documenting.new,
    documenting.validate,
    installing.check,
    installing.cards,
    looking.explain,
    looking.history,
    looking.compare,
    looking.questions,
    documenting.terms,
    documenting.convert,
    documenting.sheet,
    exchanging.pack,
    exchanging.receive,
    exchanging.export,
):
    intent.add_command(command)
