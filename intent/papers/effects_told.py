"""What the change does, as a report tells it: by topic and by part, each quantity before and after."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from intent.language.message import Figure, Saying, joined, say
from intent.papers.naming import subject_in_words
from intent.papers.wording import closed, listed, opening, runs
from intent.values.regions import Interval
from intent.variance.result import Effect, EffectTopic, Variance

FEW = 4
"""So many parts are told by name; more by their identifiers."""
TOPICS = {
    EffectTopic.PICTURE: say("What visitors see of the picture"),
    EffectTopic.SIGNAL: say("Signal, time and sound"),
    EffectTopic.LIGHT: say("Light"),
    EffectTopic.POWER: say("Power, heat and wear"),
    EffectTopic.HANDLING: say("Handling and the way in"),
}
WHOLE = {
    EffectTopic.PICTURE: say("the work"),
    EffectTopic.SIGNAL: say("the work"),
    EffectTopic.LIGHT: say("the work"),
    EffectTopic.POWER: say("all devices"),
    EffectTopic.HANDLING: say("all that travels"),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Quantity:
    """One quantity before and after, and what that means."""

    name: str
    documented: str
    proposed: str
    remark: str
    """What it means, with a full stop, but not yet the beginning of a sentence."""

    @property
    def meaning(self) -> str:
        """What it means, as a sentence."""
        return opening(self.remark)

    @property
    def told(self) -> str:
        """`picture height: 30 cm, as proposed 24.5 cm: 18.3 % less than documented.`"""
        if not self.figures:
            return say("{subject}: {text}", subject=self.name, text=self.meaning)
        return say("{name}: {figures}: {meaning}", name=self.name, figures=self.figures, meaning=self.remark)

    @property
    def figures(self) -> str:
        """`30 cm, as proposed 24.5 cm`; what is known of one side alone, or nothing."""
        if self.documented and self.proposed and self.documented != self.proposed:
            return say(
                "{documented}, as proposed {proposed}", documented=self.documented, proposed=self.proposed
            )
        if self.documented and not self.proposed:
            return say("{documented} as documented", documented=self.documented)
        return self.proposed


@dataclass(frozen=True, slots=True)
class Affected:
    """Some parts, and all that is told of just these."""

    subjects: str
    quantities: tuple[Quantity, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class TopicTold:
    """All that is told of one topic."""

    slug: str
    title: str
    affected: tuple[Affected, ...]
    missing: tuple[str, ...]
    """What a closer answer would need, and for which parts."""
    sources: tuple[str, ...]
    """Which formulas the figures come from."""

    @property
    def remarks(self) -> tuple[str, ...]:
        """What is not given, and what the figures are computed from, one sentence each."""
        lacking = say("Not given, and needed to say more: {values}.", values=joined(self.missing, "; "))
        computed = say("Computed from: {sources}.", sources=joined(self.sources, "; "))
        return ((lacking,) if self.missing else ()) + ((computed,) if self.sources else ())


def told_effects(variance: Variance) -> tuple[TopicTold, ...]:
    """The effects in the order of their topics; nothing of a topic of which nothing is told."""
    by_topic: dict[EffectTopic, list[Effect]] = {}
    for effect in variance.effects:
        by_topic.setdefault(effect.topic, []).append(effect)
    return tuple(_topic(variance, topic, effects) for topic, effects in by_topic.items())


def _topic(variance: Variance, topic: EffectTopic, effects: Sequence[Effect]) -> TopicTold:
    affected: dict[tuple[str, ...], list[Effect]] = {}
    for effect in effects:
        affected.setdefault(effect.members, []).append(effect)
    return TopicTold(
        slug=topic.value,
        title=TOPICS[topic],
        affected=tuple(
            Affected(_subjects(variance, topic, members), tuple(map(_quantity, found)))
            for members, found in affected.items()
        ),
        missing=tuple(_missing(effects)),
        sources=tuple(_sources(effects)),
    )


def _subjects(variance: Variance, topic: EffectTopic, members: Sequence[str]) -> str:
    if not members:
        return WHOLE[topic]
    if len(members) > FEW:
        return runs(members)
    return listed([subject_in_words(variance, member, (member,)) for member in members])


def _quantity(effect: Effect) -> Quantity:
    documented, proposed = _figure(effect.documented, effect.unit), _figure(effect.proposed, effect.unit)
    return Quantity(
        name=_pattern(effect.quantity),
        documented=documented,
        proposed=proposed,
        remark=closed(effect.sentence),
    )


def _pattern(text: str) -> Saying:
    """The name of a quantity or of a source: a pattern by itself, where it is not a saying already."""
    return text if isinstance(text, Saying) else Saying(text)


def _figure(bounds: Interval | None, unit: str) -> str:
    return "" if bounds is None else say("{figure}", figure=Figure(bounds, unit))


def _missing(effects: Iterable[Effect]) -> Iterable[str]:
    """`visible diagonal (M1–M3)`, each characteristic once with all the parts that lack it."""
    lacking: dict[str, dict[str, None]] = {}
    for effect in effects:
        for label in effect.missing:
            lacking.setdefault(label, {}).update(dict.fromkeys(effect.members))
    for label, members in lacking.items():
        yield say("{name} ({role})", name=label, role=runs(list(members))) if members else label


def _sources(effects: Iterable[Effect]) -> Iterable[str]:
    """`picture height and picture area: arithmetic`, each source once."""
    quantities: dict[str, dict[str, None]] = {}
    for effect in effects:
        quantities.setdefault(effect.source, {})[_pattern(effect.quantity)] = None
    for source, names in quantities.items():
        yield say("{subject}: {text}", subject=tuple(names), text=_pattern(source))
