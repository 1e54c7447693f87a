"""How a part lies, in the large words of its card: upright, face up, upside down, 10° to the left, leaning back 5°."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from dataclasses import dataclass
from math import atan2, degrees

from intent.drawings.measuring import angle
from intent.drawings.solid import Pose
from intent.effects.scene import Scene
from intent.language.figures import Written
from intent.language.message import Message, Words, named, say
from intent.model.phrasing import NOT_GIVEN
from intent.names import term_iri
from intent.vocabulary.terms import Concept, Vocabulary

ROTATION, TILT, FACING = "rotation", "tilt", "facing"
_ANGLES = (ROTATION, TILT, FACING)
FLAT = 60.0
"""Degrees from the vertical beyond which a part lies rather than stands."""
_EXACT = 0.05
"""Degrees: the same, as far as people write angles."""
_HALF, _WHOLE = 180.0, 360.0
_ASIDE = (say("{angle} to the left"), say("{angle} to the right"))
_LEANING = (say("leaning forward {angle}"), say("leaning back {angle}"))
_LOOKING = (say("facing {angle} to the right"), say("facing {angle} to the left"))
_TOPS = (
    say("its top away from the viewer"),
    say("its top to the right"),
    say("its top towards the viewer"),
    say("its top to the left"),
)
"""Where the top of a part that lies flat points, by quarter turns clockwise seen from above, from away."""
_TOPS_BETWEEN = (
    say("its top away from the viewer, {angle} to the left"),
    say("its top away from the viewer, {angle} to the right"),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Lying:
    """Which way up a part goes: what is said, and the pose to draw, where the angles are known closely."""

    words: tuple[Words, ...]
    """In large type, one below another."""
    pose: Pose | None
    shows_picture: bool
    """Whether the face is a picture's."""
    depth: float
    """As a share of the width; next to nothing for a picture that is thrown on a wall."""


def lying_of(scene: Scene, part: str, *, hangs: bool, depth: float) -> Lying | None:
    """How a part lies; of a thing that shows no picture and of which no angle is given, nothing.

    ``hangs`` says whether it shows a picture, and so has to have a way up; ``depth`` is its share of the width.
    """
    given = [name for name in _ANGLES if scene.is_given(part, name)]
    if not given and not hangs:
        return None
    angles = {name: angle(scene, part, name) for name in given}
    if (hangs and ROTATION not in given) or None in angles.values():
        words = tuple(_as_given(scene, part, given, hangs))
        return Lying(words=words, pose=None, shows_picture=hangs, depth=depth)
    pose = settled(*(angles.get(name) or 0.0 for name in _ANGLES))
    words = tuple(lying_words(scene.vocabulary, pose, told=given))
    return Lying(words=words, pose=pose, shows_picture=hangs, depth=depth)


def settled(rotation: float, tilt: float, facing: float) -> Pose:
    """The same way of lying with a tilt from -90° to 90°, and rotation and facing from -180° to 180°.

    What leans further back than its back looks the other way, with its head down.
    """
    tilt = _within(tilt)
    if abs(tilt) > _HALF / 2:
        rotation, facing = rotation + _HALF, facing + _HALF
        tilt = _within(_HALF - tilt)
    return Pose(centre=(0.0, 0.0, 0.0), rotation=_within(rotation), tilt=tilt, facing=_within(facing))


def _within(turn: float) -> float:
    """An angle from -180° (left out) to 180°."""
    turn = turn % _WHOLE
    return turn - _WHOLE if turn > _HALF else turn


def lying_words(vocabulary: Vocabulary, pose: Pose, *, told: Collection[str]) -> Iterator[Words]:
    """What the card says large of a pose; of a thing of which no rotation is given, nothing is said of one."""
    if abs(pose.tilt) > FLAT:
        yield from _flat(vocabulary, pose)
        return
    if ROTATION in told or not _same(pose.rotation, 0):
        yield _turned(vocabulary, pose.rotation)
    if not _same(pose.tilt, 0):
        yield _either(_LEANING, pose.tilt)
    if not _same(pose.facing, 0) or told == [FACING]:
        yield _looking(vocabulary, pose.facing)
    elif ROTATION not in told and _same(pose.rotation, 0) and _same(pose.tilt, 0):
        yield named(_term(vocabulary, TILT, 0) or vocabulary.named(term_iri(TILT)))


def _flat(vocabulary: Vocabulary, pose: Pose) -> Iterator[Words]:
    """`face up`, and where its top points in the room; how far it leans, where it lies not quite flat."""
    flat = _HALF / 2 if pose.tilt > 0 else -_HALF / 2
    term = _term(vocabulary, TILT, flat)
    yield named(term) if term else _either(_LEANING, flat)
    if not _same(pose.tilt, flat):
        yield _either(_LEANING, pose.tilt)
    yield _top(pose)


def _top(pose: Pose) -> Message:
    """Where the top points, seen from above: away from the viewer is 0°, to the right 90°."""
    right, _, near = pose.frame.up
    turn = degrees(atan2(right, -near))
    quarter = round(turn / 90)
    if _same(turn, quarter * 90):
        return _TOPS[quarter % len(_TOPS)]
    return _either(_TOPS_BETWEEN, turn)


def _turned(vocabulary: Vocabulary, rotation: float) -> Words:
    term = _term(vocabulary, ROTATION, rotation)
    return named(term) if term else _either(_ASIDE, rotation)


def _looking(vocabulary: Vocabulary, facing: float) -> Words:
    term = _term(vocabulary, FACING, facing)
    return say("facing {direction}", direction=term) if term else _either(_LOOKING, facing)


def _either(patterns: tuple[Message, Message], turn: float) -> Message:
    """The pattern for less than nothing or for more, with the angle between nothing and a half turn."""
    written = f"{abs(turn):.1f}".removesuffix(".0")
    return patterns[turn > 0].filled(angle=Written(f"{written}°"))


def _term(vocabulary: Vocabulary, characteristic: str, turn: float) -> Concept | None:
    """The vocabulary's name for an angle, where it has one."""
    schemes = vocabulary.characteristics[term_iri(characteristic)].schemes
    for concept in vocabulary.in_scheme(*sorted(schemes)):
        if concept.magnitude is not None and _same(float(concept.magnitude), turn):
            return concept
    return None


def _same(one: float, other: float) -> bool:
    return abs(_within(one - other)) < _EXACT


def _as_given(scene: Scene, part: str, given: list[str], hangs: bool) -> Iterator[Words]:
    """What is written of each angle, where they are not known closely enough to be drawn."""
    for name in _ANGLES:
        if name in given:
            yield say("{subject}: {text}", subject=scene.called(name), text=scene.text(part, name))
        elif name == ROTATION and hangs:
            yield say("{subject}: {text}", subject=scene.called(name), text=NOT_GIVEN)
