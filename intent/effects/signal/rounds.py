"""How long a round of looped material lasts, from one start to the next, and when rounds of several begin together."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction
from math import gcd, lcm

from intent.effects.scene import Scene, Sides
from intent.effects.signal.speed import Factors, playing_speed
from intent.formulas import rates
from intent.language.figures import figure
from intent.language.message import Message, say
from intent.model.subject import one, several
from intent.values.bounds import (
    ONE,
    ZERO,
    is_known,
    known,
    magnitude,
    minus,
    plus,
    point,
    surely_within,
)
from intent.values.regions import Interval
from intent.values.units import in_unit
from intent.variance.result import Effect, EffectTopic

LOOPS = say("arithmetic; no gap between rounds where none is said")


def recorded_round(scene: Scene, part: str, *subjects: str) -> Interval | None:
    """The seconds of a round at the recorded speed, as stated of the first subject that states it; else none.

    A loop length is from start to start, with its gap (definition of the vocabulary). To a duration the gap is added
    that is stated of the part that plays, else of what is played.
    """
    for subject in subjects:
        if scene.states(subject, "loop-length"):
            return scene.bounds(subject, "loop-length")
        if scene.states(subject, "duration"):
            stating = (giver for giver in (part, subject) if scene.states(giver, "loop-gap"))
            gaps = (scene.bounds(giver, "loop-gap") for giver in stating)
            return plus(scene.bounds(subject, "duration"), next(gaps, ZERO))
    return None


def round_effects(sides: Sides, part: str, factors: Factors) -> Iterator[Effect]:
    """How long a round lasts, gap included, where that is other than documented."""
    before, after = round_of(sides.documented, part), round_of(sides.proposed, part, factors)
    if before is None or after is None or before == after:
        return
    yield Effect(
        topic=EffectTopic.SIGNAL,
        subject=one(part),
        quantity=sides.proposed.called("loop-length"),
        unit="s",
        documented=before,
        proposed=after,
        sentence=_longer(before, after),
        source=LOOPS,
    )


def _longer(before: Interval, after: Interval) -> Message:
    change = minus(after, before)
    if surely_within(ZERO, change):
        return say("each round lasts {change} longer", change=figure(change, "s"))
    if surely_within(change, ZERO):
        return say("each round lasts {change} less", change=figure(magnitude(change), "s"))
    return say("by how much a round differs cannot be said from what is given")


def round_of(scene: Scene, part: str, factors: Factors | None = None) -> Interval | None:
    """From one start to the next; none where the channel has no single material whose length is given."""
    material = scene.material(part)
    if len(material) != 1:
        return None
    length = recorded_round(scene, part, *material)
    if length is None:
        return None
    played = rates.played_time(length, playing_speed(scene, part))
    factor = factors[material[0]] if factors is not None else ONE
    # a factor that is known comes from a stated duration, and so the length has it already
    return played if is_known(factor) else rates.played_time(played, factor)


def meeting_effects(sides: Sides, runners: Iterable[str], factors: Factors) -> Iterator[Effect]:
    """After how long loops of different lengths begin together again."""
    players = [part for part in runners if sides.was_there(part)]
    before = _together_again([round_of(sides.documented, part) for part in players])
    after = _together_again([round_of(sides.proposed, part, factors) for part in players])
    if before is None or after is None or before == after:
        return
    yield Effect(
        topic=EffectTopic.SIGNAL,
        subject=several(players),
        quantity=say("time until the loops meet again"),
        unit="h",
        documented=in_unit(point(before), "h"),
        proposed=in_unit(point(after), "h"),
        sentence=say("the loops fall together in the same way again after this time, and not before"),
        source=LOOPS,
    )


def _together_again(rounds: Iterable[Interval | None]) -> Fraction | None:
    """The least common multiple of rounds that are all known and not all alike."""
    lengths = {None if length is None else known(length) for length in rounds}
    exact = [length for length in lengths if length]
    if len(exact) < 2 or len(exact) < len(lengths):
        return None
    # of fractions in lowest terms: the least common multiple above, over the greatest common divisor below
    return Fraction(
        lcm(*(length.numerator for length in exact)), gcd(*(length.denominator for length in exact))
    )
