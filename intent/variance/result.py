"""What a check finds, as typed, frozen data: rows with verdicts, obstacles, effects, the outcome."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import StrEnum
from typing import TypeAlias

from intent.language.message import Message, Words, say
from intent.model.installation import Installation
from intent.model.subject import Subject, SubjectKey
from intent.model.work import Instruction, Work
from intent.values.bounds import known, point
from intent.values.dates import DaySpan
from intent.values.regions import Interval
from intent.variance.denial import Denial
from intent.variance.obstacle import Obstacle, Unchecked


class Verdict(StrEnum):
    """From worst to best."""

    FORBIDDEN = "forbidden"
    BREACH = "breach"
    CONTRADICTION = "contradiction"
    UNKNOWN = "unknown"
    UNCOVERED = "uncovered"
    CONDITIONAL = "conditional"
    ALLOWED = "allowed"
    AS_REQUIRED = "as-required"
    AS_DOCUMENTED = "as-documented"

    @property
    def badness(self) -> int:
        """0 for the best, rising."""
        return len(Verdict) - 1 - list(Verdict).index(self)

    @property
    def is_departure(self) -> bool:
        """Whether the verdict belongs among the departures that a report tells one by one."""
        return self not in {Verdict.AS_REQUIRED, Verdict.AS_DOCUMENTED}


VERDICT_WORDS = {
    Verdict.FORBIDDEN: say("forbidden"),
    Verdict.BREACH: say("breach"),
    Verdict.CONTRADICTION: say("contradiction"),
    Verdict.UNKNOWN: say("unknown"),
    Verdict.UNCOVERED: say("uncovered"),
    Verdict.CONDITIONAL: say("conditional"),
    Verdict.ALLOWED: say("allowed"),
    Verdict.AS_REQUIRED: say("as required"),
    Verdict.AS_DOCUMENTED: say("as documented"),
}
"""Each verdict as a report names it."""


BROKEN = frozenset({Verdict.FORBIDDEN, Verdict.BREACH})
"""The verdicts of what breaks an instruction."""
NOT_COVERED = BROKEN | {Verdict.CONTRADICTION, Verdict.UNCOVERED}
"""The verdicts of what no permission covers."""


class Outcome(StrEnum):
    NOT_ACCEPTABLE = "not-acceptable"
    REFER = "refer"
    ON_CONDITIONS = "acceptable-on-conditions"
    ACCEPTABLE = "acceptable"


class Because(StrEnum):
    """The rule that says which of two instructions prevails."""

    AUTHORITY = "authority"
    SCOPE = "scope"
    DATE = "date"
    EXCEPTION = "exception"
    DISPENSATION = "dispensation"


class OpenKind(StrEnum):
    ATTESTATION = "attestation"
    """A fact that somebody must attest."""
    CONSENT = "consent"
    """A consent that a person must give."""
    VALUE = "value"
    """A value that is not given, or not precisely enough."""
    STATEMENT = "statement"
    """Something of which it is not known whether it is so: that M3 is below M1."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Open:
    """One thing that would have to be closed, and by whom."""

    kind: OpenKind
    text: Words = ""
    """The fact, the terms of the consent, or what to call the value or the statement."""
    person: str | None = None
    """The identifier of who can close it, where that is known."""
    instruction: str | None = None
    ends: DaySpan | None = None
    """Of a consent that was given and does not last: when it ends."""
    denied: str = ""
    """Of a consent that was given: the term that is attested not to hold, so that it counts no longer."""
    answer: bool = True
    """The answer sought: of a permission's `unless`, that the fact does not hold; of what may stand against the value,
    that its `if` does not, or its `unless` does."""


@dataclass(frozen=True, slots=True)
class SetAside:
    """An instruction that did not prevail: against what, and by which rule."""

    instruction: str
    by: str
    """The instruction that prevailed; or, for a dispensation, the person who gave it."""
    because: Because


RowKey: TypeAlias = tuple[SubjectKey, Words]
"""What tells a row from the others of a variance, and finds its like in another: subject and characteristic."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """The verdict on one characteristic of one subject."""

    subject: Subject
    characteristic: Words
    """As in the sentence: `technology`, `number`, `difference in start offset`, `below M1`."""
    term: str | None
    """The IRI of the characteristic, where there is one."""
    is_whole: bool
    """Whether it is a number, a total, a relation …: about its subjects together, not about each."""
    documented: Words
    proposed: Words
    verdict: Verdict
    reason: Words
    """One plain sentence."""
    ground: str = "intent"
    governing: tuple[Instruction, ...] = ()
    set_aside: tuple[SetAside, ...] = ()
    days: DaySpan | None = None
    """The days on which the verdict holds; none: all days of the installation."""
    open: tuple[Open, ...] = ()
    ask: tuple[str, ...] = ()
    """Who could close or lift it: identifiers of people."""
    also_counted: tuple[str, ...] = ()
    """Additions that a whole counts with the parts that its subject names."""
    also_against: tuple[Instruction, ...] = ()
    """What else stands against it, of this ground or another: it would remain if what governs were lifted."""
    offered: tuple[Instruction, ...] = ()
    """Of what is not covered: permissions in force that allow other values of it."""
    rests_on_practice: bool = False
    """Whether only what ranks with observed practice is broken, on every day: to be referred, not refused."""
    denied: tuple[Denial, ...] = ()
    """The answers on record for which it is not permitted."""

    @property
    def key(self) -> RowKey:
        """Subject and characteristic, the same in every language and every installation."""
        return self.subject.key, self.characteristic


class EffectTopic(StrEnum):
    """What an effect is about, in the order in which a report tells them."""

    PICTURE = "picture"
    SIGNAL = "signal"
    LIGHT = "light"
    POWER = "power"
    HANDLING = "handling"


@dataclass(frozen=True, slots=True, kw_only=True)
class Effect:
    """One quantity before and after: what the proposal does to what visitors see, or to the venue."""

    topic: EffectTopic
    subject: Subject
    """The parts or boxes concerned, or the work or the venue as a whole."""
    quantity: Message
    unit: str = ""
    """The unit of the figures; empty for a bare number."""
    documented: Interval | None = None
    """In that unit, within bounds; none where there is nothing to compare with."""
    proposed: Interval | None = None
    """In that unit, within bounds; none where the effect is no number, or nothing is known of it."""
    sentence: Message
    """What it means, without its subject: the report puts the parts before it."""
    source: Message
    """Where the formula comes from."""
    missing: tuple[Words, ...] = ()
    """What would have to be given for a closer answer: characteristics, by their labels."""

    @property
    def change(self) -> Interval | None:
        """The proposed value as a share of the documented one, where both are known exactly."""
        if self.documented is None or self.proposed is None:
            return None
        before, after = known(self.documented), known(self.proposed)
        return point(after / before) if before and after is not None else None


@dataclass(frozen=True, slots=True, kw_only=True)
class Variance:
    """The whole answer to one proposal."""

    work: Work = field(repr=False)
    installation: Installation = field(repr=False)
    outcome: Outcome = Outcome.ACCEPTABLE
    sentence: Words = ""
    """The outcome in one sentence."""
    denied: Words = ""
    """What was refused, or attested against it, in sentences of their own; nothing where nothing was."""
    refer_to: tuple[str, ...] = ()
    """Identifiers of the people who must be asked."""
    rows: tuple[Row, ...] = ()
    """Worst first; then by subject in the order of the work, and characteristic."""
    obstacles: tuple[Obstacle, ...] = ()
    unchecked: tuple[Unchecked, ...] = ()
    """The limits that nobody stated."""
    effects: tuple[Effect, ...] = ()
    """What the change does, in the order of a report."""
    notes: tuple[Words, ...] = ()
    """What was ignored or assumed, in plain sentences."""

    @property
    def departures(self) -> tuple[Row, ...]:
        return tuple(row for row in self.rows if row.verdict.is_departure)

    @property
    def as_it_should_be(self) -> tuple[Row, ...]:
        return tuple(row for row in self.rows if not row.verdict.is_departure)
