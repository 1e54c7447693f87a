"""The commands about an installation: check, cards."""

from __future__ import annotations

import sys
from pathlib import Path

import click

from intent.commands.printing import (
    FILE,
    begin,
    deliver,
    deliver_bytes,
    print_diagnostics,
    refuse_terminal,
    terminal_width,
)

_FORMATS = ("text", "html", "markdown", "json", "turtle", "pdf")
_FOR_PROGRAMS = ("json", "turtle")
_LANGUAGES = ("en", "de", "fr")


@click.command()
@click.argument("files", type=FILE, nargs=-1, required=True, metavar="[WORK] INSTALLATION")
@click.option("--format", "form", type=click.Choice(_FORMATS), default="text", show_default=True)
@click.option("--output", type=FILE, help="Write the report here instead of printing it.")
@click.option(
    "--paper",
    type=click.Choice(["A4", "letter"]),
    default="A4",
    show_default=True,
    help="The paper of a PDF.",
)
@click.option(
    "--date", type=click.DateTime(["%Y-%m-%d"]), help="The date that the report bears; today's if none."
)
@click.option(
    "--language",
    type=click.Choice(_LANGUAGES),
    default="en",
    show_default=True,
    help="The language of a report in text, HTML or Markdown; what its writers wrote stays as it is.",
)
@click.option("--lines", is_flag=True, help="Draw the lines from players to displays (HTML and PDF).")
def check(
    files: tuple[Path, ...],
    form: str,
    output: Path | None,
    paper: str,
    date: object,
    language: str,
    lines: bool,
) -> int:
    """Check a proposed installation, and write the variance report.

    The work is the one that the installation names, or the one named before it. The exit code is 0 where the
    installation is acceptable as it is, and 1 where there is anything to settle.

    Example: intent check timetable/installations/2027-loan.md --format html --output report.html
    """
    import datetime

    from intent import verbs

    installation, work = _named(files)
    if form == "pdf":
        refuse_terminal(output)
    day = date.date() if isinstance(date, datetime.datetime) else None
    if language != "en" and form in _FOR_PROGRAMS:
        click.echo(f"{form} is for programs and stays in English; --language is for the others", err=True)
    width = 80 if output else max(80, min(terminal_width(), 120))
    colour = output is None and sys.stdout.isatty()
    if form in {"html", "pdf"}:
        begin("drawing")
    checked, text = verbs.check_and_report(
        installation,
        work,
        "html" if form == "pdf" else form,
        date=day,
        width=width,
        colour=colour,
        language=language,
        lines=lines,
    )
    print_diagnostics(found for found in checked.findings if found.severity != "note")
    if form == "pdf":
        begin("laying out the pages")
        deliver_bytes(verbs.pdf(text, paper), output)
    else:
        deliver(text, output)
    return 0 if checked.variance.outcome == "acceptable" else 1


def _named(files: tuple[Path, ...]) -> tuple[Path, Path | None]:
    """The installation, and the work where one is named before it."""
    if len(files) > 2:
        raise click.UsageError("name one installation, and at most the work before it")
    return files[-1], files[0] if len(files) == 2 else None


@click.command()
@click.argument("files", type=FILE, nargs=-1, required=True, metavar="[WORK] INSTALLATION")
@click.option(
    "--output", type=FILE, required=True, help="Write the cards here: a name that ends in .html or .pdf."
)
@click.option(
    "--sheet",
    type=click.Choice(["four", "labels"]),
    default="four",
    show_default=True,
    help="Four cards to a sheet of A4, or small labels.",
)
@click.option(
    "--units",
    type=click.Choice(["mm", "cm", "in"]),
    default="cm",
    show_default=True,
    help="The unit of positions.",
)
@click.option(
    "--language",
    type=click.Choice(_LANGUAGES),
    default="en",
    show_default=True,
    help="The language of the cards.",
)
@click.option("--parts", help="Of these parts alone, with commas between them.")
def cards(
    files: tuple[Path, ...], output: Path, sheet: str, units: str, language: str, parts: str | None
) -> None:
    """Write a card for each part, to be taped where the part goes.

    A card tells the state proposed: the part's place in the whole, which way up it lies, where its signal comes from,
    what must not be done, and the artist's words. Parts that are left out have none, and nothing on a card is internal.

    Example: intent cards timetable/installations/2027-loan.md --output cards.pdf --units in
    """
    from intent import verbs

    is_pdf = output.suffix.lower() == ".pdf"
    if not is_pdf and output.suffix.lower() not in {".html", ".htm"}:
        raise click.UsageError(f"`{output.name}` ends neither in .html nor in .pdf")
    installation, work = _named(files)
    wanted = [name.strip() for name in parts.split(",") if name.strip()] if parts else []
    begin("drawing the cards")
    page, findings = verbs.cards(installation, work, sheet=sheet, unit=units, language=language, parts=wanted)
    print_diagnostics(found for found in findings if found.severity != "note")
    if is_pdf:
        begin("laying out the cards")
        deliver_bytes(verbs.pdf(page), output)
    else:
        deliver(page, output)
