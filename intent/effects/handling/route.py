"""The way into the room: what travels at the venue's doors and corridors, in its lift and on its stairs.

Formulas: `intent.formulas.openings`. What passes as it stands is told of the tightest alone.
"""

from __future__ import annotations

from collections.abc import Iterator

from intent.effects.handling.ascending import lift_effects, stair_effects
from intent.effects.handling.corner import corner_effects
from intent.effects.handling.passage import CORRIDOR, DOOR, passage_effects
from intent.effects.handling.travelling import travelling
from intent.effects.scene import Sides
from intent.variance.obstacle import Obstacle, Unchecked
from intent.variance.result import Effect


def route_effects(sides: Sides) -> Iterator[Effect | Obstacle | Unchecked]:
    """Whether all that travels reaches the room, and with what clearance, as far as the venue states its way in."""
    loads = travelling(sides)
    yield from passage_effects(sides, loads, DOOR)
    yield from passage_effects(sides, loads, CORRIDOR)
    yield from corner_effects(sides, loads)
    yield from lift_effects(sides, loads)
    yield from stair_effects(sides, loads)
