"""How large the picture is: what a visitor could measure on the wall, its height and area before its width.

Formulas: arithmetic (`intent.formulas.shapes`).
"""

from __future__ import annotations

from collections.abc import Iterator

from intent.effects.picture.on_screen import ARITHMETIC, on_screen_effects
from intent.effects.picture.way_up import way_up_effects
from intent.effects.scene import Scene, Sides, differ, unknown_among
from intent.language.message import Saying, figure, say
from intent.values.bounds import known, minus, over, point, scaled
from intent.values.regions import Interval
from intent.variance.result import Effect, EffectTopic

OF_THE_SCREEN = (
    "arithmetic of rectangles; the picture is taken to fill the documented screen, since no raster is given"
)
SQUARE = "arithmetic of rectangles; picture elements are taken to be square where nothing is given, from 720 rows up"


def picture_effects(sides: Sides) -> Iterator[Effect]:
    """The effects of the proposal on the picture of every display that is there before and after."""
    for part in sides.proposed.parts("display"):
        if sides.was_there(part.identifier) and sides.touches(part.identifier):
            yield from way_up_effects(sides, part.identifier)
            yield from _size(sides, part.identifier)
            yield from on_screen_effects(sides, part.identifier)


def _size(sides: Sides, part: str) -> Iterator[Effect]:
    """Height and area; the width only where it does not change as the height does."""
    high, wide, large = (_sizes(sides, part, name) for name in ("height", "width", "area"))
    if differ(*high):
        yield _sized(sides, part, "picture-height", high)
    if differ(*wide) and differ(over(high[1], high[0]), over(wide[1], wide[0])):
        yield _sized(sides, part, "picture-width", wide)
    if differ(*large) and not _is_blank(large[0]) and not _is_blank(large[1]):
        yield _sized(sides, part=part, name="picture-area", found=large, unit="cm²", factor=10000)


def _sizes(sides: Sides, part: str, side: str) -> tuple[Interval, Interval]:
    return sides.documented.bounds(part, f"picture-{side}"), sides.proposed.bounds(part, f"picture-{side}")


def _is_blank(bounds: Interval) -> bool:
    """Whether nothing is known of a length or an area."""
    return bounds.high is None and not bounds.low


def _sized(
    sides: Sides, part: str, name: str, found: tuple[Interval, Interval], unit: str = "cm", factor: int = 100
) -> Effect:
    return Effect(
        topic=EffectTopic.PICTURE,
        members=(part,),
        quantity=sides.proposed.label(name),
        unit=unit,
        documented=scaled(found[0], factor),
        proposed=scaled(found[1], factor),
        sentence=grown(*found),
        source=_source(sides.proposed, part),
        missing=() if known(found[0]) is not None and known(found[1]) is not None else _missing(sides, part),
    )


def grown(before: Interval, after: Interval) -> Saying:
    """By how much more or less it is than documented."""
    ratio = over(after, before)
    if ratio.high is not None and ratio.high < 1:
        return say("{percent} less than documented", percent=figure(minus(point(1), ratio), "%", 100))
    if ratio.low is not None and ratio.low > 1:
        return say("{percent} more than documented", percent=figure(minus(ratio, point(1)), "%", 100))
    return say("by how much cannot be said from what is given")


def _source(scene: Scene, part: str) -> str:
    """What the picture's shape is taken from, where nobody gives it."""
    materials = scene.material(part)
    if not any(scene.is_given(one, name) for one in materials for name in ("raster", "active-raster")):
        return OF_THE_SCREEN
    return ARITHMETIC if all(scene.is_given(one, "pixel-aspect-ratio") for one in materials) else SQUARE


def _missing(sides: Sides, part: str) -> tuple[str, ...]:
    """What would have to be given for the size of the picture, on either side."""
    found: dict[str, None] = {}
    for scene in (sides.documented, sides.proposed):
        if known(scene.bounds(part, "visible-height")) is None:
            found.update(dict.fromkeys(unknown_among(scene, part, "visible-diagonal", "aspect-ratio")))
        if known(scene.bounds(part, "picture-shape")) is None:
            for material in scene.material(part):
                found.update(dict.fromkeys(unknown_among(scene, material, "pixel-aspect-ratio")))
        found.update(dict.fromkeys(unknown_among(scene, part, "fit")))
    return tuple(found)
