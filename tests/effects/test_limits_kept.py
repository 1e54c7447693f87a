"""The one rule of limits, and how what is open counts in the outcome."""

from __future__ import annotations

from dataclasses import replace

import pytest

from intent.effects.limits_kept import any_of, at_least, at_most, every, within
from intent.language.locale import ENGLISH
from intent.model.subject import one
from intent.values.bounds import NATURAL, between, point
from intent.values.regions import Interval
from intent.values.sets import Answer
from intent.variance.obstacle import Need, Obstacle, alike_together, needs_words

IN, OUT, OPEN = Answer.IN, Answer.OUT, Answer.OPEN


@pytest.mark.parametrize(
    ("demand", "answer"),
    [
        (point(3), IN),
        (point(4), OUT),
        (between(1, 3), IN),
        (between(1, 4), OPEN),
        (between(4, 9), OUT),
        (NATURAL, OPEN),
    ],
)
def test_a_demand_is_held_against_a_limit_of_three(demand: Interval, answer: Answer) -> None:
    assert at_most(demand, point(3)) is answer


def test_a_limit_within_bounds_is_met_only_if_it_is_met_throughout() -> None:
    assert at_most(point(2), between(2, 4)) is IN
    assert at_most(point(3), between(2, 4)) is OPEN
    assert at_least(point(3), between(2, 4)) is OPEN
    assert at_least(point(1), between(2, 4)) is OUT


def test_a_band_holds_its_ends() -> None:
    assert within(point(207), between(207, 253)) is IN
    assert within(between(100, 240), between(207, 253)) is OPEN
    assert within(point(120), between(207, 253)) is OUT


def test_several_limits_and_several_ways() -> None:
    assert [every([IN, OPEN]), every([OPEN, OUT]), every([])] == [OPEN, OUT, IN]
    assert [any_of([OUT, OPEN]), any_of([OPEN, IN]), any_of([OUT, OUT])] == [OPEN, IN, OUT]


def test_what_is_alike_is_told_once_of_all() -> None:
    """Fifteen dark screens are one obstacle; what each lacks is named with its own part."""
    first = Obstacle(slug="dark", text="no picture", subject=one("M1"), missing=(Need("weight", one("M1")),))
    second = replace(first, subject=one("M2"), missing=(Need("weight", one("M2")),))
    other = replace(first, subject=one("M3"), missing=(Need("weight", one("M1")),))
    found = alike_together([first, other, second])
    assert [obstacle.subject.members for obstacle in found] == [("M1", "M2"), ("M3",)]
    assert [ENGLISH.say(words) for words in needs_words(found[0].missing)] == ["weight (M1 and M2)"]
