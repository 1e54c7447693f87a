"""Sound: levels and their sums, distance, what a room gives back, the speed of sound, and how long ears bear it.

Levels in decibels above 20 µPa, powers in watts, lengths in metres, areas in square metres, volumes in cubic metres,
times in seconds, temperatures in kelvins. Values are bounds.
"""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from math import log, log10, pi

from intent.values.bounds import (
    ONE,
    ZERO,
    between,
    larger,
    minus,
    natural,
    over,
    plus,
    point,
    root,
    scaled,
    square,
    times,
    total,
)
from intent.values.regions import Interval

SABINE = 24 * log(10)
"""Times the volume over the speed of sound and the reverberation time, the absorption of a room: 0.161 at 343 m/s."""
ZERO_CELSIUS = Fraction("273.15")
SPEED_AT_ZERO = Fraction("331.3")
"""Metres a second in dry air of 0 °C (handbook value)."""
DETECTED = between(Fraction(-45, 1000), Fraction(125, 1000))
"""Seconds by which sound may come after the picture, unnoticed by half of the viewers (ITU-R BT.1359-1)."""
ACCEPTED = between(Fraction(-90, 1000), Fraction(185, 1000))
"""The same, without its being found unacceptable (ITU-R BT.1359-1)."""
_LOUDEST = Fraction(1000)
"""Decibels, far beyond what air can carry (194 dB)."""
WORKING_DAY = 8 * 3600
"""The seconds to which the levels of noise at work refer (ISO 1999)."""


def level(power: Interval) -> Interval:
    """Ten times the logarithm of a ratio of powers; without end below where that may be nothing."""
    low, high = (None if not end else _decibels(end) for end in (power.low, power.high))
    return Interval(low, high)


def _decibels(ratio: Fraction) -> Fraction:
    """Of whole numbers, since a ratio may be too great or too small for a machine's own."""
    return Fraction(10 * (log10(ratio.numerator) - log10(ratio.denominator)))


def energy(decibels: Interval) -> Interval:
    """The ratio of powers that a level stands for; nothing where it may be as low as anything.

    A level beyond all that there is counts as without end.
    """
    low = Fraction(0) if decibels.low is None else _ratio(min(decibels.low, _LOUDEST))
    high = None if decibels.high is None or decibels.high > _LOUDEST else _ratio(decibels.high)
    return Interval(low, high)


def _ratio(decibels: Fraction) -> Fraction:
    return Fraction(10 ** float(max(decibels, -_LOUDEST) / 10))


def together(levels: Iterable[Interval]) -> Interval:
    """The level of several sounds that are not alike in phase: their energies added. Arithmetic.

    Two of 60 dB give 63 dB.
    """
    return level(total(energy(one) for one in levels))


def at_one_metre(sensitivity: Interval, power: Interval) -> Interval:
    """The level of a loudspeaker at one metre, from its sensitivity at 1 W and 1 m. Arithmetic.

    90 dB and 32 W give 105 dB.
    """
    return plus(sensitivity, level(power))


def from_power(power_level: Interval, directivity: Interval) -> Interval:
    """The level at one metre of a device by the level of its sound power: 10 lg (4 π / Q) less (ISO 3744).

    11 dB less where it sounds evenly on all sides, 8 dB less on a floor.
    """
    return minus(power_level, level(over(point(Fraction(4 * pi)), directivity)))


def at_distance(one_metre: Interval, distance: Interval, returned: Interval = ZERO) -> Interval:
    """The level at a distance from the level at one metre in the free field: twice as far, 6 dB less.

    ``returned`` is what the room gives back, as a share of the energy at one metre (Hopkins and Stryker 1948: the
    energy is in proportion to Q / (4 π r²) + 4 / R).
    """
    direct = over(ONE, square(natural(distance)))
    return plus(one_metre, level(plus(Interval(direct.low or Fraction(0), direct.high), returned)))


def absorption(volume: Interval, reverberation: Interval, speed: Interval) -> Interval:
    """The absorption area of a room by Sabine: 0.161 V / T in air of 20 °C."""
    return scaled(over(volume, times(speed, reverberation)), Fraction(SABINE))


def returned(absorbing: Interval, surface: Interval, directivity: Interval) -> Interval:
    """What a room gives back of a sound, as a share of the energy at one metre: 16 π / (Q R).

    R is the room constant, A / (1 - A / S); where all is absorbed nothing comes back (Hopkins and Stryker 1948). A
    directivity of which nothing is said may be any from 1 on.
    """
    share = over(absorbing, surface)
    kept = natural(minus(ONE, share))
    constant_over = times(over(kept, absorbing), over(ONE, larger(directivity, ONE)))
    back = scaled(constant_over, Fraction(16 * pi))
    return Interval(max(back.low or Fraction(0), Fraction(0)), back.high)


def speed_of_sound(temperature: Interval) -> Interval:
    """Metres a second in dry air: 331.3 √(T / 273.15). In 20 °C, 343.2 (handbook of acoustics)."""
    return scaled(root(scaled(natural(temperature), 1 / ZERO_CELSIUS)), SPEED_AT_ZERO)


def time_within(day_level: Fraction, decibels: Interval) -> Interval:
    """For how many seconds a day a level may be heard until it equals eight hours at a given one.

    Twice the energy, half the time: 3 dB more (ISO 1999, Directive 2003/10/EC, NIOSH 98-126).
    """
    return scaled(energy(minus(point(day_level), decibels)), WORKING_DAY)
