"""The commands that send and receive: pack, receive, export."""

from __future__ import annotations

import datetime
from pathlib import Path

import click

from intent import verbs
from intent.commands.options import FILE, Day, Target, language_option, output_option, work_option
from intent.commands.printing import begin, print_diagnostics, width_for
from intent.diagnostics import summary

STANDARDS_OFFERED = ("shacl", "odrl", "lido", "linked-art", "premis")
"""The names of `exports.standards.STANDARDS`, written here too so that a command does not wait for them."""


@click.command()
@click.argument("file", type=FILE)
@click.option("--to", type=FILE, required=True, help="A new folder, or a new file that ends in .zip.")
@work_option()
@click.option("--date", type=Day(), help="The date that the package and its papers bear; today's if none.")
@click.option("--pdf/--no-pdf", default=True, help="Put the report and the placement cards in as PDFs too.")
@language_option("the report, the cards, the annex and the packing list")
def pack(
    file: Path, to: Path, work: Path | None, date: datetime.date | None, pdf: bool, language: str
) -> int:
    """Pack a work, or an installation with its work and report, to send it elsewhere.

    What is marked `keep: internal` stays in the house, and so do contacts, insurance values and storage places. The
    exit code is 1 where there is something to look at before the package goes.

    Example: intent pack timetable/installations/2027-loan.md --to loan.zip
    """
    begin("packing")
    package = verbs.pack(file, to, work, date, pdf=pdf, language=language)
    print_diagnostics(package.findings)
    click.echo(f"packed: {package.path}")
    click.echo(f"left out: {'; '.join(package.left_out) or 'nothing'}")
    return 1 if summary(package.findings) else 0


@click.command()
@click.argument("package", type=FILE)
@click.argument("folder", type=FILE)
@click.option("--against", type=FILE, help="The copy of the work that is held; say what changed against it.")
@click.option(
    "--most-files", type=click.IntRange(1), help="The most files that the package may hold; 10000 if none."
)
@click.option(
    "--most-bytes", type=click.IntRange(1), help="The most bytes that it may hold; 256 GiB if none."
)
@language_option("what is said of the differences")
def receive(
    package: Path,
    folder: Path,
    against: Path | None,
    most_files: int | None,
    most_bytes: int | None,
    language: str,
) -> int:
    """Check a package that somebody sent, a folder or a zip, and open it in a new folder.

    Nothing in it is believed before it is checked: names, sizes, manifests, that text and graph say the same, and the
    verdicts, which are reached anew. A package with a fault is not opened, and every fault is told. The exit code is 1
    where the verdicts differ from those that were sent, or something else is to be looked at.

    Example: intent receive loan.zip received/loan --against timetable/work.md
    """
    begin("checking the package")
    received = verbs.receive(package, folder, against, most_files, most_bytes)
    print_diagnostics(received.findings)
    click.echo(verbs.tell_received(received, language, width=width_for(None)), nl=False)
    return 1 if summary(received.findings) else 0


@click.command()
@click.argument("file", type=FILE, metavar="WORK_OR_INSTALLATION")
@click.option(
    "--to",
    "standards",
    type=click.Choice(STANDARDS_OFFERED),
    multiple=True,
    required=True,
    help="The standard; may be given several times.",
)
@work_option()
@output_option("A file, or a new folder for several.", required=True)
@click.option("--date", type=Day(), help="The date that the records bear; today's if none.")
def export(
    file: Path,
    standards: tuple[str, ...],
    work: Path | None,
    output: Target,
    date: datetime.date | None,
) -> int:
    """Write a work, or an installation of it, for readers of other standards.

    What is marked `keep: internal` stays in the house, and so do contacts, insurance values and storage places. SHACL
    is made of an installation. The exit code is 1 where there is something to look at before the files go.

    Example: intent export timetable/work.md --to lido --to premis --output for-the-portal
    """
    begin("writing for other readers")
    exported = verbs.export(file, standards, output.path, work, date=date, replace=output.replace)
    print_diagnostics(exported.findings)
    if exported.left_out:
        click.echo(f"left out: {'; '.join(exported.left_out)}", err=True)
    count = len(exported.files)
    click.echo(f"written: {exported.files[0] if count == 1 else f'{output.path} ({count} files)'}")
    return 1 if summary(exported.findings) else 0
