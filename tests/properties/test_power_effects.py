"""What must always hold of power and heat: sums, units, and bounds that only widen.

What is less well known never gives a narrower figure, and never a finding that what is closer known does not give.
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from pathlib import Path

import pytest
from effects.test_effect_cases import assessed
from hypothesis import given
from hypothesis import strategies as st
from test_cases import Case

from intent.formulas import electricity
from intent.language.locale import ENGLISH
from intent.values.bounds import known, over, point, surely_within, times
from intent.values.regions import Interval
from properties.strategies import assert_never_narrower, fixed, nested

amounts = st.fractions(Fraction(1, 10), Fraction(300), max_denominator=100)
volts = st.integers(90, 260)


FORMULAS: dict[str, Callable[[Interval, Interval], Interval]] = {
    "apparent power": electricity.apparent_power,
    "current": electricity.current,
    "may draw": electricity.may_draw,
    "circuits needed": lambda one, two: electricity.circuits_needed([one, one, point(3)], two),
    "frequency band": lambda one, _two: electricity.frequency_band(one),
    "heat": lambda one, _two: electricity.in_btu_an_hour(one),
}


@pytest.mark.parametrize("name", FORMULAS)
@given(first=nested(amounts), second=nested(amounts))
@fixed(100)
def test_less_known_is_never_narrower(
    name: str, first: tuple[Interval, Interval], second: tuple[Interval, Interval]
) -> None:
    assert_never_narrower(FORMULAS[name], first, second)


@given(power=amounts, factor=st.fractions(Fraction(1, 10), Fraction(1)), voltage=volts)
@fixed(100)
def test_twice_the_power_draws_twice_the_current(power: Fraction, factor: Fraction, voltage: int) -> None:
    once, twice = (
        electricity.current(electricity.apparent_power(point(watts), point(factor)), point(voltage))
        for watts in (power, 2 * power)
    )
    assert times(once, point(2)) == twice
    assert surely_within(over(point(power), point(voltage)), once)


@given(currents=st.lists(amounts, min_size=1, max_size=12), each=amounts)
@fixed(150)
def test_so_many_circuits_are_enough(currents: list[Fraction], each: Fraction) -> None:
    """Device by device to the first circuit that has room takes no more than what is told, and no fewer can do."""
    needed = electricity.circuits_needed(map(point, currents), point(each))
    loads: list[Fraction] = []
    for one in currents:
        place = next((at for at, load in enumerate(loads) if load + one <= each), None)
        if place is None:
            loads.append(one)
        else:
            loads[place] += one
    assert needed.low is not None
    assert needed.low * each >= sum(currents) or max(currents) > each
    assert (needed.high is None) == (max(currents) > each)
    if needed.high is not None:
        assert needed.low <= len(loads) <= needed.high <= len(currents)


@given(watts=amounts)
@fixed(50)
def test_heat_there_and_back(watts: Fraction) -> None:
    found = known(electricity.in_btu_an_hour(point(watts)))
    assert found is not None
    assert found * electricity.BTU_AN_HOUR == watts


WORK = """
## Parts

### Lamps

- kind: lamp

| part | device | power | power factor | rated voltage |
| ---- | ------ | ----- | ------------ | ------------- |
| A1   | E-01   | 500 W | 1            | 230 V         |
| A2   | E-02   | 500 W | 0.8          | 230 V         |
"""
Told = tuple[dict[str, Interval], list[str]]


def told(power: str, factor: str, voltage: str, rating: str = "10 A") -> Told:
    """The figures of a lamp in the place of A1, and the sure obstacles of the venue by their slugs."""
    installation = f"""
## Venue

- mains: 230 V
- circuit current: {rating}
- circuits: 1
- cooling capacity: 1500 W

## Substitutions

| part | device | power   | power factor | rated voltage |
| ---- | ------ | ------- | ------------ | ------------- |
| A1   | V-1    | {power} | {factor}     | {voltage}     |
"""
    variance = assessed(Case(Path("lamp.md"), 1, "A lamp", "A lamp", WORK, "", installation, ""))
    figures = {
        ENGLISH.say(effect.quantity): effect.proposed
        for effect in variance.effects
        if effect.topic == "power" and effect.proposed is not None
    }
    return figures, [obstacle.slug for obstacle in variance.obstacles if obstacle.is_sure]


@given(hundreds=st.integers(1, 40), volts=st.sampled_from([120, 220, 230, 400]), tenths=st.integers(5, 10))
@fixed(8)
def test_another_unit_tells_the_same(hundreds: int, volts: int, tenths: int) -> None:
    factor = f"0.{tenths}" if tenths < 10 else "1"
    one = told(f"{hundreds * 100} W", factor, f"{volts} V", "10 A")
    two = told(f"{hundreds / 10:.1f} kW", factor, f"{volts * 1000} mV", "10000 mA")
    assert one == two


@given(hundreds=st.integers(1, 40), more=st.integers(1, 9), volts=st.sampled_from([120, 220, 230, 400]))
@fixed(8)
def test_what_is_said_less_closely_is_told_less_closely(hundreds: int, more: int, volts: int) -> None:
    """Figures only widen, and whatever is found of less is found of more."""
    watts = hundreds * 100
    close = told(f"{watts} W", "0.9", f"{volts} V")
    loose = told(f"between {watts} W and {watts + 100 * more} W", "", f"{volts} V")
    blank = told("", "", "")
    for figures, slugs in (loose, blank):
        for quantity, bounds in figures.items():
            found = close[0].get(quantity)
            assert found is None or bounds.holds(found), f"{quantity}: {found} not within {bounds}"
        assert set(slugs) <= set(close[1])


def test_a_heavier_load_is_found_and_a_lighter_is_not() -> None:
    """2300 W at 230 V are the whole of a circuit of 10 A, beside what A2 draws."""
    assert told("2300 W", "1", "230 V")[1] == ["heat", "circuit-overloaded"]
    assert told("100 W", "1", "230 V")[1] == []
    assert told("100 W", "1", "120 V")[1] == ["mains-voltage"]
