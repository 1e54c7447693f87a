"""What takes power: the devices of the work that are fed from the mains, each counted once.

What feeds another device (a transformer, a power supply) is counted with that device, so that nothing counts twice.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from intent.effects.limits_kept import Input, inputs, inputs_of_state
from intent.effects.scene import Scene, Sides
from intent.effects.unsaid import unsaid_effects
from intent.formulas import electricity
from intent.language.message import Message
from intent.names import term_iri
from intent.values.bounds import ZERO, larger, natural, plus, surely_within, total
from intent.values.regions import Interval
from intent.values.sets import Answer
from intent.variance.result import Effect, EffectTopic

FED = tuple(term_iri(kind) for kind in ("display", "player", "loudspeaker", "lamp", "converter", "control"))
"""Objects, furniture, carriers and cables take no power, unless it is said that they do."""
WITHOUT_MAINS = ("passive-loudspeaker", "built-in-loudspeaker", "surface-transducer", "headphones")
SUPPLIES = ("mains-transformer", "frequency-converter", "power-supply")
STATED = ("power", "apparent-power", "rated-current")
WAITING = "standby-power"


@dataclass(frozen=True, slots=True)
class Sum:
    """What some devices take together."""

    total: Interval
    """At least and at most."""
    of: int
    """How many devices there are."""
    lacking: tuple[str, ...]
    """The parts of which it is not given, or not to which it reaches."""

    @property
    def is_blank(self) -> bool:
        """Whether nothing is known of any."""
        return not self.total.low and bool(self.lacking)


def consumers(scene: Scene) -> tuple[str, ...]:
    """The parts that take power, of those that share a device only the first, in the order of the work."""
    return scene.one_a_device(
        part.identifier for part in scene.parts() if _takes_power(scene, part.identifier, part.kind.iri)
    )


def _takes_power(scene: Scene, part: str, kind: str) -> bool:
    if kind == term_iri("converter") and any(_is(scene, part, supply) for supply in SUPPLIES):
        return False
    if any(scene.states(part, name) for name in STATED):
        return True
    if not any(scene.vocabulary.is_kind(kind, fed) for fed in FED):
        return False
    return kind != term_iri("loudspeaker") or not any(_is(scene, part, name) for name in WITHOUT_MAINS)


def _is(scene: Scene, part: str, technology: str) -> bool:
    return scene.is_(part, "technology", technology) is Answer.IN


def has_own_supply(scene: Scene, part: str) -> bool:
    """Whether a device is fed with a voltage too low for the mains, by a supply of its own."""
    return (
        scene.is_(part, "plug", "low-voltage-plug") is Answer.IN
        or scene.is_(part, "earthing", "class-iii") is Answer.IN
        or surely_within(scene.bounds(part, "rated-voltage"), electricity.EXTRA_LOW_VOLTAGE)
    )


def supplies(scene: Scene) -> dict[str, str]:
    """The transformers, frequency converters and power supplies, by part."""
    return {
        part.identifier: supply
        for part in scene.parts("converter")
        for supply in SUPPLIES
        if _is(scene, part.identifier, supply)
    }


def taken_by(scene: Scene, part: str, characteristic: str) -> Interval:
    """What a part takes or gives off while the work is shown.

    One that is switched off takes what it takes while it waits; where that is not stated, at most as much as at work.
    """
    working = natural(scene.bounds(part, characteristic))
    if characteristic == "inrush-current":
        return scene.as_it_runs(part, working)
    at_rest = Interval(ZERO.low, working.high)
    if scene.states(part, WAITING) and characteristic in ("power", "heat-output", "apparent-power"):
        waiting = natural(scene.bounds(part, WAITING))
        # what it draws without doing work is not stated of a device that waits
        most = larger(working, waiting).high if characteristic == "apparent-power" else waiting.high
        at_rest = Interval(waiting.low, most)
    return scene.as_it_runs(part, working, at_rest)


def inputs_taken(sides: Sides, part: str, *characteristics: str) -> tuple[Input, ...]:
    """What that depends on; of a part that is switched off, also on what it takes while it waits."""
    scene = sides.proposed
    waiting = () if scene.runs(part) is Answer.IN else (WAITING,)
    return (*inputs(sides, part, *characteristics, *waiting), *inputs_of_state(sides, part))


def inputs_of_losses(sides: Sides) -> tuple[Input, ...]:
    """What the losses of transformers and supplies depend on."""
    return tuple(each for part in losses(sides.proposed) for each in inputs_taken(sides, part, LOSS))


def summed(scene: Scene, parts: Iterable[str], characteristic: str) -> Sum:
    """The sum of a characteristic over some parts."""
    found = {part: taken_by(scene, part, characteristic) for part in parts}
    lacking = tuple(part for part, bounds in found.items() if bounds.high is None)
    return Sum(total(found.values()), len(found), lacking)


LOSS = "power-loss"


def losses(scene: Scene) -> dict[str, Interval]:
    """What each transformer, frequency converter and power supply loses itself: from nothing up where nobody says."""
    return {part: taken_by(scene, part, LOSS) for part in scene.one_a_device(supplies(scene))}


def with_losses(scene: Scene, found: Sum) -> Sum:
    """What devices take, with what is lost on the way to them."""
    return replace(found, total=plus(found.total, total(losses(scene).values())))


def lacking_effects(
    scene: Scene,
    parts: Iterable[str],
    *needed: str,
    quantity: Message,
    sentence: Message,
    source: Message,
) -> Iterator[Effect]:
    """What cannot be said of parts that take power, of which some characteristics that it needs are not given."""
    return unsaid_effects(
        {part: scene.unknown(part, *needed) for part in parts},
        topic=EffectTopic.POWER,
        quantity=quantity,
        sentence=sentence,
        source=source,
    )
