"""Electricity and heat against published figures; the source is beside each check."""

from __future__ import annotations

from fractions import Fraction

import pint
import pytest

from intent.formulas.electricity import (
    CONTINUOUS_SHARE,
    apparent_power,
    circuits_needed,
    current,
    in_btu_an_hour,
    is_north_american,
    may_draw,
    suits,
)
from intent.values.bounds import between, known, point
from intent.values.regions import Interval
from intent.values.sets import Answer


def test_continuous_load_on_a_circuit_of_twenty_amperes() -> None:
    # NEC (NFPA 70) 210.20(A), as quoted: on for 3 h or more, 16 A (80 %); the local code comes first
    assert may_draw(point(20), CONTINUOUS_SHARE) == point(16)


@pytest.mark.parametrize(
    ("built", "mains", "answer"),
    [
        # ANSI C84.1, 120 V, from memory: one supply by several names
        (110, 120, Answer.IN),
        (115, 120, Answer.IN),
        (120, 127, Answer.IN),
        # HD 472 S1 and EN 50160, from memory: the supplies of 220 and of 240 V became one of 230 V
        (220, 230, Answer.IN),
        (240, 230, Answer.IN),
        # ANSI C84.1, 208 V, from memory: motors of 200 V are for it; 240 V lies 13 % above
        (200, 208, Answer.IN),
        (240, 208, Answer.OUT),
        # a supply of 208 V may be as low as 197 V (the same), and what is built for 230 V takes 207 V (a tenth less)
        (230, 208, Answer.OPEN),
        # Japan's 100 V: common practice, no source
        (100, 120, Answer.OUT),
        (120, 230, Answer.OUT),
        (230, 120, Answer.OUT),
    ],
)
def test_what_a_supply_suits(built: int, mains: int, answer: Answer) -> None:
    assert suits(point(built), point(mains)) is answer


def test_a_range_on_a_rating_plate_is_what_the_device_takes() -> None:
    assert {suits(between(100, 240), point(mains)) for mains in (100, 110, 120, 208, 230, 240)} == {Answer.IN}
    assert suits(between(220, 240), point(120)) is Answer.OUT
    assert suits(Interval(None, None), point(120)) is Answer.OPEN


def test_where_loads_go_by_the_north_american_rule() -> None:
    # NEC (NFPA 70) is a code of the United States; 240 V and 60 Hz, or 110 to 127 V: common practice, no source
    nowhere = Interval(None, None)
    assert is_north_american(point(120), nowhere)
    assert is_north_american(point(208), point(60))
    assert is_north_american(point(240), point(60))
    assert not is_north_american(point(240), point(50))
    assert not is_north_american(point(230), nowhere)


def test_one_watt_in_british_thermal_units() -> None:
    # 3.41214 BTU(IT)/h, `pint` as reference
    found = known(in_btu_an_hour(point(1)))
    assert found is not None
    assert round(float(found), 5) == 3.41214
    reference = pint.UnitRegistry().Quantity(1, "watt").to("Btu_it / hour").magnitude
    assert float(found) == pytest.approx(reference, rel=1e-9)


def test_apparent_power_at_a_power_factor() -> None:
    # arithmetic: 1000 W at power factor 0.6 are 1666.67 VA
    found = known(apparent_power(point(1000), point(Fraction("0.6"))))
    assert found is not None
    assert round(float(found), 2) == 1666.67


def test_apparent_power_is_never_less_than_the_power() -> None:
    # arithmetic: a power factor is at most 1
    assert apparent_power(point(60), Interval(Fraction(0), None)) == Interval(Fraction(60), None)


def test_current() -> None:
    # arithmetic: 2300 VA at 230 V are 10 A
    assert current(point(2300), point(230)) == point(10)


@pytest.mark.parametrize(
    ("currents", "each", "needed"),
    [
        ([4, 4, 4, 4], 16, point(1)),
        ([10, 10, 10], 16, between(2, 3)),
        ([12, 12], 16, point(2)),
        ([1] * 40, 16, point(3)),
        ([17, 1], 16, Interval(Fraction(2), None)),
    ],
)
def test_circuits_needed(currents: list[int], each: int, needed: Interval) -> None:
    # arithmetic: no device can be divided, and one that is too much for a circuit goes on none
    assert circuits_needed([point(one) for one in currents], point(each)) == needed
