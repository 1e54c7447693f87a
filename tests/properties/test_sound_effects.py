"""What must always hold of sound, of cables, and of a whole check that tells them."""

from __future__ import annotations

from fractions import Fraction

import pytest
from examples_read import vocabulary
from hypothesis import given
from hypothesis import strategies as st
from oracle.program import loaded

from intent.effects.assess import assess
from intent.formulas import acoustics, cabling
from intent.language.locale import ENGLISH
from intent.values.bounds import known, point
from intent.values.regions import Interval
from intent.variance.result import Effect
from properties.strategies import fixed
from properties.test_timing_effects import holds, nested

LEVELS = st.fractions(min_value=-20, max_value=140, max_denominator=10)
LENGTHS = st.fractions(min_value=Fraction(1, 10), max_value=100, max_denominator=100)
Known = tuple[Interval, Interval]
"""Bounds, and wider ones that hold them."""


@fixed(200)
@given(nested(LEVELS), nested(LEVELS), nested(LENGTHS), nested(LENGTHS))
def test_levels_known_less_well_never_say_more(one: Known, two: Known, far: Known, back: Known) -> None:
    loose, tight = (
        acoustics.together(
            [acoustics.at_distance(one[way], far[way], back[way]), acoustics.at_one_metre(two[way], far[way])]
        )
        for way in (1, 0)
    )
    assert holds(loose, tight)
    assert holds(acoustics.time_within(Fraction(85), one[1]), acoustics.time_within(Fraction(85), one[0]))


@fixed(200)
@given(nested(LENGTHS), nested(LENGTHS), nested(LENGTHS), nested(LENGTHS))
def test_rooms_and_cables_known_less_well_never_say_more(
    volume: Known, time: Known, surface: Known, turned: Known
) -> None:
    air = acoustics.speed_of_sound(point(Fraction("293.15")))
    loose, tight = (
        acoustics.returned(acoustics.absorption(volume[way], time[way], air), surface[way], turned[way])
        for way in (1, 0)
    )
    assert holds(loose, tight)
    losses = [cabling.loss_at(volume[way], time[way], surface[way]) for way in (1, 0)]
    assert holds(*losses)
    assert holds(*(cabling.loss(volume[way], time[way]) for way in (1, 0)))


@fixed(100)
@given(st.lists(LEVELS, min_size=2, max_size=8))
def test_more_sounds_are_louder_than_the_loudest_and_by_no_more_than_all_of_it(
    levels: list[Fraction],
) -> None:
    # ISO 1996-1: n sounds of one level are 10 lg n louder than one
    found = known(acoustics.together(map(point, levels)))
    most = known(acoustics.together([point(max(levels))] * len(levels)))
    assert found is not None
    assert most is not None
    assert max(levels) - Fraction(1, 10**9) <= found <= most + Fraction(1, 10**9)


WORK = """# Choir

- number: 9
- owner: Thornacre Museum

## Parts

### Horns

- kind: loudspeaker

| part | device | technology          | loudspeaker sensitivity | viewing distance |
| ---- | ------ | ------------------- | ----------------------- | ---------------- |
| L1   | E-1    | passive loudspeaker | 90 dB                   | 2 m              |

### Amplifiers

- kind: converter

| part | device | technology      | amplifier power |
| ---- | ------ | --------------- | --------------- |
| C1   | E-2    | audio amplifier | 10 W            |

### Players

- kind: player

| part | device | technology   | running noise |
| ---- | ------ | ------------ | ------------- |
| P1   | E-3    | optical disc | 30 dB         |

## Whole work

- sound level: 80 dB
- running: continuous

## Connections

| from | to | signal            | length |
| ---- | -- | ----------------- | ------ |
| P1   | C1 | line audio        | 2 m    |
| C1   | L1 | loudspeaker cable | 5 m    |
"""
PROPOSAL = """# Loan

- work: work.md
- dates: 2027-03-01/2027-06-30

## Substitutions

| part | device | technology          | loudspeaker sensitivity |
| ---- | ------ | ------------------- | ----------------------- |
| L1   | V-1    | passive loudspeaker | {cell} |
"""


def _highest(cell: str) -> Effect | None:
    read = loaded(WORK, PROPOSAL.format(cell=cell), vocabulary())
    told = assess(read.work, read.installation).effects
    return next(
        (one for one in told if ENGLISH.say(one.quantity) == "highest level where visitors stand"), None
    )


@pytest.mark.parametrize(
    ("less", "values"),
    [
        ("between 60 dB and 80 dB", ("60 dB", "70 dB", "80 dB")),
        ("at most 70 dB", ("50 dB", "70 dB")),
        ("at least 95 dB", ("95 dB", "120 dB")),
    ],
)
def test_a_range_holds_what_each_value_gives(less: str, values: tuple[str, ...]) -> None:
    wide = _highest(less)
    assert wide is not None
    assert wide.proposed is not None
    for value in values:
        single = _highest(value)
        assert single is not None
        assert single.proposed is not None
        assert holds(wide.proposed, single.proposed)
