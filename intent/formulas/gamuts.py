"""The colours that three primaries make: how much of the colours that there are, and which share of another's.

A gamut is the triangle of its primaries. In u′, v′ of CIE 1976 equal distances look about equal, in x, y of CIE 1931
they do not. Chromaticities are pairs of numbers without a unit; areas are in the square of them.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from fractions import Fraction
from itertools import pairwise
from math import hypot

from intent.formulas.colour import Chromaticity

Diagram = Callable[[Chromaticity], Chromaticity]
"""Where a chromaticity of CIE 1931 lies in a diagram."""


def plain(colour: Chromaticity) -> Chromaticity:
    """x, y of CIE 1931, as they are."""
    return colour


def uniform(colour: Chromaticity) -> Chromaticity:
    """u′ = 4x / (−2x + 12y + 3), v′ = 9y / (−2x + 12y + 3) (CIE 015, CIE 1976 uniform chromaticity scale diagram)."""
    x, y = colour
    scale = -2 * x + 12 * y + 3
    return 4 * x / scale, 9 * y / scale


def area(primaries: Sequence[Chromaticity], diagram: Diagram) -> Fraction:
    """The area that primaries enclose in a diagram. Plane geometry."""
    return abs(_signed_area([diagram(colour) for colour in primaries]))


def shared(shown: Sequence[Chromaticity], wanted: Sequence[Chromaticity], diagram: Diagram) -> Fraction:
    """Which share of the colours of some primaries others show: the common area over that of those wanted."""
    corners = _leftwards([diagram(colour) for colour in wanted])
    edges = _leftwards([diagram(colour) for colour in shown])
    whole = _signed_area(corners)
    for start, end in pairwise([*edges, edges[0]]):
        corners = _left_of(start, end, corners)
    return _signed_area(corners) / whole


def apart(one: Chromaticity, two: Chromaticity) -> Fraction:
    """How far apart two colours lie in u′, v′ (CIE 015)."""
    (u, v), (other_u, other_v) = uniform(one), uniform(two)
    return Fraction(hypot(u - other_u, v - other_v))


def _signed_area(corners: Sequence[Chromaticity]) -> Fraction:
    """More than nothing where the corners are in the order in which one turns to the left."""
    turns = (a[0] * b[1] - b[0] * a[1] for a, b in pairwise([*corners, *corners[:1]]))
    return sum(turns, Fraction(0)) / 2


def _leftwards(corners: list[Chromaticity]) -> list[Chromaticity]:
    return corners if _signed_area(corners) > 0 else corners[::-1]


def _left_of(start: Chromaticity, end: Chromaticity, corners: list[Chromaticity]) -> list[Chromaticity]:
    """What lies to the left of an edge (the clipping of polygons of Sutherland and Hodgman, 1974)."""
    kept: list[Chromaticity] = []
    for one, two in pairwise([*corners, *corners[:1]]):
        near, far = _side(start, end, one), _side(start, end, two)
        if near >= 0:
            kept.append(one)
        if near * far < 0:
            share = near / (near - far)
            kept.append((one[0] + share * (two[0] - one[0]), one[1] + share * (two[1] - one[1])))
    return kept


def _side(start: Chromaticity, end: Chromaticity, corner: Chromaticity) -> Fraction:
    """More than nothing to the left of an edge, nothing on it."""
    return (end[0] - start[0]) * (corner[1] - start[1]) - (end[1] - start[1]) * (corner[0] - start[0])
