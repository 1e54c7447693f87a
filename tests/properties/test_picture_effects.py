"""What must always hold of the picture's formulas and effects: scaling, symmetry, units, and bounds that only widen.

A number less well known never gives a narrower answer; a picture twice as large has everything twice as large; an
inch is 25.4 mm.
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from math import atan, degrees
from pathlib import Path

import pytest
from effects.test_effect_cases import assessed
from hypothesis import given
from hypothesis import strategies as st
from test_cases import Case

from intent.effects.handling.neighbours import Face, neighbours
from intent.formulas import pixels, placing, seeing, shapes
from intent.language.locale import ENGLISH
from intent.values.bounds import known, point, times
from intent.values.regions import Interval
from properties.strategies import assert_never_narrower, fixed, nested

lengths = st.fractions(Fraction(1, 100), Fraction(5), max_denominator=1000)
ratios = st.fractions(Fraction(1, 3), Fraction(3), max_denominator=64)
turns = st.sampled_from([0, 90, 180, 270])
ROUNDING = Fraction(1, 10**9)
"""A root is cut off after twelve decimals."""


FORMULAS: dict[str, Callable[[Interval, Interval], Interval]] = {
    "width": shapes.width,
    "height": shapes.height,
    "area": shapes.area,
    "filled share": shapes.filled_share,
    "distortion": shapes.distortion,
    "bars at the sides": lambda one, two: shapes.bars(one, two)[0],
    "bars above and below": lambda one, two: shapes.bars(one, two)[1],
    "turned shape": lambda one, _two: shapes.turned_shape(one, Interval(Fraction(0), Fraction(360))),
    "thrown width": shapes.thrown_width,
    "pitch": pixels.pitch,
    "outline": lambda one, two: placing.outline(one, two, 30)[0],
}


@pytest.mark.parametrize("name", FORMULAS)
@given(first=nested(lengths), second=nested(ratios))
@fixed(60)
def test_less_known_is_never_narrower(
    name: str, first: tuple[Interval, Interval], second: tuple[Interval, Interval]
) -> None:
    assert_never_narrower(FORMULAS[name], first, second)


@given(diagonal=lengths, shape=ratios, factor=lengths)
@fixed(100)
def test_a_larger_screen_has_all_its_sides_larger(
    diagonal: Fraction, shape: Fraction, factor: Fraction
) -> None:
    small, large = point(diagonal), point(diagonal * factor)
    for side in (shapes.width, shapes.height):
        one, two = known(side(small, point(shape))), known(side(large, point(shape)))
        assert one is not None
        assert two is not None
        assert abs(one * factor - two) < ROUNDING
    assert times(shapes.area(small, point(shape)), point(factor**2)) == shapes.area(large, point(shape))


@given(shape=ratios, screen=ratios)
@fixed(100)
def test_picture_and_screen_may_change_places(shape: Fraction, screen: Fraction) -> None:
    """What fills a screen, and what is drawn out, is the same of either; bars change sides."""
    one, two = point(shape), point(screen)
    assert shapes.filled_share(one, two) == shapes.filled_share(two, one)
    assert shapes.distortion(one, two) == shapes.distortion(two, one)
    assert shapes.bars(one, two) == shapes.bars(two, one)[::-1]
    share, bars = known(shapes.filled_share(one, two)), [known(bar) or 0 for bar in shapes.bars(one, two)]
    assert share == 1 - 2 * sum(bars)


@given(width=lengths, height=lengths, turn=turns)
@fixed(100)
def test_turned_twice_is_as_before(width: Fraction, height: Fraction, turn: int) -> None:
    outline = placing.outline(point(width), point(height), turn)
    assert placing.outline(*outline, turn) == (point(width), point(height))
    assert times(*outline) == point(width * height)


@given(pitch=lengths, distance=lengths)
@fixed(60)
def test_a_structure_fades_where_it_is_one_minute_wide(pitch: Fraction, distance: Fraction) -> None:
    """The angle at which it is seen has the pitch over the distance for its tangent."""
    fades = known(seeing.fading_distance(point(pitch)))
    assert fades is not None
    minutes = 60 * degrees(atan(pitch / distance))
    assert (minutes > 1) == (distance < fades)


rectangles = st.tuples(st.integers(0, 20), st.integers(0, 20), st.integers(1, 6), st.integers(1, 6))


@given(st.lists(rectangles, min_size=2, max_size=8))
@fixed(150)
def test_every_overlap_is_found_once_whatever_the_order(found: list[tuple[int, int, int, int]]) -> None:
    faces = {f"M{place}": _face(f"M{place}", *one) for place, one in enumerate(found)}
    told = [frozenset((pair.one, pair.two)) for pair in neighbours(faces) if pair.gap < 0]
    parts = list(faces)
    overlapping = [
        frozenset((one, two))
        for place, one in enumerate(parts)
        for two in parts[place + 1 :]
        if faces[one].overlaps(faces[two])
    ]
    assert sorted(map(sorted, told)) == sorted(map(sorted, overlapping))
    turned = neighbours(dict(reversed(faces.items())))
    assert {frozenset((pair.one, pair.two)) for pair in turned if pair.gap < 0} == set(overlapping)


def _face(part: str, left: int, bottom: int, width: int, height: int) -> Face:
    scale = 100_000
    return Face(
        part,
        ((left * scale, (left + width) * scale), (bottom * scale, (bottom + height) * scale), (0, 0)),
    )


WORK = """
## Parts

### Monitors

- kind: display

- viewing distance: 2 m

| part | device | technology       | visible diagonal | aspect ratio | rotation | fit   | position        | channel |
| ---- | ------ | ---------------- | ---------------- | ------------ | -------- | ----- | --------------- | ------- |
| M1   | E-01   | cathode-ray tube | 20 in            | 4:3          | upright  | whole | 0.0, 1.2, 0.0 m | A       |
| M2   | E-02   | cathode-ray tube | 20 in            | 4:3          | upright  | whole | 0.6, 1.2, 0.0 m | A       |

## Material

| material | channel | standard | raster  | pixel aspect ratio |
| -------- | ------- | -------- | ------- | ------------------ |
| V1       | A       | NTSC     | 704×480 | 10:11              |
"""
Told = dict[tuple[str, tuple[str, ...]], tuple[Interval | None, str]]


def told(diagonal: str, shape: str, fit: str) -> Told:
    """The effects of a panel in the place of M1, by quantity and parts."""
    installation = f"""
## Substitutions

| part | device | technology | visible diagonal | aspect ratio | raster    |
| ---- | ------ | ---------- | ---------------- | ------------ | --------- |
| M1   | V-1    | LCD        | {diagonal}       | {shape}      | 1920×1080 |

## Changes

| part | fit   |
| ---- | ----- |
| M1   | {fit} |
"""
    variance = assessed(Case(Path("panel.md"), 1, "A panel", "A panel", WORK, "", installation, ""))
    return {
        (ENGLISH.say(effect.quantity), effect.subject.members): (
            effect.proposed,
            ENGLISH.say(effect.sentence),
        )
        for effect in variance.effects
        if effect.topic == "picture"
    }


fits = st.sampled_from(["whole", "cropped", "stretched"])
screens = st.sampled_from(["16:9", "16:10", "4:3", "5:4", "21:9"])


@given(inches=st.integers(1, 6), shape=screens, fit=fits)
@fixed(20)
def test_another_unit_tells_the_same(inches: int, shape: str, fit: str) -> None:
    """Ten inches are 254 mm."""
    assert told(f"{inches * 10} in", shape, fit) == told(f"{inches * 254} mm", shape, fit)


@given(inches=st.integers(5, 60), more=st.integers(1, 9), shape=screens, fit=fits)
@fixed(20)
def test_what_is_said_less_closely_is_told_less_closely(inches: int, more: int, shape: str, fit: str) -> None:
    """Every quantity told of a closer proposal lies within what is told of one less close, where that is told."""
    close, loose = (
        told(f"{inches} in", shape, fit),
        told(f"between {inches} in and {inches + more} in", shape, fit),
    )
    blank = told("", shape, fit)
    for wider in (loose, blank):
        for quantity, (bounds, _words) in wider.items():
            found = close.get(quantity, (None, ""))[0]
            if bounds is not None and found is not None:
                assert bounds.holds(found), f"{quantity}: {found} not within {bounds}"


@given(inches=st.integers(5, 60))
@fixed(10)
def test_an_unchanged_shape_leaves_no_bars_and_loses_nothing(inches: int) -> None:
    quantities = {quantity for quantity, _members in told(f"{inches} in", "4:3", "whole")}
    assert not quantities & {"bars at the sides", "bars above and below", "lost share", "distortion", "fit"}
