"""The lifting equation against the worked examples of its manual; the source is beside each check."""

from __future__ import annotations

from fractions import Fraction

import pytest

from intent.formulas.niosh import (
    METRIC,
    Lift,
    Measures,
    least_limit,
    lifting_index,
    people_needed,
    reach_around,
    recommended_limit,
    turn_share,
)
from intent.values.bounds import between, known, point
from intent.values.regions import Interval

POUND = Fraction("0.45359237")
INCH = Fraction("2.54")
Written = int | str | Fraction
ROUNDING = 0.2
"""The manual rounds multipliers to two places and the limit to one."""
CUSTOMARY = Measures(
    load=Fraction(51),
    nearest=Fraction(10),
    furthest=Fraction(25),
    knuckles=Fraction(30),
    loss_of_height=Fraction("0.0075"),
    highest=Fraction(70),
    gain_of_travel=Fraction("1.8"),
    near_floor=Fraction(10),
    beyond_middle=(Fraction(8), Fraction(10)),
)
"""The constants in inches and pounds, in which the manual has its examples (94-110, as quoted in a transcription)."""


def lift(reach: Written, height: Written, travel: Written, grip: str, frequency: Written = "0.2") -> Lift:
    out, high, far = (point(Fraction(number)) for number in (reach, height, travel))
    return Lift(
        reach=out,
        height=high,
        travel=far,
        turn=point(0),
        grips=frozenset({grip}),
        frequency=Fraction(frequency),
    )


def limit(found: Lift, measures: Measures = METRIC) -> float:
    exact = known(recommended_limit(found, measures))
    assert exact is not None
    return float(exact)


def test_package_inspection_at_its_origin() -> None:
    # DHHS (NIOSH) 94-110 p. 46, example 4, as quoted in a transcription: 34.9 lb
    found = limit(lift(10, 22, 37, "fair", 3), CUSTOMARY)
    assert found == pytest.approx(34.9, abs=ROUNDING)


def test_package_inspection_at_its_destination() -> None:
    # DHHS (NIOSH) 94-110 p. 46, example 4, as quoted in a transcription: HM 0.5, 15.2 lb
    found = limit(lift(20, 59, 37, "fair", 3), CUSTOMARY)
    assert found == pytest.approx(15.2, abs=ROUNDING)


def test_supply_rolls() -> None:
    # DHHS (NIOSH) 94-110, example 2, from memory: 20.9 lb, index 1.7
    found = recommended_limit(lift(20, 27, 17, "poor"), CUSTOMARY)
    assert float(found.low or 0) == pytest.approx(20.9, abs=ROUNDING)
    index = known(lifting_index(point(35), found))
    assert index is not None
    assert round(float(index), 1) == 1.7


def test_the_best_of_postures() -> None:
    # DHHS (NIOSH) 94-110, as quoted in a transcription: load constant 23 kg, 51 lb
    assert limit(lift(25, 75, 25, "good")) == 23
    assert limit(lift(10, 30, 10, "good"), CUSTOMARY) == 51


@pytest.mark.parametrize("grip", ["good", "fair", "poor"])
@pytest.mark.parametrize(
    ("reach", "height", "travel"), [(10, 30, 10), (15, 0, 30), (20, 60, 40), (24, 68, 60)]
)
def test_customary_and_metric_measures_agree(reach: int, height: int, travel: int, grip: str) -> None:
    # arithmetic: the two sets of constants are each other rounded, so that they part by 4 % at most
    inches = limit(lift(reach, height, travel, grip), CUSTOMARY) * float(POUND)
    centimetres = lift(INCH * reach, INCH * height, INCH * travel, grip)
    assert limit(centimetres) == pytest.approx(inches, rel=0.04)


@pytest.mark.parametrize(
    "beyond",
    [("63.1", 75, 25), (25, "175.1", 25), (25, 75, "175.1")],
)
def test_beyond_the_equation_nothing_may_be_lifted(beyond: tuple[Written, Written, Written]) -> None:
    # DHHS (NIOSH) 94-110, as quoted in a transcription: nothing at H > 63, V > 175, D > 175, A > 135
    assert limit(lift(*beyond, "good")) == 0


def test_turning() -> None:
    # DHHS (NIOSH) 94-110, as quoted in a transcription: AM = 1 − 0.0032 A, nothing beyond 135 degrees
    assert turn_share(0) == 1
    assert turn_share(90) == Fraction("0.712")
    assert turn_share(135) == Fraction("0.568")
    assert turn_share(Fraction("135.1")) == 0


@pytest.mark.parametrize(
    ("grip", "below", "above"), [("good", 1, 1), ("fair", "0.95", 1), ("poor", "0.9", "0.9")]
)
def test_coupling(grip: str, below: int | str, above: int | str) -> None:
    # DHHS (NIOSH) 94-110, as quoted in a transcription: V below, at or above 75 cm
    assert limit(lift(25, 74, 25, grip)) == pytest.approx(float(23 * Fraction("0.997") * Fraction(below)))
    assert limit(lift(25, 75, 25, grip)) == pytest.approx(float(23 * Fraction(above)))


@pytest.mark.parametrize(
    ("frequency", "share"),
    [("0.1", 1), ("0.2", 1), ("0.5", ".97"), (1, ".94"), (2, ".91"), (3, ".88"), (4, ".84"), (5, ".80"), (6, ".75")],
)  # fmt: skip
def test_frequency(frequency: int | str, share: int | str) -> None:
    # DHHS (NIOSH) 94-110, as quoted in a transcription: for lifts up to an hour
    assert limit(lift(25, 75, 25, "good", frequency)) == float(23 * Fraction(share))


def test_between_two_frequencies_the_stricter_counts() -> None:
    # arithmetic: a limit never grows with the frequency
    assert limit(lift(25, 75, 25, "good", "2.5")) == limit(lift(25, 75, 25, "good", 3))


def test_reach_around_a_load() -> None:
    # DHHS (NIOSH) 94-110, section 1.3.1, from memory: 20 + W/2 from 25 cm up, else 25 + W/2; 8 and 10 inches
    assert reach_around(point(40), point(25)) == point(40)
    assert reach_around(point(40), point(24)) == point(45)
    assert reach_around(point(16), point(30), CUSTOMARY) == point(16)
    assert reach_around(point(40), between(0, 75)) == between(40, 45)


def test_people_are_whole() -> None:
    # arithmetic
    half, one, little_more = (point(Fraction(number)) for number in ("0.5", "1", "1.01"))
    assert people_needed(half, half) == point(1)
    assert people_needed(one, half) == point(1)
    assert people_needed(little_more, half) == point(2)
    assert people_needed(point(5), point(Fraction("2.5"))) == point(3)
    assert people_needed(Interval(Fraction(5), None), Interval(Fraction("2.5"), None)) == Interval(
        Fraction(3), None
    )
    assert people_needed(between(0, 5), between(0, 3)) == between(1, 3)


def test_least_limit() -> None:
    # arithmetic: 23 · 25/63 · 0.7 · (0.82 + 4.5/175) · 0.9
    share = Fraction(25, 63) * Fraction("0.7") * (Fraction("0.82") + Fraction("4.5") / 175) * Fraction("0.9")
    assert least_limit() == 23 * share
