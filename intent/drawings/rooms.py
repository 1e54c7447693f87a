"""What the record says of the room: told in words, since nothing says where in the room the work stands."""

from __future__ import annotations

from intent.drawings.measuring import length
from intent.drawings.stage import Room
from intent.effects.scene import Scene
from intent.language.message import Words, say
from intent.names import THE_VENUE

_TOLD = (
    "room-width",
    "room-depth",
    "ceiling-height",
    "door-width",
    "door-height",
    "circuits",
    "circuit-current",
    "socket",
)
"""What a plan of the room would show."""


def room_of(scene: Scene) -> Room:
    """The room of a state, with the circuits that its parts are on."""
    told = tuple(
        say("{what} {value}", what=scene.called(name), value=scene.text(THE_VENUE, name))
        for name in _TOLD
        if scene.states(THE_VENUE, name)
    )
    circuits: dict[Words, list[str]] = {}
    for part in scene.parts():
        circuit = scene.text(part.identifier, "circuit") if scene.states(part.identifier, "circuit") else ""
        if circuit:
            circuits.setdefault(circuit, []).append(part.identifier)
    return Room(
        ceiling=length(scene, THE_VENUE, "ceiling-height"),
        told=told,
        circuits=tuple((circuit, tuple(parts)) for circuit, parts in circuits.items()),
    )
