"""The commands that tell of a work: explain, history, compare, questions."""

from __future__ import annotations

from pathlib import Path

import click

from intent.commands.printing import FILE, deliver, print_diagnostics, terminal_width

_TOLD = ("text", "markdown", "json")
_PAGES = ("markdown", "html")


@click.command()
@click.argument("work", type=FILE)
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
    from intent.diagnostics import UnknownName
    from intent.papers.explained import write_account

    day = on.date() if isinstance(on, datetime.datetime) else None
    try:
        found = verbs.explain(work, subject, characteristic, day)
    except UnknownName as error:
        raise click.UsageError(str(error)) from None
    click.echo(write_account(found), nl=False)


@click.command()
@click.argument("work", type=FILE)
@click.argument("part", required=False)
@click.argument("characteristic", required=False)
@click.option("--format", "form", type=click.Choice(_TOLD), default="text", show_default=True)
@click.option("--output", type=FILE, help="Write here instead of printing.")
def history(work: Path, part: str | None, characteristic: str | None, form: str, output: Path | None) -> None:
    """Tell how a work was shown, and what departed from its documentation.

    Read are the installations carried out in the folder `installations` beside the work.

    Example: intent history timetable/work.md M1 technology
    """
    from intent import verbs
    from intent.diagnostics import UnknownName
    from intent.papers.chronicle_told import write_chronicle

    try:
        told, findings = verbs.history(work, part, characteristic)
    except UnknownName as error:
        raise click.UsageError(str(error)) from None
    print_diagnostics(findings)
    deliver(write_chronicle(told, form, width=max(80, min(terminal_width(), 120))), output)


@click.command()
@click.argument("old", type=FILE)
@click.argument("new", type=FILE)
@click.option("--installation", type=FILE, help="Say which verdicts on this installation change.")
@click.option("--format", "form", type=click.Choice(_TOLD), default="text", show_default=True)
@click.option("--output", type=FILE, help="Write here instead of printing.")
def compare(old: Path, new: Path, installation: Path | None, form: str, output: Path | None) -> int:
    """Say what changed between two states of the documentation of one work.

    The exit code is 0 where nothing changed, and 1 where anything did.

    Example: intent compare timetable/work-2019.md timetable/work.md
    """
    from intent import verbs
    from intent.papers.compared import write_comparison

    found, turn, findings = verbs.compare(old, new, installation)
    print_diagnostics(findings)
    deliver(write_comparison(found, turn, form, width=max(80, min(terminal_width(), 120))), output)
    return 1 if found.differences else 0


@click.command()
@click.argument("work", type=FILE)
@click.option("--format", "form", type=click.Choice(_PAGES), default="markdown", show_default=True)
@click.option("--output", type=FILE, help="Write here instead of printing.")
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
    print_diagnostics(findings)
    deliver(text, output)
