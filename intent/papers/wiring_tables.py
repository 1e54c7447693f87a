"""What feeds what: the channel plan, and the list of cables to lay."""

from __future__ import annotations

from collections.abc import Iterator

from intent.effects.scene import Scene
from intent.language.message import Words, joined, listed, named, say, words
from intent.model.as_proposed import connections_as_proposed
from intent.model.naming import runs
from intent.model.phrasing import expression_words
from intent.model.work import Connection
from intent.names import term_iri
from intent.papers.cards.signals import part_named
from intent.papers.document import (
    Block,
    Column,
    PaperSection,
    PaperTable,
    Paragraph,
    ParagraphRole,
    TableRole,
)
from intent.papers.inline import Content, strong, with_below
from intent.papers.statements_told import statements_words
from intent.planning.channel_plan import ChannelPlan, Delivery, DeliveryState

_PLAN = (
    Column(say("player"), 22),
    Column(say("channel"), 22),
    Column(say("through"), 20),
    Column(say("signal"), 14),
    Column(say("feeds")),
)
_CABLES = (
    Column(say("begins at"), 24),
    Column(say("ends at"), 24),
    Column(say("signal"), 15),
    Column(say("connector"), 15),
    Column(say("length"), 12),
)
_TOLD = ("signal", "connector", "length")
_STATES = {
    DeliveryState.MISFITS: say("does not arrive as proposed: see the variance report"),
    DeliveryState.UNCONNECTED: say("not said: only the channel is the same"),
}


def plan_section(plan: ChannelPlan) -> PaperSection:
    """Which player feeds what, through what; what is fed alike by the same player stands in one row."""
    scene = plan.sides.proposed
    alike: dict[tuple[object, ...], list[Delivery]] = {}
    unfed: list[str] = []
    for part in plan.screens:
        found = tuple(plan.into(part))
        unfed += [] if found else [part]
        for one in found:
            key = (one.player, one.through, one.signals, one.state, scene.text(part, "channel"))
            alike.setdefault(key, []).append(one)
    order = {part.identifier: place for place, part in enumerate(scene.parts("player"))}
    rows = sorted(alike.values(), key=lambda same: order.get(same[0].player, len(order)))
    blocks: list[Block] = []
    if rows:
        blocks.append(PaperTable(columns=_PLAN, rows=tuple(_delivered(scene, same) for same in rows)))
    if unfed:
        blocks.append(Paragraph(say("Nobody says which player feeds {parts}.", parts=runs(unfed))))
    return PaperSection(title=say("Which player feeds what"), anchor="channels", blocks=tuple(blocks))


def _delivered(scene: Scene, same: list[Delivery]) -> tuple[Content, ...]:
    first = same[0]
    signals = listed(named(scene.term(signal)) for signal in first.signals)
    state = _STATES.get(first.state)
    through = listed(part_named(scene, part) for part in first.through)
    return (
        _source(scene, first.player),
        with_below(scene.text(first.part, "channel"), material_words(scene, first.part)),
        strong(state) if state else through or say("directly"),
        signals,
        runs([one.part for one in same]),
    )


def _source(scene: Scene, player: str) -> Content:
    found = scene.case.scopes.proposed.every.get(player)
    return with_below(player, found.name if found else "")


def material_words(scene: Scene, part: str) -> Words:
    """The material of a part's channel."""
    material = {one.identifier: one.name for one in scene.case.work.material}
    return listed(material.get(name) or name for name in scene.material(part))


def cables_section(scene: Scene) -> PaperSection:
    """Every connection as proposed once, to be ticked as it is laid; what is not given is to be written in."""
    connections = connections_as_proposed(scene.case.work, scene.case.installation)
    if not connections:
        return PaperSection(title=say("Cables"), anchor="cables", blocks=())
    table = PaperTable(
        columns=_CABLES,
        rows=tuple(tuple(_cable(scene, one)) for one in connections),
        role=TableRole.CHECKLIST,
        ticks=words("laid"),
    )
    blank = any(term_iri(name) not in one.statements for one in connections for name in _TOLD)
    remark = say("What is blank here is not given: measure it or look it up on site, and write it in.")
    return PaperSection(
        title=say("Cables"),
        anchor="cables",
        blocks=(*([Paragraph(remark, ParagraphRole.QUIET)] if blank else []), table),
    )


def _cable(scene: Scene, one: Connection) -> Iterator[Content]:
    yield part_named(scene, one.start)
    yield part_named(scene, one.end)
    for place, name in enumerate(_TOLD):
        stated = one.statements.get(term_iri(name))
        told = expression_words(stated, scene.vocabulary) if stated else ""
        yield with_below(told, _beside(scene, one)) if place == len(_TOLD) - 1 else told


def _beside(scene: Scene, one: Connection) -> Words:
    """What else is said of a connection."""
    others = {iri: value for iri, value in one.statements.items() if iri not in set(map(term_iri, _TOLD))}
    return joined([statements_words(scene.vocabulary, others), one.note], "; ")
