"""Sound, against published values; the source is beside each check."""

from __future__ import annotations

from fractions import Fraction
from math import sqrt

import pytest

from formulas.known_numbers import exact, number
from intent.formulas import acoustics
from intent.values.bounds import NATURAL, ONE, between, point
from intent.values.regions import Interval

HOUR = 3600


def test_levels_add_as_energies() -> None:
    # ISO 1996-1 arithmetic: two equal levels 3.01 dB more, ten 10 dB more; 60 and 70 dB give 70.4 dB (handbook table)
    assert number(acoustics.together([point(60)] * 2)) == pytest.approx(63.0, abs=0.05)
    assert number(acoustics.together([point(60)] * 10)) == pytest.approx(70.0, abs=1e-9)
    assert number(acoustics.together([point(60), point(70)])) == pytest.approx(70.4, abs=0.05)


def test_a_level_of_which_one_part_is_not_known_has_no_upper_end() -> None:
    found = acoustics.together([point(60), Interval(None, None)])
    assert found.low is not None
    assert float(found.low) == pytest.approx(60)
    assert found.high is None


def test_a_loudspeaker_by_its_sensitivity() -> None:
    # public-address-info.co.uk, audio principles 4: 90 dB at 1 W and 1 m, with 32 W: 105 dB; 99 dB, at 10 m: 79 dB
    assert number(acoustics.at_one_metre(point(90), point(32))) == pytest.approx(105, abs=0.1)
    assert number(acoustics.at_distance(point(99), point(10))) == pytest.approx(79, abs=1e-9)


def test_a_device_by_its_sound_power() -> None:
    # ISO 3744 and handbooks: at 1 m 11 dB less than the level of the power in free space, 8 dB less on a hard floor
    assert number(acoustics.from_power(point(50), ONE)) == pytest.approx(39, abs=0.05)
    assert number(acoustics.from_power(point(50), point(2))) == pytest.approx(42, abs=0.05)


def test_absorption_by_sabine() -> None:
    # Kuttruff, Room Acoustics, and ISO 3382-2: A = 0.161 V / T (55.3 V / (c T)); 200 m³ and 1 s give 32.2 m²
    speed = acoustics.speed_of_sound(exact("293.15"))
    assert number(acoustics.absorption(point(200), point(1), speed)) == pytest.approx(32.2, abs=0.05)


def test_at_the_reverberation_distance_the_room_gives_back_as_much() -> None:
    # Kuttruff, Room Acoustics: r = 0.057 √(V / T) for a source that sounds evenly on all sides, of a large room
    speed = acoustics.speed_of_sound(exact("293.15"))
    absorbing = acoustics.absorption(point(200), point(1), speed)
    back = acoustics.returned(absorbing, point(10**9), ONE)
    assert sqrt(1 / number(back)) == pytest.approx(0.057 * sqrt(200), rel=0.01)


def test_the_level_of_a_machine_in_a_room() -> None:
    # engineeringtoolbox.com, sound propagation indoors: 90 dB of power, A = 12.2 m², mean absorption 0.2, R = 15.3 m²;
    # 10 lg (1 / (4 π 2²) + 4 / 15.3) is -5.5 dB by their formula (they print 84.8 dB, their formula gives 84.5)
    one_metre = exact(str(90 - 10.992))  # 10 lg (4 π) less than the level of the power
    back = acoustics.returned(exact("12.2"), point(61), ONE)
    assert number(acoustics.at_distance(one_metre, point(2), back)) == pytest.approx(84.5, abs=0.05)


def test_where_all_is_absorbed_nothing_comes_back() -> None:
    assert acoustics.returned(point(50), point(50), ONE) == point(0)


def test_what_is_not_known_of_a_room_gives_bounds() -> None:
    back = acoustics.returned(NATURAL, NATURAL, NATURAL)
    assert back == NATURAL
    found = acoustics.at_distance(point(80), point(2), back)
    assert found.low is not None
    assert float(found.low) == pytest.approx(74, abs=0.05)
    assert found.high is None


def test_the_speed_of_sound() -> None:
    # handbook of acoustics: 331.3 m/s in 0 °C, 343.2 m/s in 20 °C
    assert number(acoustics.speed_of_sound(exact("273.15"))) == pytest.approx(331.3, abs=1e-9)
    assert number(acoustics.speed_of_sound(exact("293.15"))) == pytest.approx(343.2, abs=0.05)


@pytest.mark.parametrize(("decibels", "hours"), [(85, 8), (88, 4), (91, 2), (94, 1), (97, 0.5), (100, 0.25)])
def test_how_long_ears_bear_it(decibels: int, hours: float) -> None:
    # NIOSH 98-126, table 1-1: 85 dB(A) 8 h, 88 4 h, 91 2 h, 94 1 h, 97 30 min, 100 15 min
    found = acoustics.time_within(Fraction(85), point(decibels))
    assert number(found) / HOUR == pytest.approx(hours, rel=0.02)


def test_when_sound_and_picture_come_apart() -> None:
    # ITU-R BT.1359-1, as quoted: noticed from 45 ms early to 125 ms late, accepted from 90 ms early to 185 ms late
    assert between(Fraction(-45, 1000), Fraction(125, 1000)) == acoustics.DETECTED
    assert between(Fraction(-90, 1000), Fraction(185, 1000)) == acoustics.ACCEPTED


@pytest.mark.parametrize("decibels", ["1e400", "-1e400", "5000", "-5000"])
def test_numbers_beyond_all_reason_are_borne(decibels: str) -> None:
    levels = [exact(decibels), point(60)]
    found = acoustics.together(levels)
    assert found.low is not None
    assert float(found.low) >= 59
    far = acoustics.at_distance(point(60), exact("1e300"))
    assert far.high is not None
    assert float(far.high) == pytest.approx(60 - 6000)
    assert acoustics.time_within(Fraction(85), exact(decibels)).low is not None
