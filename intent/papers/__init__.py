"""Variance reports: one story, told as text, HTML, Markdown, JSON or Turtle."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from intent.language.message import ENGLISH, Tongue
from intent.papers.report_evidence import Evidence, EvidenceFile, FileRole
from intent.variance.result import Variance

if TYPE_CHECKING:
    from intent.analysis.history.precedents import Forerunners
    from intent.papers.drawn import Drawn
    from intent.reading.evidence.passages import Passages

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
    standings: Sequence[Forerunners] = (),
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
        from intent.papers.report_json import write_json

        return write_json(variance, evidence, standings=standings)
    if format == "turtle":
        from intent.papers.report_turtle import write_turtle

        return write_turtle(variance, evidence, standings)
    from intent.papers.story import tell
    from intent.papers.told import told_in

    story = told_in(tell(variance, evidence, standings, passages), tongue)
    if format == "text":
        from intent.papers.text import write_text

        return write_text(story, width=width, colour=colour)
    if format == "html":
        from intent.papers.html import write_html

        return write_html(story, drawn)
    if format == "markdown":
        from intent.papers.markdown import write_markdown

        return write_markdown(story)
    raise ValueError(f"`{format}` is not a format of a report; choose one of {', '.join(FORMATS)}")
