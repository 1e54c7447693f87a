"""How players that run by themselves come apart, and when their offsets first leave what the instructions allow."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from intent.effects.scene import Scene, Sides
from intent.effects.unsaid import Missing
from intent.formulas import rates
from intent.language.message import say
from intent.model.assertions import Aggregate
from intent.model.meaning import admitted_values, scale
from intent.model.subject import several
from intent.model.work import Instruction, Modality
from intent.names import START_OFFSET, THE_WORK
from intent.values.bounds import NATURAL, ZERO, apart, point
from intent.values.regions import Interval, Region
from intent.values.sets import Answer, ValueSet
from intent.values.units import SECONDS_A_DAY, in_unit
from intent.variance.aggregates import amounts
from intent.variance.result import Effect, EffectTopic
from intent.variance.speaking import speakers

WORST_CASE = say(
    "arithmetic of the worst case: both clocks off by all their tolerance, in opposite directions"
)
DAY = point(SECONDS_A_DAY)


def drift_effects(sides: Sides) -> Iterator[Effect]:
    """How far players come apart in a day, where it is other than documented, and when too far."""
    players = tuple(
        part.identifier for part in sides.proposed.parts("player") if sides.was_there(part.identifier)
    )
    free = _free(sides.proposed, players)
    if len(free) < 2:
        return
    before, after = _drift(sides.documented, players), _drift(sides.proposed, players)
    if before != after:
        yield _drift_effect(sides.proposed, free, before=before, after=after)
    yield from _leaving(sides, frozenset(free))


def _free(scene: Scene, players: Sequence[str]) -> tuple[str, ...]:
    """The players that are said to run by themselves."""
    return tuple(
        player for player in players if scene.is_(player, "synchronisation", "free-running") is Answer.IN
    )


def _drift(scene: Scene, players: Sequence[str]) -> Interval | None:
    """How far two of the players may come apart in a day; none where no synchronisation is stated of any."""
    if not any(scene.states(player, "synchronisation") for player in players):
        return None
    off = sorted((_tolerance(scene, player) for player in _free(scene, players)), key=_most)
    return rates.drift(off[-1], off[-2], DAY) if len(off) > 1 else ZERO


def _tolerance(scene: Scene, player: str) -> Interval:
    """How far a player's clock may be off, as a share; not at all where players are synchronised."""
    if scene.is_(player, "synchronisation", "synchronised") is Answer.IN:
        return ZERO
    return scene.bounds(player, "clock-tolerance")


def _most(tolerance: Interval) -> tuple[bool, Fraction]:
    return tolerance.high is None, tolerance.high or Fraction(0)


def _drift_effect(
    scene: Scene, free: tuple[str, ...], *, before: Interval | None, after: Interval | None
) -> Effect:
    sentence = (
        say("how far these players come apart cannot be said from what is given")
        if after is None or after.high is None
        else say(
            "started together and left running, two of these players come apart by this in a day at most"
        )
    )
    return Effect(
        topic=EffectTopic.SIGNAL,
        subject=several(free),
        quantity=say("drift in a day"),
        unit="s",
        documented=_at_most(before),
        proposed=_at_most(after),
        sentence=sentence,
        source=WORST_CASE,
        missing=_lacking(scene, free),
    )


def _at_most(drift: Interval | None) -> Interval | None:
    return drift if drift is None or drift == ZERO else Interval(None, drift.high)


def _lacking(scene: Scene, players: Sequence[str]) -> Missing:
    unsaid = any(not scene.is_given(player, "clock-tolerance") for player in players)
    return (scene.called("clock-tolerance"),) if unsaid else ()


def _leaving(sides: Sides, free: frozenset[str]) -> Iterator[Effect]:
    """When an offset may first leave what an instruction in force requires, if the work runs for so long."""
    scene = sides.proposed
    running = scene.bounds(THE_WORK, "time-in-operation")
    for line in sides.work.instructions:
        if line.assertion.characteristic != START_OFFSET or line.modality is Modality.ALLOWED:
            continue
        subjects = scene.case.members[line.identifier]
        if not free & frozenset(subjects) or not _is_in_force(scene, line, subjects):
            continue
        for members, margin, off in _margins(scene, line, subjects):
            first = rates.time_to_drift(margin, *off).low
            if first is None or first == 0 or (running.high is not None and first > running.high):
                continue
            yield _leaving_effect(line, members, first)


def _is_in_force(scene: Scene, line: Instruction, subjects: Sequence[str]) -> bool:
    return bool(speakers(scene.case, [line], subjects, scene.case.installation.dates.first))


def _margins(
    scene: Scene, line: Instruction, subjects: Sequence[str]
) -> Iterator[tuple[tuple[str, ...], Interval, tuple[Interval, Interval]]]:
    """Of each offset or difference: its parts, how far it is from what is barred, how far its clocks may be off."""
    characteristic = scene.characteristic("start-offset")
    compared = scale(line.assertion.aggregate, characteristic, scene.vocabulary)
    admitted = admitted_values(line.assertion.expression, compared, scene.vocabulary)
    if not isinstance(admitted, Region):
        return
    barred = admitted if line.modality is Modality.FORBIDDEN else admitted.complement()
    if line.assertion.aggregate is Aggregate.DIFFERENCE:
        for amount in amounts(line.assertion, subjects, scene.state):
            first, second = (_tolerance(scene, member) for member in amount.members)
            yield amount.members, _margin(amount.value, barred), (first, second)
    elif line.assertion.aggregate is Aggregate.EACH:
        for member in subjects:
            if scene.state.is_there(member):
                value = scene.state.value(member, characteristic)
                yield (member,), _margin(value, barred), (_tolerance(scene, member), ZERO)


def _margin(value: ValueSet, barred: Region) -> Interval:
    """How far a value is at least from the nearest that is barred; without end where none is."""
    if not isinstance(value, Region):
        return NATURAL
    nearest = (apart(value.bounds, interval).low or Fraction(0) for (interval,) in barred.boxes)
    return Interval(min(nearest, default=None), None)


def _leaving_effect(line: Instruction, members: tuple[str, ...], first: Fraction) -> Effect:
    return Effect(
        topic=EffectTopic.SIGNAL,
        subject=several(members),
        quantity=say("time until the offset may leave its range"),
        unit="days",
        proposed=in_unit(Interval(first, None), "days"),
        sentence=say(
            "running without a restart, the clocks may take the offset out of what {instruction} requires after this "
            "time: start the players together again before",
            instruction=line.identifier,
        ),
        source=WORST_CASE,
    )
