"""Sets of values in words, as short as they can be said: the widest names, and ranges in the unit that was written."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from intent.analysis.examination.topic_claims import TopicClaims
from intent.language.figures import Written, decimal
from intent.language.message import Joint, Message, Words, listed, named, quoted, say
from intent.model.assertions import Aggregate, Form, Measured
from intent.model.meaning import scale
from intent.model.phrasing import compared_words
from intent.model.work import Instruction
from intent.values.regions import Interval, Region
from intent.values.sets import Labels, ValueSet, are_disjoint, is_within
from intent.variance.case import Case
from intent.vocabulary.terms import Vocabulary
from intent.vocabulary.unit_of_measure import Unit

ANYTHING_ELSE = say("anything else")
_ANY = say("any")


def values_words(case: Case, topic: TopicClaims, values: ValueSet, lines: Sequence[Instruction]) -> Words:
    """A set of values as a reader would say it; ``lines`` are those whose units are used."""
    if isinstance(values, Labels):
        return ANYTHING_ELSE if values.all_but else listed(_names(values, topic.whole, case.vocabulary))
    if len(values.whole) > 1 or topic.aggregate is Aggregate.DISTANCE:
        return _as_said(case, topic, values, lines)
    unit = next(_units(lines, case.vocabulary), None)
    if unit is None:
        compared = scale(topic.aggregate, topic.characteristic, case.vocabulary)
        unit = case.vocabulary.reference_unit(compared.quantity_kind)
    return listed((_range(box[0], values, unit) for box in values.boxes), Joint.OR)


def _names(values: Labels, whole: ValueSet, vocabulary: Vocabulary) -> Iterator[Message]:
    """The widest concepts that lie wholly in the set; of one that does so in part, that any other is meant."""
    possible = whole.names if isinstance(whole, Labels) and not whole.all_but else None
    wholly = {name for name in values.names if _narrower(name, possible, vocabulary) <= values.names}
    for name in sorted(values.names):
        if not any(name != wider and name in vocabulary.narrower.get(wider, ()) for wider in wholly):
            concept = vocabulary.concepts.get(name)
            words = named(concept) if concept else quoted(name)
            yield words if name in wholly else say("any other {value}", value=words)


def _narrower(name: str, possible: frozenset[str] | None, vocabulary: Vocabulary) -> frozenset[str]:
    """A name with all that is narrower and possible."""
    narrower = vocabulary.narrower.get(name, frozenset({name}))
    return narrower if possible is None else narrower & possible


def _units(lines: Sequence[Instruction], vocabulary: Vocabulary) -> Iterator[Unit]:
    """The units that the instructions are written in, in their order."""
    for line in lines:
        for item in line.assertion.expression.items:
            if isinstance(item, Measured) and item.unit and item.unit in vocabulary.units:
                yield vocabulary.units[item.unit]


def _range(interval: Interval, values: Region, unit: Unit | None) -> Message:
    """A range, without an end beyond which there is no value anyway."""
    whole = values.whole[0]
    low, high = interval.low, interval.high
    if low is not None and low == high:
        return say("{number}", number=_written(low, unit))
    least = None if low is None or (low == whole.low and not interval.low_strict) else low
    most = None if high is None or high == whole.high else high
    if least is not None and most is not None:
        return _between(interval).filled(low=Written(_number(least, unit)), high=_written(most, unit))
    if least is not None:
        said = say("more than {least}") if interval.low_strict else say("at least {least}")
        return said.filled(least=_written(least, unit))
    if most is not None:
        said = say("less than {most}") if interval.high_strict else say("at most {most}")
        return said.filled(most=_written(most, unit))
    return _ANY


def _between(interval: Interval) -> Message:
    match interval.low_strict, interval.high_strict:
        case True, True:
            return say("more than {low} and less than {high}")
        case True, False:
            return say("more than {low} and at most {high}")
        case False, True:
            return say("at least {low} and less than {high}")
    return say("between {low} and {high}")


def _written(number: Fraction, unit: Unit | None) -> Written:
    symbol = f" {unit.symbol}" if unit and unit.symbol else ""
    return Written(_number(number, unit) + symbol)


def _number(number: Fraction, unit: Unit | None) -> str:
    """A number of reference units in another unit, to four places where it has more."""
    exact = unit.of_reference(number) if unit else number
    return decimal(round(exact, 4))


def _as_said(case: Case, topic: TopicClaims, values: ValueSet, lines: Sequence[Instruction]) -> Words:
    """Values with no short name of their own, by the sentences that hold them and those that do not."""
    inside: dict[Words, None] = {}
    outside: dict[Words, None] = {}
    for line in lines:
        claim = topic.claim(line.identifier)
        if claim is None or claim.admitted is None:
            continue
        expression = line.assertion.expression
        words = compared_words(expression, case.vocabulary)
        if are_disjoint(values, claim.admitted):
            outside[words] = None
        elif is_within(values, claim.admitted) and expression.form is not Form.ANY:
            inside[words] = None
    told = listed(inside) or _ANY
    return (
        say("{values}, but not {others}", values=told, others=listed(outside, Joint.OR)) if outside else told
    )
