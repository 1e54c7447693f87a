"""The commands that tell of a work: explain, history, compare, questions."""

from __future__ import annotations

import datetime
from pathlib import Path

import click

from intent import verbs
from intent.commands.options import (
    FILE,
    PAPERS,
    Day,
    Target,
    date_option,
    format_option,
    language_option,
    output_option,
    paper_option,
)
from intent.commands.printing import deliver_reply, refusing_unknown_names


@click.command()
@click.argument("work", type=FILE)
@click.argument("subject", required=False)
@click.argument("characteristic", required=False)
@click.option(
    "--on",
    type=Day(or_longer=True),
    help="The day on which to look: 2005, 2005-06-01; today if none.",
)
@format_option(*PAPERS)
@language_option("the explanation")
@output_option()
@paper_option()
@date_option("The date that the paper bears")
def explain(
    work: Path,
    subject: str | None,
    characteristic: str | None,
    on: datetime.date | None,
    form: str,
    language: str,
    output: Target | None,
    paper: str,
    date: datetime.date | None,
) -> None:
    """Say what governs a part, a group, a characteristic or the whole work, in whose words.

    It says for which values which instruction prevails, what gives way to it, and from when to when each holds.

    Example: intent explain timetable/work.md M1 technology --on 2005
    """
    with refusing_unknown_names():
        answer = verbs.explain(work, subject, characteristic, on)
    deliver_reply(answer, form, language, output, paper=paper, date=date)


@click.command()
@click.argument("work", type=FILE)
@click.argument("part", required=False)
@click.argument("characteristic", required=False)
@format_option(*PAPERS, "json")
@language_option("the history")
@output_option()
@paper_option()
@date_option("The date that the paper bears")
def history(
    work: Path,
    part: str | None,
    characteristic: str | None,
    form: str,
    language: str,
    output: Target | None,
    paper: str,
    date: datetime.date | None,
) -> None:
    """Tell how a work was shown, and what departed from its documentation.

    Read are the installations carried out in the folder `installations` beside the work.

    Example: intent history timetable/work.md M1 technology
    """
    with refusing_unknown_names():
        answer = verbs.history(work, part, characteristic)
    deliver_reply(answer, form, language, output, paper=paper, date=date)


@click.command()
@click.argument("old", type=FILE)
@click.argument("new", type=FILE)
@click.option("--installation", type=FILE, help="Say which verdicts on this installation change.")
@format_option(*PAPERS, "json")
@language_option("the comparison")
@output_option()
@paper_option()
@date_option("The date that the paper bears")
def compare(
    old: Path,
    new: Path,
    installation: Path | None,
    form: str,
    language: str,
    output: Target | None,
    paper: str,
    date: datetime.date | None,
) -> int:
    """Say what changed between two states of the documentation of one work.

    The exit code is 0 where nothing changed, and 1 where anything did.

    Example: intent compare timetable/work-2019.md timetable/work.md
    """
    answer = verbs.compare(old, new, installation)
    deliver_reply(answer, form, language, output, paper=paper, date=date)
    return 1 if answer.found.works.differences else 0


@click.command()
@click.argument("work", type=FILE)
@format_option(*PAPERS, default="markdown")
@language_option("the questions")
@output_option()
@paper_option()
@date_option("The day of the conversation, which the paper bears")
def questions(
    work: Path, form: str, language: str, output: Target | None, paper: str, date: datetime.date | None
) -> None:
    """Say what to ask at the next conversation, and whom.

    For each person who is still there it lists what nobody has spoken of, what clashes and what is in doubt,
    those questions first on which most hangs, with lines to write on.

    Example: intent questions timetable/work.md --format html --output questions.html
    """
    deliver_reply(verbs.questions(work, date), form, language, output, paper=paper, date=date)
