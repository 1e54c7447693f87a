"""How one value departs from another: whether, how far, and what lies on the way between them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from intent.language.figures import Written, decimal
from intent.language.message import Words, say
from intent.model.meaning import unchanged_values
from intent.names import PRESENCE
from intent.values.bounds import point, root
from intent.values.regions import Box, Interval, Region, arc, region
from intent.values.sets import ValueSet, is_within
from intent.variance.result import Row
from intent.variance.state import State
from intent.vocabulary.terms import Characteristic, Vocabulary

TURN = Fraction(360)
_TO_THE_MILLIMETRE = 3
"""So many decimals has a distance between positions, in metres."""


@dataclass(frozen=True, slots=True)
class StateValue:
    """What a state gives for one characteristic of one subject."""

    values: ValueSet
    words: Words
    is_given: bool
    """Whether it is given; of a part that is not there nothing is, except that it is absent."""


def value_of(state: State, subject: str, characteristic: Characteristic) -> StateValue:
    """The value of a subject by the name by which states are asked: an identifier, `the work`, `the venue`."""
    is_asked = state.is_there(subject) or characteristic.iri == PRESENCE
    given = is_asked and state.is_given(subject, characteristic)
    return StateValue(state.value(subject, characteristic), state.words(subject, characteristic), given)


@dataclass(frozen=True, slots=True, kw_only=True)
class ValueChange:
    """What became of one characteristic of one subject: the documented value, and the one shown or proposed."""

    name: str
    """By which states are asked about the subject."""
    characteristic: Characteristic
    documented: StateValue
    now: StateValue

    @property
    def departs(self) -> bool:
        """Whether it is another than one that is documented."""
        return self.documented.is_given and departs(self.now, self.documented, self.characteristic)

    def distance(self, vocabulary: Vocabulary) -> Words:
        """How far it lies from what is documented; nothing where that cannot be told."""
        return distance_words(self.documented, self.now, self.characteristic, vocabulary)


def change_in(row: Row, documented: State, state: State) -> ValueChange | None:
    """What a row about one subject by itself tells of; nothing of numbers, totals and the like, and of additions."""
    characteristic, name = documented.vocabulary.characteristics.get(row.term or ""), row.subject.written
    if characteristic is None or row.is_whole or name not in documented.statements:
        return None
    before, now = (value_of(one, name, characteristic) for one in (documented, state))
    return ValueChange(name=name, characteristic=characteristic, documented=before, now=now)


def departs(value: StateValue, before: StateValue, characteristic: Characteristic) -> bool:
    """Whether a value that is given is another than the one before, beyond the vocabulary's tolerance."""
    return value.is_given and not is_same(value, before, characteristic)


def is_same(value: StateValue, other: StateValue, characteristic: Characteristic) -> bool:
    """Whether a value lies within another, a single measured one widened by the tolerance."""
    both = value.is_given and other.is_given
    return both and is_within(value.values, unchanged_values(other.values, characteristic))


def is_between(value: StateValue, start: StateValue, end: StateValue, characteristic: Characteristic) -> bool:
    """Whether a measured value lies on the way from one to another: on each axis, or on the shorter arc."""
    if not (value.is_given and start.is_given and end.is_given) or not isinstance(value.values, Region):
        return False
    first, last = numbers_of(start.values), numbers_of(end.values)
    if not first or not last:
        return False
    return value.values.is_within(region(_way(first, last, characteristic), value.values))


def distance_words(
    start: StateValue, end: StateValue, characteristic: Characteristic, vocabulary: Vocabulary
) -> Words:
    """How far a measured value lies from another, in the reference unit; nothing where that cannot be told."""
    first, last = numbers_of(start.values), numbers_of(end.values)
    if not first or not last or not (start.is_given and end.is_given) or not characteristic.is_measured:
        return ""
    if characteristic.space == "raster":
        return ""
    if characteristic.space == "angle":
        turned = (last[0] - first[0]) % TURN
        return say("{number}", number=Written(f"{decimal(min(turned, TURN - turned))} deg"))
    unit = vocabulary.reference_unit(characteristic.quantity_kind)
    symbol = f" {unit.symbol}" if unit else " m" if characteristic.space == "position" else ""
    length = _length([there - here for here, there in zip(first, last, strict=True)])
    return say("{number}", number=Written(decimal(length) + symbol))


def numbers_of(values: ValueSet) -> tuple[Fraction, ...]:
    """The numbers of a single measured value, one for each axis; none of any other set."""
    if not isinstance(values, Region) or not values.is_point:
        return ()
    return tuple(interval.low or Fraction(0) for interval in values.boxes[0])


def _way(
    first: Sequence[Fraction], last: Sequence[Fraction], characteristic: Characteristic
) -> tuple[Box, ...]:
    if characteristic.space == "angle":
        turned = (last[0] - first[0]) % TURN
        short = turned <= TURN / 2
        return arc(first[0], first[0] + turned) if short else arc(last[0], last[0] + TURN - turned)
    return (tuple(Interval(min(ends), max(ends)) for ends in zip(first, last, strict=True)),)


def _length(steps: Sequence[Fraction]) -> Fraction:
    if len(steps) == 1:
        return abs(steps[0])
    square = sum((step * step for step in steps), Fraction(0))
    return round(root(point(square)).low or Fraction(0), _TO_THE_MILLIMETRE)
