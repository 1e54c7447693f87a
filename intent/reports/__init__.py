"""Variance reports: one story, told as text, HTML, Markdown, JSON or Turtle."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from intent.reports.evidence import Evidence, EvidenceFile, FileRole
from intent.saying import ENGLISH, Tongue
from intent.variance.result import Variance

if TYPE_CHECKING:
    from intent.evidence.passages import Passages
    from intent.history.precedents import Standing
    from intent.reports.drawn import Drawn

FORMATS = ("text", "html", "markdown", "json", "turtle")
FOR_PROGRAMS = ("json", "turtle")
"""The formats that are in English whatever the language."""

__all__ = ["FORMATS", "FOR_PROGRAMS", "Evidence", "EvidenceFile", "FileRole", "write_report"]


def write_report(
    variance: Variance,
    format: str,
    evidence: Evidence,
    *,
    width: int = 80,
    colour: bool = False,
    standings: Sequence[Standing] = (),
    passages: Passages | None = None,
    drawn: Drawn | None = None,
    tongue: Tongue = ENGLISH,
) -> str:
    """The report of a variance in one of `FORMATS`; the same input gives the same characters.

    ``width`` (in columns) and ``colour`` (ANSI) concern text alone; ``standings`` say what was shown before of the
    departures, ``passages`` where what is quoted was found. Text, HTML and Markdown are in the language of the
    ``tongue``; JSON and Turtle are for programs and always English. Each writer is imported only when it is asked
    for, since a terminal report should not wait for what HTML and Turtle need.
    Raises ``ValueError`` for another format.
    """
    if format == "json":
        from intent.reports.as_json import write_json

        return write_json(variance, evidence, standings=standings)
    if format == "turtle":
        from intent.reports.turtle import write_turtle

        return write_turtle(variance, evidence, standings)
    from intent.reports.story import tell
    from intent.reports.told import told_in

    story = told_in(tell(variance, evidence, standings, passages), tongue)
    if format == "text":
        from intent.reports.text import write_text

        return write_text(story, width=width, colour=colour)
    if format == "html":
        from intent.reports.html import write_html

        return write_html(story, drawn)
    if format == "markdown":
        from intent.reports.markdown import write_markdown

        return write_markdown(story)
    raise ValueError(f"`{format}` is not a format of a report; choose one of {', '.join(FORMATS)}")
