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
    may_draw,
    supply_band,
)
from intent.values.bounds import between, known, point
from intent.values.regions import Interval


def test_continuous_load_on_a_circuit_of_twenty_amperes() -> None:
    # NEC (NFPA 70) 210.20(A), as quoted: on for 3 h or more, 16 A (80 %); the local code comes first
    assert may_draw(point(20), CONTINUOUS_SHARE) == point(16)


def test_supply_of_230_volts() -> None:
    # EN 50160, as quoted: 207 to 253 V for 95 % of ten-minute means
    assert supply_band(point(230)) == between(207, 253)


def test_supply_of_120_volts() -> None:
    # ANSI C84.1 range A, service, as quoted: 114 to 126 V
    assert supply_band(point(120)) == between(114, 126)


def test_any_other_supply_is_taken_a_tenth_each_way() -> None:
    # common practice, no source
    assert supply_band(point(100)) == between(90, 110)


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
        ([10, 10, 10], 16, between(2, 5)),
        ([12, 12], 16, between(2, 6)),
        ([1] * 40, 16, point(3)),
        ([17, 1], 16, Interval(Fraction(2), None)),
    ],
)
def test_circuits_needed(currents: list[int], each: int, needed: Interval) -> None:
    # arithmetic: no device can be divided, and one that is too much for a circuit goes on none
    assert circuits_needed([point(one) for one in currents], point(each)) == needed
