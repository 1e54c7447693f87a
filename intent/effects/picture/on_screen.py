"""A picture of one shape on a screen of another: bars, what is cut off, how far the picture is drawn out.

Formulas: arithmetic (`intent.formulas.shapes`).
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from functools import partial

from intent.effects.picture.way_up import lies_along
from intent.effects.scene import Scene, Sides, differ
from intent.effects.unsaid import Missing
from intent.formulas import shapes
from intent.language.figures import counted, figure
from intent.language.message import Message, say, say_of
from intent.model.subject import one
from intent.values.bounds import ONE, ZERO, differs_by, hull, known, minus, point, times
from intent.values.regions import Interval
from intent.values.units import in_unit
from intent.variance.computed import lying_shape
from intent.variance.result import Effect, EffectTopic

ARITHMETIC = say("arithmetic of rectangles")
OF_THE_SCREEN = say(
    "arithmetic of rectangles; the picture is taken to fill the documented screen, since no raster is given"
)
SQUARE = say(
    "arithmetic of rectangles; picture elements are taken to be square where nothing is given, from 720 rows up"
)
LEAST_BAR = Fraction(2, 1000)
"""In metres; a narrower one is not told (common practice, no source)."""
LEAST_SHARE = Fraction(1, 100)
"""Lost or drawn out; less than that is not told (common practice, no source)."""
AT_THE_SIDES, ABOVE_AND_BELOW = say("bars at the sides"), say("bars above and below")


@dataclass(frozen=True, slots=True)
class Bar:
    """One of two bars alike, along opposite edges of the screen."""

    share: Interval
    """Of the screen's width or height."""
    thickness: Interval
    """In metres."""
    axis: int
    """0 where it takes columns of the screen, 1 where it takes rows."""


def on_screen_effects(sides: Sides, part: str) -> Iterator[Effect]:
    """What the fit that is given does to the picture; or what each fit would do, where none is."""
    if len(sides.proposed.names(part, "fit")) > 1:
        yield from _each_fit(sides, part)
    else:
        yield from _bars(sides, part)
        yield from _cut_off(sides, part)
        yield from _drawn_out(sides, part)


def _shapes(scene: Scene, part: str) -> tuple[Interval, Interval]:
    """The shape of the picture as it lies on the screen, and of the screen."""
    return lying_shape(scene.state, part), scene.bounds(part, "aspect-ratio")


def shape_source(scene: Scene, part: str) -> Message:
    """What is taken for granted of the shape of the picture, where it is not given."""
    materials = scene.material(part)
    if not any(map(partial(_has_raster, scene), materials)):
        return OF_THE_SCREEN
    is_told = all(scene.is_given(material, "pixel-aspect-ratio") for material in materials)
    return ARITHMETIC if is_told else SQUARE


def shape_unsaid(scene: Scene, part: str) -> Missing:
    """What would have to be given for the shape of the picture not to be taken for granted."""
    materials = scene.material(part)
    if not any(map(partial(_has_raster, scene), materials)):
        return (scene.called("raster"),)
    return tuple(
        dict.fromkeys(label for each in materials for label in scene.unknown(each, "pixel-aspect-ratio"))
    )


def _has_raster(scene: Scene, material: str) -> bool:
    return scene.is_given(material, "raster") or scene.is_given(material, "active-raster")


def _each_fit(sides: Sides, part: str) -> Iterator[Effect]:
    shape, screen = _shapes(sides.proposed, part)
    if None in (known(shape), known(screen)) or not differ(shape, screen):
        return
    yield Effect(
        topic=EffectTopic.PICTURE,
        subject=one(part),
        quantity=sides.proposed.called("fit"),
        sentence=say(
            "the picture has another shape than the screen: shown whole it leaves {lost} of the screen black, "
            "cropped it loses {lost} of itself, stretched it is drawn out by {drawn}",
            lost=figure(minus(ONE, shapes.filled_share(shape, screen)), "%"),
            drawn=figure(shapes.distortion(shape, screen), "%"),
        ),
        source=shape_source(sides.proposed, part),
        missing=(*sides.proposed.unknown(part, "fit"), *shape_unsaid(sides.proposed, part)),
    )


def _bars(sides: Sides, part: str) -> Iterator[Effect]:
    """Bars where they are seen, whichever way up the screen lies; as on an upright one where that is not known."""
    lay, lies = lies_along(sides.documented, part), lies_along(sides.proposed, part)
    before, after = _bars_of(sides.documented, part), _bars_of(sides.proposed, part)
    if lay is None or lies is None:
        names = (
            say("bars at the sides of the upright screen"),
            say("bars above and below on the upright screen"),
        )
    else:
        names = AT_THE_SIDES, ABOVE_AND_BELOW
        # a screen on its side has the bars of its columns above and below
        before, after = before if lay else before[::-1], after if lies else after[::-1]
    for name, was, will_be in zip(names, before, after, strict=True):
        if known(will_be.share) is not None and _are_others(was, will_be):
            is_sized = known(will_be.thickness) is not None
            yield Effect(
                topic=EffectTopic.PICTURE,
                subject=one(part),
                quantity=name,
                unit="cm",
                documented=in_unit(was.thickness, "cm"),
                proposed=in_unit(will_be.thickness, "cm"),
                sentence=_bar_words(sides.proposed, part, will_be),
                source=shape_source(sides.proposed, part),
                missing=(
                    *(() if is_sized else sides.proposed.unknown(part, "visible-diagonal")),
                    *shape_unsaid(sides.proposed, part),
                ),
            )


def _bars_of(scene: Scene, part: str) -> tuple[Bar, Bar]:
    names = scene.names(part, "fit")
    shares = shapes.bars(*_shapes(scene, part)) if "whole" in names else (ZERO, ZERO)
    told = shares if names == {"whole"} else tuple(hull([ZERO, share]) for share in shares)
    sides = scene.bounds(part, "visible-width"), scene.bounds(part, "visible-height")
    beside, above = (
        Bar(share, times(share, side), axis)
        for axis, (share, side) in enumerate(zip(told, sides, strict=True))
    )
    return beside, above


def _are_others(was: Bar, will_be: Bar) -> bool:
    if known(was.thickness) is None or known(will_be.thickness) is None:
        return was.share != will_be.share
    return differs_by(was.thickness, will_be.thickness, LEAST_BAR)


def _bar_words(scene: Scene, part: str, bar: Bar) -> Message:
    if bar.share == ZERO:
        return say("there are none any more")
    elements = known(scene.axes(part, "raster")[bar.axis])
    share = figure(bar.share, "%")
    if elements is None:
        return say("each takes {share} of the screen", share=share)
    taken, every = figure(times(bar.share, point(elements))), figure(point(elements), digits=6)
    if bar.axis == 0:
        return say_of(
            counted(every),
            "each takes {share} of the screen, {taken} of its one column",
            "each takes {share} of the screen, {taken} of its {every} columns",
            share=share,
            taken=taken,
            every=every,
        )
    return say_of(
        counted(every),
        "each takes {share} of the screen, {taken} of its one row",
        "each takes {share} of the screen, {taken} of its {every} rows",
        share=share,
        taken=taken,
        every=every,
    )


def _cut_off(sides: Sides, part: str) -> Iterator[Effect]:
    shape, screen = _shapes(sides.proposed, part)
    words = _by_direction(
        lies_along(sides.proposed, part),
        is_across=_order(shape, screen),
        across=say("cut off at the left and the right"),
        upright=say("cut off at the top and the bottom"),
        unsure=say("cut off at two edges"),
    )
    yield from _share(sides, part, name="lost-share", words=words, no_more=say("nothing is cut off any more"))


def _drawn_out(sides: Sides, part: str) -> Iterator[Effect]:
    shape, screen = _shapes(sides.proposed, part)
    words = _by_direction(
        lies_along(sides.proposed, part),
        is_across=_order(screen, shape),
        across=say("drawn out sideways: circles become lying ovals"),
        upright=say("drawn out upwards: circles become standing ovals"),
        unsure=say("drawn out in one direction: circles become ovals"),
    )
    no_more = say("the picture is no longer drawn out")
    yield from _share(sides, part, name="distortion", words=words, no_more=no_more)


def _order(shape: Interval, other: Interval) -> bool | None:
    """Whether the first is the wider shape, where that is known."""
    first, second = known(shape), known(other)
    return None if first is None or second is None else first > second


def _by_direction(
    lies: bool | None, *, is_across: bool | None, across: Message, upright: Message, unsure: Message
) -> Message:
    """Words for a direction on the screen, as it is seen whichever way up the screen lies."""
    if lies is None or is_across is None:
        return unsure
    return across if lies == is_across else upright


def _share(sides: Sides, part: str, *, name: str, words: Message, no_more: Message) -> Iterator[Effect]:
    before, after = sides.bounds(part, name)
    if known(after) is None or not differs_by(before, after, LEAST_SHARE):
        return
    yield Effect(
        topic=EffectTopic.PICTURE,
        subject=one(part),
        quantity=sides.proposed.called(name),
        unit="%",
        documented=in_unit(before, "%"),
        proposed=in_unit(after, "%"),
        sentence=no_more if after == ZERO else words,
        source=shape_source(sides.proposed, part),
        missing=shape_unsaid(sides.proposed, part),
    )
