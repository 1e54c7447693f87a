"""Wear: how often something is used, and how often it must be replaced.

Times in seconds, or in any one unit; passes and copies as numbers. All of it is arithmetic.
"""

from __future__ import annotations

from fractions import Fraction
from math import ceil

from intent.values.bounds import over, plus, point
from intent.values.regions import Interval


def passes(time: Interval, loop: Interval) -> Interval:
    """How often a loop of some length is run in some time."""
    return over(time, loop)


def time_in_light(time: Interval, slides: Interval) -> Interval:
    """For how long each of some slides is lit, that take turns in one gate."""
    return over(time, slides)


def copies_needed(use: Interval, life: Interval) -> Interval:
    """How many it takes, one after another, for so much use, each of which has so long a life; at least one."""
    shares = over(use, life)
    low = max(1, ceil(shares.low or 0))
    return Interval(Fraction(low), None if shares.high is None else Fraction(max(low, ceil(shares.high))))


def replacements(use: Interval, life: Interval) -> Interval:
    """How often something is replaced in so much use, its use before now counted."""
    return plus(copies_needed(use, life), point(-1))
