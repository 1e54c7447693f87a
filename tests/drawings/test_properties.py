"""What holds of every drawing: nothing is lost, and nothing is drawn twice."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from lxml import etree

from drawings.many_parts_drawn import HEAD, LOAN
from drawings.one_drawing import one_drawing
from intent.drawings.occupied import Occupied
from intent.drawings.plane import Box, Segment
from intent.drawings.stage import View
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
WORK = f"""{HEAD}
### Monitors

- kind: display

| part | technology | visible diagonal | aspect ratio | rotation | position | channel |
| ---- | ---------- | ---------------- | ------------ | -------- | -------- | ------- |
{{rows}}
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
    assert sorted(box for _, box in occupied.crossed(line)) == sorted(
        one for one in taken if one.is_crossed(line)
    )
