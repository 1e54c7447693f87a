"""Sets of values in words, as short as they can be said: the widest names, and ranges in the unit that was written."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from intent.analysis.examination.matters import Matter
from intent.language.message import listed
from intent.model.assertions import Aggregate, Measured
from intent.model.meaning import scale
from intent.model.phrasing import comparison_words, decimal
from intent.model.work import Instruction
from intent.values.regions import Interval, Region
from intent.values.sets import Labels, ValueSet, are_disjoint, is_within
from intent.variance.case import Case
from intent.vocabulary.terms import Unit, Vocabulary


def values_words(case: Case, matter: Matter, values: ValueSet, lines: Sequence[Instruction]) -> str:
    """A set of values as a reader would say it; ``lines`` are those whose units are used."""
    if isinstance(values, Labels):
        return (
            listed(_names(values, matter.whole, case.vocabulary)) if not values.all_but else "anything else"
        )
    if len(values.whole) > 1 or matter.aggregate is Aggregate.DISTANCE:
        return _as_said(case, matter, values, lines)
    unit = next(_units(lines, case.vocabulary), None)
    if unit is None:
        compared = scale(matter.aggregate, matter.characteristic, case.vocabulary)
        unit = case.vocabulary.reference_unit(compared.quantity_kind)
    return listed((_range(box[0], values, unit) for box in values.boxes), "or")


def _names(values: Labels, whole: ValueSet, vocabulary: Vocabulary) -> Iterator[str]:
    """The widest concepts that lie wholly in the set; of one that does so in part, that any other is meant."""
    possible = whole.names if isinstance(whole, Labels) and not whole.all_but else None
    wholly = {name for name in values.names if _closure(name, possible, vocabulary) <= values.names}
    for name in sorted(values.names, key=lambda name: _label(name, vocabulary).casefold()):
        if not any(name != wider and name in vocabulary.narrower.get(wider, ()) for wider in wholly):
            label = _label(name, vocabulary)
            yield label if name in wholly else f"any other {label}"


def _closure(name: str, possible: frozenset[str] | None, vocabulary: Vocabulary) -> frozenset[str]:
    narrower = vocabulary.narrower.get(name, frozenset({name}))
    return narrower if possible is None else narrower & possible


def _label(name: str, vocabulary: Vocabulary) -> str:
    concept = vocabulary.concepts.get(name)
    return concept.label if concept else f"“{name}”"


def _units(lines: Sequence[Instruction], vocabulary: Vocabulary) -> Iterator[Unit]:
    """The units that the instructions are written in, in their order."""
    for line in lines:
        for item in line.assertion.expression.items:
            if isinstance(item, Measured) and item.unit and item.unit in vocabulary.units:
                yield vocabulary.units[item.unit]


def _range(interval: Interval, values: Region, unit: Unit | None) -> str:
    symbol = f" {unit.symbol}" if unit and unit.symbol else ""
    low, high = (_in_unit(number, unit) for number in (interval.low, interval.high))
    starts_all = values.whole[0].low is not None and interval.low == values.whole[0].low
    ends_all = values.whole[0].high is not None and interval.high == values.whole[0].high
    if low is not None and low == high:
        return low + symbol
    if high is None or ends_all:
        if low is None or (starts_all and not interval.low_strict):
            return "any"
        return f"{'more than' if interval.low_strict else 'at least'} {low}{symbol}"
    if low is None or (starts_all and not interval.low_strict):
        return f"{'less than' if interval.high_strict else 'at most'} {high}{symbol}"
    if interval.low_strict or interval.high_strict:
        start = "more than" if interval.low_strict else "at least"
        end = "less than" if interval.high_strict else "at most"
        return f"{start} {low} and {end} {high}{symbol}"
    return f"between {low} and {high}{symbol}"


def _in_unit(number: Fraction | None, unit: Unit | None) -> str | None:
    """A number in reference units as one in another unit, to four places where it has more."""
    if number is None:
        return None
    exact = number / unit.factor - unit.offset if unit else number
    rounded = Fraction(round(exact * 10000), 10000)
    return decimal(exact if exact == rounded else rounded)


def _as_said(case: Case, matter: Matter, values: ValueSet, lines: Sequence[Instruction]) -> str:
    """Values with no short name of their own, by the sentences that hold them and those that do not."""
    inside, outside = [], []
    for line in lines:
        claim = matter.claim(line.identifier)
        if claim is None or claim.admitted is None:
            continue
        words = comparison_words(line.assertion.expression, case.vocabulary).removeprefix("is ")
        if is_within(values, claim.admitted):
            inside.append(words)
        elif are_disjoint(values, claim.admitted):
            outside.append(words)
    inside = [words for words in dict.fromkeys(inside) if words != "any"] or ["any"]
    except_for = f", but not {listed(dict.fromkeys(outside), 'or')}" if outside else ""
    return listed(inside) + except_for
