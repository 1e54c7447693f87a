"""The algebra of regions, held to what each says of single numbers: sets of them, counted out on a grid of thirds.

Whatever two ends at whole numbers, open or closed, can tell apart lies on such a grid, beyond its ends included.
"""

from __future__ import annotations

import itertools
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from intent.values.regions import EVERYTHING, Box, Interval, Region, arc, region, spread

ENDS = range(5)
GRID = [Fraction(third, 3) for third in range(-4, 17)]
WHOLE = [number for number in GRID if number.denominator == 1]

ends = st.none() | st.sampled_from(ENDS).map(Fraction)
intervals = st.builds(Interval, ends, ends, st.booleans(), st.booleans())


def regions(axes: int = 1, *, discrete: bool = False) -> st.SearchStrategy[Region]:
    like = Region((), (EVERYTHING,) * axes, discrete)
    boxes = st.lists(st.tuples(*[intervals] * axes), max_size=3)
    return boxes.map(lambda found: region(found, like))


def is_in(number: Fraction, interval: Interval) -> bool:
    low, high = interval.low, interval.high
    above = low is None or number > low or (number == low and not interval.low_strict)
    return above and (high is None or number < high or (number == high and not interval.high_strict))


def has(found: Region, point: tuple[Fraction, ...]) -> bool:
    return any(all(map(is_in, point, box)) for box in found.boxes)


def points(found: Region, grid: list[Fraction] = GRID) -> set[tuple[Fraction, ...]]:
    return {point for point in itertools.product(grid, repeat=len(found.whole)) if has(found, point)}


@given(regions(), regions())
def test_the_algebra_of_numbers_is_that_of_their_sets(one: Region, two: Region) -> None:
    every = set(itertools.product(GRID, repeat=1))
    assert points(one.meet(two)) == points(one) & points(two)
    assert points(one.minus(two)) == points(one) - points(two)
    assert points(one.joined(two)) == points(one) | points(two)
    assert points(one.complement()) == every - points(one)
    assert one.is_within(two) == (points(one) <= points(two))
    assert one.is_empty == (not points(one))
    assert one.is_point == (len(points(one)) == 1)


@given(regions(), regions())
def test_the_same_numbers_are_the_same_region(one: Region, two: Region) -> None:
    """Overlapping and touching pieces are one, so that equal sets are equal."""
    assert (one == two) == (points(one) == points(two))


@given(regions(2), regions(2))
def test_the_algebra_of_places_is_that_of_their_sets(one: Region, two: Region) -> None:
    assert points(one.meet(two)) == points(one) & points(two)
    assert points(one.minus(two)) == points(one) - points(two)
    assert points(one.joined(two)) == points(one) | points(two)
    assert one.is_within(two) == (points(one) <= points(two))


@given(regions(discrete=True), regions(discrete=True))
def test_whole_numbers_a_step_apart_have_nothing_between_them(one: Region, two: Region) -> None:
    assert points(one.joined(two), WHOLE) == points(one, WHOLE) | points(two, WHOLE)
    assert (one == two) == (points(one, WHOLE) == points(two, WHOLE))
    assert one.is_empty == (not points(one, WHOLE))


@given(regions())
def test_bounds_are_the_least_that_hold_it_all(found: Region) -> None:
    inside = [number for (number,) in points(found)]
    if not inside:
        return
    bounds = found.bounds
    assert (bounds.low is None) == (min(GRID) in inside)
    assert (bounds.high is None) == (max(GRID) in inside)
    step = Fraction(1, 3)
    assert bounds.low is None or min(inside) - step <= bounds.low <= min(inside)
    assert bounds.high is None or max(inside) <= bounds.high <= max(inside) + step


@given(st.integers(0, 719), st.integers(0, 719))
def test_an_arc_runs_clockwise_from_its_start_to_its_end(start: int, length: int) -> None:
    """Counted out in whole degrees; a turn or more is all angles, none of them twice."""
    turn = [(Fraction(degree),) for degree in range(360)]
    found = Region(arc(Fraction(start), Fraction(start + length)))
    wanted = {(start + step) % 360 for step in range(min(length, 359) + 1)}
    assert {int(point[0]) for point in turn if has(found, point)} == wanted
    assert not has(found, (Fraction(360),)), "360° is 0°"


@given(st.lists(st.tuples(ends, ends), min_size=1, max_size=3))
def test_a_sum_lies_between_the_sums_of_the_ends(
    found: list[tuple[Fraction | None, Fraction | None]],
) -> None:
    known = [(low, high) for low, high in found if low is None or high is None or low <= high]
    summed = spread([Region(((Interval(low, high),),)) for low, high in known]).bounds
    for end, told in ((0, summed.low), (1, summed.high)):
        ends_of = [pair[end] for pair in known]
        assert told == (None if None in ends_of else sum(one for one in ends_of if one is not None))


def test_a_sum_keeps_to_the_values_that_there_are() -> None:
    never_below = (Interval(Fraction(0), None),)
    summed = spread([Region(((EVERYTHING,),), never_below), Region(((EVERYTHING,),), never_below)])
    assert summed.whole == never_below
    assert summed.bounds == Interval(Fraction(0), None)
    assert spread([]).bounds == Interval(Fraction(0), Fraction(0))


@pytest.mark.parametrize(
    ("interval", "is_point"),
    [
        (Interval(Fraction(1), Fraction(1)), True),
        (Interval(Fraction(1), Fraction(1), True), False),
        (Interval(Fraction(1), Fraction(1), False, True), False),
        (Interval(None, None), False),
        (Interval(Fraction(1), Fraction(2)), False),
    ],
)
def test_a_point_holds_its_two_ends(interval: Interval, is_point: bool) -> None:
    assert interval.is_point == is_point
    two: Box = (interval, Interval(Fraction(0), Fraction(1)))
    assert not Region((two,), (EVERYTHING, EVERYTHING)).is_point


def held(*intervals: Interval) -> Region:
    return region([(interval,) for interval in intervals], Region(()))


def numbers(low: int | None, high: int | None, *, beyond: bool = False, below: bool = False) -> Interval:
    """The numbers from one to another, both among them; ``beyond`` the lower only, or ``below`` the higher."""
    least, most = (None if end is None else Fraction(end) for end in (low, high))
    return Interval(least, most, beyond, below)


@pytest.mark.parametrize(
    ("found", "bounds"),
    [
        (held(numbers(1, 2)), (1, 2)),
        (held(numbers(1, 2, beyond=True, below=True)), (1, 2)),
        (held(numbers(5, 6), numbers(1, 2)), (1, 6)),
        (held(numbers(5, 6), numbers(1, 2), numbers(8, 9)), (1, 9)),
        (held(numbers(1, 2), numbers(5, None)), (1, None)),
        (held(numbers(None, 2), numbers(5, 6)), (None, 6)),
        (held(numbers(None, 2), numbers(5, None)), (None, None)),
    ],
    ids=str,
)
def test_bounds_of_one_piece_and_of_several(found: Region, bounds: tuple[int | None, int | None]) -> None:
    """From the least of all pieces to the most; without end where one of them has none."""
    assert found.bounds == numbers(*bounds)


def test_bounds_of_places_are_those_across() -> None:
    """Of x, y and z the first, of which alone a single number is told."""
    places = [(numbers(1, 2), numbers(7, 9)), (numbers(4, 5), numbers(None, None))]
    assert Region(tuple(places), (EVERYTHING, EVERYTHING)).bounds == numbers(1, 5)


@pytest.mark.parametrize(
    ("pieces", "joined"),
    [
        ([numbers(1, 2), numbers(2, 3)], [numbers(1, 3)]),
        ([numbers(1, 2, below=True), numbers(2, 3)], [numbers(1, 3)]),
        ([numbers(1, 2), numbers(2, 3, beyond=True)], [numbers(1, 3)]),
        (
            [numbers(1, 2, below=True), numbers(2, 3, beyond=True)],
            [numbers(1, 2, below=True), numbers(2, 3, beyond=True)],
        ),
        ([numbers(1, 4), numbers(2, 3)], [numbers(1, 4)]),
        ([numbers(1, 4), numbers(2, 4, below=True)], [numbers(1, 4)]),
        ([numbers(1, 4, below=True), numbers(2, 4)], [numbers(1, 4)]),
        ([numbers(1, 2), numbers(0, 3, beyond=True)], [numbers(0, 3, beyond=True)]),
        ([numbers(-1, 0), numbers(None, -3)], [numbers(None, -3), numbers(-1, 0)]),
        ([numbers(1, None), numbers(2, 3)], [numbers(1, None)]),
        ([numbers(1, 2), numbers(3, 4)], [numbers(1, 2), numbers(3, 4)]),
    ],
    ids=str,
)
def test_pieces_that_touch_are_one_and_in_order(pieces: list[Interval], joined: list[Interval]) -> None:
    """Two that meet at a number are one where either holds that number."""
    wanted = tuple((piece,) for piece in joined)
    assert held(*pieces).boxes == held(*reversed(pieces)).boxes == wanted


@pytest.mark.parametrize(
    ("pieces", "joined"),
    [
        ([numbers(1, 2), numbers(3, 4)], [numbers(1, 4)]),
        ([numbers(1, 2), numbers(4, 5)], [numbers(1, 2), numbers(4, 5)]),
        ([numbers(1, 4, beyond=True, below=True)], [numbers(2, 3)]),
        ([numbers(1, 2, beyond=True, below=True)], []),
    ],
    ids=str,
)
def test_counts_have_nothing_between_them(pieces: list[Interval], joined: list[Interval]) -> None:
    """One or two, and three or four, are one to four; more than one and fewer than two is no number at all."""
    counts = Region((), (EVERYTHING,), discrete=True)
    assert region([(piece,) for piece in pieces], counts).boxes == tuple((piece,) for piece in joined)


def test_what_lies_beside_a_place_takes_nothing_from_it() -> None:
    """Nor does it cut the place into pieces, whether it is beside it or above it."""
    place = Region(((numbers(1, 2), numbers(1, 2)),), (EVERYTHING, EVERYTHING))
    for beside in (
        (numbers(1, 2), numbers(3, 4)),
        (numbers(3, 4), numbers(1, 2)),
        (numbers(3, 4), numbers(3, 4)),
    ):
        assert place.minus(Region((beside,), place.whole)) == place


@pytest.mark.parametrize("length", [Fraction(360), Fraction(721, 2), Fraction(361)], ids=str)
def test_a_whole_turn_or_more_is_every_angle(length: Fraction) -> None:
    """A turn begins where it ends, and is not that one angle alone."""
    for start in (Fraction(0), Fraction(90)):
        assert Region(arc(start, start + length)).boxes == ((numbers(0, 360, below=True),),)
