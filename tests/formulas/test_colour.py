"""The colour of white, against published values; the source is beside each check."""

from __future__ import annotations

from fractions import Fraction

import colour
import numpy as np
import pytest

from intent.formulas.colour import Chromaticity, correlated_temperature, mireds
from intent.values.bounds import point

ILLUMINANTS = colour.CCS_ILLUMINANTS["CIE 1931 2 Degree Standard Observer"]


def by_ohno(white: Chromaticity) -> float:
    found = colour.xy_to_UCS_uv(np.array([float(white[0]), float(white[1])]))
    return float(colour.temperature.uv_to_CCT_Ohno2013(found)[0])


def chromaticity(illuminant: str) -> Chromaticity:
    x, y = ILLUMINANTS[illuminant]
    return Fraction(str(x)), Fraction(str(y))


@pytest.mark.parametrize(
    ("illuminant", "expected"), [("A", 2855.5), ("C", 6774.1), ("D50", 5000.7), ("D65", 6504.3)]
)
def test_temperature_of_an_illuminant(illuminant: str, expected: float) -> None:
    # `colour-science` as reference library (±1, method of Ohno 2013)
    white = chromaticity(illuminant)
    assert by_ohno(white) == pytest.approx(expected, abs=0.05)
    assert float(correlated_temperature(white)) == pytest.approx(expected, abs=1)


@pytest.mark.parametrize("kelvins", range(1800, 20000, 700))
def test_whites_of_black_bodies(kelvins: int) -> None:
    # `colour-science` as reference library, method of Ohno 2013; in mireds, of which a few are the least seen
    u, v = colour.temperature.CCT_to_uv_Ohno2013(np.array([float(kelvins), 0.0]))
    x, y = colour.UCS_uv_to_xy(np.array([u, v]))
    found = float(correlated_temperature((Fraction(float(x)), Fraction(float(y)))))
    assert 1e6 / found == pytest.approx(1e6 / kelvins, abs=0.2)


def test_a_colour_that_is_no_white_has_no_temperature() -> None:
    with pytest.raises(ValueError, match="without a colour temperature"):
        correlated_temperature((Fraction("0.64"), Fraction("0.33")))


def test_mireds() -> None:
    # arithmetic: a million over the temperature
    assert mireds(point(5000)) == point(200)
    assert mireds(point(6500)) == point(Fraction(10**6, 6500))
