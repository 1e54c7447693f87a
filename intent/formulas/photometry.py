"""Light on screens and objects: what a surface throws back, the contrast that is left, and what light may do harm.

Luminance in cd/m², illuminance in lx, light output in lm, reflectance as a share, luminous exposure in lx·h.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from fractions import Fraction

from intent.values.bounds import NATURAL, ZERO, over, point, scaled, times
from intent.values.regions import Interval
from intent.values.units import in_unit

PI = point(Fraction("3.141592653589793"))
TELEVISION_GAMMA = point(Fraction("2.4"))
"""The exponent of a television display in a studio (ITU-R BT.1886)."""
DAYS_A_YEAR = point(365)
USUAL_ULTRAVIOLET = point(75)
"""In µW/lm: the most that museums have long asked for (G. Thomson, The Museum Environment, from memory)."""


@dataclass(frozen=True, slots=True)
class Allowance:
    """The most light that may fall on an object: in lx at a time, and in lx·h in a year."""

    illuminance: Interval
    dose: Interval


class Responsivity(Enum):
    """How soon light harms an object, and what light it may have (CIE 157:2004, as quoted)."""

    NONE = Allowance(NATURAL, NATURAL)
    LOW = Allowance(point(200), point(600_000))
    MEDIUM = Allowance(point(50), point(150_000))
    HIGH = Allowance(point(50), point(15_000))


def reflected_luminance(reflectance: Interval, illuminance: Interval) -> Interval:
    """The luminance of a matt surface in the light of a room: L = ρE/π (CIE S 017, 17-24-063)."""
    return over(times(reflectance, illuminance), PI)


def contrast(white: Interval, black: Interval, reflected: Interval = ZERO) -> Interval:
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


def projected_luminance(light_output: Interval, area: Interval, gain: Interval) -> Interval:
    """The white of a projected picture: light over area falls on the screen, and L = gE/π comes back.

    The gain is that of the screen against a matt white one (CIE S 017, 17-24-063, M = πL, and arithmetic). All the
    light is taken to fall evenly on the area, in m².
    """
    return over(times(gain, over(light_output, area)), PI)


def displayed_luminance(signal: Fraction, white: Interval, black: Interval, gamma: Interval) -> Interval:
    """The luminance of a signal from 0 to 1: L = (V·Lw^(1/γ) + (1 − V)·Lb^(1/γ))^γ.

    The formula of ITU-R BT.1886, annex 1, with its constants a and b put in. It grows with white and black, and
    shrinks as gamma grows; gamma is more than nothing. White is taken to be no darker than black.
    """
    least = _displayed(signal, white.low or Fraction(0), black.low or Fraction(0), gamma.high)
    if white.high is None:
        return Interval(least, None)
    darkest = white.high if black.high is None else min(black.high, white.high)
    return Interval(least, _displayed(signal, white.high, darkest, gamma.low or Fraction(0)))


def _displayed(signal: Fraction, white: Fraction, black: Fraction, gamma: Fraction | None) -> Fraction:
    """At the ends of gamma: with none the picture is as bright as its white, without end it nears a geometric mean."""
    if gamma == 0:
        return white if signal else black
    share, base, top = float(signal), float(black), float(white)
    if gamma is None:
        return Fraction(0) if black == 0 else Fraction(base * (top / base) ** share)
    root = 1 / float(gamma)
    return Fraction((share * top**root + (1 - share) * base**root) ** float(gamma))


def dose(illuminance: Interval, seconds: Interval) -> Interval:
    """Luminous exposure in lux hours (CIE 157:2004)."""
    return times(illuminance, in_unit(seconds, "h"))


def ultraviolet_irradiance(illuminance: Interval, content: Interval) -> Interval:
    """The ultraviolet power on a surface in mW/m², from the light on it and its ultraviolet in µW/lm. Definition."""
    return scaled(times(illuminance, content), Fraction(1, 1000))
