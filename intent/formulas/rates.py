"""Rates and time: frames on a screen that is drawn anew, the sound of a speed change, clocks that drift, timecode.

Frame and refresh rates in 1/s, times in seconds, speeds and clock tolerances as shares.
"""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise
from math import floor, log2

from intent.values.bounds import apart, larger, natural, over, plus, rising, smaller, times
from intent.values.regions import Interval
from intent.values.units import SECONDS_A_DAY, SECONDS_A_MINUTE

HALF = Fraction(1, 2)
SEMITONES_AN_OCTAVE = 12
NTSC_RATE = Fraction(30000, 1001)
"""Frames a second of a 525-line colour picture (SMPTE ST 12 practice)."""
NOMINAL_RATE = 30
"""The rate by which timecode numbers those frames."""
NUMBERS_LEFT_OUT = 2
"""In drop-frame counting, at each minute that is not a tenth (SMPTE ST 12 practice)."""


def semitones(speed: Interval) -> Interval:
    """How much higher a sound is when it is played at a share of its speed, in tempered semitones.

    Arithmetic: twelve to an octave, and an octave doubles the frequency. Without end where the speed may be nothing.
    """
    low = speed.low or None
    return rising(lambda share: SEMITONES_AN_OCTAVE * log2(share), Interval(low, speed.high))


def played_time(recorded: Interval, speed: Interval) -> Interval:
    """How long something lasts when it is played at a share of its speed. Arithmetic."""
    return over(recorded, speed)


def cadence(frame_rate: Fraction, refresh_rate: Fraction) -> tuple[int, ...]:
    """For how many refreshes each frame stays, until the pattern begins anew. Arithmetic.

    24 on 60 gives 2, 3; a frame that is not shown at all counts 0.
    """
    each = refresh_rate / frame_rate
    begun = [floor(each * frame) for frame in range(each.denominator + 1)]
    return tuple(after - before for before, after in pairwise(begun))


def uneven_frames(frame_rate: Interval, refresh_rate: Interval) -> Interval:
    """How many frames in a second stay a refresh longer or shorter than the others, or are not shown at all.

    Arithmetic: the refresh rate less the nearest multiple of the frame rate (at least once the frame rate).
    24 on 60 gives 12, 25 on 60 gives 10; 24000/1001 on 24 one in 41.708 s.
    """
    share = _off_the_multiple(over(refresh_rate, frame_rate))
    return times(frame_rate, share)


def _off_the_multiple(refreshes: Interval) -> Interval:
    """How far a number lies from the nearest whole number that is not nothing."""
    if refreshes.low is None or refreshes.high is None:
        low = refreshes.low
        most = Fraction(1) if low is None or low < HALF else HALF
        return Interval(Fraction(0), most)
    ends = [_off(refreshes.low), _off(refreshes.high)]
    least = Fraction(0) if _holds_step(refreshes.low, refreshes.high, Fraction(0)) else min(ends)
    most = HALF if _holds_step(refreshes.low, refreshes.high, HALF) else Fraction(0)
    return Interval(least, max(*ends, most))


def _off(refreshes: Fraction) -> Fraction:
    return abs(refreshes - max(1, round(refreshes)))


def _holds_step(low: Fraction, high: Fraction, beyond: Fraction) -> bool:
    """Whether a whole number from 1 on, or one and a half and so on, lies between two numbers."""
    return max(1, -floor(-(low - beyond))) + beyond <= high


def beat(one: Interval, two: Interval) -> Interval:
    """How often in a second two rates come together anew: their difference. Arithmetic."""
    return apart(one, two)


def slip(one: Interval, two: Interval) -> Interval:
    """By which share of the time two loops of different lengths come apart, started together. Arithmetic.

    At each round of the longer one the shorter one is off by what is left over of its own rounds: loops of 600 and
    601 s by 143.8 s in a day, of 50 and 100 min by nothing.
    """
    longer, shorter = larger(one, two), smaller(one, two)
    return times(_off_the_multiple(over(longer, shorter)), over(shorter, longer))


def drift_rate(loops: Interval, one: Interval, two: Interval) -> Interval:
    """By which share of the time two players may come apart: by their loops, and as far by their clocks at most.

    The share of the loops, and by which share either clock may be off: worst case. Arithmetic.
    """
    off = plus(one, two).high
    return natural(plus(loops, Interval(None if off is None else -off, off)))


def time_to_drift(margin: Interval, rate: Interval) -> Interval:
    """The time before which two clocks that come apart by a share of it cannot be further apart than a margin.

    Without end above. Arithmetic.
    """
    return Interval(over(margin, rate).low, None)


def drop_frame_number(hours: int, minutes: int, seconds: int, frames: int) -> int:
    """Which frame a drop-frame timecode names, the earliest being 0 (SMPTE ST 12 practice)."""
    whole_minutes = 60 * hours + minutes
    counted = NOMINAL_RATE * (SECONDS_A_MINUTE * whole_minutes + seconds) + frames
    return counted - NUMBERS_LEFT_OUT * (whole_minutes - whole_minutes // 10)


def timecode_error(is_drop_frame: bool) -> Fraction:
    """How far the timecode of 30000/1001 frames a second is behind the clock after a day that it counts, in seconds.

    Negative: it is ahead. (SMPTE ST 12 practice.)
    """
    frames = drop_frame_number(24, 0, 0, 0) if is_drop_frame else NOMINAL_RATE * SECONDS_A_DAY
    return Fraction(frames) / NTSC_RATE - SECONDS_A_DAY


def motor_speed(rated: Interval, mains: Interval) -> Interval:
    """The speed of a synchronous motor as a share of that for which it was built: the mains over the rated frequency.

    It turns in step with the mains (textbook of electrical machines, from memory).
    """
    return over(mains, rated)
