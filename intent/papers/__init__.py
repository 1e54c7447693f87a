"""Papers: each is one document, told as text, Markdown or a page; a variance report for programs too."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from intent.language.locale import ENGLISH, Locale
from intent.papers.report_evidence import Evidence, EvidenceFile, FileRole
from intent.variance.result import Variance

if TYPE_CHECKING:
    from intent.analysis.history.precedents import Forerunners
    from intent.papers.drawn import Drawn
    from intent.reading.evidence.passages import Passages

FORMATS = ("text", "html", "markdown", "json", "turtle")

__all__ = ["FORMATS", "Evidence", "EvidenceFile", "FileRole", "write_report"]


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
    locale: Locale = ENGLISH,
) -> str:
    """The report of a variance in one of `FORMATS`; the same input gives the same characters.

    ``width`` (in columns) and ``colour`` (ANSI) concern text alone; ``standings`` say what was shown before of the
    departures, ``passages`` where what is quoted was found. Text, HTML and Markdown are in the language of the
    ``locale``; JSON and Turtle are for programs and always English. Each writer is imported only when it is asked
    for, since a terminal report should not wait for what HTML and Turtle need.
    Raises ``ValueError`` for another format.
    """
    match format:
        case "json":
            from intent.papers.report_json import write_json

            return write_json(variance, evidence, standings=standings)
        case "turtle":
            from intent.papers.report_turtle import write_turtle

            return write_turtle(variance, evidence, standings)
        case "text" | "html" | "markdown":
            from intent.papers.telling import tell
            from intent.papers.variance_report import variance_report

            document = variance_report(
                variance,
                evidence,
                standings=standings,
                passages=passages,
                drawn=drawn,
                has_sources=format == "html",
            )
            return tell(document, format, locale, width=width, colour=colour)
    raise ValueError(f"`{format}` is not a format of a report; choose one of {', '.join(FORMATS)}")
