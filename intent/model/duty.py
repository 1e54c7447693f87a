"""A duty: something to be done for a showing, by whom and when. It is judged by nobody, and changes no verdict."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import StrEnum

from intent.model.assertions import Condition
from intent.model.citation import Citation
from intent.values.dates import DaySpan


class Phase(StrEnum):
    """When a duty falls, as seen from the showing."""

    BEFORE = "before"
    DURING = "during"
    AFTER = "after"


class Moment(StrEnum):
    """The day of a showing from which a term of days is counted."""

    START = "start"
    END = "end"


@dataclass(frozen=True, slots=True, kw_only=True)
class Timing:
    """When something is to be done; with nothing said it is during the showing."""

    phase: Phase | None = None
    every: int | None = None
    """Days after which it is to be done again."""
    within: int | None = None
    """Days from the start or the end in which it is to be done."""
    of: Moment | None = None


AT_NO_STATED_TIME = Timing()


@dataclass(frozen=True, slots=True, kw_only=True)
class Duty:
    """Something to be done, with who said so and where."""

    iri: str
    identifier: str
    heading: str
    """The identifier of its heading (`R7` of `R7.2`)."""
    what: str
    """What is to be done, in words."""
    person: str | None = None
    """Who has to do it; without a person or a role whoever installs."""
    role: str | None = None
    """The IRI of the role that has to do it."""
    timing: Timing = AT_NO_STATED_TIME
    conditions: tuple[Condition, ...] = ()
    until: DaySpan | None = None
    sentence: str = field(default="", compare=False)
    """The line in English, told from what was read of it; for programs."""
    written: str = field(default="", compare=False)
    """The line as its writer put it, where that is not how it is told in English."""
    words: str = ""
    """The words quoted for this line alone, beside those of its heading."""
    by: str | None = None
    on: DaySpan | None = None
    ground: str = "intent"
    withdrawn: DaySpan | None = None
    sources: tuple[Citation, ...] = ()
