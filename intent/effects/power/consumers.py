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
from intent.values.bounds import ZERO, hull, larger, natural, plus, surely_within, total
from intent.values.regions import Interval
from intent.values.sets import Answer
from intent.variance.result import Effect, EffectTopic

FED = tuple(term_iri(kind) for kind in ("display", "player", "loudspeaker", "lamp", "converter", "control"))
"""Objects, furniture, carriers and cables take no power, unless it is said that they do."""
WITHOUT_MAINS = ("passive-loudspeaker", "built-in-loudspeaker", "surface-transducer", "headphones")
SUPPLIES = ("mains-transformer", "frequency-converter", "power-supply")
"""What feeds other devices; the first changes the voltage alone."""
STATED = ("power", "apparent-power", "rated-current")
AS_POWER = ("power", "heat-output", "apparent-power")
"""What a device takes, or gives off, is told by."""
WAITING = "standby-power"
LOSS = "power-loss"


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
    if _feeds_others(scene, part) is Answer.IN:
        return False
    if any(scene.states(part, name) for name in STATED):
        return True
    if not any(scene.vocabulary.is_kind(kind, fed) for fed in FED):
        return False
    is_passive = scene.is_(part, "technology", *WITHOUT_MAINS) is Answer.IN
    return kind != term_iri("loudspeaker") or not is_passive


def _feeds_others(scene: Scene, part: str) -> Answer:
    """Whether it is a transformer, frequency converter or power supply; open of a converter that may be one."""
    kind = scene.case.scopes.proposed.every[part].kind.iri
    if not scene.vocabulary.is_kind(kind, term_iri("converter")):
        return Answer.OUT
    return scene.is_(part, "technology", *SUPPLIES)


def has_own_supply(scene: Scene, part: str) -> bool:
    """Whether a device is fed with a voltage too low for the mains, by a supply of its own."""
    return (
        scene.is_(part, "plug", "low-voltage-plug") is Answer.IN
        or scene.is_(part, "earthing", "class-iii") is Answer.IN
        or surely_within(scene.bounds(part, "rated-voltage"), electricity.EXTRA_LOW_VOLTAGE)
    )


def supplies(scene: Scene) -> dict[str, str]:
    """The transformers, frequency converters and power supplies, by part; of what each may be, what changes least."""
    return {
        part.identifier: next(
            supply
            for supply in SUPPLIES
            if scene.is_(part.identifier, "technology", supply) is not Answer.OUT
        )
        for part in scene.parts("converter")
        if _feeds_others(scene, part.identifier) is Answer.IN
    }


def taken_by(scene: Scene, part: str, characteristic: str) -> Interval:
    """What a part takes or gives off while the work is shown.

    One that is switched off takes what it takes while it waits; where that is not stated, at most as much as at work.
    A converter that may be a supply takes what it needs or, as a supply, what it loses.
    """
    found = _taken_by(scene, part, characteristic)
    if _feeds_others(scene, part) is not Answer.OPEN:
        return found
    return hull([found, _taken_by(scene, part, LOSS) if characteristic in AS_POWER else ZERO])


def _taken_by(scene: Scene, part: str, characteristic: str) -> Interval:
    working = natural(scene.bounds(part, characteristic))
    if characteristic == "inrush-current":
        return scene.as_it_runs(part, working)
    at_rest = Interval(ZERO.low, working.high)
    if scene.states(part, WAITING) and characteristic in AS_POWER:
        waiting = natural(scene.bounds(part, WAITING))
        # what it draws without doing work is not stated of a device that waits
        most = larger(working, waiting).high if characteristic == "apparent-power" else waiting.high
        at_rest = Interval(waiting.low, most)
    return scene.as_it_runs(part, working, at_rest)


def inputs_taken(sides: Sides, part: str, *characteristics: str) -> tuple[Input, ...]:
    """What that depends on: of a part that is switched off also on what it takes while it waits, of a converter also on
    whether it is a supply."""
    scene = sides.proposed
    waiting = () if scene.runs(part) is Answer.IN else (WAITING,)
    supplying = ("technology", LOSS) if _feeds_others(scene, part) is Answer.OPEN else ()
    return (*inputs(sides, part, *characteristics, *waiting, *supplying), *inputs_of_state(sides, part))


def inputs_of_losses(sides: Sides) -> tuple[Input, ...]:
    """What the losses of transformers and supplies depend on."""
    return tuple(each for part in losses(sides.proposed) for each in inputs_taken(sides, part, LOSS))


def summed(scene: Scene, parts: Iterable[str], characteristic: str) -> Sum:
    """The sum of a characteristic over some parts."""
    found = {part: taken_by(scene, part, characteristic) for part in parts}
    lacking = tuple(part for part, bounds in found.items() if bounds.high is None)
    return Sum(total(found.values()), len(found), lacking)


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
