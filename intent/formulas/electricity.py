"""Mains electricity and heat: currents, circuits, what a supply may be, and heat in other measures.

Power in watts, apparent power in volt-amperes, voltage in volts, current in amperes, frequency in hertz. The formulas
are for planning: local codes come first, and what a circuit bears is for a licensed electrician to judge.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from intent.values.bounds import (
    ONE,
    between,
    hull,
    over,
    point,
    root,
    scaled,
    smaller,
    surely_within,
    times,
    total,
)
from intent.values.regions import Interval
from intent.values.sets import Answer
from intent.values.units import SECONDS_AN_HOUR

CONTINUOUS_SHARE = point(Fraction(4, 5))
"""What a load may draw of a circuit's rating that is on for three hours or more: NEC (NFPA 70) 210.20(A), as quoted."""
CONTINUOUS_FROM = point(3 * SECONDS_AN_HOUR)
"""For how many seconds a load is on that counts so (the same)."""


@dataclass(frozen=True, slots=True)
class Supply:
    """A supply of mains, in volts."""

    names: Interval
    """The voltages by which it goes."""
    band: Interval
    """Between which it lies."""


SUPPLIES = (
    Supply(between(110, 127), between(114, 126)),
    Supply(between(200, 208), between(197, 218)),
    Supply(between(220, 240), between(207, 253)),
)
"""120 V: ANSI C84.1 range A, service, as quoted, and its names, from memory; 208 V, by which 200 V devices are fed: the
same, from memory; 230 V: EN 50160, 95 % of ten-minute means, as quoted, and its names of before HD 472, from memory."""
THREE_PHASES = root(point(3))
"""The voltage between two conductors of three phases over that of one against the neutral (arithmetic of sines)."""
OTHER_SHARE = Fraction(1, 10)
"""How far any other supply may be from its voltage (common practice, no source)."""
FREQUENCY_SHARE = Fraction(1, 100)
"""How far a supply may be from its frequency: EN 50160, from memory."""
EXTRA_LOW_VOLTAGE = point(50)
"""Up to this, in volts, a device is fed by a supply of its own and not by the mains: IEC 61140, from memory."""
LEAKAGE_SHARE = point(Fraction(3, 10))
"""Of the rated residual current, beyond which tripping without a fault is likely: IEC 60364-5-53, from memory."""
BTU_AN_HOUR = Fraction("1055.05585262") / SECONDS_AN_HOUR
"""In watts: the British thermal unit (IT) is 1055.05585262 J, by definition."""


def apparent_power(power: Interval, power_factor: Interval) -> Interval:
    """S = P/λ, in volt-amperes: no less than the power, for the power factor is at most one (IEC 60050-131-11-46)."""
    return over(power, smaller(power_factor, ONE))


def current(power: Interval, voltage: Interval) -> Interval:
    """I = S/U, in amperes, of an apparent power at an alternating voltage of one phase (IEC 60050-131-11-41)."""
    return over(power, voltage)


def may_draw(rating: Interval, share: Interval) -> Interval:
    """The current that a circuit of a rating may carry, in amperes: I = share × rating (NEC 210.20(A))."""
    return times(rating, share)


def circuits_needed(currents: Iterable[Interval], each: Interval) -> Interval:
    """How many circuits carry some currents, none of which can be divided; arithmetic.

    At least as many as the sum fills; at most as many as are opened when every device goes to the first circuit that
    has room for it: all but one of these then carry more than what is left beside the largest; and never more
    than one a device.
    """
    every = list(currents)
    summed = total(every)
    low = min(_whole(summed.low or Fraction(0), each.high), Fraction(len(every)))
    if summed.high is None or each.low is None or any(not surely_within(one, each) for one in every):
        return Interval(low, None)
    if summed.high <= each.low:
        return Interval(low, Fraction(min(1, ceil(summed.high))))
    beside_largest = each.low - max(one.high or Fraction(0) for one in every)
    opened = ceil(summed.high / beside_largest) if beside_largest else len(every)
    return Interval(low, Fraction(min(opened, len(every))))


def _whole(load: Fraction, each: Fraction | None) -> Fraction:
    """How many circuits a load fills; where nothing is known of what one carries, one if there is any load."""
    if each is None or each <= 0:
        return Fraction(min(1, ceil(load)))
    return Fraction(ceil(load / each))


def suits(built: Interval, mains: Interval) -> Answer:
    """Whether a device that is built for some voltage may be connected to a supply that is named by some voltage.

    It may where one supply goes by both names (110, 115 and 120 V; 220, 230 and 240 V). Else it takes a tenth either
    way of what it is built for, and surely does not suit where the supply's name lies beyond that, or all of its band.
    A rated voltage given as a range is what the device takes.
    """
    takes = hull([scaled(built, 1 - OTHER_SHARE), scaled(built, 1 + OTHER_SHARE)])
    if mains.low is None or mains.high is None:
        return Answer.OUT if mains.meet(takes).is_empty else Answer.OPEN
    ends = {_suits(built, takes, point(end)) for end in (mains.low, mains.high)}
    if Answer.IN in ends and not _is_range(built):
        return Answer.OPEN
    if len(ends) == 1 and (mains.low == mains.high or Answer.IN in ends):
        return ends.pop()
    return Answer.OUT if ends == {Answer.OUT} and mains.meet(takes).is_empty else Answer.OPEN


def suits_frequency(built: Interval, given: Interval) -> Answer:
    """Whether a device that is built for some frequency runs as it should on a supply that is named by some frequency.

    Both may be off by a hundredth. A rated frequency given as a range is what the device takes.
    """
    takes = frequency_band(built)
    if takes.meet(frequency_band(given)).is_empty:
        return Answer.OUT
    is_known = given.low is not None and given.high is not None and _is_range(built)
    return Answer.IN if is_known and takes.holds(given) else Answer.OPEN


def _is_range(built: Interval) -> bool:
    """Whether both ends of what a device takes are known: `at most 240 V` says only that it is no more."""
    return bool(built.low) and built.high is not None


def _suits(built: Interval, takes: Interval, mains: Interval) -> Answer:
    named = [supply for supply in SUPPLIES if supply.names.holds(mains)]
    if built.holds(mains) or any(not supply.names.meet(built).is_empty for supply in named):
        return Answer.IN
    bands = [supply.band for supply in named]
    band = hull(bands or [times(mains, between(1 - OTHER_SHARE, 1 + OTHER_SHARE))])
    if not takes.holds(mains) or takes.meet(band).is_empty:
        return Answer.OUT
    return Answer.IN if takes.holds(band) else Answer.OPEN


def band_of(mains: Interval) -> Interval:
    """Between which voltages a supply lies that is named by some voltage."""
    named = [supply.band for supply in SUPPLIES if supply.names.holds(mains)]
    return hull(named or [times(mains, between(1 - OTHER_SHARE, 1 + OTHER_SHARE))])


def is_north_american(mains: Interval, frequency: Interval) -> bool:
    """Whether a supply is surely one of North America, by its name and, of 240 V, its frequency."""
    if any(place.holds(mains) for place in (between(110, 127), point(208))):
        return not surely_within(frequency, point(50))
    return mains == point(240) and frequency == point(60)


def frequency_band(frequency: Interval) -> Interval:
    """Between which frequencies a supply may lie, in hertz: ±1 % (EN 50160, from memory)."""
    return times(frequency, between(1 - FREQUENCY_SHARE, 1 + FREQUENCY_SHARE))


def in_btu_an_hour(heat: Interval) -> Interval:
    """A flow of heat in British thermal units (IT) an hour, from watts."""
    return over(heat, point(BTU_AN_HOUR))
