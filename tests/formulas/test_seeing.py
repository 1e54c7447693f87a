"""What an eye tells apart, against published values; the source is beside each check."""

from __future__ import annotations

from fractions import Fraction
from math import atan, degrees, pi

import pytest

from intent.formulas import pixels, seeing, shapes
from intent.values.bounds import known, point

INCH, FOOT = Fraction("0.0254"), Fraction("0.3048")
WIDE = point(Fraction(16, 9))


def test_pitches_to_one_arc_minute() -> None:
    # arithmetic: 3437.75
    assert float(known(seeing.PITCHES_TO_ONE_ARC_MINUTE) or 0) == pytest.approx(180 * 60 / pi, abs=0.005)


def test_three_hundred_to_the_inch() -> None:
    # arithmetic: 11.46 in
    distance = known(seeing.fading_distance(point(INCH / 300)))
    assert distance is not None
    assert float(distance / INCH) == pytest.approx(11.46, abs=0.005)


def test_a_hundred_inches_of_1080_lines() -> None:
    # home-theatre distance table: 13 ft
    pitch = pixels.pitch(shapes.height(point(100 * INCH), WIDE), point(1080))
    distance = known(seeing.fading_distance(pitch))
    assert distance is not None
    assert round(float(distance / FOOT)) == 13


def test_at_its_fading_distance_a_structure_is_one_minute_wide() -> None:
    # arithmetic: an angle of which the tangent is the pitch over the distance
    distance = known(seeing.fading_distance(point(1)))
    assert distance is not None
    assert degrees(atan(1 / distance)) * 60 == pytest.approx(1, rel=1e-5)
