"""Where visitors hear from: how far a part is from their ears, and how long its sound is on its way."""

from __future__ import annotations

from fractions import Fraction

from intent.effects.scene import Scene
from intent.formulas import acoustics
from intent.names import THE_VENUE
from intent.values.bounds import between, hull, minus, over, plus, point, root, square, total
from intent.values.regions import Interval

EARS = between(Fraction("1.1"), Fraction("1.7"))
"""Metres above the floor: from somebody seated to a tall person standing (common practice, no source)."""
TWENTY_CELSIUS = point(Fraction("293.15"))
"""Kelvins; taken where no temperature of the venue is stated."""


def distance_to(scene: Scene, part: str) -> Interval | None:
    """How far a part is from the ears of those for whom it sounds; none where nobody can tell.

    As stated of the part itself; else from where visitors stand before the displays of its channel, whose distance
    and position, and the part's own, are stated.
    """
    if scene.states(part, "viewing-distance"):
        return scene.bounds(part, "viewing-distance")
    if not scene.states(part, "position"):
        return None
    seen = [
        display.identifier
        for display in scene.parts("display")
        if scene.states(display.identifier, "viewing-distance")
        and scene.states(display.identifier, "position")
    ]
    shown = scene.stated_names(part, "channel")
    same = [one for one in seen if shown and scene.stated_names(one, "channel") == shown]
    return hull(_from_before(scene, part, display) for display in same or seen) if seen else None


def _from_before(scene: Scene, part: str, display: str) -> Interval:
    """The distance from the ears of somebody who stands straight before a display."""
    x, y, z = scene.axes(part, "position")
    across, _up, towards = scene.axes(display, "position")
    stands = plus(towards, scene.bounds(display, "viewing-distance"))
    return root(total([square(minus(x, across)), square(minus(y, EARS)), square(minus(z, stands))]))


def on_its_way(scene: Scene, distance: Interval) -> Interval:
    """How many seconds sound takes over a distance, in the air of the venue."""
    stated = scene.states(THE_VENUE, "temperature")
    air = scene.venue("temperature") if stated else TWENTY_CELSIUS
    return over(distance, acoustics.speed_of_sound(air))
