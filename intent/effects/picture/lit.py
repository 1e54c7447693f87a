"""How a display lights each picture: held until the next one comes, or as a flash with the dark between.

What holds its pictures smears what moves, where the eye follows it; what flashes may flicker.
"""

from __future__ import annotations

from collections.abc import Mapping
from enum import Enum

from intent.effects.picture.rates_shown import field_rate, new_pictures, recorded_rate
from intent.effects.scene import Scene
from intent.names import term_iri
from intent.values.bounds import NATURAL, ONE, over
from intent.values.regions import Interval
from intent.values.sets import Answer


class Lit(Enum):
    """How a technology lights each picture, by the vocabulary."""

    HELD = "held"
    PULSED = "pulsed"
    UNSAID = ""


WAYS: Mapping[str, Lit] = {way.value: way for way in Lit}
TUBES = ("cathode-ray-tube", "crt-projector")
"""Whose picture flashes once each time that it is drawn; a film projector's, as often as its shutter says."""


def lit(scene: Scene, part: str) -> Lit:
    """How a display lights its pictures, where all that its technology may be do it alike."""
    concepts = scene.vocabulary.concepts
    names = scene.stated_names(part, "technology")
    found = {WAYS.get(concepts[term_iri(name)].shows_pictures, Lit.UNSAID) for name in names}
    return found.pop() if len(found) == 1 else Lit.UNSAID


def pulse_rate(scene: Scene, part: str) -> Interval | None:
    """How often in a second its light goes dark, as stated or by its technology; none where nothing is known of it."""
    if scene.states(part, "pulse-rate"):
        return scene.bounds(part, "pulse-rate")
    if lit(scene, part) is not Lit.PULSED:
        return None
    recorded = recorded_rate(scene, part)
    if any(scene.is_(part, "technology", tube) is Answer.IN for tube in TUBES):
        if scene.states(part, "refresh-rate"):
            return scene.bounds(part, "refresh-rate")
        return None if recorded is None else field_rate(scene, part, recorded)
    return None if recorded is None else Interval(recorded.low, None)


def hold_time(scene: Scene, part: str) -> Interval | None:
    """How long in seconds each picture stays, as stated or by its technology; none where nothing is known of that."""
    if scene.states(part, "hold-time"):
        return scene.bounds(part, "hold-time")
    way = lit(scene, part)
    if way is Lit.PULSED:
        rate = pulse_rate(scene, part)
        return NATURAL if rate is None else Interval(NATURAL.low, over(ONE, rate).high)
    if way is Lit.HELD:
        pictures = new_pictures(scene, part)
        if pictures is not None:
            return over(ONE, pictures)
        refreshed = scene.bounds(part, "refresh-rate")
        return Interval(over(ONE, refreshed).low, None) if scene.states(part, "refresh-rate") else NATURAL
    return None
