"""Wear over the run: how much of the life of lamps and devices it uses, and what must be at hand."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from intent.effects.power.copies import Copied, copied, copies_effects
from intent.effects.power.retention import retention_effects
from intent.effects.power.running import Run, run_of
from intent.effects.scene import Scene, Sides, unknown_among
from intent.formulas import lifetimes
from intent.language.message import figure, say
from intent.values.bounds import hull, natural, over, plus, scaled, surely_above, surely_within, total
from intent.values.regions import Interval
from intent.variance.result import Effect, EffectTopic

TIME = "time in operation (hours open × days) added to the hours already run; arithmetic"


@dataclass(frozen=True, slots=True, kw_only=True)
class _Patterns:
    """What is said of one, and of several, by how the hours at the end of the run stand to the life."""

    hours: str
    """The characteristic that counts them."""
    life: str
    """The characteristic that says how long one lasts."""
    within: tuple[str, str]
    within_alike: str
    """Of several that have used the same share of it."""
    beyond: tuple[str, str]
    unsure: tuple[str, str]


LAMPS = _Patterns(
    hours="lamp-hours",
    life="lamp-life",
    within=(
        "at the end the lamp has burnt {share} of its life of {life}",
        "at the end these lamps have burnt {share} of their life, {most} the most",
    ),
    within_alike="at the end each of these lamps has burnt {share} of its life of {life}",
    beyond=(
        "the lamp comes to the end of its life of {life}: have {number} ready, and let a lamp cool before it is "
        "changed as its maker says",
        "these lamps come to the end of their life of {life}: have {number} ready in all, and let a lamp cool before "
        "it is changed as its maker says",
    ),
    unsure=(
        "the lamp may come to the end of its life of {life}: have another ready",
        "these lamps may come to the end of their life of {life}: have another ready for each",
    ),
)
DEVICES = _Patterns(
    hours="hours",
    life="expected-life",
    within=(
        "at the end it has run {share} of its expected life of {life}",
        "at the end these have run {share} of their expected life, {most} the most",
    ),
    within_alike="at the end each of these has run {share} of its expected life of {life}",
    beyond=(
        "before the end it has run longer than its expected life of {life}: it may fail, so have another ready",
        "before the end these have run longer than their expected life of {life}: they may fail, so have others ready",
    ),
    unsure=(
        "whether it outlives its expected life of {life} cannot be said from what is given",
        "whether these outlive their expected life of {life} cannot be said from what is given",
    ),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Used:
    """A lamp or a device, its hours before and at the end of the run, and its life, all in seconds."""

    part: str
    before: Interval | None
    end: Interval
    life: Interval

    @property
    def share(self) -> Interval:
        return over(self.end, self.life)


def wear_effects(sides: Sides) -> Iterator[Effect]:
    """Told of every lamp, device, film, tape or slide of which it is stated how long one lasts."""
    scene, run = sides.proposed, run_of(sides.proposed)
    parts = scene.one_a_device(part.identifier for part in scene.parts())
    copies = tuple(copied(scene, parts))
    if run.is_timed:
        yield from _hours_used(run, parts, LAMPS)
        yield from _hours_used(run, parts, DEVICES)
        yield from copies_effects(run, copies)
    else:
        yield from _time_unsaid(run, parts, copies)
    yield from retention_effects(sides, run)


def _time_unsaid(run: Run, parts: Sequence[str], copies: Sequence[Copied]) -> Iterator[Effect]:
    """One line for all that wears."""
    copying = {one.part for one in copies}
    wearing = tuple(
        part
        for part in parts
        if part in copying or any(run.scene.states(part, kind.life) for kind in (LAMPS, DEVICES))
    )
    if wearing:
        label = run.scene.label("time-in-operation")
        words = say("how long it runs is not said, and so not how much of what it wears out lasts")
        yield Effect(
            topic=EffectTopic.POWER,
            members=wearing,
            quantity=label,
            unit="h",
            documented=None,
            proposed=None,
            sentence=words,
            source=TIME,
            missing=run.unsaid,
        )


def _hours_used(run: Run, parts: Sequence[str], kind: _Patterns) -> Iterator[Effect]:
    """One effect for all that last, one for all that do not, one for all of which nobody can tell."""
    every = [_used(run, part, kind) for part in parts if run.scene.states(part, kind.life)]
    beyond = [one for one in every if surely_above(one.end, one.life)]
    within = [one for one in every if surely_within(one.end, one.life)]
    unsure = [one for one in every if one not in beyond and one not in within]
    is_alike = len({one.share for one in within}) == 1
    lasting = (kind.within[0], kind.within_alike) if is_alike else kind.within
    groups = ((beyond, kind.beyond), (unsure, kind.unsure), (within, lasting))
    yield from (_effect(run, kind, group, patterns) for group, patterns in groups if group)


def _used(run: Run, part: str, kind: _Patterns) -> _Used:
    before = natural(run.scene.bounds(part, kind.hours))
    is_counted = run.scene.states(part, kind.hours)
    return _Used(
        part=part,
        before=before if is_counted else None,
        end=plus(before, run.time),
        life=natural(run.scene.bounds(part, kind.life)),
    )


def _effect(run: Run, kind: _Patterns, group: Sequence[_Used], patterns: tuple[str, str]) -> Effect:
    """Hours before the run, as given of what is fitted now, and at its end."""
    hour = Fraction(1, 3600)
    counted = [one.before for one in group if one.before is not None]
    words = say(
        patterns[0] if len(group) == 1 else patterns[1],
        share=figure(hull(one.share for one in group), "%", 100),
        life=figure(hull(one.life for one in group), "h", hour),
        most=max(group, key=lambda one: one.share.high or Fraction(0)).part,
        number=figure(total(lifetimes.replacements(one.end, one.life) for one in group)),
    )
    return Effect(
        topic=EffectTopic.POWER,
        members=tuple(one.part for one in group),
        quantity=run.scene.label(kind.hours),
        unit="h",
        documented=scaled(hull(counted), hour) if len(counted) == len(group) else None,
        proposed=scaled(hull(one.end for one in group), hour),
        sentence=words,
        source=TIME,
        missing=(*_uncounted(run.scene, group, kind), *run.unsaid),
    )


def _uncounted(scene: Scene, group: Sequence[_Used], kind: _Patterns) -> tuple[str, ...]:
    lacking = [one for one in group if one.before is None]
    return unknown_among(scene, lacking[0].part, kind.hours) if lacking else ()
