"""Clocks of the pictures of computers, against published mode lines; the source is beside each check."""

from __future__ import annotations

from fractions import Fraction

import pytest

from intent.formulas import video_timings
from intent.values.bounds import between, point

MEGA = 10**6


# Mode lines as the `cvt` tool of X.Org prints them (`1920x1080_60.00 173.00 …`), and as VESA DMT 1.13 lists them as CVT
@pytest.mark.parametrize(
    ("columns", "rows", "clock"),
    [
        (1024, 768, "63.5"),
        (1280, 800, "83.5"),
        (1280, 1024, "109"),
        (1400, 1050, "121.75"),
        (1440, 900, "106.5"),
        (1600, 1200, "161"),
        (1680, 1050, "146.25"),
        (1920, 1080, "173"),
        (1920, 1200, "193.25"),
    ],
)
def test_clock_with_the_blanking_of_tubes(columns: int, rows: int, clock: str) -> None:
    assert video_timings.tube_clock(columns, rows, Fraction(60)) == Fraction(clock) * MEGA


# `cvt -r`, and VESA DMT 1.13 for those with reduced blanking
@pytest.mark.parametrize(
    ("columns", "rows", "clock"),
    [
        (1280, 800, "71"),
        (1400, 1050, "101"),
        (1440, 900, "88.75"),
        (1680, 1050, "119"),
        (1920, 1080, "138.5"),
        (1920, 1200, "154"),
    ],
)
def test_clock_with_the_short_blanking_of_panels(columns: int, rows: int, clock: str) -> None:
    assert video_timings.panel_clock(columns, rows, Fraction(60)) == Fraction(clock) * MEGA


def test_all_that_a_raster_may_have() -> None:
    # VESA DMT: 65 MHz; CVT: 63.5 and 56 MHz
    assert video_timings.clocks(1024, 768, Fraction(60)) == between(56 * MEGA, 65 * MEGA)


def test_a_rate_of_television_is_that_of_the_table() -> None:
    # 60000/1001 Hz is 60 Hz in VESA DMT: 25.175 MHz of 640 by 480
    found = video_timings.clocks(640, 480, Fraction(60000, 1001))
    assert found.high == Fraction("25.175") * MEGA


def test_the_finest_detail_is_one_light_and_one_dark_element() -> None:
    # arithmetic: a period of two elements
    assert video_timings.finest_detail(point(65 * MEGA)) == point(Fraction(65 * MEGA, 2))
