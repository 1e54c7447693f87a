"""What an eye tells apart, against published values; the source is beside each check."""

from __future__ import annotations

from fractions import Fraction
from math import atan, degrees, pi

import pytest

from intent.formulas import pixels, seeing, shapes
from intent.values.bounds import known, point, surely_above, surely_within
from intent.values.regions import EVERYTHING, Interval

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


def test_what_is_held_for_a_fiftieth_smears_over_twelve_minutes() -> None:
    # arithmetic: 10 degrees a second for 20 ms are 0.2 degrees; ten seconds across 1920 columns at 50 pictures a second
    # are four columns and less, as told in a hi-fi dictionary (about 4)
    assert seeing.smear(point(10), point(Fraction(1, 50))) == point(Fraction(1, 5))
    assert seeing.smear(point(192), point(Fraction(1, 50))) == point(Fraction(96, 25))


@pytest.mark.parametrize(
    ("luminance", "flickers", "steady"),
    [
        # 50 Hz television flickers as bright as sets became (100 cd/m²), and 85 Hz monitors do not: common practice, no
        # source; cinema of 48 cd/m² with two blades (48 Hz) is on the edge, 72 Hz with three is steady: from memory
        (100, 50, 85),
        (48, 45, 72),
    ],
)
def test_where_flicker_fuses(luminance: int, flickers: int, steady: int) -> None:
    fusion = seeing.fusion_frequency(point(luminance))
    assert surely_above(fusion, point(flickers))
    assert surely_within(fusion, point(steady))


def test_ten_times_the_light() -> None:
    # law of Ferry and Porter: 12.4 Hz more (Porter, 1902, from memory)
    dim, bright = (seeing.fusion_frequency(point(light)) for light in (5, 50))
    assert dim.low is not None
    assert bright.low is not None
    assert float(bright.low - dim.low) == pytest.approx(12.4)


def test_no_flicker_is_seen_above_a_hundred() -> None:
    # Fernandez-Alonso, Innes and Read, Vision 7 (2023) 26: some 100 Hz for 10 degrees, however bright
    assert seeing.fusion_frequency(point(10**7)).high == 100
    assert seeing.fusion_frequency(EVERYTHING) == seeing.fusion_frequency(Interval(Fraction(0), None))
    assert seeing.fusion_frequency(EVERYTHING) == Interval(Fraction(0), Fraction(100))
