"""Wear; all of it is arithmetic."""

from __future__ import annotations

from fractions import Fraction

import pytest

from intent.formulas import lifetimes
from intent.values.bounds import NATURAL, between, point
from intent.values.regions import Interval

HOUR = 3600


def test_passes_of_a_loop() -> None:
    # arithmetic: ten minutes, for eight hours
    assert lifetimes.passes(point(8 * HOUR), point(600)) == point(48)


def test_slides_that_take_turns() -> None:
    # arithmetic: 80 slides share 800 hours
    assert lifetimes.time_in_light(point(800 * HOUR), point(80)) == point(10 * HOUR)


@pytest.mark.parametrize(
    ("use", "life", "copies"),
    [
        (point(0), point(1000), 1),
        (point(1000), point(1000), 1),
        (point(1001), point(1000), 2),
        (point(5856), point(1000), 6),
    ],
)
def test_copies_worn_out_one_after_another(use: Interval, life: Interval, copies: int) -> None:
    # arithmetic
    assert lifetimes.copies_needed(use, life) == point(copies)
    assert lifetimes.replacements(use, life) == point(copies - 1)


def test_of_an_unknown_life_no_more_than_one_is_sure() -> None:
    assert lifetimes.copies_needed(point(1000), NATURAL) == Interval(Fraction(1), None)
    assert lifetimes.copies_needed(between(500, 2500), point(1000)) == between(1, 3)
