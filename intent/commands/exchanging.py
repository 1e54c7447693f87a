"""The commands that send and receive: pack, receive, export."""

from __future__ import annotations

from pathlib import Path

import click

from intent.commands.printing import FILE, begin, print_diagnostics, terminal_width

_STANDARDS = ("shacl", "odrl", "lido", "linked-art", "premis")


@click.command()
@click.argument("file", type=FILE)
@click.option("--to", type=FILE, required=True, help="A new folder, or a new file that ends in .zip.")
@click.option("--work", type=FILE, help="The work of an installation that names none.")
@click.option(
    "--date",
    type=click.DateTime(["%Y-%m-%d"]),
    help="The date that the package bears; the installation's first day if none.",
)
@click.option("--pdf/--no-pdf", default=True, help="Put the report and the placement cards in as PDFs too.")
def pack(file: Path, to: Path, work: Path | None, date: object, pdf: bool) -> int:
    """Pack a work, or an installation with its work and report, to send it elsewhere.

    What is marked `keep: internal` stays in the house, and so do contacts, insurance values and storage places. The
    exit code is 1 where there is something to look at before the package goes.

    Example: intent pack timetable/installations/2027-loan.md --to loan.zip
    """
    import datetime

    from intent import verbs
    from intent.diagnostics import summary

    day = date.date() if isinstance(date, datetime.datetime) else None
    begin("packing")
    package = verbs.pack(file, to, work, day, pdf=pdf)
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
def receive(
    package: Path, folder: Path, against: Path | None, most_files: int | None, most_bytes: int | None
) -> int:
    """Check a package that somebody sent, a folder or a zip, and open it in a new folder.

    Nothing in it is believed before it is checked: names, sizes, manifests, that text and graph say the same, and the
    verdicts, which are reached anew. A package with a fault is not opened, and every fault is told. The exit code is 1
    where the verdicts differ from those that were sent, or something else is to be looked at.

    Example: intent receive loan.zip received/loan --against timetable/work.md
    """
    from intent import verbs
    from intent.diagnostics import summary
    from intent.papers.compared import write_comparison

    begin("checking the package")
    received = verbs.receive(package, folder, against, most_files, most_bytes)
    print_diagnostics(received.findings)
    click.echo(f"opened: {received.folder}")
    click.echo(f"kept by the sender: {received.left_out or 'not said'}")
    if received.judged.variance is not None:
        click.echo(str(received.judged.variance.sentence))
    if received.comparison is not None:
        width = max(80, min(terminal_width(), 120))
        click.echo(f"\n{write_comparison(received.comparison, None, width=width)}", nl=False)
    return 1 if summary(received.findings) else 0


@click.command()
@click.argument("file", type=FILE, metavar="WORK_OR_INSTALLATION")
@click.option(
    "--to",
    "standards",
    type=click.Choice(_STANDARDS),
    multiple=True,
    required=True,
    help="The standard; may be given several times.",
)
@click.option("--work", type=FILE, help="The work of an installation that names none.")
@click.option(
    "--output",
    type=FILE,
    required=True,
    metavar="FOLDER_OR_FILE",
    help="A file, or a new folder for several.",
)
def export(file: Path, standards: tuple[str, ...], work: Path | None, output: Path) -> int:
    """Write a work, or an installation of it, for readers of other standards.

    What is marked `keep: internal` stays in the house, and so do contacts, insurance values and storage places. SHACL
    is made of an installation. The exit code is 1 where there is something to look at before the files go.

    Example: intent export timetable/work.md --to lido --to premis --output for-the-portal
    """
    from intent import verbs
    from intent.diagnostics import summary

    begin("writing for other readers")
    exported = verbs.export(file, standards, output, work)
    print_diagnostics(exported.findings)
    if exported.left_out:
        click.echo(f"left out: {'; '.join(exported.left_out)}", err=True)
    count = len(exported.files)
    click.echo(f"written: {exported.files[0] if count == 1 else f'{output} ({count} files)'}")
    return 1 if summary(exported.findings) else 0
