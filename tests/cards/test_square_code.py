"""The square code is read back by another program (ISO/IEC 18004), also at the size and sharpness of a copy."""

from __future__ import annotations

import numpy
import pytest
import zxingcpp

from intent.papers.cards.square_code import QUIET, square_code

IRIS = (
    "urn:uuid:4ac378f8-b198-565b-a199-876e8195b0f5#L2",
    "https://w3id.org/thornacre/1990.4#M1",
    "https://example.org/works/a-long-way-from-here/with-many-steps/to-the-part#E-07",
)


def raster(text: str, scale: int) -> numpy.ndarray:
    """The path of the code, drawn module by module."""
    drawn = square_code(text, "code", "a code")
    size = int(drawn.get("viewBox", "").split()[-1])
    picture = numpy.full((size, size), 255, numpy.uint8)
    for bar in drawn[-1].get("d", "").split("M")[1:]:
        at, rest = bar.split("h", 1)
        x, y = map(int, at.split())
        picture[y, x : x + int(rest.split("v")[0])] = 0
    return numpy.kron(picture, numpy.ones((scale, scale), numpy.uint8))


@pytest.mark.parametrize("text", IRIS)
@pytest.mark.parametrize("scale", [3, 8])
def test_another_reader_reads_it(text: str, scale: int) -> None:
    assert [found.text for found in zxingcpp.read_barcodes(raster(text, scale))] == [text]


def test_there_is_white_round_it() -> None:
    picture = raster(IRIS[0], 1)
    assert (picture[:QUIET] == 255).all()
    assert (picture[:, -QUIET:] == 255).all()
    assert (picture[QUIET, QUIET : QUIET + 7] == 0).all()
