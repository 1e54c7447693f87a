"""How large the picture is: what a visitor could measure on the wall, its height and area before its width.

Formulas: arithmetic (`intent.formulas.shapes`).
"""

from __future__ import annotations

from collections.abc import Iterator

from intent.effects.picture.on_screen import on_screen_effects, shape_source, shape_unsaid
from intent.effects.picture.way_up import way_up_effects
from intent.effects.scene import Sides, differ
from intent.effects.unsaid import Missing
from intent.language.figures import figure
from intent.language.message import Message, say
from intent.model.subject import one
from intent.values.bounds import ONE, known, minus, over, surely_above
from intent.values.regions import Interval
from intent.values.units import in_unit
from intent.variance.result import Effect, EffectTopic


def picture_effects(sides: Sides) -> Iterator[Effect]:
    """The effects of the proposal on the picture of every display that is there before and after."""
    for part in sides.proposed.running("display"):
        if sides.was_there(part.identifier) and sides.touches(part.identifier):
            yield from way_up_effects(sides, part.identifier)
            yield from _size(sides, part.identifier)
            yield from on_screen_effects(sides, part.identifier)


def _size(sides: Sides, part: str) -> Iterator[Effect]:
    """Height and area; the width only where it does not change as the height does."""
    high, wide, large = (sides.bounds(part, f"picture-{side}") for side in ("height", "width", "area"))
    if differ(*high):
        yield _sized(sides, part, name="picture-height", found=high, unit="cm")
    if differ(*wide) and differ(over(high[1], high[0]), over(wide[1], wide[0])):
        yield _sized(sides, part, name="picture-width", found=wide, unit="cm")
    if differ(*large) and not _is_blank(large[0]) and not _is_blank(large[1]):
        yield _sized(sides, part, name="picture-area", found=large, unit="cm²")


def _is_blank(bounds: Interval) -> bool:
    """Whether nothing is known of a length or an area."""
    return bounds.high is None and not bounds.low


def _sized(sides: Sides, part: str, *, name: str, found: tuple[Interval, Interval], unit: str) -> Effect:
    before, after = found
    return Effect(
        topic=EffectTopic.PICTURE,
        subject=one(part),
        quantity=sides.proposed.called(name),
        unit=unit,
        documented=in_unit(before, unit),
        proposed=in_unit(after, unit),
        sentence=grown(before, after),
        source=shape_source(sides.proposed, part),
        missing=_missing(sides, part),
    )


def grown(before: Interval, after: Interval) -> Message:
    """By how much more or less it is than documented."""
    ratio = over(after, before)
    if surely_above(ONE, ratio):
        return say("{percent} less than documented", percent=figure(minus(ONE, ratio), "%"))
    if surely_above(ratio, ONE):
        return say("{percent} more than documented", percent=figure(minus(ratio, ONE), "%"))
    return say("by how much cannot be said from what is given")


def _missing(sides: Sides, part: str) -> Missing:
    """What would have to be given for the size of the picture, on either side, or is taken for granted in it."""
    found: dict[Message, None] = dict.fromkeys(shape_unsaid(sides.proposed, part))
    for scene in (sides.documented, sides.proposed):
        if known(scene.bounds(part, "visible-height")) is None:
            found.update(dict.fromkeys(scene.unknown(part, "visible-diagonal", "aspect-ratio")))
        if known(scene.bounds(part, "picture-shape")) is None:
            for material in scene.material(part):
                found.update(dict.fromkeys(scene.unknown(material, "pixel-aspect-ratio")))
        found.update(dict.fromkeys(scene.unknown(part, "fit")))
    return tuple(found)
