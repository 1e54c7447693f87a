"""What a verb answers with that looks something up: what was found, the paper that tells it, and what was noticed."""

from __future__ import annotations

import datetime
from collections.abc import Callable
from dataclasses import dataclass
from typing import Generic, TypeVar

from intent.diagnostics import Diagnostic
from intent.language.languages import locale_of
from intent.papers.document import Document
from intent.papers.report_evidence import dated
from intent.papers.telling import tell
from intent.version import VERSION

Found = TypeVar("Found")


@dataclass(frozen=True, slots=True, kw_only=True)
class Reply(Generic[Found]):
    """What was found, as data and as a paper."""

    found: Found
    paper: Document
    findings: tuple[Diagnostic, ...] = ()
    """What was noticed on the way, and does not keep the answer from being right."""
    for_programs: Callable[[], str] | None = None
    """The same as JSON, where that is offered."""


def tell_reply(
    answer: Reply[Found],
    form: str,
    language: str = "en",
    *,
    date: datetime.date | None = None,
    width: int = 80,
    colour: bool = False,
) -> str:
    """An answer in a form, one of `text`, `markdown`, `html` and, for programs and always in English, `json`.

    ``date`` is the day that the paper bears, today if none. ``width`` (in columns) and ``colour`` (ANSI) concern text
    alone. Raises ``ValueError`` for another form or language.
    """
    if form == "json":
        if answer.for_programs is None:
            raise ValueError("this is not offered as JSON")
        return answer.for_programs()
    paper = dated(answer.paper, VERSION, date or datetime.date.today())
    return tell(paper, form, locale_of(language), width=width, colour=colour)
