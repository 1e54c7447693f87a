"""Colour spaces and how much of one another they show, against published values; the source is beside each check."""

from __future__ import annotations

from fractions import Fraction

import colour
import numpy as np
import pytest

from intent.formulas import gamuts
from intent.formulas.colour import Chromaticity
from intent.vocabulary.loader import read_vocabulary

SPACES = {one.label: one.chromaticities for one in read_vocabulary().concepts.values() if one.chromaticities}
"""The chromaticities of red, green, blue and white of each colour space in the vocabulary."""


def primaries(space: str) -> tuple[Chromaticity, ...]:
    return SPACES[space][:3]


@pytest.mark.parametrize(
    ("label", "space"),
    [
        # `colour-science` data sets
        ("NTSC 1953", "NTSC (1953)"),
        ("BT.709", "ITU-R BT.709"),
        ("BT.601 525-line", "SMPTE C"),
        ("BT.601 625-line", "ITU-R BT.470 - 625"),
        ("BT.2020", "ITU-R BT.2020"),
        ("sRGB", "sRGB"),
        ("Display P3", "Display P3"),
        ("opRGB", "Adobe RGB (1998)"),
        ("DCI-P3", "DCI-P3"),
    ],
)
def test_chromaticities_of_a_colour_space(label: str, space: str) -> None:
    published = colour.RGB_COLOURSPACES[space]
    expected = [*published.primaries.tolist(), published.whitepoint.tolist()]
    assert np.array(SPACES[label], dtype=float) == pytest.approx(np.array(expected), abs=1e-5)


def test_every_colour_space_is_compared() -> None:
    assert len(SPACES) == 9


@pytest.mark.parametrize("space", SPACES)
def test_uniform_chromaticities(space: str) -> None:
    # `colour-science` as reference library, CIE 1976 u′, v′
    for one in SPACES[space]:
        expected = colour.xy_to_Luv_uv(np.array(one, dtype=float))
        assert np.array(gamuts.uniform(one), dtype=float) == pytest.approx(expected, abs=1e-12)


@pytest.mark.parametrize(
    ("space", "in_xy", "in_uv"),
    [
        # widely published areas, from memory: 0.1582 (x, y) and 0.0744 (u′, v′) are the "100 % NTSC" of panel makers
        ("NTSC 1953", 0.1582, 0.0744),
        ("BT.709", 0.1120, 0.0649),
        ("Display P3", 0.1520, 0.0815),
        ("BT.2020", 0.2119, 0.1118),
    ],
)
def test_area(space: str, in_xy: float, in_uv: float) -> None:
    assert float(gamuts.area(primaries(space), gamuts.plain)) == pytest.approx(in_xy, abs=6e-5)
    assert float(gamuts.area(primaries(space), gamuts.uniform)) == pytest.approx(in_uv, abs=6e-5)


@pytest.mark.parametrize(
    ("shown", "wanted", "in_xy"),
    [
        # widely published, from memory: in x, y BT.709 is 52.9 % of BT.2020, DCI-P3 71.7 %; BT.709 is 73.7 % of DCI-P3
        ("BT.709", "BT.2020", 0.529),
        ("DCI-P3", "BT.2020", 0.717),
        ("BT.709", "DCI-P3", 0.737),
        ("BT.2020", "BT.709", 1),
    ],
)
def test_share_of_another(shown: str, wanted: str, in_xy: float) -> None:
    found = gamuts.shared(primaries(shown), primaries(wanted), gamuts.plain)
    assert float(found) == pytest.approx(in_xy, abs=6e-4)


@pytest.mark.parametrize("wanted", SPACES)
@pytest.mark.parametrize("shown", SPACES)
def test_share_by_counting_points(shown: str, wanted: str) -> None:
    """The share of a grid of points within one triangle that lie in the other as well."""
    points = _grid(wanted)
    inside = np.mean(_lies_in(points, shown))
    assert float(gamuts.shared(primaries(shown), primaries(wanted), gamuts.uniform)) == pytest.approx(
        inside, abs=0.015
    )


def _corners(space: str) -> np.ndarray[tuple[int, int], np.dtype[np.float64]]:
    return np.array([gamuts.uniform(one) for one in primaries(space)], dtype=float)


def _grid(space: str) -> np.ndarray[tuple[int, int], np.dtype[np.float64]]:
    steps = np.arange(0.5, 200) / 200
    weights = [(one, two, 1 - one - two) for one in steps for two in steps if one + two < 1]
    return np.array(weights) @ _corners(space)


def _lies_in(
    points: np.ndarray[tuple[int, int], np.dtype[np.float64]], space: str
) -> np.ndarray[tuple[int, ...], np.dtype[np.bool_]]:
    corners = _corners(space)
    weights = np.linalg.solve(np.vstack([corners.T, np.ones(3)]), np.vstack([points.T, np.ones(len(points))]))
    return np.asarray((weights >= -1e-9).all(axis=0))


def test_distance_of_whites() -> None:
    # arithmetic from u′, v′ of D65 (0.1978, 0.4683) and of C (0.2009, 0.4609) in CIE 015
    d65, c = SPACES["BT.709"][3], SPACES["NTSC 1953"][3]
    assert float(gamuts.apart(d65, c)) == pytest.approx(0.0080, abs=5e-5)
    assert gamuts.apart(d65, d65) == Fraction(0)
