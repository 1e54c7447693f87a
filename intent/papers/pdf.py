"""A page that stands by itself, as a PDF: tagged, with nothing fetched, and always the same bytes."""

from __future__ import annotations

import hashlib
import logging
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

from intent.diagnostics import Span, Unusable, refusal

PAPERS = ("A4", "letter")
_VARIANT = "pdf/ua-1"
"""ISO 14289-1: tagged, so that a reader who does not see the page has its order, headings and tables."""


def write_pdf(page: str, paper: str = "A4") -> bytes:
    """The page on a paper of `PAPERS`; the same page gives the same bytes.

    Raises `Unusable`, saying what to install, where the library for it or what it stands on is missing.
    """
    library = _library()
    sheet = library.CSS(string=f"@page {{ size: {paper} }}")
    with _without_remarks():
        document = library.HTML(string=page, url_fetcher=_only_within(library))
        made: bytes = document.write_pdf(
            stylesheets=[sheet],
            pdf_identifier=hashlib.sha256(page.encode()).digest()[:16],
            pdf_variant=_VARIANT,
        )
    return made


def _only_within(library: Any) -> Any:
    """What the page carries in itself may be read; nothing else is fetched, from a disk or a network."""
    return library.urls.URLFetcher(allowed_protocols=frozenset({"data"}), allow_redirects=False)


def _library() -> Any:
    try:
        import weasyprint
    except ImportError:
        message = "a PDF needs the library WeasyPrint; install it with `pip install 'intent-record[pdf]'`"
        raise _missing(message) from None
    except OSError as error:
        message = (
            f"a PDF needs Pango, which is not on this machine (`apt-get install libpango-1.0-0`): {error}"
        )
        raise _missing(" ".join(message.split())) from None
    return weasyprint


def _missing(message: str) -> Unusable:
    return refusal("no-pdf", message, Span(file="pdf"))


@contextmanager
def _without_remarks() -> Iterator[None]:
    """The library's remarks on rules of style that are for screens are not for the reader."""
    logger = logging.getLogger("weasyprint")
    before = logger.level
    logger.setLevel(logging.CRITICAL)
    try:
        yield
    finally:
        logger.setLevel(before)
