"""What an eye can tell apart, and from how far."""

from __future__ import annotations

from fractions import Fraction

from intent.values.bounds import point, times
from intent.values.regions import Interval

PITCHES_TO_ONE_ARC_MINUTE = point(Fraction("3437.75"))
"""How many times its pitch a structure must be away to measure one arc minute: 10,800 / π, cut to two places."""


def fading_distance(pitch: Interval) -> Interval:
    """The distance in metres beyond which lines so far apart (in metres) are no longer told apart.

    An eye of normal acuity tells apart what is one arc minute apart. Arithmetic from that; agrees with a home-theatre
    distance table (a 1080-line picture of 100 in: 13 ft).
    """
    return times(pitch, PITCHES_TO_ONE_ARC_MINUTE)
