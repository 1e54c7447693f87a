"""What the picture is made of, as an eye meets it: lines or picture elements from where visitors stand, and the glass.

Formulas: `intent.formulas.seeing`.
"""

from __future__ import annotations

from collections.abc import Iterator

from intent.effects.scene import Scene, Sides, differ, unknown_among
from intent.formulas import pixels, seeing
from intent.language.message import Saying, figure, say
from intent.values.bounds import NATURAL, known, surely_above, surely_within
from intent.values.regions import Interval
from intent.values.sets import Answer
from intent.variance.result import Effect, EffectTopic

ACUITY = "an eye of normal acuity tells apart one arc minute: 3437.75 times the pitch; arithmetic"
FLAT = "curvature-flat"
GLASS = "a flat panel is taken to be flat where nothing else is said"


def structure_effects(sides: Sides, part: str) -> Iterator[Effect]:
    """Told where another pitch is seen from further or from less far, and where the face is curved otherwise."""
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
    missing = unknown_among(sides.proposed, part, "viewing-distance")
    if known(after) is None:
        missing += unknown_among(sides.proposed, part, "raster")
    yield Effect(
        topic=EffectTopic.PICTURE,
        members=(part,),
        quantity="lines or picture elements seen up to",
        unit="m",
        documented=None if before == NATURAL else before,
        proposed=after,
        sentence=_words(before, after, viewing),
        source=ACUITY,
        missing=missing,
    )


def pitch_of(scene: Scene, part: str) -> Interval:
    """From one line or picture element to the next, in metres: of a tube by the lines of its material."""
    if scene.is_given(part, "pixel-pitch"):
        return scene.bounds(part, "pixel-pitch")
    if scene.is_(part, "technology", "cathode-ray-tube") is Answer.IN and not scene.is_given(part, "raster"):
        rows = {_rows(scene, material) for material in scene.material(part)}
        side = "picture-height"
    else:
        rows, side = {scene.axes(part, "raster")[1]}, "visible-height"
    return pixels.pitch(scene.bounds(part, side), rows.pop()) if len(rows) == 1 else NATURAL


def _rows(scene: Scene, material: str) -> Interval:
    return scene.axes(material, "active-raster" if scene.is_given(material, "active-raster") else "raster")[1]


def _words(before: Interval, after: Interval, viewing: Interval) -> Saying:
    """Whether visitors where they stand told lines apart, and do still."""
    was, will_be = _is_seen(before, viewing), _is_seen(after, viewing)
    places = {"viewing": figure(viewing, "m")}
    if will_be is None:
        return say("beyond that they are no longer told apart; whether visitors stand nearer is not known")
    if was is False and will_be:
        return say(
            "from {viewing}, where visitors stand, they can be told apart, which they could not", **places
        )
    if was and will_be is False:
        return say("from {viewing}, where visitors stand, they can no longer be told apart", **places)
    if will_be:
        return say("from {viewing}, where visitors stand, they can be told apart", **places)
    return say("from {viewing}, where visitors stand, they cannot be told apart", **places)


def _is_seen(fading: Interval, viewing: Interval) -> bool | None:
    if surely_above(fading, viewing):
        return True
    return False if surely_within(fading, viewing) else None


def _curvature(sides: Sides, part: str) -> Iterator[Effect]:
    before, after = _curved(sides.documented, part), _curved(sides.proposed, part)
    if before is None or after is None or before == after:
        return
    yield Effect(
        topic=EffectTopic.PICTURE,
        members=(part,),
        quantity=sides.proposed.label("screen-curvature"),
        unit="",
        documented=None,
        proposed=None,
        sentence=_curvature_words(before, after),
        source=GLASS,
    )


def _curvature_words(before: str, after: str) -> Saying:
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
