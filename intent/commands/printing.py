"""What every command does with what it got: print it, write it, and say what was found."""

from __future__ import annotations

import datetime
import shutil
import sys
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from typing import TYPE_CHECKING, Any

import click

from intent.commands.options import Target
from intent.diagnostics import Diagnostic, UnknownName
from intent.reading.atomic_write import write_whole

if TYPE_CHECKING:
    from intent.verbs import Reply

NARROW, WIDE = 80, 120
"""Columns between which a text is laid out on a terminal, and those of a text in a file."""
FOR_PROGRAMS = frozenset({"json", "turtle"})
"""The forms that are in English whatever the language."""


def deliver(text: str, output: Target | None) -> None:
    """Print a text, or write it where it is wanted."""
    if output is None:
        click.echo(text, nl=not text.endswith("\n"))
        return
    _write(output, text if text.endswith("\n") else text + "\n")


def deliver_bytes(content: bytes, output: Target | None) -> None:
    """What is no text: to a file, or to whatever stands at the other end of a pipe."""
    if output is None:
        sys.stdout.buffer.write(content)
        return
    _write(output, content)


def _write(output: Target, content: str | bytes) -> None:
    write_whole(output.path, content, replace=output.replace)
    click.echo(f"written: {output.path}", err=True)


@contextmanager
def refusing_unknown_names() -> Iterator[None]:
    """What is asked for by a name that there is not is a fault of the call."""
    try:
        yield
    except UnknownName as error:
        raise click.UsageError(str(error)) from None


def deliver_reply(
    answer: Reply[Any],
    form: str,
    language: str,
    output: Target | None,
    *,
    paper: str,
    date: datetime.date | None,
) -> None:
    """Tell an answer in a form and a language, with the day that it bears, and say what was noticed on the way."""
    from intent import verbs  # here alone: a check has no answer to tell

    if form == "pdf":
        refuse_terminal(output)
    print_diagnostics(answer.findings)
    stays_english(form, language)
    if form != "pdf":
        deliver(verbs.tell_reply(answer, form, language, date=date, width=width_for(output)), output)
        return
    begin("laying out the pages")
    deliver_bytes(verbs.pdf(verbs.tell_reply(answer, "html", language, date=date), paper), output)


def stays_english(form: str, language: str) -> None:
    """Say that what is for programs is the same in every language, where another was asked for."""
    if form in FOR_PROGRAMS and language != "en":
        click.echo(f"{form} is for programs and stays in English; --language is for the others", err=True)


def refuse_terminal(output: Target | None) -> None:
    """Refuse to print bytes on a terminal, before any work is done."""
    if output is None and sys.stdout.isatty():
        raise click.UsageError("a PDF is not for a terminal; name a file with --output")


def begin(what: str) -> None:
    """Say on a terminal what takes a while."""
    if sys.stderr.isatty():
        click.echo(f"{what} …", err=True)


def print_diagnostics(diagnostics: Iterable[Diagnostic]) -> None:
    """Say what was found, on the error stream."""
    for found in diagnostics:
        click.echo(str(found), err=True)


def width_for(output: Target | None) -> int:
    """How many columns a text may take: those of the terminal, within bounds."""
    if output is not None:
        return NARROW
    return max(NARROW, min(shutil.get_terminal_size().columns, WIDE))
