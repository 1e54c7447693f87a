"""The way up on a card: what is drawn and what is said of it are of the same solid.

A set on its back is drawn on its back. What the words say is held against the drawing by its points on paper alone.
"""

from __future__ import annotations

import re
from itertools import product
from math import cos, radians
from pathlib import Path

import pytest
from lxml import etree

from intent.drawings.plane import Point, around
from intent.drawings.solid import Pose
from intent.language.locale import ENGLISH
from intent.papers.cards.posture import Lying, lying_words, settled
from intent.papers.cards.set_drawing import SeenSet, seen_set, way_up
from intent.vocabulary.loader import read_vocabulary

EXPECTED = Path(__file__).parent / "expected" / "ways_up.svg"
ROTATIONS = (0, 90, 180, 270, 350, 12)
TILTS = (0, 5, -5, 90, -90, 87, 180, 185)
FACINGS = (0, 90, 180, 270, 15, 345)
EVERY = tuple(product(ROTATIONS, TILTS, FACINGS))
DEPTH = 0.7
SAID = {
    (0, 0, 0): "upright",
    (90, 0, 0): "turned right",
    (180, 0, 0): "upside down",
    (270, 0, 0): "turned left",
    (350, 0, 0): "10° to the left",
    (12.5, 0, 0): "12.5° to the right",
    (350, 5, 15): "10° to the left, leaning back 5°, facing 15° to the left",
    (0, -5, 345): "upright, leaning forward 5°, facing 15° to the right",
    (0, 0, 180): "upright, facing away from the viewer",
    (0, 90, 0): "face up, its top away from the viewer",
    (90, 90, 0): "face up, its top to the right",
    (180, 90, 0): "face up, its top towards the viewer",
    (270, 90, 0): "face up, its top to the left",
    (330, 90, 0): "face up, its top away from the viewer, 30° to the left",
    (0, 85, 0): "face up, leaning back 85°, its top away from the viewer",
    (0, -90, 0): "face down, its top towards the viewer",
    (0, 270, 0): "face down, its top towards the viewer",
    (180, 180, 180): "upright",
}
"""Rotation, tilt and facing in degrees, as the vocabulary defines them, and what stands large on the card."""
DRAWN = ((0, 0, 0), (180, 0, 0), (270, 0, 0), (350, 5, 15), (0, 90, 0), (0, -90, 0), (0, 0, 180))


def said(rotation: float, tilt: float, facing: float) -> list[str]:
    pose = settled(rotation, tilt, facing)
    told = lying_words(read_vocabulary(), pose, told=("rotation", "tilt", "facing"))
    return [ENGLISH.say(one) for one in told]


def seen(rotation: float, tilt: float, facing: float) -> SeenSet:
    return seen_set(settled(rotation, tilt, facing), DEPTH)


def degrees_in(words: str) -> float:
    """The angle in `10° to the left`; 0 where there is none."""
    found = re.search(r"([\d.]+)°", words)
    return float(found[1]) if found else 0.0


def centre(*corners: Point) -> Point:
    return around(corners).centre


def pointing(drawn: SeenSet) -> Point:
    """From the foot of the arrow to its tip, on paper: to the right, and down."""
    tip, foot = drawn.arrow[0], centre(drawn.arrow[3], drawn.arrow[4])
    return tip[0] - foot[0], tip[1] - foot[1]


def body(drawn: SeenSet) -> Point:
    return centre(*drawn.panel, *(point for side in drawn.sides for point in side))


@pytest.mark.parametrize(("angles", "words"), SAID.items())
def test_what_is_said_large(angles: tuple[float, float, float], words: str) -> None:
    assert ", ".join(said(*angles)) == words


@pytest.mark.parametrize("angles", EVERY)
def test_a_settled_pose_is_the_same_way_of_lying(angles: tuple[float, float, float]) -> None:
    rotation, tilt, facing = angles
    given = Pose(centre=(0, 0, 0), rotation=rotation, tilt=tilt, facing=facing).frame
    found = settled(*angles).frame
    for one, other in ((given.right, found.right), (given.up, found.up), (given.outward, found.outward)):
        assert one == pytest.approx(other, abs=1e-9)


@pytest.mark.parametrize("angles", EVERY)
def test_a_set_that_lies_is_drawn_lying_and_points_where_it_is_said_to(
    angles: tuple[float, float, float],
) -> None:
    words, drawn = said(*angles), seen(*angles)
    lies = words[0] in {"face up", "face down"}
    assert lies == (abs(cos(radians(angles[1]))) < 0.5)
    if not lies:
        return
    assert drawn.is_face == (words[0] == "face up")
    assert min(y for _, y in drawn.panel) < min(max(y for _, y in side) for side in drawn.sides), (
        "the sheet that looks up is on top"
    )
    assert centre(*drawn.panel)[1] < body(drawn)[1]
    right, down = pointing(drawn)
    top = words[-1]
    if top == "its top away from the viewer":
        assert down < 0
    elif top == "its top towards the viewer":
        assert down > 0
    elif top == "its top to the left":
        assert right < 0
    elif top == "its top to the right":
        assert right > 0
    else:
        assert ("to the left" in top) or ("to the right" in top)


@pytest.mark.parametrize("angles", EVERY)
def test_a_set_that_stands_is_drawn_standing_and_points_where_it_is_said_to(
    angles: tuple[float, float, float],
) -> None:
    words, drawn = said(*angles), seen(*angles)
    if words[0] in {"face up", "face down"}:
        return
    right, down = pointing(drawn)
    aside = next((one for one in words if one.startswith("facing")), "")
    turned, away = degrees_in(words[0]), degrees_in(aside)
    if words[0] == "upright" or 0 < turned < 90:
        assert down < 0
    if words[0] == "upside down" or turned > 90:
        assert down > 0
    is_away = aside == "facing away from the viewer" or away > 90
    assert drawn.is_face == (not is_away)
    if aside == "facing towards the left":
        assert centre(*drawn.panel)[0] < body(drawn)[0]
    if aside == "facing towards the right":
        assert centre(*drawn.panel)[0] > body(drawn)[0]
    if "towards" in aside:
        return  # seen from the side, its own left and right lie along the line of sight
    mirrored = -1 if is_away else 1
    if words[0] == "turned left":
        assert right * mirrored < 0
    if words[0] == "turned right":
        assert right * mirrored > 0


def test_the_main_ways_up_are_drawn_as_they_were() -> None:
    """Written anew by hand where the drawing is meant to change, after looking at it."""
    lyings = [Lying(words=(), pose=settled(*angles), shows_picture=True, depth=DEPTH) for angles in DRAWN]
    drawn = [etree.tostring(one).decode() for lying in lyings for one in way_up(lying, 27.0, 20.0)]
    assert "\n".join(drawn) + "\n" == EXPECTED.read_text(encoding="utf-8")
