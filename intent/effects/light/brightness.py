"""Light: how bright the picture is, what the light of the room leaves of its contrast, and how its tones follow."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction

from intent.effects.light.colours_shown import colour_effects
from intent.effects.light.dose import dose_effects
from intent.effects.light.white import white_effects
from intent.effects.picture.size import grown
from intent.effects.scene import Scene, Sides, differ
from intent.effects.unsaid import Missing
from intent.formulas import photometry
from intent.language.figures import figure
from intent.language.message import Message, say
from intent.model.subject import one, several
from intent.values.bounds import (
    ONE,
    ZERO,
    hull,
    is_known,
    magnitude,
    minus,
    over,
    point,
    smaller,
    surely_above,
    surely_within,
    times,
)
from intent.values.regions import Interval
from intent.values.units import in_unit
from intent.variance.computed import black_of, contrast_in, light_on, white_of
from intent.variance.obstacle import Obstacle
from intent.variance.result import Effect, EffectTopic

STATED = say("what is stated of the displays, with the room dark")
THROWN = say(
    "light output × screen gain over π and the area of the picture (CIE S 017, 17-24-063), evenly lit"
)
REFLECTION = say(
    "the face of the display throws back ρE/π of the room's light (CIE S 017, 17-24-063), which adds to white and "
    "black; the documented display is taken to stand in the same light where none is documented"
)
CURVE = say("ITU-R BT.1886, at half of the signal, with the room dark; gamma 2.4 where none is given")
TENTH = Fraction(1, 10)
"""Of a luminance or a contrast: less is seen only side by side (common practice, no source)."""
TWENTIETH = Fraction(1, 20)
"""Of a middle tone (common practice, no source)."""
HALF = Fraction(1, 2)
"""Of the signal: a middle tone."""
OF_WHITE = "% of white"


def light_effects(sides: Sides) -> Iterator[Effect | Obstacle]:
    """The effects of the proposal on light and tones of every display, and what light it brings on objects."""
    displays = [part.identifier for part in sides.proposed.running("display", "screen")]
    is_other_material = sides.touches(*(material.identifier for material in sides.work.material))
    as_before: list[str] = []
    for part in displays:
        is_changed = sides.was_there(part) and sides.touches(part)
        told = tuple(_contrast(sides, part)) if is_changed else ()
        if is_changed:
            yield from (*_luminance(sides, part), *told, *_middle_tones(sides, part))
        if is_changed or is_other_material:
            yield from white_effects(sides, part)
            yield from colour_effects(sides, part)
        if not told:
            as_before.append(part)
    yield from _left_in_the_room(sides.proposed, as_before)
    yield from dose_effects(sides)


def _luminance(sides: Sides, part: str) -> Iterator[Effect]:
    before, after = white_of(sides.documented.state, part), white_of(sides.proposed.state, part)
    if before.high is None or not differ(before, after, TENTH):
        return
    scene = sides.proposed
    stated = scene.states(part, "luminance") or not scene.states(part, "light-output")
    wanted = ("luminance",) if stated else ("screen-gain", "throw-distance", "throw-ratio", "aspect-ratio")
    yield Effect(
        topic=EffectTopic.LIGHT,
        subject=one(part),
        quantity=scene.called("luminance"),
        unit="cd/m²",
        documented=before,
        proposed=after,
        sentence=grown(before, after),
        source=STATED if stated else THROWN,
        missing=() if is_known(after) else scene.unknown(part, *wanted),
    )


def _contrast(sides: Sides, part: str) -> Iterator[Effect]:
    """How the contrast changes: in the light of the room where that is given, else in the dark."""
    scene = sides.proposed
    is_lit = _is_lit(scene, part)
    before, after = (
        _in_the_room(sides, part) if is_lit else (_dark(sides.documented, part), _dark(scene, part))
    )
    if before.high is None or not differ(before, after, TENTH):
        return
    yield Effect(
        topic=EffectTopic.LIGHT,
        subject=one(part),
        quantity=scene.called("room-contrast" if is_lit else "contrast"),
        unit=":1",
        documented=before,
        proposed=after,
        sentence=_contrast_words(scene, part, grown(before, after)) if is_lit else grown(before, after),
        source=REFLECTION if is_lit else STATED,
        missing=_missing_for_contrast(scene, part, after),
    )


def _is_lit(scene: Scene, part: str) -> bool:
    """Whether the light on the display is given, or the contrast that it leaves."""
    return light_on(scene.state, part).high is not None or scene.states(part, "room-contrast")


def _in_the_room(sides: Sides, part: str) -> tuple[Interval, Interval]:
    """The contrast left of either display, in the documented light where that is given, else in the new room."""
    before, after = sides.documented, sides.proposed
    if before.states(part, "room-contrast"):
        return before.bounds(part, "room-contrast"), after.bounds(part, "room-contrast")
    scene = before if before.states(part, "illuminance") else after
    lit = light_on(scene.state, part)
    return contrast_in(before.state, part, lit), after.bounds(part, "room-contrast")


def _dark(scene: Scene, part: str) -> Interval:
    return scene.bounds(part, "contrast")


def _contrast_words(scene: Scene, part: str, change: Message) -> Message:
    dark = _dark(scene, part)
    if dark.high is None:
        return say("{change}, in the light of this room", change=change)
    return say(
        "{change}, in the light of this room; in the dark it is {dark}",
        change=change,
        dark=figure(dark, ":1"),
    )


def _missing_for_contrast(scene: Scene, part: str, after: Interval) -> Missing:
    """What would have to be given to know the contrast, and that which is left in the room."""
    if is_known(after) and _is_lit(scene, part):
        return ()
    found = list(scene.unknown(part, "luminance"))
    if _dark(scene, part).high is None and not scene.states(part, "black-level"):
        found.append(scene.called("black-level"))
    if not _is_lit(scene, part):
        found.append(scene.called("ambient-light"))
    return (*found, *scene.unknown(part, "reflectance"))


def _left_in_the_room(scene: Scene, parts: Iterable[str]) -> Iterator[Effect]:
    """What the light of the room does to displays that have the contrast they had, or are new; told once, of all."""
    found = {part: contrasts for part in parts if (contrasts := _lessened(scene, part)) is not None}
    if not found:
        return
    room = hull(left for _dark, left in found.values())
    share = hull(over(left, dark) for dark, left in found.values())
    sentence = say(
        "in the dark it is {dark}; the light of this room leaves {share} of that",
        dark=figure(hull(dark for dark, _left in found.values()), ":1"),
        share=figure(smaller(share, ONE), "%"),
    )
    missing = dict.fromkeys(
        label for part, (_dark, left) in found.items() for label in _missing_for_contrast(scene, part, left)
    )
    yield Effect(
        topic=EffectTopic.LIGHT,
        subject=several(found),
        quantity=scene.called("room-contrast"),
        unit=":1",
        proposed=room,
        sentence=sentence,
        source=REFLECTION,
        missing=tuple(missing),
    )


def _lessened(scene: Scene, part: str) -> tuple[Interval, Interval] | None:
    """The contrast of a display in the dark and in the room, where that is known and the room takes some of it."""
    if not _is_lit(scene, part):
        return None
    dark = _dark(scene, part)
    if not is_known(dark):
        return None
    left = scene.bounds(part, "room-contrast")
    return None if surely_within(times(dark, point(1 - TENTH)), left) else (dark, left)


def _middle_tones(sides: Sides, part: str) -> Iterator[Effect]:
    """How bright half of the signal is beside white, where gamma or black differ."""
    before, after = _middle_tone(sides.documented, part), _middle_tone(sides.proposed, part)
    if not is_known(before) or not is_known(after) or not differ(before, after, TWENTIETH):
        return
    change = minus(over(after, before), ONE)
    percent = figure(magnitude(change), "%")
    sentence = (
        say("shadows and middle tones are lighter, by {percent} against white", percent=percent)
        if surely_above(change, ZERO)
        else say("shadows and middle tones are darker, by {percent} against white", percent=percent)
    )
    yield Effect(
        topic=EffectTopic.LIGHT,
        subject=one(part),
        quantity=say("mid-grey"),
        unit=OF_WHITE,
        documented=in_unit(before, OF_WHITE),
        proposed=in_unit(after, OF_WHITE),
        sentence=sentence,
        source=CURVE,
        missing=_gamma_unsaid(sides, part),
    )


def _gamma_unsaid(sides: Sides, part: str) -> Missing:
    """The gamma, where either side has none and that of television is taken for it."""
    is_said = sides.documented.states(part, "gamma") and sides.proposed.states(part, "gamma")
    return () if is_said else (sides.proposed.called("gamma"),)


def _middle_tone(scene: Scene, part: str) -> Interval:
    """The luminance of half of the signal, as a share of white."""
    gamma = scene.bounds(part, "gamma") if scene.states(part, "gamma") else photometry.TELEVISION_GAMMA
    return photometry.displayed_luminance(HALF, ONE, _black_share(scene, part), gamma)


def _black_share(scene: Scene, part: str) -> Interval:
    if not scene.states(part, "black-level") and scene.states(part, "contrast"):
        return over(ONE, scene.bounds(part, "contrast"))
    return over(black_of(scene.state, part), white_of(scene.state, part))
