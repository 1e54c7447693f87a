"""A paper told in a form and a language."""

from __future__ import annotations

from intent.language.locale import ENGLISH, Locale
from intent.papers.document import Document

FORMS = ("text", "markdown", "html")
"""The forms in which any paper is told."""


def tell(
    document: Document, form: str, locale: Locale = ENGLISH, *, width: int = 80, colour: bool = False
) -> str:
    """The paper in one of `FORMS`; ``width`` (in columns) and ``colour`` (ANSI) concern text alone.

    Raises ``ValueError`` for another form.
    """
    match form:
        case "text":
            from intent.papers.told_text import tell_text  # each writer only where it is asked for

            return tell_text(document, locale, width=width, colour=colour)
        case "markdown":
            from intent.papers.told_markdown import tell_markdown

            return tell_markdown(document, locale)
        case "html":
            from intent.papers.told_page import tell_page  # needs lxml, for which a terminal does not wait

            return tell_page(document, locale)
    raise ValueError(f"`{form}` is not a form of a paper; choose one of {', '.join(FORMS)}")
