"""Published values for rates, cadence and the sound of a speed change, each with its source beside it."""

from __future__ import annotations

from fractions import Fraction

import pytest
from timecode.timecode import Timecode

from intent.formulas.rates import (
    beat,
    cadence,
    drift_rate,
    drop_frame_number,
    motor_speed,
    played_time,
    semitones,
    slip,
    time_to_drift,
    timecode_error,
    uneven_frames,
)
from intent.values.bounds import between, known, point, times
from intent.values.regions import Interval

FILM_ON_NTSC = Fraction(24000, 1001)
NTSC_FIELDS = Fraction(60000, 1001)


def exactly(bounds: Interval) -> Fraction:
    found = known(bounds)
    assert found is not None
    return found


@pytest.mark.parametrize(
    ("recorded", "played", "per_cent", "higher"),
    [
        (Fraction(24), 25, 4.1667, 0.7067),  # arithmetic (not 0.679, which rounds to 4 % first)
        (FILM_ON_NTSC, 25, 4.2708, 0.7240),  # arithmetic
    ],
)
def test_speed_change(recorded: Fraction, played: int, per_cent: float, higher: float) -> None:
    speed = played / recorded
    assert float(speed - 1) * 100 == pytest.approx(per_cent, abs=5e-5)
    assert float(exactly(semitones(point(speed)))) == pytest.approx(higher, abs=5e-5)


def test_hundred_minutes_become_ninety_six() -> None:
    # arithmetic
    assert played_time(point(100 * 60), point(Fraction(25, 24))) == point(96 * 60)


def test_octave() -> None:
    # arithmetic: an octave doubles the frequency and has twelve semitones
    assert semitones(point(2)) == point(12)
    assert semitones(point(Fraction(1, 2))) == point(-12)


@pytest.mark.parametrize(
    ("timecode", "frames"),
    [
        ((1, 0, 0, 0), 107_892),  # SMPTE ST 12 practice
        ((0, 10, 0, 0), 17_982),  # SMPTE ST 12 practice
        ((24, 0, 0, 0), 2_589_408),  # SMPTE ST 12 practice
        ((0, 1, 0, 2), 1_800),  # SMPTE ST 12 practice: 00:00:59;29 is followed by 00:01:00;02
        ((0, 0, 59, 29), 1_799),
    ],
)
def test_drop_frame(timecode: tuple[int, int, int, int], frames: int) -> None:
    assert drop_frame_number(*timecode) == frames


@pytest.mark.parametrize("seconds", [0, 59, 60, 61, 119, 599, 600, 3599, 3600, 12345, 86399])
@pytest.mark.parametrize("frames", [2, 15, 29])
def test_drop_frame_as_the_reference_library(seconds: int, frames: int) -> None:
    # the `timecode` library as reference; its `.frames` counts from 1
    hours, minutes, rest = seconds // 3600, seconds // 60 % 60, seconds % 60
    reference = Timecode("29.97", start_timecode=f"{hours:02}:{minutes:02}:{rest:02};{frames:02}")
    assert drop_frame_number(hours, minutes, rest, frames) == reference.frames - 1


def test_a_day_of_timecode_against_the_clock() -> None:
    # SMPTE ST 12 practice: drop-frame is 86.4 ms short in a day; without it, 108 frames in an hour too long
    assert timecode_error(True) == Fraction("-0.0864")
    assert timecode_error(False) == Fraction("86.4")


@pytest.mark.parametrize(
    ("frame_rate", "refresh_rate", "stays"),
    [
        (24, 60, (2, 3)),  # arithmetic
        (25, 60, (2, 2, 3, 2, 3)),  # arithmetic: 5 frames in 12 refreshes
        (24, 50, (2,) * 11 + (3,)),  # arithmetic: eleven 2s and a 3
        (25, 50, (2,)),
        (50, 25, (0, 1)),
    ],
)
def test_cadence(frame_rate: int, refresh_rate: int, stays: tuple[int, ...]) -> None:
    assert cadence(Fraction(frame_rate), Fraction(refresh_rate)) == stays


@pytest.mark.parametrize(
    ("frame_rate", "refresh_rate", "seconds"),
    [
        (FILM_ON_NTSC, 24, 41.708),  # arithmetic
        (NTSC_FIELDS, 60, 16.683),  # arithmetic
    ],
)
def test_one_repeated_frame(frame_rate: Fraction, refresh_rate: int, seconds: float) -> None:
    uneven = exactly(uneven_frames(point(frame_rate), point(refresh_rate)))
    assert float(1 / uneven) == pytest.approx(seconds, abs=5e-4)


@pytest.mark.parametrize(
    ("frame_rate", "refresh_rate", "a_second"),
    [(24, 60, 12), (25, 60, 10), (24, 50, 2), (25, 50, 0), (50, 25, 25), (60, 50, 10)],
)
def test_uneven_frames(frame_rate: int, refresh_rate: int, a_second: int) -> None:
    # arithmetic: as many as the cadence has frames of the rarer length
    assert uneven_frames(point(frame_rate), point(refresh_rate)) == point(a_second)


def test_uneven_frames_of_a_rate_not_known_exactly() -> None:
    assert uneven_frames(point(25), between(50, 60)) == between(0, 10)
    assert uneven_frames(point(25), between(60, 61)) == between(10, 11)
    assert uneven_frames(point(25), between(60, 70)).high == Fraction(25, 2)
    assert uneven_frames(point(25), Interval(Fraction(60), None)) == between(0, Fraction(25, 2))


def test_two_clocks() -> None:
    # arithmetic: 50 ppm and 30 ppm of a day are 4.32 s and 2.592 s
    fast, slow = point(Fraction(50, 10**6)), point(Fraction(30, 10**6))
    rate = drift_rate(point(0), fast, slow)
    assert times(rate, point(86400)).high == Fraction("6.912")
    assert time_to_drift(point(Fraction("6.912")), rate).low == 86400


def test_loops_of_different_lengths_come_apart_long_before_clocks() -> None:
    # arithmetic: 86400 / 601 = 143.76 rounds, each a second late; clocks of 100 ppm add or take 17.28 s
    loops = slip(point(600), point(601))
    assert round(float(exactly(times(loops, point(86400)))), 2) == 143.76
    rate = times(drift_rate(loops, point(Fraction(1, 10**4)), point(Fraction(1, 10**4))), point(86400))
    assert (round(float(rate.low or 0), 2), round(float(rate.high or 0), 2)) == (126.48, 161.04)
    assert slip(point(600), point(600)) == point(0)


def test_beat() -> None:
    # arithmetic: fields of 59.94 a second in the light of 50 Hz mains
    assert float(exactly(beat(point(NTSC_FIELDS), point(50)))) == pytest.approx(9.940, abs=5e-4)
    assert beat(between(49, 51), point(50)) == between(0, 1)


def test_motor_on_other_mains() -> None:
    # a synchronous motor follows its mains (textbook of electrical machines, from memory)
    assert motor_speed(point(50), point(60)) == point(Fraction(6, 5))
