"""An entry of a log: what happened to a device, a part or a box, and when."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date

from intent.model.assertions import Statements
from intent.values.dates import DaySpan
from intent.vocabulary.terms import Concept

_ANY_DAY = DaySpan(first=date.min, last=date.max, written="")
"""An entry without a date may be of any day."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LogEntry:
    """What happened to a device, a part or a box."""

    iri: str
    about: str
    """The identifier of the device, part or box."""
    event: Concept
    date: DaySpan | None = None
    value: Statements = field(default_factory=dict)
    """What was read or found, by the characteristic that the event tells of."""
    by: str | None = None
    source: str = ""
    note: str = ""
    internal: bool = False

    @property
    def days(self) -> DaySpan:
        """The days on one of which it happened."""
        return self.date or _ANY_DAY
