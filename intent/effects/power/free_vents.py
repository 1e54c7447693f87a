"""The free space that the vents of a device need, against its neighbours: of the state proposed, changed or not."""

from __future__ import annotations

from collections.abc import Iterator

from intent.effects.handling.neighbours import Pair, faces, in_metres, neighbours
from intent.effects.handling.outline import OUTER
from intent.effects.limits_kept import Limited, any_of, at_least, inputs, obstacles
from intent.effects.power.consumers import inputs_taken
from intent.effects.power.lying import ABOVE, BELOW, LEFT, RIGHT, vented
from intent.effects.scene import Sides
from intent.language.figures import figure
from intent.language.message import say
from intent.model.subject import one
from intent.values.bounds import natural
from intent.values.sets import Answer
from intent.variance.obstacle import Obstacle

PLACED = ("presence", "position", "rotation", *OUTER)
VENTED = ("vent-clearance", "vent-position", *PLACED)


def vents_not_free(sides: Sides) -> Iterator[Obstacle]:
    """Vents that have less room to a neighbour than they need, as far as it is said where both stand."""
    scene = sides.proposed
    placed = [part.identifier for part in scene.parts() if scene.is_given(part.identifier, "position")]
    if any(scene.states(part, "vent-clearance") for part in placed):
        for pair in neighbours(faces(scene, placed, OUTER)):
            yield from _between(sides, pair)


def _between(sides: Sides, pair: Pair) -> Iterator[Obstacle]:
    scene, gap = sides.proposed, in_metres(max(pair.gap, 0))
    towards = (RIGHT, LEFT) if pair.axis == 0 else (ABOVE, BELOW)
    for part, other, side in zip((pair.one, pair.two), (pair.two, pair.one), towards, strict=True):
        vents = vented(scene, part, side)
        if not scene.states(part, "vent-clearance") or vents is Answer.OUT:
            continue
        clearance = natural(scene.bounds(part, "vent-clearance"))
        limited = Limited(
            slug="vents-not-free",
            subject=one(part),
            inputs=[
                *inputs_taken(sides, part, *VENTED),
                *inputs(sides, other, *PLACED),
            ],
            sure=say(
                "its vents have {gap} to {other} and need {clearance}: "
                "its heat may stay in, overheat it or start a fire",
                gap=figure(gap, "cm"),
                other=other,
                clearance=figure(clearance, "cm"),
            ),
            unsure=say(
                "whether its vents have the room that they need towards {other} is not known", other=other
            ),
        )
        # it does not matter on a side without vents, nor of what is switched off
        is_kept = any_of([at_least(gap, clearance), vents.negated, scene.runs(part).negated])
        yield from obstacles(sides, is_kept, limited)
