"""Times of a citation, against W3C, Media Fragments URI 1.0 (25 September 2012), sections 4.2.1 and 5.1, table of
temporal fragments (`t=3,7`, `t=,7`, `t=3`), and the ones that it says are not valid (`t=3,3`, `t=7,3`, `t=3,`)."""

from __future__ import annotations

from fractions import Fraction

import pytest

from intent.dossier.media_time import Clip, read_clip, seconds

VALID = {
    "3,7": Clip(Fraction(3), Fraction(7)),
    ",7": Clip(Fraction(0), Fraction(7)),
    "3": Clip(Fraction(3)),
    "npt:3,7": Clip(Fraction(3), Fraction(7)),
    "npt:,7": Clip(Fraction(0), Fraction(7)),
    "3.5,7.": Clip(Fraction(7, 2), Fraction(7)),
    "0:02:00,121.5": Clip(Fraction(120), Fraction(243, 2)),
    "00:14:05": Clip(Fraction(845)),
    "14:05": Clip(Fraction(845)),
    "100:00:00": Clip(Fraction(360000)),
}
INVALID = (
    "3,3",
    "7,3",
    "3,",
    ",",
    "",
    "t=3",
    "0:60",
    "1:60:00",
    "1:2",
    "-3",
    "3;7",
    "noon",
    "3,7,9",
    "smpte:3",
)


@pytest.mark.parametrize("written", VALID)
def test_a_time_is_read(written: str) -> None:
    assert read_clip(written) == VALID[written]


@pytest.mark.parametrize("written", INVALID)
def test_what_is_no_time_is_refused(written: str) -> None:
    with pytest.raises(ValueError, match="`"):
        read_clip(written)


def test_minutes_may_pass_an_hour_where_there_are_no_hours() -> None:
    """Beside the standard, since counters of recorders write it: common practice, no source."""
    assert seconds("75:30") == 4530
