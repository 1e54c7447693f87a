"""What moves on a screen, and whether its light flickers: how far things smear, and the order of fields.

Formulas: `intent.formulas.seeing`.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from intent.effects.limits_kept import at_most
from intent.effects.picture.lit import Lit, hold_time, lit, pulse_rate
from intent.effects.scene import Scene, Sides, differ
from intent.effects.unsaid import Missing
from intent.formulas import seeing
from intent.language.figures import figure
from intent.language.message import Message, say
from intent.model.subject import one
from intent.values.bounds import is_known, known, over, point, surely_above, surely_within
from intent.values.regions import Interval
from intent.values.sets import Answer
from intent.values.units import in_unit
from intent.variance.computed import white_of
from intent.variance.result import Effect, EffectTopic

FOLLOWED = say(
    "speed × the time for which each picture stays, where the eye follows (T. Kurita, SID 2001, from memory); where no "
    "hold time is given, a flash is taken to be shorter than the time from one to the next, and what is held to stay "
    "until the next picture comes"
)
FUSED = say(
    "law of Ferry (1892) and Porter (1902), with Porter's constants from memory, 10 Hz either way for people and the "
    "edge of sight, at most 100 Hz (Fernandez-Alonso, Innes and Read, 2023); for white"
)
ORDER = say("definition of the field order; material with fields alone has any")
SPEED = point(10)
"""In degrees a second: something that walks through the picture (common practice, no source)."""
CROSSING = point(5)
"""In seconds: how long something takes that crosses the picture, by which columns are counted."""
TENTH = Fraction(1, 10)
"""Of a time or a frequency; less is not told (common practice, no source)."""
UNTOLD = say("whether what moves smears more or less cannot be said from what is given")
SHORTER = say("pictures stay for less time: what moves smears less")
SMEAR = say("smear of what moves by 10° a second")


def motion_effects(sides: Sides) -> Iterator[Effect]:
    """What becomes of movement and flicker on every display that is there before and after."""
    for found in sides.proposed.parts("display"):
        part = found.identifier
        if not sides.was_there(part):
            continue
        yield from _order(sides, part)
        if sides.touches(part):
            yield from _smear(sides, part)
            yield from _flicker(sides, part)


def _smear(sides: Sides, part: str) -> Iterator[Effect]:
    before, after = hold_time(sides.documented, part), hold_time(sides.proposed, part)
    if before is None or after is None or not differ(before, after, TENTH):
        return
    if _stays_longer(sides.proposed, sides.documented, part):
        words = _longer_words(sides.proposed, part, after)
    elif _stays_longer(sides.documented, sides.proposed, part):
        words = SHORTER
    elif not is_known(after):
        words = UNTOLD
    else:
        return
    yield Effect(
        topic=EffectTopic.PICTURE,
        subject=one(part),
        quantity=SMEAR,
        unit="′",
        documented=in_unit(seeing.smear(SPEED, before), "′"),
        proposed=in_unit(seeing.smear(SPEED, after), "′"),
        sentence=words,
        source=FOLLOWED,
        missing=_unheld(sides, part, after),
    )


def _stays_longer(one: Scene, other: Scene, part: str) -> bool:
    """Whether each picture surely stays longer in one state: one that is held stays longer than a flash."""
    here, there = hold_time(one, part), hold_time(other, part)
    if here is None or there is None:
        return False
    if surely_above(here, there):
        return True
    is_flash = lit(one, part) is Lit.HELD and lit(other, part) is Lit.PULSED
    return is_flash and surely_within(there, here)


def _longer_words(scene: Scene, part: str, after: Interval) -> Message:
    columns = scene.axes(part, "raster")[0]
    if known(columns) is None:
        return say("pictures stay for longer: what moves smears where the eye follows it")
    return say(
        "pictures stay for longer: what moves smears where the eye follows it, over {columns} picture elements where "
        "it crosses the picture in 5 s",
        columns=figure(seeing.smear(over(columns, CROSSING), after)),
    )


def _unheld(sides: Sides, part: str, after: Interval) -> Missing:
    """What would have to be given to know how long pictures stay."""
    found: list[Message] = []
    if not all(scene.states(part, "hold-time") for scene in (sides.documented, sides.proposed)):
        found.append(sides.proposed.called("hold-time"))
    if not is_known(after):
        found.extend(sides.proposed.unknown(part, "refresh-rate"))
    return tuple(found)


def _flicker(sides: Sides, part: str) -> Iterator[Effect]:
    before, after = pulse_rate(sides.documented, part), pulse_rate(sides.proposed, part)
    if before == after or not _is_told(sides.proposed, part, before, after):
        return
    scene = sides.proposed
    yield Effect(
        topic=EffectTopic.PICTURE,
        subject=one(part),
        quantity=scene.called("pulse-rate"),
        unit="Hz",
        documented=before,
        proposed=after,
        sentence=_flicker_words(scene, part, after),
        source=FUSED,
        missing=_unfused(scene, part, after),
    )


def _is_told(scene: Scene, part: str, before: Interval | None, after: Interval | None) -> bool:
    """Whether the light pulses otherwise, or nobody knows whether it still does."""
    if before is None or after is None:
        return True
    return differ(before, after, TENTH) or _fused(scene, part, before) is not _fused(scene, part, after)


def _fused(scene: Scene, part: str, rate: Interval) -> Answer:
    """Whether nobody sees white flicker that pulses so often, on a display as bright as this."""
    return at_most(seeing.fusion_frequency(white_of(scene.state, part)), rate)


def _flicker_words(scene: Scene, part: str, after: Interval | None) -> Message:
    if after is None:
        if lit(scene, part) is Lit.HELD:
            return say("it does not go dark between pictures: it does not flicker so, though its dimming may")
        return say("whether its light flickers cannot be said from what is given")
    fusion = figure(seeing.fusion_frequency(white_of(scene.state, part)), "Hz")
    answer = _fused(scene, part, after)
    if answer is Answer.OUT:
        return say(
            "white flickers: light of that brightness is seen as steady only from {fusion}", fusion=fusion
        )
    if answer is Answer.IN:
        return say(
            "no flicker is seen: light of that brightness is seen as steady from {fusion}", fusion=fusion
        )
    return say(
        "some see white flicker, first of all from the corner of the eye: light of that brightness is seen as steady "
        "from {fusion}",
        fusion=fusion,
    )


def _unfused(scene: Scene, part: str, after: Interval | None) -> Missing:
    """What would have to be given to know whether it flickers."""
    if after is None:
        return (scene.called("pulse-rate"),)
    found = [] if is_known(after) else [scene.called("pulse-rate")]
    return (*found, *(scene.unknown(part, "luminance") if white_of(scene.state, part).high is None else ()))


def _order(sides: Sides, part: str) -> Iterator[Effect]:
    """Material whose fields come in the other order than documented."""
    shown = set(sides.proposed.material(part)) & set(sides.documented.material(part))
    label = sides.proposed.called("field-order")
    if any(_is_reversed(sides, material) for material in shown):
        yield Effect(
            topic=EffectTopic.PICTURE,
            subject=one(part),
            quantity=label,
            sentence=say(
                "the fields come in the other order: where players, converters and displays keep to the documented "
                "one, what moves jumps back and forth"
            ),
            source=ORDER,
        )


def _is_reversed(sides: Sides, material: str) -> bool:
    before, after = (
        scene.stated_names(material, "field-order") for scene in (sides.documented, sides.proposed)
    )
    return bool(before) and bool(after) and not before & after
