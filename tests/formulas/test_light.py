"""Light, against published values; the source is beside each check."""

from __future__ import annotations

from fractions import Fraction

import colour
import pytest

from formulas.known_numbers import exact, number
from intent.formulas import photometry
from intent.formulas.photometry import Responsivity
from intent.values.bounds import NATURAL, between, point
from intent.values.regions import Interval

HALF = Fraction(1, 2)
HOUR = 3600


@pytest.mark.parametrize(
    ("responsivity", "illuminance", "dose"),
    [
        # CIE 157:2004, as quoted
        (Responsivity.NONE, NATURAL, NATURAL),
        (Responsivity.LOW, point(200), point(600_000)),
        (Responsivity.MEDIUM, point(50), point(150_000)),
        (Responsivity.HIGH, point(50), point(15_000)),
    ],
)
def test_allowance_of_a_class(responsivity: Responsivity, illuminance: Interval, dose: Interval) -> None:
    assert responsivity.value.illuminance == illuminance
    assert responsivity.value.dose == dose


def test_the_same_dose_of_more_light_in_less_time() -> None:
    # conservation list posting, 2004, and arithmetic: 300 lx × 576 h is 172,800 lx·h, as is 400 lx × 432 h
    assert photometry.dose(point(300), point(576 * HOUR)) == point(172_800)
    assert photometry.dose(point(400), point(432 * HOUR)) == point(172_800)


def test_a_matt_surface() -> None:
    # CIE S 017 (e-ILV) 17-24-063, M = πL: L = ρE/π; ρ = 1, E = 1.02 lx give 0.324676 cd/m²
    assert number(photometry.reflected_luminance(point(1), exact("1.02"))) == pytest.approx(
        0.324676, abs=1e-6
    )


def test_contrast_in_the_light_of_a_room() -> None:
    # arithmetic: white 250, black 0.25 cd/m², ρ 0.05, 200 lx: reflected 3.1831 cd/m², contrast 73.75 : 1
    reflected = photometry.reflected_luminance(exact("0.05"), point(200))
    assert number(reflected) == pytest.approx(3.1831, abs=5e-5)
    left = photometry.contrast(point(250), exact("0.25"), reflected)
    assert number(left) == pytest.approx(73.75, abs=0.005)
    assert photometry.contrast(point(250), exact("0.25")) == point(1000)


def test_a_projected_white_is_that_of_a_matt_white_surface_in_its_light() -> None:
    # CIE S 017 (e-ILV) 17-24-063, M = πL, and arithmetic: 2000 lm on 4 m² are 500 lx
    assert photometry.projected_luminance(point(2000), point(4), point(1)) == photometry.reflected_luminance(
        point(1), point(500)
    )


@pytest.mark.parametrize(("black", "expected"), [("0", 18.946), ("0.1", 21.605)])
def test_the_curve_of_a_television_display(black: str, expected: float) -> None:
    # ITU-R BT.1886 formula; `colour-science` as reference: γ 2.4, white 100, V = 0.5
    shown = number(
        photometry.displayed_luminance(HALF, point(100), exact(black), photometry.TELEVISION_GAMMA)
    )
    assert shown == pytest.approx(expected, abs=5e-4)
    assert shown == pytest.approx(float(colour.models.eotf_BT1886(0.5, float(black), 100)), rel=1e-9)


@pytest.mark.parametrize("signal", [0.0, 0.1, 0.25, 0.5, 0.75, 1.0])
@pytest.mark.parametrize("white", [80, 120, 350])
@pytest.mark.parametrize("black", ["0", "0.05", "0.8"])
def test_the_curve_elsewhere(signal: float, white: int, black: str) -> None:
    # ITU-R BT.1886 formula; `colour-science` as reference
    shown = photometry.displayed_luminance(
        Fraction(signal), point(white), exact(black), photometry.TELEVISION_GAMMA
    )
    assert number(shown) == pytest.approx(
        float(colour.models.eotf_BT1886(signal, float(black), white)), abs=1e-9
    )


def test_of_gamma_that_nobody_knows_black_and_white_are_the_bounds() -> None:
    # arithmetic: a power mean lies between the geometric mean and the larger of the two
    shown = photometry.displayed_luminance(HALF, point(100), point(1), NATURAL)
    assert shown == between(10, 100)


def test_ultraviolet_on_a_surface() -> None:
    # definition: 75 µW to each lumen, and 50 lm on a square metre, are 3750 µW/m²
    assert photometry.ultraviolet_irradiance(point(50), point(75)) == point(Fraction("3.75"))
