"""Lines, columns and picture elements: how wide a stored picture is meant to be, and how it meets another raster.

How many columns of a stored line hold picture is a convention that differs between tools (702, 704, 711 or 720), and
the shape of a picture element with it. Shapes are width over height.
"""

from __future__ import annotations

from fractions import Fraction

from intent.values.bounds import (
    NATURAL,
    ONE,
    Number,
    hull,
    larger,
    minus,
    over,
    point,
    smaller,
    square,
    times,
)
from intent.values.regions import Interval

SAMPLES_A_SECOND = 13_500_000
"""Of luminance (ITU-R BT.601-7)."""
ACTIVE_LINE = {625: Fraction(52, 10**6), 525: Fraction("52.6555") / 10**6}
"""How many seconds of a line hold picture (ITU-R BT.470-6, table 1-1), by lines of the whole frame."""
LINES_OF_A_FRAME = {576: 625, 480: 525, 486: 525}
"""The lines of the whole frame, by the stored rows that hold picture (ITU-R BT.601 practice)."""
ROWS = {625: 576, 525: 486}
"""How many rows hold picture, by lines of the whole frame (ITU-R BT.601 practice)."""
CONVENTIONS = {625: (Fraction(12, 11), Fraction(16, 15)), 525: (Fraction(10, 11), Fraction(8, 9))}
"""Picture elements of a 4:3 picture of 704 columns (ITU-T H.264, table E-1), and of 720 columns (DV profiles)."""
WIDER = Fraction(4, 3)
"""How much wider the elements of a 16:9 picture are than those of a 4:3 picture in the same raster."""


SQUARE_FROM = 720
"""Rows from which picture elements are square where nothing is said (ITU-R BT.709, from memory)."""
NARROWED = {
    (1440, 1080): Fraction(4, 3),
    (960, 720): Fraction(4, 3),
    (1280, 1080): Fraction(3, 2),
}
"""Rasters from 720 rows up in which a picture of 16:9 is stored narrowed as a rule, and the shape of its elements then:
HDV and DVCPRO HD (SMPTE ST 370; from memory)."""
SQUARE_RASTERS = frozenset({(640, 480), (768, 576)})
"""Rasters of fewer rows that may hold a 4:3 picture in square elements (common practice of computers, no source)."""


def active_samples(lines: int) -> Fraction:
    """How many samples of a line hold picture, of a frame of 625 or 525 lines (ITU-R BT.601-7 and BT.470-6)."""
    return SAMPLES_A_SECOND * ACTIVE_LINE[lines]


def conventional_elements(columns: Number, rows: Number) -> tuple[Fraction, ...]:
    """The shapes that picture elements have by one convention or another in a raster; none where there is none.

    Of fewer than 720 rows those of a 4:3 picture: by the digital conventions, as the analogue picture is sampled, and
    square where such a raster is one of computers. Else what is usual for a raster in which pictures are narrowed.
    """
    raster = int(columns), int(rows)
    if raster in NARROWED:
        return NARROWED[raster], Fraction(1)
    lines = LINES_OF_A_FRAME.get(raster[1])
    if lines is None:
        return ()
    square = [Fraction(1)] if raster in SQUARE_RASTERS else []
    return (*square, *CONVENTIONS[lines], Fraction(4, 3) * ROWS[lines] / active_samples(lines))


def elements_unsaid(columns: Interval, rows: Interval) -> Interval:
    """The shape that picture elements may have where nothing is said of it.

    Square from 720 rows up, but for rasters in which pictures are narrowed as a rule; below it may be any.
    """
    if (rows.low or 0) < SQUARE_FROM:
        return NATURAL
    narrowed = [
        point(shape)
        for (across, down), shape in NARROWED.items()
        if columns.holds(point(across)) and rows.holds(point(down))
    ]
    return hull([ONE, *narrowed])


def shown_lines(lines: Interval, share: Interval, fit: str) -> Interval:
    """How many lines of a screen a picture would take, of those that it has, by fit; more than it has if cropped.

    The share is that of the screen which the picture fills if shown whole, on the axis of these lines. Arithmetic.
    """
    if fit == "stretched":
        return lines
    return times(lines, smaller(share, point(1)) if fit == "whole" else larger(share, point(1)))


def scaling(shown: Interval, stored: Interval, overscan: Interval) -> Interval:
    """How many lines of a display show one of the picture, of which a share lies behind the mask. Arithmetic."""
    return over(shown, seen_lines(stored, overscan))


def seen_lines(lines: Interval, overscan: Interval) -> Interval:
    """How many lines are seen of a picture of which a share of its height lies behind the mask. Arithmetic."""
    return times(lines, minus(ONE, smaller(overscan, ONE)))


def pitch(side: Interval, elements: Interval) -> Interval:
    """From one line or column to the next, in metres, from the length of a side and how many it holds. Arithmetic."""
    return over(side, elements)


def whole_multiple(factor: Fraction) -> bool:
    """Whether every line of a picture is shown by the same number of lines."""
    return factor.denominator == 1


def seen_after_overscan(overscan: Interval) -> Interval:
    """The share of a picture's area that is seen when so much of its width and height lies behind the mask."""
    return square(minus(point(1), smaller(overscan, point(1))))
