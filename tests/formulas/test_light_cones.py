"""The light between a lens and its picture, against heights worked by hand and rays that are followed one by one."""

from __future__ import annotations

from fractions import Fraction

import pytest

from intent.formulas import light_cones
from intent.values.bounds import ONE, ZERO, known, point
from intent.values.regions import EVERYTHING, Interval


def number(bounds: Interval) -> float:
    found = known(bounds)
    assert found is not None
    return float(found)


def test_half_way_the_light_has_done_half_its_fall() -> None:
    # by hand: a lens 2 m up, an edge 1 m up, 6 m apart: after 3 m the lowest ray is 1.5 m up
    found = light_cones.lowest(point(2), point(1), point(3), point(6))
    assert number(found) == pytest.approx(1.5)


def test_light_that_rises_is_lowest_at_the_lens() -> None:
    assert light_cones.lowest(point(1), point(2), point(3), point(6)) == point(1)


def test_beyond_the_picture_it_comes_no_lower_than_its_edge() -> None:
    assert light_cones.lowest(point(3), point(1), point(9), point(6)) == point(1)


def test_the_reach_along_the_axis_is_never_higher_than_along_the_ray() -> None:
    # independent: the steepest ray is followed for the whole reach, which is longer than its way along the axis
    throw, fall, reach = 4.0, 2.0, 3.0
    along_the_ray = 3 - fall * reach / (throw**2 + fall**2) ** 0.5
    assert number(light_cones.lowest(point(3), point(1), point(3), point(4))) <= along_the_ray


def test_the_lowest_corner_of_a_picture_that_is_turned() -> None:
    # by hand: 4 m wide and 2 m high, turned a quarter: half its width below its middle
    sides = point(4), point(2)
    assert light_cones.lower_edge(point(3), sides, (ZERO, ONE)) == point(2)
    assert light_cones.lower_edge(point(3), sides, (ONE, ZERO)) == point(1)


@pytest.mark.parametrize(
    ("across", "up", "ahead", "is_in"),
    [
        (0, 0, 2, True),
        (0.6, 0, 2, True),
        (0.7, 0, 2, False),
        (0, 0.4, 2, False),
        (0, 0, 7, False),
        (0, 0, -1, False),
    ],
)
def test_whether_eyes_are_in_the_light(across: float, up: float, ahead: float, *, is_in: bool) -> None:
    # by hand: of a picture 4 m by 2 m at 6 m, the light at 2 m is a third as large: 1.33 m by 0.67 m
    place = point(Fraction(across)), point(Fraction(up)), point(Fraction(ahead))
    assert light_cones.is_inside(place, (ZERO, ZERO, point(6)), (point(4), point(2))) is is_in


def test_of_a_place_that_is_not_known_nobody_says_that_it_is_in_the_light() -> None:
    picture = ZERO, ZERO, point(6)
    assert not light_cones.is_inside((EVERYTHING, ZERO, point(2)), picture, (point(4), point(2)))


def test_how_far_a_place_is() -> None:
    # Pythagoras: 2, 3 and 6 make 7
    assert light_cones.distance((point(2), point(-3), point(6))) == point(7)
