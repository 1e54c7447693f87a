"""Pictures thrown off the axis of their lens, against handbook values and against rays that are followed one by one."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise
from math import atan, cos, degrees, radians, sin, tan

import pytest

from formulas.known_numbers import exact, number
from intent.formulas import trapezoids
from intent.formulas.trapezoids import Slanted
from intent.values.bounds import between, point, surely_within

STEPS = 2000


def slanted(*, half: float, lean: float, shifted: float = 0) -> Slanted:
    return Slanted(half=exact(half), shifted=exact(shifted), lean=exact(lean))


def test_half_a_side_puts_the_edge_level_with_the_lens() -> None:
    # handbooks of projectors: of a lens at the height of the lower edge the offset is half the height of the picture
    assert trapezoids.shift(point(-1), point(2)) == point(Fraction(1, 2))


@pytest.mark.parametrize(("tilt", "beam"), [(5, 20), (10, 30), (15, 20), (30, 15)])
def test_the_wider_edge_is_that_of_the_keystone_effect(tilt: int, beam: int) -> None:
    # keystone effect, in encyclopaedias: cos(e - a/2) / cos(e + a/2), of lean e and angle a of the whole picture
    found = slanted(half=tan(radians(beam / 2)), lean=tan(radians(tilt)))
    expected = cos(radians(tilt - beam / 2)) / cos(radians(tilt + beam / 2))
    assert number(found.wider) == pytest.approx(expected, abs=1e-9)


def test_a_tilt_makes_up_what_the_shift_lacks() -> None:
    # the direction of a picture half a metre per metre up, less that of a shift of a fifth per metre
    found = number(trapezoids.angle(trapezoids.lean(point(Fraction(1, 2)), point(Fraction(1, 5)))))
    assert found == pytest.approx(degrees(atan(0.5) - atan(0.2)), abs=1e-9)


def landing(across: float, up: float, tilt: float) -> tuple[float, float]:
    """Where a ray meets the wall at distance 1: turned by the tilt, and followed until it has come so far."""
    ahead, height = cos(tilt) - up * sin(tilt), sin(tilt) + up * cos(tilt)
    return across / ahead, height / ahead


def largest_upright(half: float, tilt: float, shifted: float) -> float:
    """The share of the elements of a picture (16:9) in the largest upright one of its shape, by trying every height."""
    low, high, shape = shifted - half, shifted + half, 16 / 9
    rows = [low + (high - low) * step / STEPS for step in range(STEPS + 1)]
    places = [landing(half * shape, row, tilt) for row in rows]
    best, found = 0.0, (0.0, 0.0)
    for start, (edge, bottom) in zip(rows, places, strict=True):
        top = bottom + 2 * edge / shape
        if top <= places[-1][1] + 1e-12 and edge > best:
            best, found = edge, (start, top)
    start, top = found
    inside = [
        best / edge * (next_row - row)
        for (row, next_row), (edge, up) in zip(pairwise(rows), places, strict=False)
        if row >= start and up <= top
    ]
    return sum(inside) / (high - low)


@pytest.mark.parametrize(
    ("half", "lean", "shifted"), [(0.25, 0.1, 0.0), (0.25, 0.3, 0.0), (0.4, 0.2, 0.0), (0.25, 0.15, 0.1)]
)
def test_what_correction_leaves_is_what_rays_give(half: float, lean: float, shifted: float) -> None:
    # independent: rays turned and followed to the wall, and the largest upright picture found by trying
    found = slanted(half=half, lean=lean, shifted=shifted)
    assert number(found.elements_left) == pytest.approx(largest_upright(half, atan(lean), shifted), abs=0.003)


def test_the_lines_that_are_left() -> None:
    # by hand, of a lens without shift: cos(e + a/2) / cos(a/2); 94.36 % of the lines at 8° with a beam of 28°
    found = number(slanted(half=tan(radians(14)), lean=tan(radians(8))).lines_left)
    assert found == pytest.approx(cos(radians(22)) / cos(radians(14)), abs=1e-9)


def test_no_tilt_costs_nothing() -> None:
    found = slanted(half=0.25, lean=0)
    assert (found.wider, found.lines_left, found.elements_left) == (point(1), point(1), point(1))


def test_a_ray_that_never_meets_the_wall_gives_an_edge_without_end() -> None:
    assert slanted(half=1, lean=1).wider.high is None


def test_bounds_hold_what_any_number_between_gives() -> None:
    wide = Slanted(half=between(Fraction(1, 5), Fraction(1, 4)), shifted=point(0), lean=point(Fraction(1, 5)))
    inside = slanted(half=0.22, lean=0.2)
    assert wide.wider.holds(inside.wider)
    assert wide.elements_left.holds(inside.elements_left)
    assert surely_within(wide.elements_left, point(1))
