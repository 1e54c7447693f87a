"""The colour of white: how much warmer or cooler it is than documented, and than the material's."""

from __future__ import annotations

from collections.abc import Iterator

from intent.effects.light.colour_spaces import WHITE, spaces_of_material
from intent.effects.scene import Scene, Sides
from intent.formulas.colour import correlated_temperature, mireds
from intent.language.figures import figure
from intent.language.message import Message, say
from intent.model.subject import one
from intent.values.bounds import ZERO, hull, magnitude, minus, point, surely_above
from intent.values.regions import EVERYTHING, Interval
from intent.variance.result import Effect, EffectTopic

MIRED = say("mired: a million over the colour temperature in kelvins, by definition")
NEAREST = say(
    "colour temperature of the standard's white by the method of Robertson (1968); white C of NTSC 1953 or D65 of "
    "later practice where material is NTSC and no colour space is given"
)
LEAST_STEP = point(5)
"""In mireds: less is seen only side by side (common practice, no source)."""


def white_effects(sides: Sides, part: str) -> Iterator[Effect]:
    """How white changes on a display that is there before and after, if it or its material is changed."""
    if sides.was_there(part):
        yield from _shift(sides, part)
        yield from _against_material(sides, part)


def _shift(sides: Sides, part: str) -> Iterator[Effect]:
    before, after = sides.bounds(part, "white-point")
    if before == after or not sides.documented.states(part, "white-point"):
        return
    warmer = minus(mireds(after), mireds(before))
    if magnitude(warmer).high is not None and not surely_above(magnitude(warmer), LEAST_STEP):
        return
    yield Effect(
        topic=EffectTopic.LIGHT,
        subject=one(part),
        quantity=sides.proposed.called("white-point"),
        unit="K",
        documented=before,
        proposed=after,
        sentence=_shift_words(warmer),
        source=MIRED,
        missing=sides.proposed.unknown(part, "white-point"),
    )


def _shift_words(warmer: Interval) -> Message:
    change = figure(magnitude(warmer), "mired")
    if surely_above(warmer, ZERO):
        return say("white is warmer by {change}: it looks yellower or redder", change=change)
    if surely_above(ZERO, warmer):
        return say("white is cooler by {change}: it looks bluer", change=change)
    return say("whether white is warmer or cooler cannot be said from what is given")


def _against_material(sides: Sides, part: str) -> Iterator[Effect]:
    """How much warmer the display's white is than that for which the material was made."""
    if not sides.proposed.states(part, "white-point"):
        return
    before, after = _warmer_than_material(sides.documented, part), _warmer_than_material(sides.proposed, part)
    if after is None or before == after or not surely_above(magnitude(after), LEAST_STEP):
        return
    white = figure(white_of_material(sides.proposed, part), "K", digits=4)
    sentence = (
        say("white is warmer than that of {white} for which the material was made", white=white)
        if surely_above(after, ZERO)
        else say("white is cooler than that of {white} for which the material was made", white=white)
    )
    yield Effect(
        topic=EffectTopic.LIGHT,
        subject=one(part),
        quantity=say("white, warmer than the material's"),
        unit="mired",
        documented=before if sides.documented.states(part, "white-point") else None,
        proposed=after,
        sentence=sentence,
        source=NEAREST,
    )


def _warmer_than_material(scene: Scene, part: str) -> Interval | None:
    white = white_of_material(scene, part)
    return None if white == EVERYTHING else minus(mireds(scene.bounds(part, "white-point")), mireds(white))


def white_of_material(scene: Scene, part: str) -> Interval:
    """The colour temperature in kelvins of the white of what a part's channel shows; everything where none is given."""
    whites = [space.chromaticities[WHITE] for space in spaces_of_material(scene, part)]
    return hull(point(correlated_temperature(white)) for white in whites) if whites else EVERYTHING
