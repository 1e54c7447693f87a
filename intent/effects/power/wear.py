"""Wear over the run: how much of the life of lamps and devices it uses, and what must be at hand."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from intent.effects.power.copies import Copied, copied, copies_effects
from intent.effects.power.retention import retention_effects
from intent.effects.power.running import Run, run_of
from intent.effects.scene import Scene, Sides
from intent.effects.unsaid import Missing
from intent.formulas import lifetimes
from intent.language.figures import figure
from intent.language.message import Message, say, say_of
from intent.model.subject import several
from intent.values.bounds import hull, natural, over, plus, surely_above, surely_within, total
from intent.values.regions import Interval
from intent.values.units import in_unit
from intent.variance.result import Effect, EffectTopic

TIME = say("time in operation (hours open × days) added to the hours already run; arithmetic")


@dataclass(frozen=True, slots=True, kw_only=True)
class _Kind:
    """What wears out, and what is said of it: each message of one, and of several."""

    hours: str
    """The characteristic that counts the hours that it has run."""
    life: str
    """The characteristic that says how long one lasts."""
    within: Message
    """It lasts the run."""
    within_alike: Message
    """Several last the run, and have used the same share of their life."""
    beyond: Message
    """It does not last the run."""
    unsure: Message
    """Whether it lasts the run is not known."""


LAMPS = _Kind(
    hours="lamp-hours",
    life="lamp-life",
    within=say_of(
        1,
        "at the end the lamp has burnt {share} of its life of {life}",
        "at the end these lamps have burnt {share} of their life, {most} the most",
    ),
    within_alike=say("at the end each of these lamps has burnt {share} of its life of {life}"),
    beyond=say_of(
        1,
        "the lamp comes to the end of its life of {life}: have {number} ready, and let a lamp cool before it is "
        "changed as its maker says",
        "these lamps come to the end of their life of {life}: have {number} ready in all, and let a lamp cool before "
        "it is changed as its maker says",
    ),
    unsure=say_of(
        1,
        "the lamp may come to the end of its life of {life}: have another ready",
        "these lamps may come to the end of their life of {life}: have another ready for each",
    ),
)
DEVICES = _Kind(
    hours="hours",
    life="expected-life",
    within=say_of(
        1,
        "at the end it has run {share} of its expected life of {life}",
        "at the end these have run {share} of their expected life, {most} the most",
    ),
    within_alike=say("at the end each of these has run {share} of its expected life of {life}"),
    beyond=say_of(
        1,
        "before the end it has run longer than its expected life of {life}: it may fail, so have another ready",
        "before the end these have run longer than their expected life of {life}: they may fail, so have others ready",
    ),
    unsure=say_of(
        1,
        "whether it outlives its expected life of {life} cannot be said from what is given",
        "whether these outlive their expected life of {life} cannot be said from what is given",
    ),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Used:
    """The lamp of a part, or its device; times in seconds."""

    part: str
    before: Interval | None
    """How long it has run before the run; none where that is not stated."""
    end: Interval
    """How long it has run at the end."""
    life: Interval

    @property
    def share(self) -> Interval:
        return over(self.end, self.life)


def wear_effects(sides: Sides) -> Iterator[Effect]:
    """What the run uses of every lamp, device, film, tape or slide of which it is stated how long one lasts."""
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
    """One effect for all that wears, where it is not known how long the work runs."""
    copying = {one.part for one in copies}
    wearing = tuple(
        part
        for part in parts
        if part in copying or any(run.scene.states(part, kind.life) for kind in (LAMPS, DEVICES))
    )
    if wearing:
        yield Effect(
            topic=EffectTopic.POWER,
            subject=several(wearing),
            quantity=run.scene.called("time-in-operation"),
            unit="h",
            sentence=say("how long it runs is not said, and so not how much of what it wears out lasts"),
            source=TIME,
            missing=run.unsaid,
        )


def _hours_used(run: Run, parts: Sequence[str], kind: _Kind) -> Iterator[Effect]:
    """One effect for all that last, one for all that do not, one for all of which nobody can tell."""
    every = [_used(run, part, kind) for part in parts if run.scene.states(part, kind.life)]
    beyond = [one for one in every if surely_above(one.end, one.life)]
    within = [one for one in every if surely_within(one.end, one.life)]
    unsure = [one for one in every if one not in beyond and one not in within]
    is_alike = len(within) > 1 and len({one.share for one in within}) == 1
    lasting = kind.within_alike if is_alike else kind.within
    groups = ((beyond, kind.beyond), (unsure, kind.unsure), (within, lasting))
    yield from (_effect(run, kind, group, words) for group, words in groups if group)


def _used(run: Run, part: str, kind: _Kind) -> _Used:
    before = natural(run.scene.bounds(part, kind.hours))
    is_counted = run.scene.states(part, kind.hours)
    return _Used(
        part=part,
        before=before if is_counted else None,
        end=plus(before, run.time_of(part)),
        life=natural(run.scene.bounds(part, kind.life)),
    )


def _effect(run: Run, kind: _Kind, group: Sequence[_Used], words: Message) -> Effect:
    """The hours that some have run: as documented, and at the end of the run."""
    counted = [one.before for one in group if one.before is not None]
    sentence = words.filled(
        len(group),
        share=figure(hull(one.share for one in group), "%"),
        life=figure(hull(one.life for one in group), "h"),
        most=max(group, key=lambda one: one.share.high or Fraction(0)).part,
        number=figure(total(lifetimes.replacements(one.end, one.life) for one in group)),
    )
    return Effect(
        topic=EffectTopic.POWER,
        subject=several(one.part for one in group),
        quantity=run.scene.called(kind.hours),
        unit="h",
        documented=in_unit(hull(counted), "h") if len(counted) == len(group) else None,
        proposed=in_unit(hull(one.end for one in group), "h"),
        sentence=sentence,
        source=TIME,
        missing=(*_uncounted(run.scene, group, kind), *run.unsaid),
    )


def _uncounted(scene: Scene, group: Sequence[_Used], kind: _Kind) -> Missing:
    lacking = [one for one in group if one.before is None]
    return scene.unknown(lacking[0].part, kind.hours) if lacking else ()
