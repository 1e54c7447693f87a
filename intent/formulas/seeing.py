"""What an eye can tell apart, from how far, how it follows what moves, and when it sees light flicker.

Distances in metres, times in seconds, angles in degrees, luminance in cd/m², frequencies in Hz.
"""

from __future__ import annotations

from fractions import Fraction
from math import log10

from intent.values.bounds import ZERO, between, larger, plus, point, rising, smaller, times
from intent.values.regions import Interval

PITCHES_TO_ONE_ARC_MINUTE = point(Fraction("3437.75"))
"""How many times its pitch a structure must be away to measure one arc minute: 10,800 / π, cut to two places."""

FLICKER_SLOPE, FLICKER_AT_ONE = 12.4, 37
"""In Hz: by how much the frequency at which flicker fuses grows as light grows tenfold, and what it is at 1 cd/m²."""
PEOPLE = between(-10, 10)
"""In Hz: how far people, and the middle and the edge of sight, differ in it (common practice, no source)."""
FASTEST = point(100)
"""In Hz: the fastest flicker seen of a bright field of 10°, at any luminance."""


def smear(speed: Interval, hold_time: Interval) -> Interval:
    """How far something smears that moves while each of its pictures stays, and the eye follows it: v × t.

    In the unit of the speed times seconds. Arithmetic; that held pictures blur so is due to T. Kurita, Moving picture
    quality improvement for hold-type AM-LCDs, SID 2001 (from memory).
    """
    return times(speed, hold_time)


def fusion_frequency(luminance: Interval) -> Interval:
    """The frequency below which light that pulses is seen to flicker, for all people and all of the field of sight.

    The law of Ferry (1892) and Porter (1902): it grows with the logarithm of the luminance, n = a log₁₀ L + b;
    constants of Porter as quoted in handbooks (from memory). No flicker is seen above about 100 Hz:
    M. Fernandez-Alonso, W. Innes, J. C. A. Read, Peripheral flicker fusion at high luminance, Vision 7 (2023) 26.
    """
    seen = Interval(luminance.low or None, luminance.high or None)
    fused = rising(lambda light: FLICKER_SLOPE * log10(light) + FLICKER_AT_ONE, seen)
    return smaller(larger(plus(fused, PEOPLE), ZERO), FASTEST)


def fading_distance(pitch: Interval) -> Interval:
    """The distance in metres beyond which lines so far apart (in metres) are no longer told apart.

    An eye of normal acuity tells apart what is one arc minute apart. Arithmetic from that; agrees with a home-theatre
    distance table (a 1080-line picture of 100 in: 13 ft).
    """
    return times(pitch, PITCHES_TO_ONE_ARC_MINUTE)
