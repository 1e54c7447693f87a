"""Rectangles in rectangles and boxes round corners; the source is beside each check."""

from __future__ import annotations

from fractions import Fraction
from math import cos, pi, sin, sqrt

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from intent.formulas.openings import (
    Turning,
    clearance,
    clearance_in_car,
    fits_slanting,
    longest_round_corner,
    surely_larger,
)
from intent.values.bounds import NATURAL, between, known, point
from intent.values.regions import Interval

Sides = tuple[Interval, Interval, Interval]
lengths = st.integers(1, 300).map(lambda centimetres: Fraction(centimetres, 100))
STEPS = 2000


def box(*centimetres: int) -> Sides:
    length, width, height = (point(Fraction(side, 100)) for side in centimetres)
    return length, width, height


def opening(width: int, height: int) -> tuple[Interval, Interval]:
    return point(Fraction(width, 100)), point(Fraction(height, 100))


def test_nine_by_four_does_not_go_into_eight_by_six() -> None:
    # J. E. Wetzel, "Rectangles in Rectangles" (2000), read in excerpts: a 9 × 4 rectangle does not fit into 8 × 6,
    # although its area, diagonal, sum of sides and shorter side are all less
    assert not fits_slanting((Fraction(9), Fraction(4)), (Fraction(8), Fraction(6)))


def test_a_line_lies_on_the_diagonal() -> None:
    # arithmetic: 3, 4, 5
    assert fits_slanting((Fraction(5), Fraction(0)), (Fraction(4), Fraction(3)))
    assert not fits_slanting((Fraction("5.001"), Fraction(0)), (Fraction(4), Fraction(3)))


@given(p=lengths, q=lengths, a=lengths, b=lengths)
@settings(max_examples=150, deadline=None)
def test_the_criterion_agrees_with_turning_step_by_step(
    p: Fraction, q: Fraction, a: Fraction, b: Fraction
) -> None:
    # arithmetic: a turned rectangle's upright outline, at two thousand angles; a hair's breadth is left out
    longer, shorter = float(max(p, q)), float(min(p, q))
    wide, narrow = float(max(a, b)), float(min(a, b))
    turns = (step * pi / 2 / STEPS for step in range(STEPS + 1))
    spare = max(
        min(
            wide - longer * cos(turn) - shorter * sin(turn), narrow - longer * sin(turn) - shorter * cos(turn)
        )
        for turn in turns
    )
    if abs(spare) > 0.003:
        assert fits_slanting((p, q), (a, b)) is (spare > 0)


@pytest.mark.parametrize(
    ("sides", "door", "turning", "centimetres"),
    [
        ((210, 100, 90), (85, 200), Turning.UPRIGHT, -15),
        ((210, 100, 90), (85, 200), Turning.LAID, -5),
        ((210, 100, 90), (85, 200), Turning.ANY, -5),
        ((220, 95, 60), (85, 200), Turning.UPRIGHT, -10),
        ((220, 95, 60), (85, 200), Turning.LAID, 25),
        ((190, 60, 195), (85, 200), Turning.UPRIGHT, 5),
        ((180, 75, 85), (85, 200), Turning.UPRIGHT, 10),
    ],
)
def test_boxes_at_a_door(
    sides: tuple[int, int, int], door: tuple[int, int], turning: Turning, centimetres: int
) -> None:
    # arithmetic
    assert clearance(box(*sides), opening(*door), turning) == point(Fraction(centimetres, 100))


def test_a_pane_goes_through_on_the_slant() -> None:
    # arithmetic, by the criterion: a pane of 210 × 300 cm, 5 cm thick, through a door of 85 × 200 cm is carried edge
    # on (5 × 210, diagonal of the door 217.3 cm)
    pane, door = box(300, 5, 210), opening(85, 200)
    assert clearance(pane, door, Turning.LAID) == point(Fraction(-10, 100))
    slanting = known(clearance(pane, door, Turning.ANY))
    assert slanting is not None
    assert 0 <= slanting < Fraction(3, 100)


@given(p=lengths, q=lengths, r=lengths, a=lengths, b=lengths)
@settings(max_examples=100, deadline=None)
def test_more_turning_never_does_harm(
    p: Fraction, q: Fraction, r: Fraction, a: Fraction, b: Fraction
) -> None:
    sides, hole = (point(p), point(q), point(r)), (point(a), point(b))
    # on its long edge alone is another way and not a greater freedom
    spare = [known(clearance(sides, hole, turning)) for turning in Turning if turning is not Turning.ON_EDGE]
    assert all(one is not None for one in spare)
    assert spare == sorted(one for one in spare if one is not None)


@given(p=lengths, q=lengths, r=lengths, a=lengths, b=lengths, more=lengths, turning=st.sampled_from(Turning))
@settings(max_examples=100, deadline=None)
def test_what_is_less_known_is_less_narrow(
    p: Fraction, q: Fraction, r: Fraction, a: Fraction, b: Fraction, more: Fraction, turning: Turning
) -> None:
    exact = clearance((point(p), point(q), point(r)), (point(a), point(b)), turning)
    vague = clearance((between(p, p + more), point(q), NATURAL), (point(a), between(b, b + more)), turning)
    assert vague.holds(exact)


def test_an_unknown_height_of_the_door() -> None:
    # arithmetic
    found = clearance(box(100, 60, 50), (point(1), NATURAL), Turning.UPRIGHT)
    assert found == between(Fraction(-1, 2), Fraction(2, 5))


def test_ladder_round_a_corner() -> None:
    # the ladder problem (textbook calculus, from memory): (a^⅔ + b^⅔)^(3/2), of two corridors of 1 m 2√2 m
    longest = known(longest_round_corner(point(0), point(1)))
    assert longest is not None
    assert float(longest) == pytest.approx(2 * sqrt(2), abs=1e-9)


@given(width=st.floats(0, 1), corridor=st.floats(1, 2))
@settings(max_examples=50, deadline=None)
def test_corner_agrees_with_turning_step_by_step(width: float, corridor: float) -> None:
    # arithmetic: the room for a box of some width at each angle, at its least; or no longer than the corridor is wide
    turns = (step * pi / 2 / STEPS for step in range(1, STEPS))
    least = min((corridor * (cos(turn) + sin(turn)) - width) / (cos(turn) * sin(turn)) for turn in turns)
    found = known(longest_round_corner(point(Fraction(width)), point(Fraction(corridor))))
    assert found is not None
    assert float(found) == pytest.approx(max(least, corridor), abs=1e-5)


def test_in_the_car_of_a_lift() -> None:
    # arithmetic
    car = (point(Fraction("1.4")), point(Fraction("1.1")), point(Fraction("2.1")))
    assert clearance_in_car(box(130, 60, 125), car, Turning.UPRIGHT) == point(Fraction(1, 10))
    assert clearance_in_car(box(200, 60, 105), car, Turning.UPRIGHT) == point(Fraction(-6, 10))
    assert clearance_in_car(box(200, 60, 105), car, Turning.LAID) == point(Fraction(1, 10))
    assert surely_larger(box(300, 60, 105), car, Turning.ANY)
    assert not surely_larger(box(200, 60, 105), car, Turning.ANY)
    assert surely_larger(box(200, 60, 105), car, Turning.UPRIGHT)
    assert not surely_larger(box(150, 5, 105), car, Turning.UPRIGHT)
