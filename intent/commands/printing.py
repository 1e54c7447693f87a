"""What every command does with what it got: print it, write it, and say what was found."""

from __future__ import annotations

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
    from intent.files import write_whole

    write_whole(output, text if text.endswith("\n") else text + "\n")
    click.echo(f"written: {output}", err=True)


def print_diagnostics(diagnostics: Iterable[Diagnostic]) -> None:
    for found in diagnostics:
        click.echo(str(found), err=True)


def terminal_width() -> int:
    import shutil

    return shutil.get_terminal_size().columns
