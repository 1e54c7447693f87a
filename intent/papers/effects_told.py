"""What the change does, by topic and by part: each quantity before and after, and what that means."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from intent.language.figures import Figure
from intent.language.message import Message, Words, joined, listed, opened, say, sentence
from intent.model.naming import part_words, runs
from intent.papers.document import Block, Column, PaperSection, PaperTable, Paragraph, ParagraphRole
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
"""What an effect on no part in particular is about."""
_COLUMNS = (
    Column(say("quantity"), 24),
    Column(say("documented"), 19),
    Column(say("proposed"), 19),
    Column(say("what it means")),
)


def effect_sections(variance: Variance) -> tuple[PaperSection, ...]:
    """A section for each topic of which something is told, in their order."""
    by_topic: dict[EffectTopic, list[Effect]] = {}
    for effect in variance.effects:
        by_topic.setdefault(effect.topic, []).append(effect)
    return tuple(
        PaperSection(
            title=TOPICS[topic],
            anchor=f"effects-{topic.value}",
            blocks=(*_tables(variance, topic, effects), *_remarks(effects)),
        )
        for topic, effects in by_topic.items()
    )


def _tables(variance: Variance, topic: EffectTopic, effects: Sequence[Effect]) -> Iterator[Block]:
    """For each set of parts, all that is told of just these."""
    affected: dict[tuple[str, ...], list[Effect]] = {}
    for effect in effects:
        affected.setdefault(effect.subject.members, []).append(effect)
    for members, found in affected.items():
        yield Paragraph(opened(_named(variance, topic, members)), ParagraphRole.LEADIN)
        yield PaperTable(columns=_COLUMNS, rows=tuple(_row(effect) for effect in found))


def _named(variance: Variance, topic: EffectTopic, members: Sequence[str]) -> Words:
    if not members:
        return WHOLE[topic]
    if len(members) > FEW:
        return runs(members)
    return listed(part_words(variance.work, variance.installation, member) for member in members)


def _row(effect: Effect) -> tuple[Words, ...]:
    before, after = (_figure(bounds, effect.unit) for bounds in (effect.documented, effect.proposed))
    return effect.quantity, before, after, sentence(effect.sentence)


def _figure(bounds: Interval | None, unit: str) -> Words:
    return "" if bounds is None else say("{figure}", figure=Figure(bounds=bounds, unit=unit))


def _remarks(effects: Sequence[Effect]) -> Iterator[Block]:
    """What is not given, and what the figures are computed from."""
    missing, sources = tuple(_missing(effects)), tuple(_sources(effects))
    if missing:
        lacking = say("Not given, and needed to say more: {values}.", values=joined(missing, "; "))
        yield Paragraph(lacking, ParagraphRole.QUIET)
    if sources:
        computed = say("Computed from: {sources}.", sources=joined(sources, "; "))
        yield Paragraph(computed, ParagraphRole.QUIET)


def _missing(effects: Sequence[Effect]) -> Iterator[Words]:
    """`visible diagonal (M1 to M3)`, each characteristic once with all the parts that lack it."""
    lacking: dict[Words, dict[str, None]] = {}
    for effect in effects:
        for label in effect.missing:
            lacking.setdefault(label, {}).update(dict.fromkeys(effect.subject.members))
    for label, members in lacking.items():
        yield say("{name} ({role})", name=label, role=runs(list(members))) if members else label


def _sources(effects: Sequence[Effect]) -> Iterator[Words]:
    """`picture height and picture area: arithmetic`, each source once."""
    quantities: dict[Words, dict[Message, None]] = {}
    for effect in effects:
        quantities.setdefault(effect.source, {})[effect.quantity] = None
    for source, names in quantities.items():
        yield say("{subject}: {text}", subject=tuple(names), text=source)
