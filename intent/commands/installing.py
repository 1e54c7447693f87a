"""The commands about an installation: check, cards, packing, prepare."""

from __future__ import annotations

import datetime
import sys
from collections import Counter
from collections.abc import Iterable
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
    work_option,
)
from intent.commands.printing import (
    begin,
    deliver,
    deliver_bytes,
    deliver_reply,
    print_diagnostics,
    refuse_terminal,
    stays_english,
    width_for,
)
from intent.diagnostics import Diagnostic


@click.command()
@click.argument("files", type=FILE, nargs=-1, required=True, metavar="[WORK] INSTALLATION")
@format_option(*PAPERS, "json", "turtle")
@output_option("Write the report here instead of printing it.")
@paper_option()
@date_option("The date that the report bears")
@language_option("a report for people")
@click.option("--lines", is_flag=True, help="Draw the lines from players to displays (HTML and PDF).")
def check(
    files: tuple[Path, ...],
    form: str,
    output: Target | None,
    paper: str,
    date: datetime.date | None,
    language: str,
    lines: bool,
) -> int:
    """Check a proposed installation, and write the variance report.

    The work is the one that the installation names, or the one named before it. The exit code is 0 where the
    installation is acceptable as it is, and 1 where there is anything to settle.

    Example: intent check timetable/installations/2027-loan.md --format html --output report.html
    """
    installation, work = _named(files)
    if form == "pdf":
        refuse_terminal(output)
    stays_english(form, language)
    if form in {"html", "pdf"}:
        begin("drawing")
    checked, text = verbs.check_and_report(
        installation,
        work,
        "html" if form == "pdf" else form,
        date=date,
        width=width_for(output),
        colour=output is None and sys.stdout.isatty(),
        language=language,
        lines=lines,
    )
    _print_findings(checked.findings, installation)
    if form == "pdf":
        begin("laying out the pages")
        deliver_bytes(verbs.pdf(text, paper), output)
    else:
        deliver(text, output)
    return 0 if checked.variance.outcome == "acceptable" else 1


def _print_findings(findings: Iterable[Diagnostic], installation: Path) -> None:
    """What is to be looked at in the installation; of the documentation, which `validate` looks at, only how much."""
    warnings = [found for found in findings if found.severity != "note"]
    own = [found for found in warnings if Path(found.span.file).resolve() == installation.resolve()]
    print_diagnostics(own)
    others = Counter(found.span.file for found in warnings if found not in own)
    for name, number in others.items():
        what = "1 thing" if number == 1 else f"{number} things"
        click.echo(f"{what} to look at in {name}: see `intent validate {name}`", err=True)


def _named(files: tuple[Path, ...]) -> tuple[Path, Path | None]:
    """The installation, and the work where one is named before it."""
    if len(files) > 2:
        raise click.UsageError("name one installation, and at most the work before it")
    return files[-1], files[0] if len(files) == 2 else None


@click.command()
@click.argument("files", type=FILE, nargs=-1, required=True, metavar="[WORK] INSTALLATION")
@output_option("Write the cards here: a name that ends in .html or .pdf.", required=True)
@click.option(
    "--sheet",
    type=click.Choice(["four", "labels"]),
    default="four",
    show_default=True,
    help="Four cards to a sheet of A4, or small labels.",
)
@click.option(
    "--units",
    type=click.Choice(["m", "cm", "mm", "in"]),
    default="m",
    show_default=True,
    help="The unit of positions.",
)
@language_option("the cards")
@click.option("--parts", help="Of these parts alone, with commas between them.")
@date_option("The date that the cards bear")
def cards(
    files: tuple[Path, ...],
    output: Target,
    sheet: str,
    units: str,
    language: str,
    parts: str | None,
    date: datetime.date | None,
) -> None:
    """Write a card for each part, to be taped where the part goes.

    A card tells the state proposed: the part's place in the whole, which way up it lies, where its signal comes from,
    what must not be done, and the artist's words. Parts that are left out have none, and nothing on a card is internal.

    Example: intent cards timetable/installations/2027-loan.md --output cards.pdf --units in
    """
    is_pdf = output.path.suffix.lower() == ".pdf"
    if not is_pdf and output.path.suffix.lower() not in {".html", ".htm"}:
        raise click.UsageError(f"`{output.path.name}` ends neither in .html nor in .pdf")
    installation, work = _named(files)
    wanted = [name.strip() for name in parts.split(",") if name.strip()] if parts else []
    begin("drawing the cards")
    page, findings = verbs.cards(
        installation, work, sheet=sheet, unit=units, language=language, parts=wanted, date=date
    )
    print_diagnostics(found for found in findings if found.severity != "note")
    if is_pdf:
        begin("laying out the cards")
        deliver_bytes(verbs.pdf(page), output)
    else:
        deliver(page, output)


@click.command()
@click.argument("file", type=FILE, metavar="WORK_OR_INSTALLATION")
@work_option()
@format_option(*PAPERS)
@output_option("Write the list here instead of printing it.")
@paper_option()
@date_option("The date that the list bears")
@language_option("the list")
def packing(
    file: Path,
    work: Path | None,
    form: str,
    output: Target | None,
    paper: str,
    date: datetime.date | None,
    language: str,
) -> None:
    """Write the packing list: what travels in which box, what has none, and what the boxes weigh together.

    Of an installation it lists what goes to it, of a work all that it has. There is room for seals and for the
    condition of each thing, out and in. What is marked `keep: internal` is not on it.

    Example: intent packing timetable/installations/2027-loan.md --format pdf --output packing.pdf
    """
    deliver_reply(verbs.packing(file, work, date), form, language, output, paper=paper, date=date)


@click.command()
@click.argument("files", type=FILE, nargs=-1, required=True, metavar="[WORK] INSTALLATION")
@format_option(*PAPERS)
@output_option("Write the book here instead of printing it.")
@paper_option()
@date_option("The date that the book bears")
@language_option("the book")
def prepare(
    files: tuple[Path, ...],
    form: str,
    output: Target | None,
    paper: str,
    date: datetime.date | None,
    language: str,
) -> None:
    """Write the installation book: the work, where everything goes, what feeds what, what is to be done.

    It tells the state proposed, as the documentation has it; what is not given is left blank to be written in, and
    nothing in it is internal.

    Example: intent prepare timetable/installations/2027-loan.md --format pdf --output book.pdf
    """
    installation, work = _named(files)
    deliver_reply(verbs.prepare(installation, work, date), form, language, output, paper=paper, date=date)
