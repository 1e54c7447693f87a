"""What every command does with what it got: print it, write it, and say what was found."""

from __future__ import annotations

import sys
from collections.abc import Iterable
from pathlib import Path
from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from intent.diagnostics import Diagnostic

FILE = click.Path(path_type=Path)


def deliver(text: str, output: Path | None) -> None:
    if output is None:
        click.echo(text, nl=not text.endswith("\n"))
        return
    from intent.reading.atomic_write import write_whole

    write_whole(output, text if text.endswith("\n") else text + "\n")
    click.echo(f"written: {output}", err=True)


def deliver_bytes(content: bytes, output: Path | None) -> None:
    """What is no text: to a file, or to whatever stands at the other end of a pipe."""
    if output is None:
        sys.stdout.buffer.write(content)
        return
    from intent.reading.atomic_write import write_whole

    write_whole(output, content)
    click.echo(f"written: {output}", err=True)


def refuse_terminal(output: Path | None) -> None:
    """Refuse to print bytes on a terminal, before any work is done."""
    if output is None and sys.stdout.isatty():
        raise click.UsageError("a PDF is not for a terminal; name a file with --output")


def begin(what: str) -> None:
    """Say on a terminal what takes a while."""
    if sys.stderr.isatty():
        click.echo(f"{what} …", err=True)


def print_diagnostics(diagnostics: Iterable[Diagnostic]) -> None:
    for found in diagnostics:
        click.echo(str(found), err=True)


def terminal_width() -> int:
    import shutil

    return shutil.get_terminal_size().columns
