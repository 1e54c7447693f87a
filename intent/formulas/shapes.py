"""A picture of one shape on a screen of another: sizes, what is shown, what is lost, what is drawn out.

All is arithmetic of rectangles; a shape is width over height. Lengths are in metres, areas in square metres.
"""

from __future__ import annotations

from fractions import Fraction

from intent.values.bounds import (
    ONE,
    hull,
    larger,
    minus,
    over,
    plus,
    point,
    root,
    scaled,
    smaller,
    square,
    times,
)
from intent.values.regions import Interval

HALF = Fraction(1, 2)


def width(diagonal: Interval, shape: Interval) -> Interval:
    """The width of a screen, from its diagonal and its shape."""
    return times(diagonal, root(over(ONE, plus(ONE, square(over(ONE, shape))))))


def height(diagonal: Interval, shape: Interval) -> Interval:
    """The height of a screen, from its diagonal and its shape."""
    return times(diagonal, root(over(ONE, plus(ONE, square(shape)))))


def area(diagonal: Interval, shape: Interval) -> Interval:
    """The area of a screen, from its diagonal and its shape; exact, for no root is taken."""
    ends = [_area_of_unit(end) for end in (shape.low, shape.high)]
    squarish = [HALF] if shape.holds(ONE) else []
    return times(square(diagonal), Interval(min(ends), max([*ends, *squarish])))


def _area_of_unit(shape: Fraction | None) -> Fraction:
    """The area of a screen of diagonal 1: greatest for a square, nothing for a line."""
    return shape / (1 + shape**2) if shape else Fraction(0)


def filled_share(picture: Interval, screen: Interval) -> Interval:
    """The share of a screen that a picture shown whole fills; also the share of it seen when it is cropped to fill."""
    ratio = over(picture, screen)
    return smaller(ONE, smaller(ratio, over(ONE, ratio)))


def shown_width(screen_width: Interval, screen_height: Interval, picture: Interval) -> Interval:
    """The width of a picture shown whole."""
    return smaller(screen_width, times(screen_height, picture))


def shown_height(screen_width: Interval, screen_height: Interval, picture: Interval) -> Interval:
    """The height of a picture shown whole."""
    return smaller(screen_height, over(screen_width, picture))


def distortion(picture: Interval, screen: Interval) -> Interval:
    """How much a stretched picture is drawn out in one direction against the other, as a share: 4:3 on 16:9 is 1/3."""
    ratio = over(picture, screen)
    return minus(larger(ONE, larger(ratio, over(ONE, ratio))), ONE)


def stored_shape(columns: Interval, rows: Interval, pixel: Interval) -> Interval:
    """The shape of a picture, from its raster and the shape of its picture elements (ITU-R BT.601 practice)."""
    return times(over(columns, rows), pixel)


def turned_shape(shape: Interval, turn: Interval) -> Interval:
    """The shape of a picture turned on the screen by an angle in degrees: a quarter turn lays it on its side.

    Of a slanting picture it is the shape of the upright rectangle about it, which lies between the two.
    """
    return turned_side(shape, over(ONE, shape), turn)


def turned_side(side: Interval, other: Interval, turn: Interval) -> Interval:
    """What lies in a side's place after a turn in degrees: the other one after a quarter turn."""
    if turn in (point(0), point(180)):
        return side
    return other if turn in (point(90), point(270)) else hull([side, other])


def bars(picture: Interval, screen: Interval) -> tuple[Interval, Interval]:
    """The share of the screen's width, and of its height, that each of two bars takes about a picture shown whole."""
    ratio = over(picture, screen)
    return _bar(ratio), _bar(over(ONE, ratio))


def _bar(filled: Interval) -> Interval:
    return scaled(minus(ONE, smaller(filled, ONE)), HALF)


def thrown_width(distance: Interval, ratio: Interval) -> Interval:
    """The width of a projected picture: the distance from the lens to the screen over the throw ratio."""
    return over(distance, ratio)
