"""Rectangles, rasters and picture elements against published values.

Each check has its source beside it: what was read only through another's transcription says `as quoted in`, what nobody
has read says `from memory`, and `arithmetic` follows from definitions.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from formulas.known_numbers import number
from intent.formulas import pixels, placing, shapes
from intent.values.bounds import between, known, point

WIDE, TELEVISION = point(Fraction(16, 9)), point(Fraction(4, 3))
INCH = Fraction("0.0254")


# ITU-R BT.601-7, BT.470-6 table 1-1, as quoted in a broadcast aspect-ratio note by M. Himsley
@pytest.mark.parametrize(("lines", "samples"), [(625, "702"), (525, "710.84925")])
def test_samples_of_active_line(lines: int, samples: str) -> None:
    assert pixels.active_samples(lines) == Fraction(samples)
    assert round(float(pixels.active_samples(lines)), 2) in {702, 710.85}


@pytest.mark.parametrize(
    ("columns", "rows", "element", "width"),
    [
        (704, 480, "10/11", 640),  # BT.601 practice, as quoted in E. Olson's note on aspect
        (704, 576, "12/11", 768),  # ITU-T H.264 table E-1 (idc 2), as quoted in decoders
        (720, 576, "16/15", 768),  # DV profile tables
        (702, 576, "59/54", 767),  # arithmetic: 767, not 768
    ],
)
def test_stored_pictures_are_as_wide_as_meant(columns: int, rows: int, element: str, width: int) -> None:
    shape = shapes.stored_shape(point(columns), point(rows), point(Fraction(element)))
    assert known(shape) == Fraction(width, rows)


def test_525_and_625_lines_at_these_elements_are_four_by_three() -> None:
    # BT.601 practice, as quoted in E. Olson's note on aspect; ITU-T H.264 table E-1, as quoted in decoders
    assert shapes.stored_shape(point(704), point(480), point(Fraction(10, 11))) == TELEVISION
    assert shapes.stored_shape(point(704), point(576), point(Fraction(12, 11))) == TELEVISION


@pytest.mark.parametrize(
    ("columns", "rows", "elements"),
    [
        # ITU-T H.264 table E-1, as quoted in decoders; DV profile tables; arithmetic: 4/3 × 576 / 702
        (720, 576, {"12/11", "16/15", "128/117"}),
        # BT.601 practice, as quoted in E. Olson's note on aspect; arithmetic: 640 / 720, 4/3 × 486 / 710.84925
        (720, 480, {"10/11", "8/9", "96000/105311"}),
        # computers store 4:3 in square elements: common practice, no source
        (768, 576, {"1", "12/11", "16/15", "128/117"}),
        (640, 480, {"1", "10/11", "8/9", "96000/105311"}),
        # HDV, DVCPRO HD (SMPTE ST 370, from memory)
        (1440, 1080, {"4/3", "1"}),
        (960, 720, {"4/3", "1"}),
        (1280, 1080, {"3/2", "1"}),
        # ITU-R BT.709, from memory: square
        (1920, 1080, set()),
    ],
)
def test_conventions_of_picture_elements(columns: int, rows: int, elements: set[str]) -> None:
    assert set(pixels.conventional_elements(columns, rows)) == {Fraction(element) for element in elements}


def test_wider_elements_of_a_wide_picture() -> None:
    # ITU-T H.264 table E-1 (idc 4: 16:11, 5: 40:33), as quoted in decoders
    assert Fraction(12, 11) * pixels.WIDER == Fraction(16, 11)
    assert Fraction(10, 11) * pixels.WIDER == Fraction(40, 33)


def test_sides_of_a_hundred_inches() -> None:
    # home-theatre distance table, and arithmetic: 87.16 × 49.02 in (±0.01)
    assert number(shapes.width(point(100 * INCH), WIDE)) / INCH == pytest.approx(87.16, abs=0.01)
    assert number(shapes.height(point(100 * INCH), WIDE)) / INCH == pytest.approx(49.02, abs=0.01)


def test_television_picture_whole_on_a_wide_screen() -> None:
    # arithmetic: 75 % of the screen; two bars of 240 px at 1920×1080
    assert known(shapes.filled_share(TELEVISION, WIDE)) == Fraction(3, 4)
    beside, above = shapes.bars(TELEVISION, WIDE)
    assert known(beside) == Fraction(240, 1920)
    assert known(above) == 0


def test_television_picture_cropped_to_a_wide_screen() -> None:
    # arithmetic: filled by cropping, 25 % of the picture is lost
    assert 1 - number(shapes.filled_share(TELEVISION, WIDE)) == 0.25


def test_a_wide_raster_has_square_elements() -> None:
    # BT.709 raster, from memory: 1920×1080, square pixels
    assert shapes.stored_shape(point(1920), point(1080), point(1)) == WIDE


def test_the_same_diagonal_shows_a_lower_and_smaller_picture() -> None:
    # arithmetic: 0.4903 / 0.6 = 0.817; squared, 0.668
    diagonal = point(1)
    before = number(shapes.height(diagonal, TELEVISION))
    shown = shapes.shown_height(shapes.width(diagonal, WIDE), shapes.height(diagonal, WIDE), TELEVISION)
    assert number(shown) / before == pytest.approx(0.817, abs=0.0005)
    area = number(shapes.area(diagonal, WIDE)) * 0.75 / number(shapes.area(diagonal, TELEVISION))
    assert area == pytest.approx(0.668, abs=0.0005)


def test_sides_of_a_television_screen() -> None:
    # arithmetic: the triangle of 3, 4 and 5
    assert known(shapes.width(point(50), TELEVISION)) == 40
    assert known(shapes.height(point(50), TELEVISION)) == 30


def test_stretched_and_turned() -> None:
    # arithmetic
    assert known(shapes.distortion(TELEVISION, WIDE)) == Fraction(1, 3)
    assert shapes.turned_shape(TELEVISION, point(90)) == point(Fraction(3, 4))
    assert shapes.turned_shape(TELEVISION, point(180)) == TELEVISION
    assert shapes.turned_shape(TELEVISION, between(0, 360)) == between(Fraction(3, 4), Fraction(4, 3))


def test_thrown_picture() -> None:
    # arithmetic: a throw ratio of 1.5 from 3 m gives a picture 2 m wide
    assert known(shapes.thrown_width(point(3), point(Fraction(3, 2)))) == 2


def test_outline_of_a_turned_device() -> None:
    # arithmetic
    assert placing.outline(point(4), point(3), 90) == (point(3), point(4))
    across, upright = placing.outline(point(1), point(1), 45)
    assert number(across) == pytest.approx(2**0.5) == number(upright)


def test_room_in_an_opening() -> None:
    # arithmetic
    assert placing.margin(point(1), point(Fraction(4, 5))) == point(Fraction(1, 5))
    assert placing.margin(point(1), point(Fraction(6, 5))) == point(Fraction(-1, 5))


def test_scaling() -> None:
    # arithmetic
    assert known(pixels.scaling(point(1080), point(480), point(0))) == Fraction(9, 4)
    assert known(pixels.scaling(point(1080), point(480), point(Fraction(1, 10)))) == Fraction(5, 2)
    assert pixels.whole_multiple(Fraction(1080, 540))
    assert not pixels.whole_multiple(Fraction(1080, 576))


def test_what_overscan_hides() -> None:
    # arithmetic: 5 % of the width and of the height
    assert known(pixels.seen_after_overscan(point(Fraction(1, 20)))) == Fraction("0.9025")


def test_lines_that_a_picture_takes_by_its_fit() -> None:
    # arithmetic: 16:9 whole on 4:3 takes 75 % of the height; 4:3 cropped to 16:9 would need 4/3 of it
    assert known(pixels.shown_lines(point(480), point(Fraction(3, 4)), "whole")) == 360
    assert known(pixels.shown_lines(point(1080), point(Fraction(4, 3)), "cropped")) == 1440
    assert known(pixels.shown_lines(point(1080), point(Fraction(4, 3)), "stretched")) == 1080
