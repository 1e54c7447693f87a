"""The command line: read arguments, call, print. What a command does is in `intent.verbs`."""

from __future__ import annotations

import sys
from collections.abc import Iterable
from pathlib import Path
from typing import TYPE_CHECKING, NoReturn

import click

if TYPE_CHECKING:
    from intent.diagnostics import Diagnostic

_FORMATS = ("text", "html", "markdown", "json", "turtle")
_TOLD = ("text", "markdown", "json")
_PAGES = ("markdown", "html")
_CONVERSIONS = ("markdown", "turtle", "json-ld", "n-triples")
_FILE = click.Path(path_type=Path)


def main() -> NoReturn:
    """Run the command; every fault of an input or call ends in a message and exit code 2."""
    import gc

    gc.disable()  # a command lives for less than a second; collecting would take a tenth of it
    from intent.diagnostics import Unusable

    try:
        sys.exit(intent.main(prog_name="intent", standalone_mode=False))
    except Unusable as error:
        _print_diagnostics(error.diagnostics)
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


@intent.command()
@click.argument("file", type=_FILE)
@click.option("--installation", is_flag=True, help="Write an installation instead of a work.")
def new(file: Path, installation: bool) -> None:
    """Write a commented dossier to start from.

    Example: intent new timetable/work.md
    """
    from intent import verbs

    click.echo(f"written: {verbs.new(file, installation=installation)}")


@intent.command()
@click.argument("file", type=_FILE)
@click.option("--work", type=_FILE, help="The work of an installation that names none.")
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
        _print_diagnostics(error.diagnostics)
        click.echo(f"{file}: {summary(error.diagnostics)}", err=True)
        return 2
    _print_diagnostics(findings)
    click.echo(f"{file}: {summary(findings) or 'nothing wrong with the form'}")
    return 1 if summary(findings) else 0


@intent.command()
@click.argument("files", type=_FILE, nargs=-1, required=True, metavar="[WORK] INSTALLATION")
@click.option("--format", "form", type=click.Choice(_FORMATS), default="text", show_default=True)
@click.option("--output", type=_FILE, help="Write the report here instead of printing it.")
@click.option(
    "--date", type=click.DateTime(["%Y-%m-%d"]), help="The date that the report bears; today's if none."
)
def check(files: tuple[Path, ...], form: str, output: Path | None, date: object) -> int:
    """Check a proposed installation, and write the variance report.

    The work is the one that the installation names, or the one named before it. The exit code is 0 where the
    installation is acceptable as it is, and 1 where there is anything to settle.

    Example: intent check timetable/installations/2027-loan.md --format html --output report.html
    """
    import datetime

    from intent import verbs

    if len(files) > 2:
        raise click.UsageError("name one installation, and at most the work before it")
    *works, installation = files
    day = date.date() if isinstance(date, datetime.datetime) else None
    width = 80 if output else max(80, min(_terminal_width(), 120))
    colour = output is None and sys.stdout.isatty()
    checked, text = verbs.check_and_report(
        installation, works[0] if works else None, form, date=day, width=width, colour=colour
    )
    _print_diagnostics(found for found in checked.findings if found.severity != "note")
    _deliver(text, output)
    return 0 if checked.variance.outcome == "acceptable" else 1


@intent.command()
@click.argument("work", type=_FILE)
@click.argument("subject", required=False)
@click.argument("characteristic", required=False)
@click.option(
    "--on",
    type=click.DateTime(["%Y", "%Y-%m", "%Y-%m-%d"]),
    help="The day on which to look: 2005, 2005-06-01; today if none.",
)
def explain(work: Path, subject: str | None, characteristic: str | None, on: object) -> None:
    """Say what governs a part, a group, a characteristic or the whole work, in whose words.

    It says for which values which instruction prevails, what gives way to it, and from when to when each holds.

    Example: intent explain timetable/work.md M1 technology --on 2005
    """
    import datetime

    from intent import verbs
    from intent.explanation import Unknown
    from intent.reports.explained import write_account

    day = on.date() if isinstance(on, datetime.datetime) else None
    try:
        found = verbs.explain(work, subject, characteristic, day)
    except Unknown as error:
        raise click.UsageError(str(error)) from None
    click.echo(write_account(found), nl=False)


@intent.command()
@click.argument("work", type=_FILE)
@click.argument("part", required=False)
@click.argument("characteristic", required=False)
@click.option("--format", "form", type=click.Choice(_TOLD), default="text", show_default=True)
@click.option("--output", type=_FILE, help="Write here instead of printing.")
def history(work: Path, part: str | None, characteristic: str | None, form: str, output: Path | None) -> None:
    """Tell how a work was shown, and what departed from its documentation.

    Read are the installations carried out in the folder `installations` beside the work.

    Example: intent history timetable/work.md M1 technology
    """
    from intent import verbs
    from intent.explanation import Unknown
    from intent.reports.chronicle import write_chronicle

    try:
        told, findings = verbs.history(work, part, characteristic)
    except Unknown as error:
        raise click.UsageError(str(error)) from None
    _print_diagnostics(findings)
    _deliver(write_chronicle(told, form, width=max(80, min(_terminal_width(), 120))), output)


@intent.command()
@click.argument("old", type=_FILE)
@click.argument("new", type=_FILE)
@click.option("--installation", type=_FILE, help="Say which verdicts on this installation change.")
@click.option("--format", "form", type=click.Choice(_TOLD), default="text", show_default=True)
@click.option("--output", type=_FILE, help="Write here instead of printing.")
def compare(old: Path, new: Path, installation: Path | None, form: str, output: Path | None) -> int:
    """Say what changed between two states of the documentation of one work.

    The exit code is 0 where nothing changed, and 1 where anything did.

    Example: intent compare timetable/work-2019.md timetable/work.md
    """
    from intent import verbs
    from intent.reports.compared import write_comparison

    found, turn, findings = verbs.compare(old, new, installation)
    _print_diagnostics(findings)
    _deliver(write_comparison(found, turn, form, width=max(80, min(_terminal_width(), 120))), output)
    return 1 if found.differences else 0


@intent.command()
@click.argument("work", type=_FILE)
@click.option("--format", "form", type=click.Choice(_PAGES), default="markdown", show_default=True)
@click.option("--output", type=_FILE, help="Write here instead of printing.")
@click.option("--date", type=click.DateTime(["%Y-%m-%d"]), help="The day of the conversation; today if none.")
def questions(work: Path, form: str, output: Path | None, date: object) -> None:
    """Say what to ask at the next conversation, and whom.

    For each person who is still there it lists what nobody has spoken of, what clashes and what is in doubt,
    those questions first on which most hangs, with lines to write on.

    Example: intent questions timetable/work.md --format html --output questions.html
    """
    import datetime

    from intent import verbs

    day = date.date() if isinstance(date, datetime.datetime) else None
    text, findings = verbs.questions(work, form, day)
    _print_diagnostics(findings)
    _deliver(text, output)


@intent.command()
@click.argument("name", required=False)
@click.option("--work", type=_FILE, help="A work whose own terms are wanted as well.")
def terms(name: str | None, work: Path | None) -> None:
    """Say which words the vocabulary has, and what one means.

    Example: intent terms rotation
    """
    from intent import verbs
    from intent.glossary import UnknownTerm

    try:
        click.echo(verbs.terms(name, work), nl=False)
    except UnknownTerm as error:
        raise click.UsageError(str(error)) from None


@intent.command()
@click.argument("file", type=_FILE)
@click.option("--to", "form", type=click.Choice(_CONVERSIONS), required=True)
@click.option("--work", type=_FILE, help="The work of an installation that names none.")
@click.option("--output", type=_FILE, help="Write here instead of printing.")
def convert(file: Path, form: str, work: Path | None, output: Path | None) -> None:
    """Turn a dossier or an installation into another form.

    Example: intent convert timetable/work.md --to turtle --output work.ttl
    """
    from intent import verbs

    text, findings = verbs.convert(file, form, work)
    _print_diagnostics(findings)
    _deliver(text, output)


@intent.command()
@click.argument("work", type=_FILE)
@click.argument("table", type=click.Choice(["parts", "devices", "boxes"]))
@click.argument("file", type=_FILE)
@click.option(
    "--enter", is_flag=True, help="Enter the sheet's rows into the dossier, and do not write the sheet."
)
@click.option("--output", type=_FILE, help="With --enter: the dossier to write; it may be the work itself.")
def sheet(work: Path, table: str, file: Path, enter: bool, output: Path | None) -> None:
    """Write a table of a work as a spreadsheet, .csv or .xlsx, or take one back.

    A sheet that comes back is the truth for the rows and columns that it has; what it does not have stays.

    Example: intent sheet timetable/work.md boxes boxes.csv
    """
    from intent import verbs

    if enter:
        text, findings = verbs.enter_sheet(work, table, file)
        _print_diagnostics(findings)
        _deliver(text, output)
        return
    verbs.sheet(work, table, file)
    click.echo(f"written: {file}", err=True)


def _deliver(text: str, output: Path | None) -> None:
    if output is None:
        click.echo(text, nl=not text.endswith("\n"))
        return
    from intent.files import write_whole

    write_whole(output, text if text.endswith("\n") else text + "\n")
    click.echo(f"written: {output}", err=True)


def _print_diagnostics(diagnostics: Iterable[Diagnostic]) -> None:
    for found in diagnostics:
        click.echo(str(found), err=True)


def _terminal_width() -> int:
    import shutil

    return shutil.get_terminal_size().columns
