"""The algebra of value sets, held to its laws by brute force over sampled points; and that nothing is rounded.

The ends of the intervals drawn are whole numbers from -6 to 6. A set made of them is the same between two
neighbours throughout, so that the whole and half numbers from -8 to 8 tell every such set from every other.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from intent.dossier.expressions import read_item
from intent.dossier.measured_text import read_number
from intent.dossier.unreadable import Unreadable
from intent.language.figures import decimal
from intent.model.assertions import Measured
from intent.values.regions import EVERYTHING, Box, Interval, Region, arc, region, spread
from intent.values.sets import (
    ANY_LABEL,
    Answer,
    Labels,
    ValueSet,
    are_disjoint,
    is_strictly_within,
    is_within,
    lies,
    meet,
)
from intent.vocabulary.loader import read_vocabulary

VOCABULARY = read_vocabulary()
HALVES = [Fraction(number, 2) for number in range(-16, 17)]
GRID = list(product([Fraction(number, 2) for number in range(-3, 8)], repeat=2))
ENDS = st.none() | st.integers(-6, 6).map(Fraction)
WHOLES = [(EVERYTHING,), (Interval(Fraction(0), None),), (Interval(Fraction(-3), Fraction(4), False, True),)]

Point = tuple[Fraction, ...]


def intervals() -> st.SearchStrategy[Interval]:
    return st.builds(Interval, ENDS, ENDS, st.booleans(), st.booleans())


@st.composite
def like(draw: st.DrawFn) -> Region:
    """A region without boxes, for the space that it is in."""
    return Region((), draw(st.sampled_from(WHOLES)), draw(st.booleans()))


@st.composite
def spaces(draw: st.DrawFn, count: int) -> list[Region]:
    """Several sets of one space, so that they can be put together."""
    space = draw(like())
    boxes = st.lists(intervals().map(lambda interval: (interval,)), max_size=3)
    return [region(draw(boxes), space) for _ in range(count)]


@st.composite
def planes(draw: st.DrawFn) -> list[Region]:
    """Two sets of pairs of numbers."""
    ends = st.none() | st.integers(-1, 3).map(Fraction)
    axis = st.builds(Interval, ends, ends, st.booleans(), st.booleans())
    whole = (Interval(Fraction(0), None), EVERYTHING)
    return [region(draw(st.lists(st.tuples(axis, axis), max_size=3)), Region((), whole)) for _ in range(2)]


def holds(interval: Interval, number: Fraction) -> bool:
    above = (
        interval.low is None or number > interval.low or (number == interval.low and not interval.low_strict)
    )
    below = (
        interval.high is None
        or number < interval.high
        or (number == interval.high and not interval.high_strict)
    )
    return above and below


def within(box: Box, point: Point) -> bool:
    return all(holds(interval, number) for interval, number in zip(box, point, strict=True))


def points(space: Region) -> Iterator[Point]:
    """The sampled points that there are in a space."""
    every: list[Point] = [(number,) for number in HALVES] if len(space.whole) == 1 else list(GRID)
    for point in every:
        if within(space.whole, point) and not (space.discrete and any(number % 1 for number in point)):
            yield point


def sampled(values: Region) -> set[Point]:
    return {point for point in points(values) if any(within(box, point) for box in values.boxes)}


def check_laws(one: Region, two: Region) -> None:
    every, first, second = set(points(one)), sampled(one), sampled(two)
    assert sampled(one.meet(two)) == first & second
    assert sampled(one.minus(two)) == first - second
    assert sampled(one.joined(two)) == first | second
    assert sampled(one.complement()) == every - first
    assert one.is_empty == (not first)
    assert is_within(one, two) == (first <= second)
    assert are_disjoint(one, two) == first.isdisjoint(second)
    assert is_strictly_within(one, two) == (first < second)
    assert meet(one, two) == one.meet(two)
    if first:
        answer = Answer.IN if first <= second else Answer.OUT if first.isdisjoint(second) else Answer.OPEN
        assert lies(one, two) is answer


@given(spaces(2))
def test_sets_of_numbers(two: list[Region]) -> None:
    check_laws(*two)


@given(planes())
def test_sets_of_pairs_of_numbers(two: list[Region]) -> None:
    check_laws(*two)


@given(spaces(3))
@settings(max_examples=50)
def test_laws_of_three(three: list[Region]) -> None:
    one, two, other = three
    assert one.meet(two) == two.meet(one)
    assert one.joined(two) == two.joined(one)
    assert one.meet(two.meet(other)) == one.meet(two).meet(other)
    assert one.meet(two.joined(other)) == one.meet(two).joined(one.meet(other))
    assert one.complement().complement() == one
    assert one.meet(two).complement() == one.complement().joined(two.complement())
    if is_within(one, two) and is_within(two, other):
        assert is_within(one, other)


@given(spaces(1))
def test_one_set_is_written_in_one_way(one: list[Region]) -> None:
    """Sets that hold the same numbers are equal, however they were come by."""
    (values,) = one
    pieces = [region([box], values) for box in values.boxes]
    whole = region([], values)
    for piece in reversed(pieces):
        whole = whole.joined(piece)
    assert whole == values
    assert values.is_point == (len(sampled(values)) == 1 and values.bounds.low == values.bounds.high)


@given(spaces(2))
def test_sums(two: list[Region]) -> None:
    """The sum of two numbers, each somewhere in its set, is in the spread of the sets."""
    one, other = two
    if one.is_empty or other.is_empty:
        return
    total = spread([Region(one.boxes), Region(other.boxes)])
    for (first,), (second,) in product(sampled(one), sampled(other)):
        assert within(total.boxes[0], (first + second,))


@given(st.integers(-800, 800), st.integers(0, 400))
def test_arcs_run_clockwise(start: int, length: int) -> None:
    """Walked degree by degree from the start, an arc meets just the angles that it holds."""
    boxes = arc(Fraction(start), Fraction(start + length))
    walked = {Fraction(degree % 360) for degree in range(start, start + length + 1)}
    held = {
        Fraction(degree) for degree in range(360) if any(within(box, (Fraction(degree),)) for box in boxes)
    }
    assert held == walked


NAMES = st.frozensets(st.sampled_from("abcd"), max_size=4)
UNIVERSE = frozenset("abcd") | {"anything else"}


def named(labels: Labels) -> frozenset[str]:
    return UNIVERSE - labels.names if labels.all_but else labels.names


@given(st.builds(Labels, NAMES, st.booleans()), st.builds(Labels, NAMES, st.booleans()))
def test_sets_of_names(one: Labels, two: Labels) -> None:
    first, second = named(one), named(two)
    assert named(one.meet(two)) == first & second
    assert named(one.joined(two)) == first | second
    assert named(one.complement()) == UNIVERSE - first
    assert one.is_empty == (not first)
    assert is_within(one, two) == (first <= second)
    assert are_disjoint(one, two) == first.isdisjoint(second)
    assert is_within(one, ANY_LABEL)
    if first:
        answer = Answer.IN if first <= second else Answer.OUT if first.isdisjoint(second) else Answer.OPEN
        assert lies(one, two) is answer


@given(spaces(1), st.builds(Labels, NAMES, st.booleans()))
def test_names_and_numbers_have_nothing_in_common(one: list[Region], labels: Labels) -> None:
    sets: tuple[ValueSet, ValueSet] = (one[0], labels)
    assert are_disjoint(*sets)
    assert meet(*sets).is_empty


@pytest.mark.parametrize(
    ("names", "all_but", "is_one"),
    [({"a"}, False, True), ({"a"}, True, False), ({"a", "b"}, False, False), (set(), False, False)],
)
def test_one_name_by_itself(names: set[str], all_but: bool, is_one: bool) -> None:
    assert Labels(frozenset(names), all_but).is_point == is_one


def test_answers_turned_round() -> None:
    assert [answer.negated for answer in Answer] == [Answer.OUT, Answer.IN, Answer.OPEN]


def measured(label: str, written: str, tolerance: str | None = None) -> Measured:
    characteristic = VOCABULARY.find_characteristic(label)
    assert characteristic is not None
    item = read_item(written, characteristic, VOCABULARY, tolerance=tolerance)
    assert isinstance(item, Measured)
    return item


@given(st.fractions(min_value=0, max_value=10**6, max_denominator=10**6).filter(lambda number: number > 0))
def test_an_inch_is_25_4_millimetres(inches: Fraction) -> None:
    """Exactly, for every number: the inch is defined so (international yard and pound agreement, 1959)."""
    in_inches = measured("visible diagonal", f"{inches.numerator}/{inches.denominator} in")
    millimetres = inches * Fraction(254, 10)
    in_millimetres = measured("visible diagonal", f"{millimetres.numerator}/{millimetres.denominator} mm")
    assert in_inches.numbers == in_millimetres.numbers == (inches * Fraction(254, 10000),)


def test_tenths_add_up() -> None:
    """0.1 and 0.2 make 0.3, which in binary floating point they do not (arithmetic)."""
    tenths = [Region(((Interval(length, length),),)) for length in map(Fraction, ("0.1", "0.2", "0.3"))]
    assert 0.1 + 0.2 != 0.3
    assert spread(tenths[:2]) == tenths[2]


@pytest.mark.parametrize(
    ("written", "number"),
    [
        ("13", Fraction(13)),
        ("0.1", Fraction(1, 10)),
        (".5", Fraction(1, 2)),
        ("-0.8", Fraction(-4, 5)),
        ("−0.8", Fraction(-4, 5)),
        ("+4", Fraction(4)),
        ("30000/1001", Fraction(30000, 1001)),
        ("1 1/2", Fraction(3, 2)),
        ("-1 1/2", Fraction(-3, 2)),
        ("0.30000000000000004", Fraction(30000000000000004, 10**17)),
    ],
)
def test_numbers_as_written(written: str, number: Fraction) -> None:
    """Arithmetic."""
    assert read_number(written) == number


@pytest.mark.parametrize(
    "written", ["", "1/0", "one", "1,5", "1e3", "0x10", "1 2", "1.2.3", "١٣", "½", "inf", "nan"]
)
def test_what_is_no_number(written: str) -> None:
    with pytest.raises(Unreadable):
        measured("power", f"{written} W")


@given(st.decimals(allow_nan=False, allow_infinity=False, min_value=-(10**9), max_value=10**9, places=9))
def test_a_decimal_comes_back_as_it_was(number: object) -> None:
    exact = Fraction(str(number))
    assert Fraction(decimal(exact)) == exact
    assert read_number(decimal(exact)) == exact


@given(st.fractions(max_denominator=10**9))
def test_a_fraction_comes_back_as_it_was(number: Fraction) -> None:
    assert read_number(decimal(number)) == number


@pytest.mark.parametrize(
    ("label", "written", "number"),
    [
        ("start offset", "14:20", Fraction(860)),
        ("start offset", "1:00:00", Fraction(3600)),
        ("start offset", "75 s", Fraction(75)),
        ("start offset", "1.25 min", Fraction(75)),
        ("rotation", "upside down", Fraction(180)),
        ("rotation", "turned left", Fraction(270)),
        ("aspect ratio", "4:3", Fraction(4, 3)),
        ("aspect ratio", "16:9", Fraction(16, 9)),
        ("frame rate", "30000/1001", Fraction(30000, 1001)),
        ("power", "0.9 kW", Fraction(900)),
    ],
)
def test_quantities_in_their_reference_unit(label: str, written: str, number: Fraction) -> None:
    """Arithmetic from the definitions of the units; the four rotations are those of the text form."""
    assert measured(label, written).numbers == (number,)


def test_a_tolerance_is_in_the_unit_of_its_value() -> None:
    """Arithmetic: half an inch is 12.7 mm."""
    half_an_inch = measured("visible diagonal", "13 in", "1/2")
    assert (
        half_an_inch.tolerance
        == measured("visible diagonal", "13 in", "12.7 mm").tolerance
        == Fraction(127, 10**4)
    )
    assert measured("visible diagonal", "13 in", "5 %").tolerance_percent == 5
