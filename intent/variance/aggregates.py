"""What a group amounts to: numbers, totals, differences, distances, sameness, and where parts stand."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import combinations
from math import isqrt

from intent.model.assertions import Aggregate, Assertion, Relation
from intent.names import DURATION, LOOP_LENGTH, NO, POSITION, START_OFFSET, YES
from intent.values.regions import Interval, Region, region, spread
from intent.values.sets import Labels, ValueSet, are_disjoint
from intent.variance.state import State
from intent.vocabulary.terms import Characteristic

_TWELVE_DECIMALS = 10**12
_NATURAL = Region((), (Interval(Fraction(0), None),), True)
_POSITIVE = Region((), (Interval(Fraction(0), None),))
_AXIS = {
    Relation.LEFT_OF: (0, False),
    Relation.RIGHT_OF: (0, True),
    Relation.BELOW: (1, False),
    Relation.ABOVE: (1, True),
    Relation.BEHIND: (2, False),
    Relation.IN_FRONT_OF: (2, True),
}
"""The axis on which one part lies beyond the other, and whether towards the greater."""


@dataclass(frozen=True, slots=True)
class Amount:
    """One value of an aggregate: of the whole, or of a pair of its members."""

    members: tuple[str, ...]
    value: ValueSet


def amounts(assertion: Assertion, members: Sequence[str], state: State) -> tuple[Amount, ...]:
    """The values that an aggregate has in a state; for differences and distances one for each pair.

    Absent members are passed over; nothing comes where nothing is left to compare.
    """
    there = tuple(member for member in members if state.is_there(member))
    characteristic = state.vocabulary.characteristics.get(assertion.characteristic or "")
    match assertion.aggregate:
        case Aggregate.NUMBER:
            return (Amount(there, _point(Fraction(len(there)), _NATURAL)),)
        case Aggregate.RELATION:
            return _relation(assertion, there, state)
        case Aggregate.DISTANCE:
            return tuple(Amount(pair, _squared_distance(pair, state)) for pair in combinations(there, 2))
    if characteristic is None:
        return ()
    match assertion.aggregate:
        case Aggregate.TOTAL:
            return (Amount(there, _total(there, characteristic, state)),)
        case Aggregate.DIFFERENCE:
            pairs = combinations(there, 2)
            return tuple(Amount(pair, _difference(pair, characteristic, state)) for pair in pairs)
        case Aggregate.SAME | Aggregate.DIFFERENT:
            if len(there) < 2:
                return ()
            return (Amount(there, _alike(there, characteristic, state, assertion.aggregate)),)
    return ()


def _point(number: Fraction, like: Region) -> Region:
    return region([(Interval(number, number),)], like)


def _total(members: Sequence[str], characteristic: Characteristic, state: State) -> ValueSet:
    """The sum over devices; one that serves two parts counts once."""
    counted: dict[str, str] = {}
    for member in members:
        counted.setdefault(state.devices.get(member) or f" {member}", member)
    values = [state.value(member, characteristic) for member in counted.values()]
    regions = [value for value in values if isinstance(value, Region)]
    return spread(regions) if regions else _point(Fraction(0), _POSITIVE)


def _difference(pair: Sequence[str], characteristic: Characteristic, state: State) -> ValueSet:
    one, two = (_bounds(state.value(member, characteristic)) for member in pair)
    if characteristic.space == "angle":
        return _around(_apart(one, two), Fraction(360))
    loop = _loop(pair, state) if characteristic.iri == START_OFFSET else None
    return _around(_apart(one, two), loop) if loop else region([(_apart(one, two),)], _POSITIVE)


def _bounds(value: ValueSet) -> Interval:
    return value.bounds if isinstance(value, Region) else Interval(None, None)


def _apart(one: Interval, two: Interval) -> Interval:
    """How far apart two numbers lie, each known within bounds."""
    if one.low is None or one.high is None or two.low is None or two.high is None:
        return Interval(Fraction(0), None)
    nearest = max(Fraction(0), one.low - two.high, two.low - one.high)
    return Interval(nearest, max(one.high - two.low, two.high - one.low))


def _around(apart: Interval, loop: Fraction) -> Region:
    """The shorter way round a loop."""
    if apart.low is None or apart.high is None or apart.high - apart.low >= loop:
        return region([(Interval(Fraction(0), loop / 2),)], _POSITIVE)
    turns = [apart.low, apart.high]
    folded = [min(turn % loop, loop - turn % loop) for turn in turns]
    low, high = min(folded), max(folded)
    if apart.high // loop > apart.low // loop:
        low = Fraction(0)
    if (apart.high - loop / 2) // loop > (apart.low - loop / 2) // loop:
        high = loop / 2
    return region([(Interval(low, high),)], _POSITIVE)


def _loop(pair: Sequence[str], state: State) -> Fraction | None:
    """The length of the loop that both run, where it is known and the same."""
    lengths = {_loop_length(member, state) for member in pair}
    return lengths.pop() if len(lengths) == 1 else None


def _loop_length(member: str, state: State) -> Fraction | None:
    """From one start to the next of what a part's channel shows: as stated, else as long as the material lasts."""
    material = state.material_of(member)
    if len(material) != 1:
        return None
    for term in (LOOP_LENGTH, DURATION):
        characteristic = state.vocabulary.characteristics[term]
        if state.is_given(material[0], characteristic):
            return _exactly(state.value(material[0], characteristic))
    return None


def _exactly(value: ValueSet) -> Fraction | None:
    if isinstance(value, Region) and value.is_point and value.bounds.low:
        return value.bounds.low
    return None


def _squared_distance(pair: Sequence[str], state: State) -> Region:
    """The square of the distance between two positions, so that it is exact."""
    position = state.vocabulary.characteristics[POSITION]
    one, two = (state.value(member, position) for member in pair)
    low, high = Fraction(0), Fraction(0)
    for axis in range(3):
        apart = _apart(_axis(one, axis), _axis(two, axis))
        if apart.high is None:
            return region([(Interval(Fraction(0), None),)], _POSITIVE)
        low, high = low + (apart.low or Fraction(0)) ** 2, high + apart.high**2
    return region([(Interval(low, high),)], _POSITIVE)


def _axis(value: ValueSet, axis: int) -> Interval:
    if not isinstance(value, Region) or len(value.whole) < 3:
        return Interval(None, None)
    return Region(tuple((box[axis],) for box in value.boxes)).bounds


def unsquared(square: Fraction) -> Fraction:
    """The length of a square; where it is no fraction, cut off after twelve decimals."""
    whole = isqrt(square.numerator * _TWELVE_DECIMALS**2 // square.denominator)
    return Fraction(whole, _TWELVE_DECIMALS)


def squared(values: Region) -> Region:
    """Lengths squared, for comparison with squared distances."""
    return region(
        [
            (
                Interval(
                    None if interval.low is None else max(interval.low, Fraction(0)) ** 2,
                    None if interval.high is None else max(interval.high, Fraction(0)) ** 2,
                    interval.low_strict,
                    interval.high_strict,
                ),
            )
            for (interval,) in values.boxes
        ],
        _POSITIVE,
    )


def _relation(assertion: Assertion, there: Sequence[str], state: State) -> tuple[Amount, ...]:
    if assertion.relation is None or assertion.other is None:
        return ()
    if not there or not state.is_there(assertion.other):
        return ()
    position = state.vocabulary.characteristics[POSITION]
    axis, towards_greater = _AXIS[assertion.relation]
    mine = _axis(state.value(there[0], position), axis)
    others = _axis(state.value(assertion.other, position), axis)
    further, nearer = (mine, others) if towards_greater else (others, mine)
    members = (there[0], assertion.other)
    if further.low is not None and nearer.high is not None and further.low > nearer.high:
        return (Amount(members, Labels(frozenset({YES}))),)
    if further.high is not None and nearer.low is not None and further.high <= nearer.low:
        return (Amount(members, Labels(frozenset({NO}))),)
    return (Amount(members, Labels(frozenset({YES, NO}))),)


def _alike(
    members: Sequence[str], characteristic: Characteristic, state: State, aggregate: Aggregate
) -> ValueSet:
    """Whether all are the same, or all different: yes, no, or not to be told."""
    answers = {_same(one, two, characteristic, state) for one, two in combinations(members, 2)}
    wanted, unwanted = (YES, NO) if aggregate is Aggregate.SAME else (NO, YES)
    if unwanted in answers:
        return Labels(frozenset({NO}))
    return Labels(frozenset({YES})) if answers == {wanted} else Labels(frozenset({YES, NO}))


def _same(one: str, two: str, characteristic: Characteristic, state: State) -> str | None:
    values = state.value(one, characteristic), state.value(two, characteristic)
    if not (state.is_given(one, characteristic) and state.is_given(two, characteristic)):
        return None
    if are_disjoint(*values):
        return NO
    is_told = values[0] == values[1] and (isinstance(values[0], Labels) or values[0].is_point)
    return YES if is_told else None
