"""What would no longer stand in the way with parts switched off that the documentation lets one switch off."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from intent.effects.assess import assess
from intent.model.assertions import Aggregate, Expression, Form, Named
from intent.model.installation import Change
from intent.model.meaning import admitted_values
from intent.model.work import Instruction, Modality
from intent.names import POWER_STATE, SWITCHED_OFF
from intent.values.sets import Labels
from intent.variance.obstacle import Obstacle, in_the_way
from intent.variance.result import Row, Variance, Verdict
from intent.variance.scopes import scopes_of

OFF = Expression(form=Form.ONE_OF, items=(Named(SWITCHED_OFF),))
SETTLED = {Verdict.ALLOWED, Verdict.AS_REQUIRED}


@dataclass(frozen=True, slots=True)
class SwitchedOff:
    """Parts that may be off, what lets them, and the obstacles that would be gone then."""

    parts: tuple[str, ...]
    by: tuple[str, ...]
    """Identifiers of instructions."""
    gone: tuple[Obstacle, ...]


def gone_when_off(variance: Variance) -> SwitchedOff | None:
    """What surely stands in the way and would not with parts off; nothing where that is not allowed or does not help.

    The proposal is judged again with the parts off, so that nothing is told which would not be so: neither a permission
    with something open counts, nor what would put another obstacle in the place of the first.
    """
    before = _sure(variance)
    lines = _permissions(variance) if before else ()
    parts = tuple(dict.fromkeys(part for line in lines for part in _members(variance, line)))
    if not parts:
        return None
    tried = _with_off(variance, parts)
    rows = {row.subject.written: row for row in tried.rows if row.term == POWER_STATE}
    settled = tuple(part for part in parts if part in rows and rows[part].verdict in SETTLED)
    if not settled:
        return None
    after = _sure(tried if settled == parts else _with_off(variance, settled))
    gone = tuple(one for one in before if not any(_is_same(one, other) for other in after))
    if not gone or any(not any(_is_same(one, other) for other in before) for one in after):
        return None
    return SwitchedOff(settled, _allowing(rows[part] for part in settled), gone)


def _sure(variance: Variance) -> tuple[Obstacle, ...]:
    return tuple(one for one in in_the_way(variance.obstacles) if one.is_sure)


def _is_same(one: Obstacle, other: Obstacle) -> bool:
    """Whether two are of one sort and about something in common; their figures may differ."""
    mine, others = set(one.subject.members), set(other.subject.members)
    return one.slug == other.slug and (bool(mine & others) or one.subject == other.subject)


def _permissions(variance: Variance) -> Iterator[Instruction]:
    vocabulary = variance.work.vocabulary
    characteristic = vocabulary.characteristics.get(POWER_STATE)
    if characteristic is None:
        return
    for line in variance.work.instructions:
        said = line.assertion
        if line.modality is Modality.ALLOWED and said.aggregate is Aggregate.EACH:
            if said.characteristic != POWER_STATE:
                continue
            admitted = admitted_values(said.expression, characteristic, vocabulary)
            if isinstance(admitted, Labels) and SWITCHED_OFF in admitted.names:
                yield line


def _members(variance: Variance, line: Instruction) -> Sequence[str]:
    return scopes_of(variance.work, variance.installation).of_proposal(line.assertion)


def _with_off(variance: Variance, parts: Sequence[str]) -> Variance:
    installation = variance.installation
    off = tuple(Change(iri="", part=part, statements={POWER_STATE: OFF}) for part in parts)
    return assess(variance.work, replace(installation, changes=(*installation.changes, *off)))


def _allowing(rows: Iterator[Row]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(line.identifier for row in rows for line in row.governing))
