"""The commands that write documentation down: new, validate, terms, convert, sheet."""

from __future__ import annotations

import datetime
from pathlib import Path

import click

from intent import verbs
from intent.commands.options import (
    FILE,
    PAPERS,
    Target,
    date_option,
    format_option,
    language_option,
    output_option,
    paper_option,
    replace_option,
    work_option,
)
from intent.commands.printing import deliver, deliver_reply, print_diagnostics, refusing_unknown_names
from intent.diagnostics import Unusable, summary_by_file
from intent.language.languages import LANGUAGES


@click.command()
@click.argument("file", type=FILE)
@click.option("--installation", is_flag=True, help="Write an installation instead of a work.")
@click.option(
    "--work", type=FILE, help="With --installation: the work that it is of; work.md beside it if none."
)
@language_option("the text to start from")
def new(file: Path, installation: bool, work: Path | None, language: str) -> None:
    """Write a commented dossier to start from.

    Example: intent new timetable/work.md

    An installation of it: intent new --installation --work timetable/work.md timetable/loans/halmsee.md
    """
    if work and not installation:
        raise click.UsageError("--work goes with --installation")
    written = verbs.new(file, installation=installation, work=work, language=language)
    click.echo(f"written: {written}")


@click.command()
@click.argument("file", type=FILE)
@work_option()
@date_option("The day on which cases are judged that the work expects something of")
@click.option("--digests", is_flag=True, help="Print the digest of each source's file that has none yet.")
def validate(file: Path, work: Path | None, date: datetime.date | None, digests: bool) -> int:
    """Say what is wrong with a work or an installation.

    What is worth a second look is said as well, as a warning or a note.

    Example: intent validate timetable/work.md
    """
    if digests:
        click.echo("\n\n".join(verbs.digests(file)) or f"{file}: every source's file has its digest")
        return 0
    try:
        findings = verbs.validate(file, work, date=date)
    except Unusable as error:
        print_diagnostics(error.diagnostics)
        for name, counted in summary_by_file(error.diagnostics).items():
            click.echo(f"{name}: {counted}", err=True)
        return 2
    print_diagnostics(findings)
    by_file = summary_by_file(findings)
    for name, counted in (by_file or {str(file): "nothing wrong with the form"}).items():
        click.echo(f"{name}: {counted}")
    return 1 if by_file else 0


@click.command()
@click.argument("name", nargs=-1)
@click.option("--work", type=FILE, help="A work whose own terms are wanted as well.")
@format_option(*PAPERS)
@language_option("the words and what they mean")
@output_option()
@paper_option()
@date_option("The date that the paper bears")
def terms(
    name: tuple[str, ...],
    work: Path | None,
    form: str,
    language: str,
    output: Target | None,
    paper: str,
    date: datetime.date | None,
) -> None:
    """Say which words the vocabulary has, and what one means.

    Where no word is called so, those are told whose names or meaning, in the language and in English, are about it.

    Example: intent terms rotation
    """
    with refusing_unknown_names():
        answer = verbs.terms(" ".join(name) or None, work, language)
    deliver_reply(answer, form, language, output, paper=paper, date=date)


@click.command()
@click.argument("file", type=FILE)
@click.option(
    "--to", "form", type=click.Choice(["markdown", "turtle", "json-ld", "n-triples"]), required=True
)
@work_option()
@output_option()
def convert(file: Path, form: str, work: Path | None, output: Target | None) -> None:
    """Turn a dossier or an installation into another form.

    Example: intent convert timetable/work.md --to turtle --output work.ttl
    """
    text, findings = verbs.convert(file, form, work)
    print_diagnostics(findings)
    deliver(text, output)


@click.command()
@click.argument("work", type=FILE)
@click.argument("table", type=click.Choice(["parts", "devices", "boxes"]))
@click.argument("file", type=FILE)
@click.option(
    "--enter", is_flag=True, help="Enter the sheet's rows into the dossier, and do not write the sheet."
)
@click.option(
    "--language",
    type=click.Choice(LANGUAGES),
    default="en",
    show_default=True,
    help="With --enter: the language in which the sheet writes numbers; de and fr have a decimal comma.",
)
@click.option(
    "--output",
    type=FILE,
    help="With --enter: the dossier to write; with --replace it may be the work itself.",
)
@replace_option()
def sheet(
    work: Path,
    table: str,
    file: Path,
    enter: bool,
    language: str,
    output: Path | None,
    replace: bool,
) -> None:
    """Write a table of a work as a spreadsheet, .csv or .xlsx, or take one back.

    A sheet that comes back is the truth for the rows and columns that it has; what it does not have stays. It may be
    saved as UTF-8, UTF-16 or Windows-1252, with commas, semicolons or tabs. What it changes is told first.

    Example: intent sheet timetable/work.md boxes boxes.csv
    """
    if enter:
        text, findings = verbs.enter_sheet(work, table, file, language)
        print_diagnostics(findings)
        deliver(text, Target(output, replace) if output else None)
        return
    verbs.sheet(work, table, file, replace=replace)
    click.echo(f"written: {file}", err=True)
