"""The commands that write documentation down: new, validate, terms, convert, sheet."""

from __future__ import annotations

from pathlib import Path

import click

from intent.commands.printing import FILE, deliver, print_diagnostics

_CONVERSIONS = ("markdown", "turtle", "json-ld", "n-triples")


@click.command()
@click.argument("file", type=FILE)
@click.option("--installation", is_flag=True, help="Write an installation instead of a work.")
def new(file: Path, installation: bool) -> None:
    """Write a commented dossier to start from.

    Example: intent new timetable/work.md
    """
    from intent import verbs

    click.echo(f"written: {verbs.new(file, installation=installation)}")


@click.command()
@click.argument("file", type=FILE)
@click.option("--work", type=FILE, help="The work of an installation that names none.")
@click.option("--digests", is_flag=True, help="Print the digest of each source's file that has none yet.")
def validate(file: Path, work: Path | None, digests: bool) -> int:
    """Say what is wrong with a work or an installation.

    What is worth a second look is said as well, as a warning or a note.

    Example: intent validate timetable/work.md
    """
    from intent import verbs
    from intent.diagnostics import Unusable, summary

    if digests:
        click.echo("\n\n".join(verbs.digests(file)) or f"{file}: every source's file has its digest")
        return 0
    try:
        findings = verbs.validate(file, work)
    except Unusable as error:
        print_diagnostics(error.diagnostics)
        click.echo(f"{file}: {summary(error.diagnostics)}", err=True)
        return 2
    print_diagnostics(findings)
    click.echo(f"{file}: {summary(findings) or 'nothing wrong with the form'}")
    return 1 if summary(findings) else 0


@click.command()
@click.argument("name", required=False)
@click.option("--work", type=FILE, help="A work whose own terms are wanted as well.")
def terms(name: str | None, work: Path | None) -> None:
    """Say which words the vocabulary has, and what one means.

    Example: intent terms rotation
    """
    from intent import verbs
    from intent.papers.glossary import UnknownTerm

    try:
        click.echo(verbs.terms(name, work), nl=False)
    except UnknownTerm as error:
        raise click.UsageError(str(error)) from None


@click.command()
@click.argument("file", type=FILE)
@click.option("--to", "form", type=click.Choice(_CONVERSIONS), required=True)
@click.option("--work", type=FILE, help="The work of an installation that names none.")
@click.option("--output", type=FILE, help="Write here instead of printing.")
def convert(file: Path, form: str, work: Path | None, output: Path | None) -> None:
    """Turn a dossier or an installation into another form.

    Example: intent convert timetable/work.md --to turtle --output work.ttl
    """
    from intent import verbs

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
@click.option("--output", type=FILE, help="With --enter: the dossier to write; it may be the work itself.")
def sheet(work: Path, table: str, file: Path, enter: bool, output: Path | None) -> None:
    """Write a table of a work as a spreadsheet, .csv or .xlsx, or take one back.

    A sheet that comes back is the truth for the rows and columns that it has; what it does not have stays.

    Example: intent sheet timetable/work.md boxes boxes.csv
    """
    from intent import verbs

    if enter:
        text, findings = verbs.enter_sheet(work, table, file)
        print_diagnostics(findings)
        deliver(text, output)
        return
    verbs.sheet(work, table, file)
    click.echo(f"written: {file}", err=True)
