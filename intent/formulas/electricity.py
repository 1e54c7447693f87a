"""Mains electricity and heat: currents, circuits, what a supply may be, and heat in other measures.

Power in watts, apparent power in volt-amperes, voltage in volts, current in amperes, frequency in hertz. The formulas
are for planning: local codes come first, and what a circuit bears is for a licensed electrician to judge.
"""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from math import ceil

from intent.values.bounds import ONE, between, hull, over, point, smaller, surely_within, times, total
from intent.values.regions import Interval
from intent.values.units import SECONDS_AN_HOUR

CONTINUOUS_SHARE = point(Fraction(4, 5))
"""What a load may draw of a circuit's rating that is on for three hours or more: NEC (NFPA 70) 210.20(A), as quoted."""
CONTINUOUS_FROM = point(3 * SECONDS_AN_HOUR)
"""For how many seconds a load is on that counts so (the same)."""
SUPPLY_BANDS = (between(114, 126), between(207, 253))
"""120 V: ANSI C84.1 range A, service, as quoted; 230 V: EN 50160, 95 % of ten-minute means, as quoted."""
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
    has room for it: all but one of these then carry more than what is left beside the largest.
    """
    every = list(currents)
    summed = total(every)
    low = _whole(summed.low or Fraction(0), each.high)
    if summed.high is None or each.low is None or any(not surely_within(one, each) for one in every):
        return Interval(low, None)
    if summed.high <= each.low:
        return Interval(low, Fraction(min(1, ceil(summed.high))))
    beside_largest = each.low - max(one.high or Fraction(0) for one in every)
    return Interval(low, Fraction(ceil(summed.high / beside_largest)) if beside_largest else None)


def _whole(load: Fraction, each: Fraction | None) -> Fraction:
    """How many circuits a load fills; where nothing is known of what one carries, one if there is any load."""
    if each is None or each <= 0:
        return Fraction(min(1, ceil(load)))
    return Fraction(ceil(load / each))


def supply_band(voltage: Interval) -> Interval:
    """Between which voltages a supply of one voltage may lie, in volts, and a device built for it works.

    EN 50160 around 230 V, ANSI C84.1 range A around 120 V (both as quoted); a tenth each way otherwise.
    """
    bands = [band for band in SUPPLY_BANDS if not band.meet(voltage).is_empty]
    if any(band.holds(voltage) for band in bands):
        return hull(bands)
    return hull([times(voltage, between(1 - OTHER_SHARE, 1 + OTHER_SHARE)), *bands])


def frequency_band(frequency: Interval) -> Interval:
    """Between which frequencies a supply may lie, in hertz: ±1 % (EN 50160, from memory)."""
    return times(frequency, between(1 - FREQUENCY_SHARE, 1 + FREQUENCY_SHARE))


def in_btu_an_hour(heat: Interval) -> Interval:
    """A flow of heat in British thermal units (IT) an hour, from watts."""
    return over(heat, point(BTU_AN_HOUR))
