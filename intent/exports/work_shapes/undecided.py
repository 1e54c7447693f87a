"""Which rows the shapes of a work do not decide, and why.

Some it takes the work alone to name; others only a proposal brings about, and for these there is a shape that warns.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from enum import StrEnum

from intent.exports.work_shapes.aggregate_shapes import PAIRWISE, goes_round, is_of_each_pair
from intent.exports.work_shapes.asked_values import asked_of_members
from intent.exports.work_shapes.growing_scopes import is_same_by_chance, may_grow
from intent.exports.work_shapes.held_values import is_uncertain
from intent.exports.work_shapes.whole_shapes import is_of_one_amount
from intent.model.assertions import Aggregate, Assertion
from intent.model.meaning import is_relative
from intent.model.work import Instruction, Modality
from intent.names import PRESENCE
from intent.values.regions import Region
from intent.values.sets import Answer
from intent.variance.case import Case
from intent.variance.excuses import answers_in_state
from intent.variance.judge import Ruling
from intent.variance.result import BROKEN, Verdict


class Undecided(StrEnum):
    """Why the shapes do not decide a row, for readers."""

    DOCUMENTED = "rests on a documented value that is not documented, or only by a term that gathers others"
    ROUND = "is a difference of angles, or of start offsets round a loop"
    PAIR = "rests on what is documented of each pair"
    CHANCE = "two scopes hold the same parts of the work, and may not hold the same additions"
    NUMBER = "is about a part that is absent or added, which an instruction on a number may decide"
    EXCUSED = "is broken together, perhaps only by departures that permissions cover, which would be a contradiction"
    ANSWERED = "rests on an answer that names a value"
    STRETCHES = "is reckoned with a value that may lie in several stretches of numbers"


@dataclass(frozen=True, slots=True)
class UndecidedLine:
    """That a row is not decided: of a line, of one part or of all that it speaks of."""

    line: Instruction
    why: Undecided
    part: str | None = None
    """Identifier; none for all."""


def undecided_lines(case: Case) -> Iterator[UndecidedLine]:
    """What the work alone leaves undecided."""
    for line in case.work.instructions:
        reasons = dict.fromkeys(_of_line(case, line))
        yield from (UndecidedLine(line, why) for why in reasons)
        if not reasons:
            yield from (UndecidedLine(line, Undecided.DOCUMENTED, part) for part in _parts(case, line))


def _of_line(case: Case, line: Instruction) -> Iterator[Undecided]:
    assertion = line.assertion
    yield from _of_assertion(case, assertion)
    if assertion.aggregate is not Aggregate.EACH:
        for other in case.work.instructions:
            is_other = other.identifier != line.identifier and other.ground == line.ground
            is_of_both = is_other and is_of_one_amount(case, line, other)
            if is_of_both and is_same_by_chance(case, assertion, other.assertion):
                yield Undecided.CHANCE
    for condition in line.conditions:
        if condition.assertion is not None:
            yield from _of_assertion(case, condition.assertion)
            if is_same_by_chance(case, assertion, condition.assertion):
                yield Undecided.CHANCE
            parts = case.scopes.of_work(condition.assertion)
            if any(_is_uncertain(case, condition.assertion, part) for part in parts):
                yield Undecided.DOCUMENTED


def _of_assertion(case: Case, assertion: Assertion) -> Iterator[Undecided]:
    if goes_round(case, assertion):
        yield Undecided.ROUND
    if is_of_each_pair(assertion):
        yield Undecided.PAIR


def _parts(case: Case, line: Instruction) -> Iterator[str]:
    if line.assertion.aggregate is Aggregate.EACH:
        for part in case.scopes.of_work(line.assertion):
            if _is_uncertain(case, line.assertion, part):
                yield part


def _is_uncertain(case: Case, assertion: Assertion, part: str) -> bool:
    if assertion.aggregate is not Aggregate.EACH or not is_relative(assertion.expression):
        return False
    return is_uncertain(case, part, assertion.characteristic or "")


def is_excusable(case: Case, line: Instruction) -> bool:
    """Whether an amount that is broken may be so only by departures which permissions cover."""
    if line.assertion.aggregate is Aggregate.EACH:
        return False
    good = Answer.IN if line.modality is Modality.REQUIRED else Answer.OUT
    if not set(answers_in_state(case, line, case.documented)) <= {good}:
        return False
    concerned = {PRESENCE, asked_of_members(line.assertion)}
    members = {*case.breadths[line.identifier], line.assertion.other}
    return any(
        other.modality is Modality.ALLOWED
        and other.ground == line.ground
        and other.assertion.aggregate is Aggregate.EACH
        and other.assertion.characteristic in concerned
        and case.ranks[other.identifier] <= case.ranks[line.identifier]
        and (members & case.breadths[other.identifier] or may_grow(case, other.assertion))
        for other in case.work.instructions
    )


def is_summed(assertion: Assertion) -> bool:
    """Whether an assertion reckons with the least and the most that values may be."""
    return assertion.aggregate in PAIRWISE | {Aggregate.TOTAL, Aggregate.RELATION}


def why_undecided(case: Case, bare: Case, known: Iterable[UndecidedLine], ruling: Ruling) -> Undecided | None:
    """Why the shapes do not decide a row of an installation; nothing where they do.

    ``known`` is what the ``bare`` work alone leaves undecided, which is the same for every row.
    """
    topic = ruling.topic
    for one in known:
        if one.line in topic.lines and one.part in {None, *topic.members}:
            return one.why
    if topic.counters and _is_changed(case, topic.members[0]):
        return Undecided.NUMBER
    for line in topic.lines:
        if any(consent.value is not None for consent in case.consents.get(line.identifier, ())):
            return Undecided.ANSWERED
        if _lies_in_stretches(case, line):
            return Undecided.STRETCHES
    may_be_excused = ruling.row.verdict in BROKEN | {Verdict.CONTRADICTION}
    if may_be_excused and any(is_excusable(bare, line) for line in topic.lines):
        return Undecided.EXCUSED
    return None


def _is_changed(case: Case, part: str) -> bool:
    return part in case.scopes.added or not case.proposed.is_there(part)


def _lies_in_stretches(case: Case, line: Instruction) -> bool:
    """Whether a value that is reckoned with may lie in several stretches of numbers."""
    asked = [line.assertion, *(one.assertion for one in line.conditions if one.assertion is not None)]
    for assertion in filter(is_summed, asked):
        characteristic = case.vocabulary.characteristics.get(asked_of_members(assertion) or "")
        for member in case.scopes.of_proposal(assertion):
            if characteristic is not None:
                value = case.proposed.value(member, characteristic)
                if isinstance(value, Region) and len(value.boxes) > 1:
                    return True
    return False
