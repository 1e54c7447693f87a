"""The commands about an installation: check."""

from __future__ import annotations

import sys
from pathlib import Path

import click

from intent.commands.printing import FILE, deliver, print_diagnostics, terminal_width

_FORMATS = ("text", "html", "markdown", "json", "turtle")
_FOR_PROGRAMS = ("json", "turtle")
_LANGUAGES = ("en", "de", "fr")


@click.command()
@click.argument("files", type=FILE, nargs=-1, required=True, metavar="[WORK] INSTALLATION")
@click.option("--format", "form", type=click.Choice(_FORMATS), default="text", show_default=True)
@click.option("--output", type=FILE, help="Write the report here instead of printing it.")
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
def check(files: tuple[Path, ...], form: str, output: Path | None, date: object, language: str) -> int:
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
    if language != "en" and form in _FOR_PROGRAMS:
        click.echo(f"{form} is for programs and stays in English; --language is for the others", err=True)
    width = 80 if output else max(80, min(terminal_width(), 120))
    colour = output is None and sys.stdout.isatty()
    checked, text = verbs.check_and_report(
        installation,
        works[0] if works else None,
        form,
        date=day,
        width=width,
        colour=colour,
        language=language,
    )
    print_diagnostics(found for found in checked.findings if found.severity != "note")
    deliver(text, output)
    return 0 if checked.variance.outcome == "acceptable" else 1
