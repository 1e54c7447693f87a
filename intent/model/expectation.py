"""How a case is to be judged, as a dossier states it."""

from __future__ import annotations

from dataclasses import dataclass, field

from intent.model.assertions import Scope, Statements
from intent.values.dates import DaySpan

NO_ROW = "none"
"""The verdict of an expectation that there is no row."""


@dataclass(frozen=True, slots=True, kw_only=True)
class GivenAnswer:
    """A fact that is taken to hold or not, or a person's consent or refusal."""

    holds: bool
    """Whether the fact holds, or the person consents."""
    fact: str = ""
    person: str | None = None
    """Whose answer it is; none: it is about the fact."""
    to: tuple[str, ...] = ()
    """The instructions or headings that are answered; none: every line of the row that asks the person."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Expectation:
    """The verdict that one value is to have, of a part, of all parts of a group, of the work or of the venue."""

    iri: str
    scope: Scope
    """One part, one group, the work or the venue."""
    value: Statements = field(default_factory=dict)
    """The one value, by its characteristic; `presence` with `absent` is an omission."""
    given: tuple[GivenAnswer, ...] = ()
    on: DaySpan | None = None
    """A single day; without it the day on which it is judged."""
    verdict: str = NO_ROW
    """The word of a verdict; or that there is no row."""
    note: str = ""
    internal: bool = False
