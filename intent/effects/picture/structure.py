"""What the picture is made of, as an eye meets it: lines or picture elements from where visitors stand, and the glass.

Formulas: `intent.formulas.seeing`.
"""

from __future__ import annotations

from collections.abc import Iterator

from intent.effects.scene import Scene, Sides, differ
from intent.formulas import pixels, seeing
from intent.language.figures import figure
from intent.language.message import Message, say
from intent.model.subject import one
from intent.values.bounds import NATURAL, ZERO, known, surely_above, surely_within
from intent.values.regions import Interval
from intent.values.sets import Answer
from intent.variance.result import Effect, EffectTopic

ACUITY = say(
    "an eye of normal acuity tells apart one arc minute: 3437.75 times the pitch; arithmetic; of a tube its lines "
    "inside the mask, all of them where no overscan is given"
)
GLASS = say("a flat panel is taken to be flat where nothing else is said")
SEEN_UP_TO = say("lines or picture elements seen up to")
FLAT = "curvature-flat"


def structure_effects(sides: Sides, part: str) -> Iterator[Effect]:
    """From how far lines or picture elements are seen, and how the face of the screen is curved, where that changes."""
    yield from _pitch(sides, part)
    yield from _curvature(sides, part)


def _pitch(sides: Sides, part: str) -> Iterator[Effect]:
    before, after = (
        seeing.fading_distance(pitch_of(scene, part)) for scene in (sides.documented, sides.proposed)
    )
    viewing = sides.proposed.bounds(part, "viewing-distance")
    is_stood = sides.proposed.is_given(part, "viewing-distance")
    if not differ(before, after) or (known(before) is None and not (is_stood and known(after) is not None)):
        return
    missing = sides.proposed.unknown(part, "viewing-distance")
    if _hides_unsaid(sides.documented, part) or _hides_unsaid(sides.proposed, part):
        missing += (sides.proposed.called("overscan"),)
    if known(after) is None:
        missing += sides.proposed.unknown(part, "raster")
    yield Effect(
        topic=EffectTopic.PICTURE,
        subject=one(part),
        quantity=SEEN_UP_TO,
        unit="m",
        documented=None if before == NATURAL else before,
        proposed=after,
        sentence=_pitch_words(before, after, viewing),
        source=ACUITY,
        missing=missing,
    )


def _hides_unsaid(scene: Scene, part: str) -> bool:
    """Whether nothing is said of how much a tube hides, by whose lines its picture is seen."""
    is_tube = scene.is_(part, "technology", "cathode-ray-tube") is Answer.IN
    return is_tube and not scene.is_given(part, "raster") and not scene.is_given(part, "overscan")


def pitch_of(scene: Scene, part: str) -> Interval:
    """From one line or picture element to the next, in metres: of a tube by the lines of its material."""
    if scene.is_given(part, "pixel-pitch"):
        return scene.bounds(part, "pixel-pitch")
    if scene.is_(part, "technology", "cathode-ray-tube") is Answer.IN and not scene.is_given(part, "raster"):
        hidden = overscan_of(scene, part)
        rows = {pixels.seen_lines(raster_of(scene, material)[1], hidden) for material in scene.material(part)}
        side = "picture-height"
    else:
        rows, side = {scene.axes(part, "raster")[1]}, "visible-height"
    return pixels.pitch(scene.bounds(part, side), rows.pop()) if len(rows) == 1 else NATURAL


def overscan_of(scene: Scene, part: str) -> Interval:
    """The share of the width, and of the height, that lies behind the mask; nothing where none is given."""
    return scene.bounds(part, "overscan") if scene.is_given(part, "overscan") else ZERO


def raster_of(scene: Scene, material: str) -> tuple[Interval, Interval]:
    """Columns and rows that hold the picture of some material."""
    columns, rows = scene.axes(
        material, "active-raster" if scene.is_given(material, "active-raster") else "raster"
    )
    return columns, rows


def _pitch_words(before: Interval, after: Interval, viewing: Interval) -> Message:
    """Whether visitors where they stand told lines apart, and do still."""
    was, will_be = _is_seen(before, viewing), _is_seen(after, viewing)
    stands = figure(viewing, "m")
    if will_be is None:
        return say("beyond that they are no longer told apart; whether visitors stand nearer is not known")
    if was is False and will_be:
        return say(
            "from {viewing}, where visitors stand, they can be told apart, which they could not",
            viewing=stands,
        )
    if was and will_be is False:
        return say("from {viewing}, where visitors stand, they can no longer be told apart", viewing=stands)
    if will_be:
        return say("from {viewing}, where visitors stand, they can be told apart", viewing=stands)
    return say("from {viewing}, where visitors stand, they cannot be told apart", viewing=stands)


def _is_seen(fading: Interval, viewing: Interval) -> bool | None:
    """Whether lines that fade at one distance are told apart from another; none where that is not sure."""
    if surely_above(fading, viewing):
        return True
    return False if surely_within(fading, viewing) else None


def _curvature(sides: Sides, part: str) -> Iterator[Effect]:
    before, after = _curved(sides.documented, part), _curved(sides.proposed, part)
    if before is None or after is None or before == after:
        return
    yield Effect(
        topic=EffectTopic.PICTURE,
        subject=one(part),
        quantity=sides.proposed.called("screen-curvature"),
        sentence=_curvature_words(before, after),
        source=GLASS,
    )


def _curvature_words(before: str, after: str) -> Message:
    if after == FLAT:
        return say("the face is flat, where it was curved: the picture no longer bulges")
    if before == FLAT:
        return say("the face is curved, where it was flat: straight lines bend")
    return say("the face is curved in another way: straight lines bend otherwise")


def _curved(scene: Scene, part: str) -> str | None:
    """How the face is curved, where one way is given; a flat panel is flat."""
    if not scene.is_given(part, "screen-curvature"):
        return FLAT if scene.is_(part, "technology", "flat-panel") is Answer.IN else None
    names = scene.names(part, "screen-curvature")
    return next(iter(names)) if len(names) == 1 else None
