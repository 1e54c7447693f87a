"""A picture of one shape on a screen of another: bars, what is cut off, how far the picture is drawn out.

Formulas: arithmetic (`intent.formulas.shapes`).
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from intent.effects.picture.way_up import lies_along
from intent.effects.scene import Scene, Sides, differ, unknown_among
from intent.formulas import shapes
from intent.language.message import Saying, figure, say
from intent.values.bounds import hull, known, minus, point, scaled, times
from intent.values.regions import Interval
from intent.variance.computed import lying_shape
from intent.variance.result import Effect, EffectTopic

ARITHMETIC = "arithmetic of rectangles"
LEAST_BAR = Fraction(2, 1000)
"""In metres; a narrower one is not told (common practice, no source)."""
LEAST_SHARE = Fraction(1, 100)
"""Lost or drawn out; less than that is not told (common practice, no source)."""
NOTHING = point(0)


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
    """Told of the fit that is given; or what each fit would do, where none is."""
    if len(sides.proposed.names(part, "fit")) > 1:
        yield from _each_fit(sides, part)
    else:
        yield from _bars(sides, part)
        yield from _cut_off(sides, part)
        yield from _drawn_out(sides, part)


def _shapes(scene: Scene, part: str) -> tuple[Interval, Interval]:
    """Of the picture as it lies on the screen, and of the screen."""
    return lying_shape(scene.state, part), scene.bounds(part, "aspect-ratio")


def _each_fit(sides: Sides, part: str) -> Iterator[Effect]:
    shape, screen = _shapes(sides.proposed, part)
    if None in (known(shape), known(screen)) or not differ(shape, screen):
        return
    yield Effect(
        topic=EffectTopic.PICTURE,
        members=(part,),
        quantity=sides.proposed.label("fit"),
        unit="",
        documented=None,
        proposed=None,
        sentence=say(
            "the picture has another shape than the screen: shown whole it leaves {lost} of the screen black, "
            "cropped it loses {lost} of itself, stretched it is drawn out by {drawn}",
            lost=figure(minus(point(1), shapes.filled_share(shape, screen)), "%", 100),
            drawn=figure(shapes.distortion(shape, screen), "%", 100),
        ),
        source=ARITHMETIC,
        missing=unknown_among(sides.proposed, part, "fit"),
    )


def _bars(sides: Sides, part: str) -> Iterator[Effect]:
    """As they are seen, whichever way up the screen lies."""
    lies = lies_along(sides.documented, part), lies_along(sides.proposed, part)
    is_told = None not in lies
    before, after = _bars_of(sides.documented, part), _bars_of(sides.proposed, part)
    for place, name in enumerate(_bar_names(is_told)):
        was = before[place if lies[0] or not is_told else 1 - place]
        will_be = after[place if lies[1] or not is_told else 1 - place]
        if known(will_be.share) is not None and _are_others(was, will_be):
            yield Effect(
                topic=EffectTopic.PICTURE,
                members=(part,),
                quantity=name,
                unit="cm",
                documented=scaled(was.thickness, 100),
                proposed=scaled(will_be.thickness, 100),
                sentence=_bar_words(sides.proposed, part, will_be),
                source=ARITHMETIC,
                missing=()
                if known(will_be.thickness) is not None
                else unknown_among(sides.proposed, part, "visible-diagonal"),
            )


def _bar_names(is_told: bool) -> tuple[str, str]:
    """Where bars are seen; of a screen that lies slanting, or nobody knows how, as if it stood upright."""
    if is_told:
        return "bars at the sides", "bars above and below"
    return "bars at the sides of the upright screen", "bars above and below on the upright screen"


def _bars_of(scene: Scene, part: str) -> tuple[Bar, Bar]:
    names = scene.names(part, "fit")
    shares = shapes.bars(*_shapes(scene, part)) if "whole" in names else (NOTHING, NOTHING)
    told = shares if names == {"whole"} else tuple(hull([NOTHING, share]) for share in shares)
    sides = scene.bounds(part, "visible-width"), scene.bounds(part, "visible-height")
    beside, above = (
        Bar(share, times(share, side), axis)
        for axis, (share, side) in enumerate(zip(told, sides, strict=True))
    )
    return beside, above


def _are_others(was: Bar, will_be: Bar) -> bool:
    one, two = known(was.thickness), known(will_be.thickness)
    if one is None or two is None:
        return was.share != will_be.share
    return abs(two - one) > LEAST_BAR


def _bar_words(scene: Scene, part: str, bar: Bar) -> Saying:
    if bar.share == NOTHING:
        return say("there are none any more")
    elements = known(scene.axes(part, "raster")[bar.axis])
    share = figure(bar.share, "%", 100)
    if elements is None:
        return say("each takes {share} of the screen", share=share)
    places = {
        "share": share,
        "taken": figure(times(bar.share, point(elements))),
        "every": figure(point(elements), digits=6),
    }
    if bar.axis == 0:
        return say("each takes {share} of the screen, {taken} of its {every} columns", **places)
    return say("each takes {share} of the screen, {taken} of its {every} rows", **places)


def _cut_off(sides: Sides, part: str) -> Iterator[Effect]:
    shape, screen = _shapes(sides.proposed, part)
    words = _by_direction(
        sides.proposed,
        part=part,
        is_across=_order(shape, screen),
        across=say("cut off at the left and the right"),
        upright=say("cut off at the top and the bottom"),
        unsure=say("cut off at two edges"),
    )
    yield from _share(sides, part, "lost-share", words, say("nothing is cut off any more"))


def _drawn_out(sides: Sides, part: str) -> Iterator[Effect]:
    shape, screen = _shapes(sides.proposed, part)
    words = _by_direction(
        sides.proposed,
        part=part,
        is_across=_order(screen, shape),
        across=say("drawn out sideways: circles become lying ovals"),
        upright=say("drawn out upwards: circles become standing ovals"),
        unsure=say("drawn out in one direction: circles become ovals"),
    )
    yield from _share(sides, part, "distortion", words, say("the picture is no longer drawn out"))


def _order(one: Interval, two: Interval) -> bool | None:
    """Whether the first is the wider shape, where that is known."""
    first, second = known(one), known(two)
    return None if first is None or second is None else first > second


def _by_direction(
    scene: Scene, part: str, is_across: bool | None, across: Saying, upright: Saying, unsure: Saying
) -> Saying:
    """Words for a direction on the screen, as it is seen whichever way up the screen lies."""
    lies = lies_along(scene, part)
    if lies is None or is_across is None:
        return unsure
    return across if lies == is_across else upright


def _share(sides: Sides, part: str, name: str, words: Saying, no_more: Saying) -> Iterator[Effect]:
    before, after = sides.documented.bounds(part, name), sides.proposed.bounds(part, name)
    was, will_be = known(before), known(after)
    if will_be is None or before == after or (was is not None and abs(was - will_be) < LEAST_SHARE):
        return
    yield Effect(
        topic=EffectTopic.PICTURE,
        members=(part,),
        quantity=sides.proposed.label(name),
        unit="%",
        documented=scaled(before, 100),
        proposed=scaled(after, 100),
        sentence=no_more if after == NOTHING else words,
        source=ARITHMETIC,
    )
