"""What a cable takes from a signal. Lengths in metres, losses in decibels, frequencies in hertz."""

from __future__ import annotations

from fractions import Fraction

from intent.values.bounds import hull, over, root, scaled, times
from intent.values.regions import Interval

STATED_OVER = 100
"""Metres of cable for which a loss is stated."""


def loss(per_hundred_metres: Interval, length: Interval) -> Interval:
    """The decibels that a cable takes. Arithmetic: in proportion to its length."""
    return scaled(times(per_hundred_metres, length), Fraction(1, STATED_OVER))


def loss_at(stated: Interval, frequency: Interval, stated_at: Interval) -> Interval:
    """The loss of a cable at another frequency than the stated one.

    The loss in the conductors grows with the root of the frequency (skin effect) and that in the dielectric with the
    frequency itself, so the whole lies between the two (transmission line theory; textbook, from memory).
    """
    ratio = over(frequency, stated_at)
    return times(stated, hull([root(ratio), ratio]))
