"""The colour of white: how warm it is, from its chromaticity.

Chromaticities x, y of CIE 1931; colour temperatures in kelvins; mireds, of which equal steps look about equal.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import pairwise
from math import hypot

from intent.values.bounds import over, point
from intent.values.regions import Interval

Chromaticity = tuple[Fraction, Fraction]

MILLION = point(10**6)

_LINES = (
    (0, 0.18006, 0.26352, -0.24341),
    (10, 0.18066, 0.26589, -0.25479),
    (20, 0.18133, 0.26846, -0.26876),
    (30, 0.18208, 0.27119, -0.28539),
    (40, 0.18293, 0.27407, -0.30470),
    (50, 0.18388, 0.27709, -0.32675),
    (60, 0.18494, 0.28021, -0.35156),
    (70, 0.18611, 0.28342, -0.37915),
    (80, 0.18740, 0.28668, -0.40955),
    (90, 0.18880, 0.28997, -0.44278),
    (100, 0.19032, 0.29326, -0.47888),
    (125, 0.19462, 0.30141, -0.58204),
    (150, 0.19962, 0.30921, -0.70471),
    (175, 0.20525, 0.31647, -0.84901),
    (200, 0.21142, 0.32312, -1.0182),
    (225, 0.21807, 0.32909, -1.2168),
    (250, 0.22511, 0.33439, -1.4512),
    (275, 0.23247, 0.33904, -1.7298),
    (300, 0.24010, 0.34308, -2.0637),
    (325, 0.24792, 0.34655, -2.4681),
    (350, 0.25591, 0.34951, -2.9641),
    (375, 0.26400, 0.35200, -3.5814),
    (400, 0.27218, 0.35407, -4.3633),
    (425, 0.28039, 0.35577, -5.3762),
    (450, 0.28863, 0.35714, -6.7262),
    (475, 0.29685, 0.35823, -8.5955),
    (500, 0.30505, 0.35907, -11.324),
    (525, 0.31320, 0.35968, -15.628),
    (550, 0.32129, 0.36011, -23.325),
    (575, 0.32931, 0.36038, -40.770),
    (600, 0.33724, 0.36051, -116.45),
)
"""Mireds; u and v (CIE 1960) of the black body that hot, and the slope of the line of whites as warm as it."""


def mireds(temperature: Interval) -> Interval:
    """A million over the colour temperature in kelvins: the more, the warmer. Arithmetic, by definition."""
    return over(MILLION, temperature)


def correlated_temperature(white: Chromaticity) -> Fraction:
    """The temperature in kelvins of the black body that a white is nearest to in colour.

    A. R. Robertson, Computation of correlated color temperature and distribution temperature, J. Opt. Soc. Am. 58
    (1968) 1528, with its 31 lines, that of 325 mireds as corrected later (both as quoted in `colour-science`). Raises
    ValueError for what is warmer or cooler than its lines, 1667 K and less.
    """
    for (near, before), (far, after) in pairwise(_distances(white)):
        if before >= 0 > after:
            return Fraction(10**6 / (near + (far - near) * before / (before - after)))
    raise ValueError(f"a white without a colour temperature: {float(white[0])}, {float(white[1])}")


def _distances(white: Chromaticity) -> Iterator[tuple[int, float]]:
    """How far a white lies to one side of each line: where that turns negative, the line was passed."""
    x, y = float(white[0]), float(white[1])
    scale = 12 * y - 2 * x + 3
    u, v = 4 * x / scale, 6 * y / scale
    for mired, line_u, line_v, slope in _LINES:
        yield mired, ((v - line_v) - slope * (u - line_u)) / hypot(1, slope)
