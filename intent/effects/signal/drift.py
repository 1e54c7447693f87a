"""How players that run by themselves come apart, and when their offsets first leave what the instructions allow."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import combinations, product

from intent.effects.scene import Scene, Sides
from intent.effects.signal.rounds import round_of
from intent.effects.signal.speed import Factors
from intent.effects.unsaid import Missing
from intent.formulas import rates
from intent.language.figures import figure
from intent.language.message import say
from intent.model.assertions import Aggregate
from intent.model.meaning import admitted_values, scale
from intent.model.subject import several
from intent.model.work import Instruction, Modality
from intent.names import START_OFFSET, THE_VENUE, THE_WORK
from intent.values.bounds import NATURAL, ZERO, apart, hull, is_known, over, point, smaller, times
from intent.values.regions import Interval, Region
from intent.values.sets import Answer, ValueSet
from intent.values.units import SECONDS_A_DAY
from intent.variance.aggregates import amounts
from intent.variance.result import Effect, EffectTopic
from intent.variance.speaking import speakers

WORST_CASE = say(
    "arithmetic of the worst case: loops of different lengths, no gap where none is said, and both clocks off by all "
    "their tolerance, in opposite directions; synchronised players follow one clock"
)


def drift_effects(sides: Sides, factors: Factors) -> Iterator[Effect]:
    """How far players come apart in a day, where it is other than documented, and when too far."""
    players = tuple(
        part.identifier for part in sides.proposed.running("player") if sides.was_there(part.identifier)
    )
    after = _Runners(sides.proposed, _clocks(sides.proposed, players), factors)
    if not after.is_apart:
        return
    before = _Runners(sides.documented, _clocks(sides.documented, players), None)
    day = running_day(sides.proposed)
    was, will_be = before.drift(day), after.drift(day)
    if was != will_be:
        yield _drift_effect(after, before=was, drift=will_be)
    yield from _leaving(sides, after, day)


def running_day(scene: Scene) -> Interval:
    """For how many seconds of a day the players run."""
    whole = point(SECONDS_A_DAY)
    opening = smaller(scene.venue("opening-time"), whole)
    by_running = {
        "continuous": whole,
        "opening-hours": opening,
        "on-demand": Interval(Fraction(0), opening.high),
    }
    return hull(by_running[name] for name in scene.names(THE_WORK, "running"))


def _clocks(scene: Scene, players: Sequence[str]) -> tuple[tuple[str, ...], ...]:
    """The players by the clock that they follow.

    Each that is said to run by itself has its own; all that are said to be synchronised have one together.
    """
    free = [
        (player,) for player in players if scene.is_(player, "synchronisation", "free-running") is Answer.IN
    ]
    together = tuple(
        player for player in players if scene.is_(player, "synchronisation", "synchronised") is Answer.IN
    )
    return (*free, together) if together else tuple(free)


@dataclass(frozen=True, slots=True)
class _Runners:
    """Players of one state, by the clock that they follow."""

    scene: Scene
    clocks: tuple[tuple[str, ...], ...]
    factors: Factors | None
    """How much faster material has become; none in the documented state."""

    @property
    def free(self) -> tuple[str, ...]:
        """The players that run by themselves."""
        return tuple(
            player
            for (player, *others) in self.clocks
            if not others and self.scene.is_(player, "synchronisation", "free-running") is Answer.IN
        )

    @property
    def is_apart(self) -> bool:
        """Whether at least one runs by itself, and not alone."""
        return len(self.clocks) > 1

    def tolerance(self, player: str) -> Interval:
        """How far the clock that a player follows may be off, as a share: of a synchronised one any of the clocks."""
        clock = next((clock for clock in self.clocks if player in clock), (player,))
        return hull(self.scene.bounds(one, "clock-tolerance") for one in clock)

    def rate(self, one: str, two: str) -> Interval:
        """By which share of the time two players come apart: by their loops, and at most as far by their clocks."""
        if any(one in clock and two in clock for clock in self.clocks):
            return ZERO
        return rates.drift_rate(self._by_loops(one, two), self.tolerance(one), self.tolerance(two))

    def _by_loops(self, one: str, two: str) -> Interval:
        rounds = [round_of(self.scene, player, self.factors) for player in (one, two)]
        lengths = [length for length in rounds if length is not None]
        return rates.slip(*lengths) if len(lengths) == 2 else ZERO

    def drift(self, day: Interval) -> Interval | None:
        """How far two of them may come apart in a day; none where nothing is said of how they run."""
        if not self.clocks:
            return None
        found = [
            times(self.rate(one, two), day)
            for first, second in combinations(self.clocks, 2)
            for one, two in product(first, second)
        ]
        return max(found, key=_most, default=ZERO)

    @property
    def has_other_rounds(self) -> bool:
        """Whether rounds of different lengths take them apart, whatever their clocks."""
        return any(
            self._by_loops(one, two) != ZERO
            for first, second in combinations(self.clocks, 2)
            for one, two in product(first, second)
        )


def _most(drift: Interval) -> tuple[bool, Fraction]:
    return drift.high is None, drift.high or Fraction(0)


def _drift_effect(after: _Runners, *, before: Interval | None, drift: Interval | None) -> Effect:
    if drift is None or drift.high is None:
        sentence = say("how far these players come apart cannot be said from what is given")
    elif after.has_other_rounds:
        sentence = say(
            "their rounds differ in length: started together and left running, two of these players come apart by this "
            "in a day"
        )
    else:
        sentence = say(
            "started together and left running, two of these players come apart by this in a day at most"
        )
    return Effect(
        topic=EffectTopic.SIGNAL,
        subject=several(after.free),
        quantity=say("drift in a day"),
        unit="s",
        documented=_at_most(before),
        proposed=_at_most(drift),
        sentence=sentence,
        source=WORST_CASE,
        missing=_lacking(after),
    )


def _at_most(drift: Interval | None) -> Interval | None:
    is_open_below = drift is not None and drift != ZERO and not drift.low
    return Interval(None, drift.high) if drift is not None and is_open_below else drift


def _lacking(after: _Runners) -> Missing:
    """What is not known of the clocks, and of how long they run in a day."""
    scene = after.scene
    players = [player for clock in after.clocks for player in clock]
    unsaid = any(not scene.is_given(player, "clock-tolerance") for player in players)
    return (*((scene.called("clock-tolerance"),) if unsaid else ()), *day_unsaid(scene))


def day_unsaid(scene: Scene) -> Missing:
    """What would have to be given to know for how long of a day the players run."""
    names = scene.names(THE_WORK, "running")
    if len(names) > 1:
        return (scene.called("running"), *scene.unknown(THE_VENUE, "opening-time"))
    return () if names == {"continuous"} else scene.unknown(THE_VENUE, "opening-time")


def _leaving(sides: Sides, runners: _Runners, day: Interval) -> Iterator[Effect]:
    """When an offset may first leave what an instruction in force requires, if the work runs for so long."""
    scene = sides.proposed
    running = scene.bounds(THE_WORK, "time-in-operation")
    for line in sides.work.instructions:
        if line.assertion.characteristic != START_OFFSET or line.modality is Modality.ALLOWED:
            continue
        subjects = scene.case.members[line.identifier]
        if not frozenset(runners.free) & frozenset(subjects) or not _is_in_force(scene, line, subjects):
            continue
        for members, margin, rate in _margins(runners, line, subjects):
            first = rates.time_to_drift(margin, rate).low
            if first is None or first == 0 or (running.high is not None and first > running.high):
                continue
            yield _leaving_effect(scene, line, members, first=first, day=day)


def _is_in_force(scene: Scene, line: Instruction, subjects: Sequence[str]) -> bool:
    return bool(speakers(scene.case, [line], subjects, scene.case.installation.dates.first))


def _margins(
    runners: _Runners, line: Instruction, subjects: Sequence[str]
) -> Iterator[tuple[tuple[str, ...], Interval, Interval]]:
    """Of each offset or difference: its parts, how far it is from what is barred, by which share of time it moves."""
    scene = runners.scene
    characteristic = scene.characteristic("start-offset")
    compared = scale(line.assertion.aggregate, characteristic, scene.vocabulary)
    admitted = admitted_values(line.assertion.expression, compared, scene.vocabulary)
    if not isinstance(admitted, Region):
        return
    barred = admitted if line.modality is Modality.FORBIDDEN else admitted.complement()
    if line.assertion.aggregate is Aggregate.DIFFERENCE:
        for amount in amounts(line.assertion, subjects, scene.state):
            first, second = amount.members
            yield amount.members, _margin(amount.value, barred), runners.rate(first, second)
    elif line.assertion.aggregate is Aggregate.EACH:
        for member in subjects:
            if scene.state.is_there(member) and member in runners.free:
                value = scene.state.value(member, characteristic)
                yield (member,), _margin(value, barred), runners.tolerance(member)


def _margin(value: ValueSet, barred: Region) -> Interval:
    """How far a value is at least from the nearest that is barred; without end where none is."""
    if not isinstance(value, Region):
        return NATURAL
    nearest = (apart(value.bounds, interval).low or Fraction(0) for (interval,) in barred.boxes)
    return Interval(min(nearest, default=None), None)


def _leaving_effect(
    scene: Scene, line: Instruction, members: tuple[str, ...], *, first: Fraction, day: Interval
) -> Effect:
    return Effect(
        topic=EffectTopic.SIGNAL,
        subject=several(members),
        quantity=say("time until the offset may leave its range"),
        unit="days",
        proposed=Interval(over(point(first), day).low, None),
        sentence=say(
            "running for {hours} a day without a restart, the players may take the offset out of what {instruction} "
            "requires after this time: start them together again before",
            hours=figure(day if is_known(day) else Interval(None, day.high), "h"),
            instruction=line.identifier,
        ),
        source=WORST_CASE,
        missing=day_unsaid(scene),
    )
