"""What an expression means: the set of values that it gives, or admits."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from intent.language.figures import decimal
from intent.model.assertions import Aggregate, Dated, Expression, Form, Item, Measured, Named, Relative, Text
from intent.names import POSITION
from intent.values.regions import Box, Interval, Region, arc, region
from intent.values.sets import ANY_LABEL, Labels, ValueSet, meet
from intent.vocabulary.phrases import normal
from intent.vocabulary.terms import Characteristic, Vocabulary

COUNT = Characteristic(
    iri="",
    labels={"en": "number"},
    names=(),
    definition="",
    bearers=frozenset(),
    space="count",
    minimum=Fraction(0),
)
"""What `number of` counts."""
_TURN = Interval(Fraction(0), Fraction(360), False, True)


def scale(
    aggregate: Aggregate, characteristic: Characteristic | None, vocabulary: Vocabulary
) -> Characteristic:
    """The characteristic on whose scale an assertion's values are compared: counts, lengths, differences."""
    if aggregate is Aggregate.NUMBER or (characteristic is None and aggregate is not Aggregate.DISTANCE):
        return COUNT
    if aggregate is Aggregate.DISTANCE:
        return replace(vocabulary.characteristics[POSITION], space="quantity", minimum=Fraction(0))
    assert characteristic is not None
    if aggregate is Aggregate.DIFFERENCE:
        space = "quantity" if characteristic.space == "angle" else characteristic.space
        return replace(characteristic, space=space, minimum=Fraction(0))
    return characteristic


def every_value(characteristic: Characteristic, vocabulary: Vocabulary) -> ValueSet:
    """All the values there can be: what a value not given means."""
    if characteristic.space in {"concept", "yes-no", "text"}:
        return Labels(vocabulary.members(characteristic.schemes)) if characteristic.schemes else ANY_LABEL
    whole = _whole(characteristic)
    return Region((whole,), whole, characteristic.space == "count")


def _whole(characteristic: Characteristic) -> Box:
    if characteristic.space == "angle":
        return (_TURN,)
    axes = {"position": 3, "raster": 2}.get(characteristic.space, 1)
    return (Interval(characteristic.minimum, None),) * axes


def ordinary_expression(characteristic: Characteristic, vocabulary: Vocabulary) -> Expression | None:
    """What everybody takes for granted where nothing is said, as a cell would say it; none where nothing is."""
    concept = vocabulary.concepts.get(characteristic.ordinary_value or "")
    if concept is not None:
        item: Item = Named(concept.iri)
        if concept.magnitude is not None and characteristic.is_measured:
            item = Measured(numbers=(concept.magnitude,), written=concept.label)
        return Expression(form=Form.ONE_OF, items=(item,), written=concept.label)
    number = characteristic.ordinary_number
    if number is None:
        return None
    assumed = vocabulary.units.get(characteristic.assumed_unit or "")
    unit = assumed or vocabulary.reference_unit(characteristic.quantity_kind)
    if unit is None:
        return Expression(form=Form.ONE_OF, items=(Measured(numbers=(number,), written=decimal(number)),))
    held, written = unit.in_reference(number), f"{decimal(number)} {unit.symbol}"
    measured = Measured(numbers=(held,), written=written, unit=unit.iri)
    return Expression(form=Form.ONE_OF, items=(measured,), written=written)


def is_relative(expression: Expression) -> bool:
    """Whether what it means depends on the documented value."""
    return expression.form is Form.AS_DOCUMENTED or any(
        isinstance(item, Relative) for item in expression.items
    )


def given_value(
    expression: Expression | None,
    characteristic: Characteristic,
    vocabulary: Vocabulary,
    documented: ValueSet | None = None,
) -> ValueSet:
    """What a cell gives, exactly as it says; a blank cell gives every value."""
    if expression is None:
        return every_value(characteristic, vocabulary)
    found = _values(expression, characteristic, vocabulary, documented, False)
    return every_value(characteristic, vocabulary) if found is None else found


def admitted_values(
    expression: Expression,
    characteristic: Characteristic,
    vocabulary: Vocabulary,
    documented: ValueSet | None = None,
) -> ValueSet | None:
    """What an instruction admits, a single measured value widened by the vocabulary's tolerance.

    ``documented`` is what shares of the documented value are taken of; where it is needed and not known to be
    one value, nothing can be said, and the answer is none.
    """
    found = _values(expression, characteristic, vocabulary, documented, True)
    if found is None or not expression.negated:
        return found
    return meet(every_value(characteristic, vocabulary), found.complement())


def unchanged_values(documented: ValueSet, characteristic: Characteristic) -> ValueSet:
    """The values that count as the documented one: itself, a single measured value widened by the tolerance."""
    if isinstance(documented, Region) and documented.is_point:
        numbers = tuple(interval.low or Fraction(0) for interval in documented.boxes[0])
        return region(_around(numbers, characteristic, None, None, True), documented)
    return documented


def _values(
    expression: Expression,
    characteristic: Characteristic,
    vocabulary: Vocabulary,
    documented: ValueSet | None,
    widen: bool,
) -> ValueSet | None:
    everything = every_value(characteristic, vocabulary)
    if expression.form is Form.ANY:
        return everything
    if expression.form is Form.AS_DOCUMENTED:
        return None if documented is None else unchanged_values(documented, characteristic)
    if isinstance(everything, Labels):
        return _labels(expression, vocabulary)
    if expression.form is Form.ONE_OF:
        boxes: list[Box] = []
        for item in expression.items:
            found = _item_boxes(item, characteristic, documented, widen)
            if found is None:
                return None
            boxes.extend(found)
        return region(boxes, everything)
    ends = [_numbers(item, documented) for item in expression.items]
    if any(end is None for end in ends):
        return None
    return region(
        _range(expression.form, [end for end in ends if end is not None], characteristic), everything
    )


def _labels(expression: Expression, vocabulary: Vocabulary) -> Labels:
    names: set[str] = set()
    for item in expression.items:
        if isinstance(item, Named):
            names |= vocabulary.narrower.get(item.concept, frozenset({item.concept}))
        elif isinstance(item, Text):
            names.add(normal(item.text))
    return Labels(frozenset(names))


def _range(form: Form, ends: list[tuple[Fraction, ...]], characteristic: Characteristic) -> tuple[Box, ...]:
    if form is Form.BETWEEN and characteristic.space == "angle":
        return arc(ends[0][0], ends[1][0])
    if form is Form.BETWEEN:
        return (tuple(Interval(low, high) for low, high in zip(*ends, strict=True)),)
    if form is Form.AT_LEAST:
        return (tuple(Interval(low, None) for low in ends[0]),)
    return (tuple(Interval(None, high) for high in ends[0]),)


def _numbers(item: Item, documented: ValueSet | None) -> tuple[Fraction, ...] | None:
    """The numbers of an item, or none where they rest on a documented value that is not one value."""
    if isinstance(item, Measured):
        return item.numbers
    if isinstance(item, Dated):
        return (Fraction(item.span.first.toordinal()),)
    if isinstance(item, Relative) and isinstance(documented, Region) and documented.is_point:
        return tuple((interval.low or Fraction(0)) * item.percent / 100 for interval in documented.boxes[0])
    return None


def _item_boxes(
    item: Item, characteristic: Characteristic, documented: ValueSet | None, widen: bool
) -> tuple[Box, ...] | None:
    if isinstance(item, Dated):
        first, last = item.span.first.toordinal(), item.span.last.toordinal()
        return ((Interval(Fraction(first), Fraction(last)),),)
    numbers = _numbers(item, documented)
    if numbers is None or not isinstance(item, Measured | Relative):
        return None
    return _around(numbers, characteristic, item.tolerance, item.tolerance_percent, widen)


def _around(
    numbers: tuple[Fraction, ...],
    characteristic: Characteristic,
    tolerance: Fraction | None,
    percent: Fraction | None,
    widen: bool,
) -> tuple[Box, ...]:
    if tolerance is None and percent is None and widen and characteristic.is_measured:
        tolerance, percent = characteristic.tolerance, characteristic.tolerance_percent
    if tolerance is None and percent is None and characteristic.space != "angle":
        return (tuple(Interval(number, number) for number in numbers),)
    margins = [
        (tolerance or Fraction(0)) + abs(number) * (percent or Fraction(0)) / 100 for number in numbers
    ]
    if characteristic.space == "angle":
        return arc(numbers[0] - margins[0], numbers[0] + margins[0])
    return (tuple(_margin(number, margin) for number, margin in zip(numbers, margins, strict=True)),)


def _margin(number: Fraction, margin: Fraction) -> Interval:
    return Interval(number - margin, number + margin)
