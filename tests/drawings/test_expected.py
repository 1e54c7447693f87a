"""Each drawing of small cases, against a file that a reader can open and judge; and what is measured in them.

To draw the expected files anew after a change that was meant: `INTENT_DRAW=1 pytest tests/drawings`, then look.
"""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path

import pytest
from lxml import etree

from drawings.one_drawing import WIDTH, one_drawing
from intent.drawings.depicted import DrawingStyle
from intent.drawings.drawing import drawings_of
from intent.drawings.set_up import stages_of
from intent.drawings.stage import View, Which
from intent.drawings.strokes import PLAIN, STROKES
from intent.variance.result import Variance, Verdict

CASES = Path(__file__).parent / "cases"
NAMES = sorted(folder.name for folder in CASES.iterdir() if folder.is_dir())
PART = "//*[@data-part='{}']"
Reads = Callable[[str], Variance]


def text_of(variance: Variance, view: View, which: Which) -> bytes:
    return etree.tostring(one_drawing(variance, view, which), pretty_print=True, xml_declaration=False)


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("which", Which)
@pytest.mark.parametrize("view", View)
def test_drawing_is_as_expected(name: str, view: View, which: Which, case: Reads) -> None:
    path = CASES / name / f"{view.value}-{which.value}.svg"
    found = text_of(case(name), view, which)
    if os.environ.get("INTENT_DRAW"):
        path.write_bytes(found)
    assert found == path.read_bytes(), f"differs from {path}"


@pytest.mark.parametrize("name", NAMES)
def test_same_input_same_bytes(name: str, case: Reads) -> None:
    lined = DrawingStyle(has_lines=True)
    one, two = (
        [etree.tostring(drawing.element) for drawing in drawings_of(stages_of(case(name)), WIDTH, lined)]
        for _ in range(2)
    )
    assert one == two


def texts(element: etree._Element, path: str) -> list[str]:
    """The texts or attributes that a path finds."""
    found = element.xpath(path)
    assert isinstance(found, list)
    return list(map(str, found))


def part(variance: Variance, identifier: str, which: Which = Which.PROPOSED) -> etree._Element:
    found = one_drawing(variance, which=which).xpath(PART.format(identifier))
    assert isinstance(found, list)
    assert len(found) == 1
    element = found[0]
    assert isinstance(element, etree._Element)
    return element


def corners(path: str) -> list[tuple[float, float]]:
    """The corners of a path of straight lines."""
    pairs = (pair.split() for pair in path.strip("MZ").split("L"))
    return [(float(x), float(y)) for x, y in pairs]


def top_wedge(element: etree._Element) -> list[tuple[float, float]]:
    found = element.xpath("./*[@class='top']/@d")
    assert isinstance(found, list)
    return corners(str(found[0]))


@pytest.mark.parametrize(
    ("identifier", "across", "down"), [("M1", 0, -1), ("M2", 1, 0), ("M3", 0, 1), ("M4", -1, 0)]
)
def test_the_wedge_points_where_the_top_of_the_picture_is(
    identifier: str, across: int, down: int, case: Reads
) -> None:
    """Turned right is a quarter clockwise seen from the front: the top is to the right (shared text form)."""
    tip, one, two = top_wedge(part(case("four-ways-up"), identifier, which=Which.DOCUMENTED))
    pointing = (tip[0] - (one[0] + two[0]) / 2, tip[1] - (one[1] + two[1]) / 2)
    length = max(map(abs, pointing))
    assert [round(value / length) for value in pointing] == [across, down]


def test_sizes_are_to_scale(case: Reads) -> None:
    """A 4:3 screen of 50 cm is 40 by 30 cm (the 3-4-5 triangle of Euclid I.47), here at 1 to 30 on paper."""
    drawn = one_drawing(case("four-ways-up"), which=Which.DOCUMENTED)
    assert "1:30 " in "".join(map(str, drawn.itertext()))
    element = part(case("four-ways-up"), "M1", which=Which.DOCUMENTED)
    outline = corners(str(element[0].get("d")))
    xs, ys = zip(*outline, strict=True)
    assert max(xs) - min(xs) == pytest.approx(400 / 30, abs=0.02)
    assert max(ys) - min(ys) == pytest.approx(300 / 30, abs=0.02)


def test_a_picture_shown_whole_on_a_wider_screen_has_bars(case: Reads) -> None:
    """A 4:3 picture fills 3/4 of a 16:9 screen's width, and all of its height: (4/3) / (16/9) = 3/4."""
    element = part(case("bars-and-crops"), "M1")
    shapes = [corners(str(one.get("d"))) for one in element if one.get("fill") == "none"]
    screen, picture = shapes[0], next(one for one in shapes[1:] if len(one) == 4)
    wide, high = (max(one) - min(one) for one in zip(*screen, strict=True))
    across, down = (max(one) - min(one) for one in zip(*picture, strict=True))
    outside = STROKES[Verdict.UNKNOWN].width - PLAIN
    assert across / (wide - outside) == pytest.approx(3 / 4, abs=0.005)
    assert down / (high - outside) == pytest.approx(1, abs=0.005)


def test_what_is_left_out_is_a_ghost_in_the_proposed_drawing_alone(case: Reads) -> None:
    variance = case("four-ways-up")
    assert "omitted" in str(part(variance, "M3").get("class"))
    assert "omitted" not in str(part(variance, "M3", which=Which.DOCUMENTED).get("class"))


def test_what_is_added_is_in_the_proposed_drawing_alone(case: Reads) -> None:
    variance = case("four-ways-up")
    assert "added" in str(part(variance, "X1").get("class"))
    assert not one_drawing(variance, which=Which.DOCUMENTED).xpath(PART.format("X1"))


def test_lines_lead_from_players_only_on_request(case: Reads) -> None:
    variance = case("four-ways-up")
    feeding = "//*[@class='feeds']"
    assert not one_drawing(variance).xpath(feeding)
    fed = one_drawing(variance, has_lines=True, which=Which.DOCUMENTED).xpath(feeding)
    assert isinstance(fed, list)
    assert len(fed) == 2


def test_a_display_of_unknown_size_or_way_up_is_a_mark_and_says_what_is_missing(case: Reads) -> None:
    text = " ".join(map(str, one_drawing(case("lying-and-behind")).itertext()))
    assert "Not given of M5: visible diagonal." in text
    assert "Not given of M6: rotation." in text


def test_a_projector_is_a_body_before_what_it_throws(case: Reads) -> None:
    """A slide projector 5.2 m from the wall, its lens so far before the middle of a picture 1.73 m wide."""
    variance = case("thrown")
    plan = one_drawing(variance, View.PLAN, Which.DOCUMENTED)
    assert plan.xpath(PART.format("A1 (projector)"))
    beams = [corners(data) for data in texts(plan, "//*[@class='beam']/@d")]
    assert len(beams) == 2
    scale = int("".join(map(str, plan.itertext())).split("1:")[1].split(":")[0])
    (lens, left), (_, right) = sorted(beams, key=lambda beam: beam[1])
    assert lens[1] - left[1] == pytest.approx(5200 / scale, abs=0.02)
    assert right[0] - left[0] == pytest.approx(1728 / scale, abs=0.02)
    labels = texts(plan, "//*[@class='label']/*[local-name()='text']/text()")
    assert {"A1", "picture of A1"} <= set(labels)
    assert not one_drawing(variance, View.ELEVATION, Which.DOCUMENTED).xpath(PART.format("A1 (projector)"))


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("width", [82.0, 120.0, WIDTH])
def test_letters_are_seven_points_on_paper_at_least(name: str, width: float, case: Reads) -> None:
    """A drawing is printed as wide as it is drawn, so its units are millimetres; a point is 25.4/72 mm."""
    for drawing in drawings_of(stages_of(case(name)), width):
        assert str(drawing.element.get("viewBox")).split()[2] + "mm" == drawing.element.get("width")
        sizes = [float(size) for size in texts(drawing.element, "//@font-size")]
        assert min(sizes) >= 7 * 25.4 / 72


@pytest.mark.parametrize("name", NAMES)
def test_the_legend_has_no_pattern_that_no_picture_has(name: str, case: Reads) -> None:
    for drawing in drawings_of(stages_of(case(name)), WIDTH):
        for pattern in set(texts(drawing.element, "//@fill[starts-with(., 'url')]")):
            assert drawing.element.xpath(f"//*[@data-part]//*[@fill='{pattern}']"), pattern


def test_a_ceiling_is_drawn_at_its_height_and_the_rest_of_the_room_is_told(case: Reads) -> None:
    """2.70 m above the floor; nobody says where in the room the work stands, so its walls and door are not drawn."""
    drawn = one_drawing(case("thrown"))
    said = "".join(map(str, drawn.itertext()))
    scale = int(said.split("1:")[1].split(":")[0])
    (ceiling,), (floor,) = (texts(drawn, f"//*[@class='{name}']/@d") for name in ("ceiling", "floor"))
    assert corners(floor)[0][1] - corners(ceiling)[0][1] == pytest.approx(2700 / scale, abs=0.02)
    assert "not where in it the work stands: ceiling height 2.70 m and door width 1.10 m." in " ".join(
        texts(drawn, "//*[local-name()='text']/text()")
    )
