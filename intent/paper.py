"""What is printed on paper: placement cards, and pages as PDF."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from intent.checking import check
from intent.diagnostics import Diagnostic
from intent.language.locale import locale_of


def cards(
    installation: str | Path,
    work: str | Path | None = None,
    *,
    sheet: str = "four",
    unit: str = "cm",
    language: str = "en",
    parts: Sequence[str] = (),
) -> tuple[str, tuple[Diagnostic, ...]]:
    """The placement cards of an installation as a page to print, and what was found in its texts.

    ``sheet`` is `four` (four cards to a sheet of A4) or `labels`; ``unit`` is `mm`, `cm` or `in`; of some parts alone
    where any are named. Nothing on them is internal. Raises `Unusable`.
    """
    from intent.papers.cards.write import cards_of_proposal

    checked = check(installation, work)
    page = cards_of_proposal(
        checked.proposal, checked.variance, sheet=sheet, unit=unit, parts=parts, locale=locale_of(language)
    )
    return page, checked.findings


def pdf(page: str, paper: str = "A4") -> bytes:
    """A page of this program as a PDF on A4 or letter paper. Raises `Unusable` where what it needs is missing."""
    from intent.papers.pdf import write_pdf

    return write_pdf(page, paper)
