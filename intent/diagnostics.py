"""What is wrong with an input, said so that its writer can put it right.

One type serves the whole project. A writer's mistakes are values, gathered until all of a file's are
known; an exception is raised only where the input as a whole cannot be used.
"""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from enum import StrEnum
from pathlib import Path

from intent.language.locale import ENGLISH, Locale
from intent.language.message import Words, joined, say


class Severity(StrEnum):
    """How much a finding weighs: an error makes the input unusable, a warning does not."""

    ERROR = "error"
    WARNING = "warning"
    NOTE = "note"


@dataclass(frozen=True, slots=True, order=True, kw_only=True)
class Span:
    """Where something stands: file, line and column counted from 1, and the line itself."""

    file: str
    line: int = 0
    column: int = 0
    text: str = field(default="", compare=False)
    length: int = field(default=1, compare=False)

    def __str__(self) -> str:
        numbers = [str(number) for number in (self.line, self.column) if number]
        return ":".join([self.file, *numbers])


@dataclass(frozen=True, slots=True, kw_only=True)
class Diagnostic:
    """One finding about an input."""

    slug: str
    message: Words
    span: Span
    severity: Severity = Severity.ERROR
    subject: str = ""
    """The identifier or IRI that it is about, where there is one."""

    def __str__(self) -> str:
        return self.told(ENGLISH)

    def told(self, locale: Locale) -> str:
        """The place, the message in a language, and the line with a mark under what is meant."""
        head = f"{self.span}: {self.severity}: {locale.say(self.message)} [{self.slug}]"
        if not self.span.text.strip():
            return head
        caret = ""
        if self.span.column:
            caret = "\n    " + " " * (self.span.column - 1) + "^" * max(1, self.span.length)
        return f"{head}\n    {self.span.text}{caret}"

    @property
    def is_error(self) -> bool:
        return self.severity is Severity.ERROR


class Unusable(Exception):
    """The input cannot be used; carries every diagnostic found, in the order of the text."""

    def __init__(self, diagnostics: Iterable[Diagnostic]) -> None:
        self.diagnostics = in_order(diagnostics)
        super().__init__("\n".join(map(str, self.diagnostics)))

    def __reduce__(self) -> tuple[type[Unusable], tuple[tuple[Diagnostic, ...]]]:
        return Unusable, (self.diagnostics,)


def refusal(slug: str, message: Words, span: Span) -> Unusable:
    """That something cannot be used for one fault alone; to be raised."""
    return Unusable([Diagnostic(slug=slug, message=message, span=span)])


def refusal_of_file(slug: str, message: Words, file: Path | str) -> Unusable:
    """The same of a file as a whole."""
    return refusal(slug, message, Span(file=str(file)))


class UnknownName(Exception):
    """Somebody asked by a name for something that there is not; says what is near."""

    def __init__(self, message: Words) -> None:
        super().__init__(message)
        self.message = message

    def __str__(self) -> str:
        return ENGLISH.say(self.message)


def in_order(diagnostics: Iterable[Diagnostic]) -> tuple[Diagnostic, ...]:
    """The findings by place in the text, each once."""
    return tuple(
        sorted(
            dict.fromkeys(diagnostics), key=lambda found: (found.span, found.slug, ENGLISH.say(found.message))
        )
    )


def has_errors(diagnostics: Iterable[Diagnostic]) -> bool:
    return any(found.is_error for found in diagnostics)


def summary(diagnostics: Iterable[Diagnostic]) -> str:
    """How many errors and warnings there are, `3 errors, 1 warning`; notes weigh nothing."""
    severities = [found.severity for found in diagnostics]
    counted = ((severities.count(one), one) for one in (Severity.ERROR, Severity.WARNING))
    return ", ".join(f"{count} {one}{'' if count == 1 else 's'}" for count, one in counted if count)


def summary_by_file(diagnostics: Iterable[Diagnostic]) -> dict[str, str]:
    """What `summary` says of each file in which there is an error or a warning, in the order in which they come."""
    found = tuple(diagnostics)
    by_file = {
        file: summary(one for one in found if one.span.file == file)
        for file in dict.fromkeys(one.span.file for one in found)
    }
    return {file: counted for file, counted in by_file.items() if counted}


def offered(message: Words, near: str) -> Words:
    """A message with the offer of a name that is near, where there is one."""
    return say("{message}; did you mean `{name}`?", message=message, name=near) if near else message


def where_listed(message: Words, asked: str = "") -> Words:
    """A message with where to find all the names there are, where they are too many to be told."""
    command = f"intent terms {asked}".strip()
    return say("{message}; `{command}` tells which there are", message=message, command=command)


def with_known(message: Words, known: Iterable[Words]) -> Words:
    """A message with all the names there are, where they are few enough to be told."""
    return say("{message}; known: {names}", message=message, names=joined(known, ", "))


def nearest(name: str, known: Sequence[str], first: Sequence[str] = ()) -> str:
    """The nearest known name, or nothing where none is near.

    One of the ``first`` is offered unless another is clearly nearer, as where a text is in another language.
    """
    wanted = name.casefold()
    found = _closest(wanted, first)
    other = _closest(wanted, known)
    if other and (not found or _likeness(wanted, other) > _likeness(wanted, found) + _CLEARLY):
        found = other
    return found


_CLEARLY = 0.15


def _closest(wanted: str, known: Sequence[str]) -> str:
    by_case = {name.casefold(): name for name in reversed(known)}
    close = difflib.get_close_matches(wanted, by_case, 1, 0.6)
    return by_case[close[0]] if close else ""


def _likeness(wanted: str, name: str) -> float:
    return difflib.SequenceMatcher(None, name.casefold(), wanted).ratio()
