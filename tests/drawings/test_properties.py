"""What holds of every drawing: nothing is lost, nothing is drawn twice, and no label covers another."""

from __future__ import annotations

from collections.abc import Callable
from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from lxml import etree

from drawings.one_drawing import WIDTH, one_drawing
from intent.drawings.depicted import PLAIN_STYLE, Depicted
from intent.drawings.glyphs import glyphs_of
from intent.drawings.hiding import hiding_of
from intent.drawings.labelling import Lettered, labels_of
from intent.drawings.occupied import Occupied
from intent.drawings.patterns import channels_of
from intent.drawings.plane import Box, Segment
from intent.drawings.set_up import stages_of
from intent.drawings.sheet import lay
from intent.drawings.stage import View, Which
from intent.variance.result import Variance

Judges = Callable[[str, str], Variance]
ROTATIONS = {
    "upright": 0,
    "turned right": 90,
    "upside down": 180,
    "turned left": 270,
    "12 deg": 12,
    "350 deg": 350,
}
WORK = """# Many

- artist: Ilse Venn
- year: 1994
- number: D 9
- owner: Drawing Cabinet

## People

| person | name       | role        |
| ------ | ---------- | ----------- |
| cons   | Cora Lindt | conservator |

## Parts

### Monitors

- kind: display

| part | technology | visible diagonal | aspect ratio | rotation | position | channel |
| ---- | ---------- | ---------------- | ------------ | -------- | -------- | ------- |
{rows}
"""
LOAN = """# Loan

- work: work.md
- status: proposed
- dates: 2027-03-01/2027-06-30
- venue: Hall
- by: cons
"""


@st.composite
def displays(draws: st.DrawFn) -> list[tuple[str, str]]:
    """Ways up and positions, some of them not given."""
    tenths = st.integers(-30, 30)
    place = st.builds(lambda x, y, z: f"{x / 10}, {abs(y) / 10}, {z / 10} m", tenths, tenths, tenths)
    return draws(
        st.lists(
            st.tuples(st.sampled_from(sorted(ROTATIONS)), st.one_of(place, st.just(""))),
            min_size=1,
            max_size=12,
        )
    )


def work_of(rows: list[tuple[str, str]]) -> str:
    lines = (
        f"| M{number} | cathode-ray tube | 36 cm | 4:3 | {rotation} | {place} | {'ABC'[number % 3]} |"
        for number, (rotation, place) in enumerate(rows, 1)
    )
    return WORK.format(rows="\n".join(lines))


@settings(max_examples=25)
@given(rows=displays())
@pytest.mark.parametrize("view", View)
def test_every_part_is_drawn_once_as_it_lies_or_listed(
    view: View, rows: list[tuple[str, str]], judged: Judges
) -> None:
    drawn = one_drawing(judged(work_of(rows), LOAN), view=view)
    listed = " ".join(map(str, drawn.itertext()))
    for number, (rotation, place) in enumerate(rows, 1):
        found = drawn.xpath(f"//*[@data-part='M{number}']")
        assert isinstance(found, list)
        assert len(found) == (1 if place else 0)
        if place:
            element = found[0]
            assert isinstance(element, etree._Element)
            assert float(str(element.get("data-rotation"))) == ROTATIONS[rotation]
        else:
            assert f"M{number} display" in listed


@settings(max_examples=25)
@given(rows=displays())
@pytest.mark.parametrize("view", View)
def test_no_two_labels_overlap(view: View, rows: list[tuple[str, str]], judged: Judges) -> None:
    assert_apart(lettered(judged(work_of(rows), LOAN), view))


def wall() -> str:
    """Two hundred displays, close together, in all ways up."""
    ways = ("upright", "turned right", "upside down", "turned left")
    places = [
        (f"{-4.2 + 0.44 * (number % 20):.2f}", f"{0.4 + 0.42 * (number // 20):.2f}") for number in range(200)
    ]
    return work_of([(ways[number * 7 % 4], f"{x}, {y}, 0.0 m") for number, (x, y) in enumerate(places)])


@pytest.mark.parametrize("view", View)
def test_two_hundred_displays_have_labels_that_can_be_read(view: View, judged: Judges) -> None:
    found = lettered(judged(wall(), LOAN), view)
    assert_apart(found)
    assert sum(len(label.asked.spot.parts) for label in found.placed) == 200
    assert sum(1 for label in found.placed if label.leader) <= 24
    assert found.manner.size >= 1.25


def lettered(variance: Variance, view: View) -> Lettered:
    stages = stages_of(variance)
    sheet, channels = lay(stages, view, WIDTH), channels_of(stages.channels)
    subject = Depicted(
        stage=stages.proposed,
        sheet=sheet,
        which=Which.PROPOSED,
        style=PLAIN_STYLE,
        channels=channels,
    )
    glyphs = glyphs_of(stages.proposed.items, sheet)
    return labels_of(subject, glyphs, hiding_of(glyphs, view))


def assert_apart(found: Lettered) -> None:
    for one, two in combinations(found.placed, 2):
        assert not one.box.overlaps(two.box), (one.asked.spot.parts, two.asked.spot.parts)


tenths = st.integers(-400, 400).map(lambda number: number / 10)
boxes = st.builds(
    lambda x, y, wide, high: Box(x, y, x + wide / 10, y + high / 10),
    tenths,
    tenths,
    st.integers(0, 300),
    st.integers(0, 300),
)
points = st.tuples(tenths, tenths)


@given(taken=st.lists(boxes, max_size=30), asked=boxes, line=st.tuples(points, points))
def test_what_is_found_by_squares_is_what_is_found_by_looking_at_all(
    taken: list[Box], asked: Box, line: Segment
) -> None:
    occupied = Occupied(taken)
    assert len(occupied) == len(taken)
    assert occupied.is_free(asked) is not any(asked.overlaps(one) for one in taken)
    assert sorted(occupied.crossed(line)) == sorted(one for one in taken if one.is_crossed(line))
