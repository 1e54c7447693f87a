"""No label can be taken for another part's: it is nearest to its own, or its line ends in it, or it is not there.

What is near is measured here by points along the lines as drawn, not as the drawing itself measures it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from itertools import combinations
from math import hypot

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from drawings.many_parts_drawn import HEAD, LOAN
from drawings.one_drawing import WIDTH
from intent.drawings.depicted import PLAIN_STYLE, Depicted
from intent.drawings.details import details_of
from intent.drawings.drawing import draw_detail, drawings_of
from intent.drawings.glyphs import Glyph, glyphs_of
from intent.drawings.hiding import hiding_of
from intent.drawings.labelling import Lettered, labels_of
from intent.drawings.labels import PlacedLabel
from intent.drawings.patterns import channels_of
from intent.drawings.plane import Box, Point, is_inside
from intent.drawings.set_up import stages_of
from intent.drawings.sheet import Sheet, lay, lay_detail
from intent.drawings.stage import Stage, Stages, Stand, View, Which
from intent.variance.result import Variance

Judges = Callable[[str, str], Variance]
NARROW = 82.0
WORK = f"""{HEAD}
### Monitors

- kind: display

| part | technology | visible diagonal | aspect ratio | rotation | tilt | facing | position | channel |
| ---- | ---------- | ---------------- | ------------ | -------- | ---- | ------ | -------- | ------- |
{{monitors}}

### Furnishings

- kind: furniture

| part | outer width | outer height | outer depth | position |
| ---- | ----------- | ------------ | ----------- | -------- |
{{furnishings}}
"""
WAYS = ("upright", "turned right", "upside down", "turned left", "12 deg", "350 deg")
TILTS = ("vertical", "face up", "20 deg")
FACINGS = ("towards the viewer", "60 deg", "90 deg", "180 deg")


def position_of(x: int, y: int, z: int) -> str:
    return f"{x / 10}, {abs(y) / 10}, {z / 10} m"


tenths = st.integers(-14, 14)
places = st.builds(position_of, tenths, tenths, tenths)
sizes = st.integers(2, 20).map(lambda tenth: f"{tenth / 10} m")


@st.composite
def layouts(draws: st.DrawFn) -> str:
    """Sets and furniture, close together, some before others, some leaning, lying or turned away."""
    monitors = draws(
        st.lists(
            st.tuples(
                st.sampled_from(("20 cm", "36 cm", "51 cm", "90 cm")),
                st.sampled_from(WAYS),
                st.sampled_from(TILTS),
                st.sampled_from(FACINGS),
                places,
            ),
            min_size=1,
            max_size=14,
        )
    )
    furnishings = draws(st.lists(st.tuples(sizes, sizes, sizes, places), max_size=5))
    return WORK.format(
        monitors="\n".join(
            f"| M{number} | cathode-ray tube | {size} | 4:3 | {way} | {tilt} | {facing} | {place} | A |"
            for number, (size, way, tilt, facing, place) in enumerate(monitors, 1)
        ),
        furnishings="\n".join(
            f"| T{number} | {wide} | {high} | {deep} | {place} |"
            for number, (wide, high, deep, place) in enumerate(furnishings, 1)
        ),
    )


def wall() -> str:
    """Two hundred displays, close together, in all ways up."""
    rows = (
        f"| M{number} | cathode-ray tube | 36 cm | 4:3 | {WAYS[number * 7 % 4]} | | | "
        f"{-4.2 + 0.44 * (number % 20):.2f}, {0.4 + 0.42 * (number // 20):.2f}, 0.0 m | A |"
        for number in range(200)
    )
    return WORK.format(monitors="\n".join(rows), furnishings="")


def lettered(stages: Stages, stage: Stage, sheet: Sheet) -> tuple[list[Glyph], Lettered]:
    """The parts and the labels of one state on a sheet."""
    channels = channels_of(stages.channels)
    subject = Depicted(stage=stage, sheet=sheet, which=Which.PROPOSED, style=PLAIN_STYLE, channels=channels)
    glyphs = glyphs_of(stage.items, sheet)
    return glyphs, labels_of(subject, glyphs, hiding_of(glyphs, sheet.view))


def assert_plain(glyphs: list[Glyph], found: Lettered, view: View) -> None:
    """What the module says, of one drawing."""
    every = {glyph.item.identifier: glyph for glyph in glyphs}
    for one, two in combinations(found.placed, 2):
        assert not one.box.overlaps(two.box), (one.spot.parts, two.spot.parts)
    named = [part for label in found.placed for part in label.spot.parts]
    left_out = [item.identifier for item in (*found.unlabelled, *found.hidden)]
    assert sorted((*named, *left_out)) == sorted(every)
    hidden = {item.identifier for item in found.hidden}
    seen = {part: glyph for part, glyph in every.items() if part not in hidden}
    for label in found.placed:
        if label.leader:
            assert_ends_in_its_part(label, seen, view)
        else:
            assert_nearest_to_its_part(label, seen, view)


def assert_ends_in_its_part(label: PlacedLabel, glyphs: Mapping[str, Glyph], view: View) -> None:
    assert label.leader
    end = label.leader[1]
    own = [glyphs[part] for part in label.spot.parts if part in glyphs]
    assert any(is_at(end, glyph) for glyph in own)
    before = {
        other.item.identifier
        for glyph in own
        for other in hiding_of(list(glyphs.values()), view)[glyph.item.identifier]
    }
    for part, glyph in glyphs.items():
        if part in before:
            assert not is_at(end, glyph), f"the line of {label.spot.parts} ends in {part}"


def is_at(point: Point, glyph: Glyph) -> bool:
    if len(glyph.edge) > 2:
        return is_inside(point, glyph.edge)
    return glyph.extent.grown(0.1).nearest(point) == point


def assert_nearest_to_its_part(label: PlacedLabel, glyphs: Mapping[str, Glyph], view: View) -> None:
    """A label within a face names it; what is behind that face is not seen there."""
    own = next(glyphs[part] for part in label.spot.parts if part in glyphs)
    near = min(far_from(label.box, glyphs[part]) for part in label.spot.parts if part in glyphs)
    is_on_it = len(own.edge) > 2 and all(is_inside(corner, own.edge) for corner in label.box.corners)
    hiders = hiding_of(list(glyphs.values()), view)
    for part, other in glyphs.items():
        if part in label.spot.parts or (is_on_it and own in hiders[part]):
            continue
        assert near < far_from(label.box, other), f"{label.spot.parts} stands nearer to {part}"


def far_from(box: Box, glyph: Glyph) -> float:
    """Millimetres from a label to what is seen of a part: a body with a face, or lines."""
    is_body = glyph.item.is_display and glyph.item.standing is not Stand.OMITTED
    if is_body and len(glyph.edge) > 2 and is_inside(box.centre, glyph.edge):
        return 0.0
    return min(hypot(x - box.nearest((x, y))[0], y - box.nearest((x, y))[1]) for x, y in drawn_points(glyph))


def drawn_points(glyph: Glyph) -> Iterator[Point]:
    """Points a tenth of a millimetre apart, or nearer, along the lines of a part."""
    if len(glyph.edge) == 1:
        yield from glyph.extent.grown(-0.22).corners
    for outline in filter(None, (glyph.edge, glyph.looking)):
        for (x, y), (end_x, end_y) in zip(outline, (*outline[1:], outline[0]), strict=True):
            steps = max(int(hypot(end_x - x, end_y - y) * 10), 1)
            for step in range(steps + 1):
                yield x + (end_x - x) * step / steps, y + (end_y - y) * step / steps


@settings(max_examples=60, deadline=None)
@given(work=layouts())
@pytest.mark.parametrize("width", [NARROW, WIDTH])
@pytest.mark.parametrize("view", View)
def test_every_label_is_nearest_to_its_own_part_or_leads_to_it(
    view: View, width: float, work: str, judged: Judges
) -> None:
    stages = stages_of(judged(work, LOAN))
    assert_plain(*lettered(stages, stages.proposed, lay(stages, view, width)), view)


@settings(max_examples=60, deadline=None)
@given(work=layouts())
def test_what_the_whole_hides_or_leaves_unnamed_is_seen_in_an_elevation_of_its_group(
    work: str, judged: Judges
) -> None:
    stages = stages_of(judged(work, LOAN))
    elevations = [one for one in drawings_of(stages, NARROW) if one.view is View.ELEVATION]
    lacking = frozenset(part for one in elevations for part in one.lacking)
    details = details_of(stages, lacking)
    assert lacking <= {part for detail in details for part in detail.parts}
    for detail in details:
        some = stages.only(detail.parts)
        glyphs, found = lettered(some, some.proposed, lay_detail(some, NARROW))
        assert not any(hiding_of(glyphs, View.ELEVATION).values()), "something is hidden in its own drawing"
        assert not found.hidden
        assert_plain(glyphs, found, View.ELEVATION)
        drawn = draw_detail(stages, detail, NARROW)[-1].element
        assert all(drawn.xpath(f"//*[@data-part='{part}']") for part in detail.parts)


@pytest.mark.parametrize("view", View)
def test_two_hundred_displays_are_each_labelled_or_listed(view: View, judged: Judges) -> None:
    stages = stages_of(judged(wall(), LOAN))
    for width in (NARROW, WIDTH):
        glyphs, found = lettered(stages, stages.proposed, lay(stages, view, width))
        assert_plain(glyphs, found, view)


def test_in_a_rack_every_set_has_its_own_label(case: Callable[[str], Variance]) -> None:
    """Two by four sets, and one that lies in front: no label stands under another set, and none is without."""
    stages = stages_of(case("rack-of-eight"))
    glyphs, found = lettered(stages, stages.documented, lay(stages, View.ELEVATION, WIDTH))
    assert_plain(glyphs, found, View.ELEVATION)
    within = {label.spot.parts[0] for label in found.placed if label.is_inside}
    assert {f"L{number}" for number in range(2, 10)} <= within
    lacking = drawings_of(stages, WIDTH)[0].lacking
    assert {"L1", "L2"} <= lacking
    looks = next(one for one in details_of(stages, lacking) if "L1" in one.parts)
    assert looks.parts == {f"L{number}" for number in range(1, 9)}
    assert looks.without == ("L9",)
