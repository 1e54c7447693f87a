"""Light on screens and objects: what a surface throws back, and the contrast that is left.

Luminance in cd/m², illuminance in lx, reflectance as a share.
"""

from __future__ import annotations

from fractions import Fraction

from intent.bounds import over, plus, point, times
from intent.regions import Interval

NOTHING = point(0)
PI = point(Fraction("3.141592653589793"))


def reflected_luminance(reflectance: Interval, illuminance: Interval) -> Interval:
    """The luminance of a matt surface in the light of a room: L = ρE/π (CIE S 017, 17-24-063)."""
    return over(times(reflectance, illuminance), PI)


def contrast(white: Interval, black: Interval, reflected: Interval = NOTHING) -> Interval:
    """White over black, each with what the screen throws back; it grows with white and shrinks with the others.

    Arithmetic. White is taken to be no darker than black.
    """
    least = _ratio(white.low, black.high, reflected.high)
    most = _ratio(white.high, black.low, reflected.low or Fraction(0))
    return Interval(max(least or Fraction(1), Fraction(1)), most)


def _ratio(white: Fraction | None, black: Fraction | None, reflected: Fraction | None) -> Fraction | None:
    if white is None or black is None or reflected is None or black + reflected == 0:
        return None
    return (white + reflected) / (black + reflected)


def black_from(white: Interval, ratio: Interval) -> Interval:
    """The black of a display, from its white and its contrast in the dark."""
    return over(white, ratio)


def dose(illuminance: Interval, seconds: Interval) -> Interval:
    """Luminous exposure in lux hours (CIE 157:2004)."""
    return times(illuminance, over(seconds, Interval(Fraction(3600), Fraction(3600))))


def with_reflection(luminance: Interval, reflected: Interval) -> Interval:
    """What is seen of a luminance in the light of a room."""
    return plus(luminance, reflected)
