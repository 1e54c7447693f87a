"""Which way a device looks, and how far aside something lies: geometry that anybody can draw."""

from __future__ import annotations

from fractions import Fraction

import numpy as np
import pytest

from intent.formulas.directions import Arrow, looking, off_axis, way
from intent.values.bounds import between, plus, point
from intent.values.regions import EVERYTHING, Interval


def arrow(x: float, y: float, z: float) -> Arrow:
    return point(Fraction(str(x))), point(Fraction(str(y))), point(Fraction(str(z)))


def turned(facing: int, tilt: int, rotation: int, to: Arrow) -> tuple[float, ...]:
    found = looking(point(facing), point(tilt), point(rotation)).parts_of(to)
    return tuple(float(one.low or 0) for one in found)


@pytest.mark.parametrize(
    ("facing", "tilt", "rotation", "to", "expected"),
    [
        # straight ahead; to the left as seen from the front, and so from the right of one who stands there
        (0, 0, 0, (0, 0, 1), (0, 0, 1)),
        (90, 0, 0, (-1, 0, 0), (0, 0, 1)),
        (90, 0, 0, (0, 0, 1), (1, 0, 0)),
        (180, 0, 0, (0, 0, -1), (0, 0, 1)),
        # leaning back it looks up; on its back its top is away from the viewer
        (0, 90, 0, (0, 1, 0), (0, 0, 1)),
        (0, 90, 0, (0, 0, -1), (0, 1, 0)),
        # turned to the right, its top is on the right, and its right below
        (0, 0, 90, (1, 0, 0), (0, 1, 0)),
        (0, 0, 90, (0, -1, 0), (1, 0, 0)),
        (0, 0, 180, (0, 1, 0), (0, -1, 0)),
    ],
)
def test_axes(
    facing: int, tilt: int, rotation: int, to: tuple[float, ...], expected: tuple[float, ...]
) -> None:
    assert turned(facing, tilt, rotation, arrow(*to)) == pytest.approx(expected, abs=1e-9)


@pytest.mark.parametrize("facing", [0, 20, 200])
@pytest.mark.parametrize("tilt", [0, 15, -40])
@pytest.mark.parametrize("rotation", [0, 30, 270])
def test_axes_stand_square_to_each_other(facing: int, tilt: int, rotation: int) -> None:
    found = looking(point(facing), point(tilt), point(rotation))
    axes = np.array([[float(one.low or 0) for one in axis] for axis in (found.right, found.up, found.ahead)])
    assert axes @ axes.T == pytest.approx(np.eye(3), abs=1e-9)
    assert np.linalg.det(axes) == pytest.approx(1)


@pytest.mark.parametrize(
    ("aside", "ahead", "degrees"),
    # arc tangents of 1, √3 and 1/√3, in any handbook
    [(1, 1, 45), (Fraction("1.7320508"), 1, 60), (1, Fraction("1.7320508"), 30), (0, 1, 0)],
)
def test_angle_off_the_axis(aside: Fraction, ahead: Fraction, degrees: int) -> None:
    assert float(off_axis(point(aside), point(ahead)).low or 0) == pytest.approx(degrees, abs=1e-5)


def test_what_is_not_ahead() -> None:
    assert off_axis(point(1), point(-1)) == between(90, 180)
    assert off_axis(point(1), between(-1, 1)) == between(0, 180)


def test_less_known_is_wider() -> None:
    """A facing that is known to ten degrees holds each facing in it; one that is not known holds them all."""
    to = way(arrow(0, 1, 0), arrow(1, 1, 2))
    wide = looking(between(10, 20), point(0), point(0)).parts_of(to)
    rounding = between(Fraction(-1, 10**9), Fraction(1, 10**9))
    for degrees in range(10, 21):
        narrow = looking(point(degrees), point(0), point(0)).parts_of(to)
        assert all(plus(w, rounding).holds(n) for w, n in zip(wide, narrow, strict=True))
    every = looking(EVERYTHING, EVERYTHING, EVERYTHING).parts_of(to)
    assert all(isinstance(one, Interval) and one.holds(n) for one, n in zip(every, wide, strict=True))


def test_past_a_crest() -> None:
    """Between 80° and 100° the sine reaches 1."""
    ahead = looking(point(0), between(80, 100), point(0)).ahead
    assert ahead[1].high == 1
    assert float(ahead[1].low or 0) == pytest.approx(0.98481, abs=1e-5)  # sine of 80°, any table
