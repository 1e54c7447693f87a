"""What must always hold of rates and time, and of a whole check that tells them."""

from __future__ import annotations

from fractions import Fraction

from examples_read import vocabulary
from hypothesis import given
from hypothesis import strategies as st
from oracle.program import loaded

from intent.effects.assess import assess
from intent.formulas.rates import (
    beat,
    cadence,
    drift_rate,
    drop_frame_number,
    played_time,
    semitones,
    slip,
    time_to_drift,
    uneven_frames,
)
from intent.language.locale import ENGLISH
from intent.values.bounds import known, over, point, times
from intent.values.regions import Interval
from intent.variance.result import Effect
from properties.strategies import fixed

RATES = st.fractions(min_value=1, max_value=240, max_denominator=1001)
SHORT_RATES = st.fractions(min_value=1, max_value=240, max_denominator=4)
"""Rates whose patterns are short enough to be counted out."""
SHARES = st.fractions(min_value=Fraction(1, 10), max_value=10, max_denominator=1000)
PARTS_PER_MILLION = st.integers(1, 500).map(lambda share: Fraction(share, 10**6))


def nested(numbers: st.SearchStrategy[Fraction]) -> st.SearchStrategy[tuple[Interval, Interval]]:
    """An interval, and a wider one that holds it; some without an upper end."""

    def ordered(ends: list[Fraction], is_open: bool) -> tuple[Interval, Interval]:
        first, second, third, fourth = sorted(ends)
        return Interval(second, third), Interval(first, None if is_open else fourth)

    return st.builds(ordered, st.lists(numbers, min_size=4, max_size=4), st.booleans())


def holds(wide: Interval, narrow: Interval) -> bool:
    low = wide.low is None or (narrow.low is not None and wide.low <= narrow.low)
    return low and (wide.high is None or (narrow.high is not None and narrow.high <= wide.high))


@fixed(200)
@given(nested(RATES), nested(RATES))
def test_rates_known_less_well_never_say_more(
    frames: tuple[Interval, Interval], refreshes: tuple[Interval, Interval]
) -> None:
    for formula in (uneven_frames, beat):
        assert holds(formula(frames[1], refreshes[1]), formula(frames[0], refreshes[0]))


@fixed(200)
@given(nested(SHARES), nested(RATES), nested(PARTS_PER_MILLION), nested(PARTS_PER_MILLION))
def test_times_known_less_well_never_say_more(
    speed: tuple[Interval, Interval],
    time: tuple[Interval, Interval],
    one: tuple[Interval, Interval],
    two: tuple[Interval, Interval],
) -> None:
    assert holds(semitones(speed[1]), semitones(speed[0]))
    assert holds(played_time(time[1], speed[1]), played_time(time[0], speed[0]))
    loose, tight = (
        drift_rate(slip(*lengths), *clocks)
        for lengths, clocks in (
            ((time[1], speed[1]), (one[1], two[1])),
            ((time[0], speed[0]), (one[0], two[0])),
        )
    )
    assert holds(loose, tight)
    assert holds(time_to_drift(time[1], loose), time_to_drift(time[0], tight))


@fixed(200)
@given(SHORT_RATES, SHORT_RATES)
def test_the_cadence_has_as_many_uneven_frames_as_the_formula_says(
    frame_rate: Fraction, refresh: Fraction
) -> None:
    stays = cadence(frame_rate, refresh)
    assert Fraction(sum(stays), len(stays)) == refresh / frame_rate
    assert max(stays) - min(stays) <= 1
    often = known(uneven_frames(point(frame_rate), point(refresh)))
    shortest = min(stays)
    longer = Fraction(sum(stay > shortest for stay in stays), len(stays)) * frame_rate
    usual = min(longer, frame_rate - longer) if shortest else frame_rate - longer
    assert often == (usual if max(stays) > shortest or not shortest else 0)


@fixed(200)
@given(RATES, RATES, st.integers(1, 1000))
def test_rates_in_another_unit_are_the_same(frame_rate: Fraction, refresh: Fraction, factor: int) -> None:
    there = uneven_frames(point(frame_rate * factor), point(refresh * factor))
    assert over(there, point(factor)) == uneven_frames(point(frame_rate), point(refresh))


@fixed(200)
@given(SHARES, RATES, RATES, PARTS_PER_MILLION, PARTS_PER_MILLION)
def test_there_and_back(
    speed: Fraction, time: Fraction, other: Fraction, one: Fraction, two: Fraction
) -> None:
    up, down = known(semitones(point(speed))), known(semitones(point(1 / speed)))
    assert up is not None
    assert down is not None
    assert abs(float(up + down)) < 1e-12
    assert played_time(played_time(point(time), point(speed)), point(1 / speed)) == point(time)
    assert beat(point(time), point(other)) == beat(point(other), point(time))
    rate = drift_rate(point(0), point(one), point(two))
    assert rate == drift_rate(point(0), point(two), point(one))
    apart = times(rate, point(time)).high
    assert apart is not None
    assert time_to_drift(point(apart), rate).low == time


@fixed(200)
@given(st.integers(0, 24 * 3600 - 2), st.integers(0, 29))
def test_drop_frame_timecode_counts_every_frame_once(second: int, frame: int) -> None:
    """The next timecode that is not left out names the next frame."""

    def number(second: int, frame: int) -> int:
        return drop_frame_number(second // 3600, second // 60 % 60, second % 60, frame)

    def is_left_out(second: int, frame: int) -> bool:
        return frame < 2 and second % 60 == 0 and second // 60 % 10 != 0

    if is_left_out(second, frame):
        return
    following = (second, frame + 1) if frame < 29 else (second + 1, 0)
    while is_left_out(*following):
        following = following[0], following[1] + 1
    assert number(*following) == number(second, frame) + 1


WORK = """# Two Clocks

- number: 7
- owner: Thornacre Museum

## Parts

### Monitors

- kind: display

| part | device | technology       | channel |
| ---- | ------ | ---------------- | ------- |
| M1   | E-01   | cathode-ray tube | A       |

### Players

- kind: player

| part | device | technology   | channel | synchronisation | clock tolerance |
| ---- | ------ | ------------ | ------- | --------------- | --------------- |
| P1   | E-11   | optical disc | A       | synchronised    | 10 ppm          |
| P2   | E-12   | optical disc | A       | synchronised    | 10 ppm          |

## Material

| material | channel | frame rate | duration |
| -------- | ------- | ---------- | -------- |
| V1       | A       | 24         | 100 min  |
"""
INSTALLATION = """# Elsewhere

- work: work.md
- dates: 2027-03-01/2027-06-30

## Substitutions

| part | device | technology | refresh rate | synchronisation | clock tolerance |
| ---- | ------ | ---------- | ------------ | --------------- | --------------- |
| M1   | V-1    | LCD        | {refresh}    |                 |                 |
| P1   | V-11   | computer   |              | free-running    | {tolerance}     |
| P2   | V-12   | computer   |              | free-running    | 10 ppm          |

## Changes

| part | frame rate | duration   |
| ---- | ---------- | ---------- |
| V1   | 25         | {duration} |
"""


def told(refresh: str, tolerance: str, duration: str) -> dict[tuple[str, tuple[str, ...]], Effect]:
    text = INSTALLATION.format(refresh=refresh, tolerance=tolerance, duration=duration)
    found = loaded(WORK, text, vocabulary())
    return {
        (ENGLISH.say(one.quantity), one.subject.members): one
        for one in assess(found.work, found.installation).effects
    }


@fixed(10)
@given(st.integers(24, 120), st.integers(1, 200), st.integers(1, 30))
def test_units_do_not_change_what_is_told(refresh: int, tolerance: int, quarters: int) -> None:
    one = told(f"{refresh} Hz", f"{tolerance} ppm", f"{15 * quarters} min")
    other = told(f"{refresh / 1000} kHz", f"{tolerance / 10000:.4f} %", f"{900 * quarters} s")
    assert one == other


@fixed(10)
@given(
    st.integers(24, 120),
    st.integers(1, 200),
    st.integers(1, 30),
    st.sets(st.sampled_from([0, 1, 2]), min_size=1),
)
def test_a_cell_left_blank_never_tells_more(
    refresh: int, tolerance: int, quarters: int, blank: set[int]
) -> None:
    cells = [f"{refresh} Hz", f"{tolerance} ppm", f"{15 * quarters} min"]
    full = told(*cells)
    vague = told(*("any" if place in blank else cell for place, cell in enumerate(cells)))
    for key, effect in vague.items():
        closer = full.get(key)
        if closer is not None and effect.proposed is not None and closer.proposed is not None:
            assert holds(effect.proposed, closer.proposed), key
    for key, effect in full.items():
        assert key in vague or key[0] in {"uneven frames", "time until the loops meet again"}, effect
