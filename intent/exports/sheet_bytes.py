"""The text of a spreadsheet saved as text, in whichever encoding an office program saves it.

Those are UTF-8, UTF-16 with a byte order mark ("Unicode text") and Windows-1252, the Western European code page.
Source: The Unicode Standard, chapter 23.8 (byte order mark); the code page as IANA registers it, windows-1252.
"""

from __future__ import annotations

import codecs

from intent.diagnostics import Diagnostic, Severity, Span
from intent.language.message import say
from intent.reading.files import as_text

_SIXTEEN = (codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)


def sheet_text(content: bytes, file: str) -> tuple[str, tuple[Diagnostic, ...]]:
    """The text, and what is to be said of how it was read. Raises `Unusable` where it is in no such encoding."""
    if content.startswith(_SIXTEEN):
        try:
            return as_text(content.decode("utf-16").encode("utf-8"), file), ()
        except UnicodeDecodeError:
            return as_text(content, file), ()
    try:
        content.decode("utf-8")
    except UnicodeDecodeError:
        try:
            text = content.decode("cp1252")
        except UnicodeDecodeError:
            return as_text(content, file), ()
        return as_text(text.encode("utf-8"), file), (_taken_for_western(file),)
    return as_text(content, file), ()


def _taken_for_western(file: str) -> Diagnostic:
    message = say(
        "the sheet is not UTF-8 and is read as Windows-1252; look whether letters with accents came out right, "
        "or save it again as CSV UTF-8"
    )
    return Diagnostic(slug="read-as-western", message=message, span=Span(file=file), severity=Severity.NOTE)
