"""What a part shows or sounds, and from which player it comes, along the connections of the work."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from intent.effects.scene import Scene, Sides
from intent.language.message import Message, Words, joined, named, say
from intent.papers.cards.card import CardRow
from intent.planning.channel_plan import ChannelPlan, DeliveryState, channel_plan_of


@dataclass(frozen=True, slots=True)
class Signals:
    """What the cards tell of the channel plan."""

    plan: ChannelPlan

    def rows(self, part: str) -> Iterator[CardRow]:
        """The channel, and what comes from where or goes where; of a part without one its cables say as much."""
        scene = self.plan.sides.proposed
        channel = scene.text(part, "channel")
        if not channel and any(part in {one.start, one.end} for one in scene.connections):
            return
        lines = (*([channel] if channel else []), *self._arriving(part), *self._leaving(part))
        if lines:
            label = named(scene.term("channel")) if channel else say("joined")
            yield CardRow(label, (joined(lines, ", "),))
        if any(part == player for player, _ in self.plan.fed):
            yield from self._plays(part)

    def _plays(self, player: str) -> Iterator[CardRow]:
        """What is to be put into a player: the material of its channel, by all that one can tell it by."""
        scene = self.plan.sides.proposed
        every = {one.identifier: one for one in scene.case.work.material}
        told = [
            joined([one.identifier, one.name, scene.text(one.identifier, "duration"), one.file or ""], ", ")
            for one in (every[name] for name in scene.material(player) if name in every)
        ]
        if told:
            yield CardRow(say("plays"), (joined(told, "; "),))

    def _arriving(self, part: str) -> Iterator[Words]:
        for one in self.plan.into(part):
            # a way on which something does not fit is none to be named on a card
            through = one.through if one.state is DeliveryState.ARRIVES else ()
            yield self._from(one.player, through)

    def _from(self, player: str, through: Sequence[str]) -> Message:
        if not through:
            return say("from {player}", player=self._named(player))
        return say("from {player}, through {through}", player=self._named(player), through=tuple(through))

    def _leaving(self, part: str) -> tuple[Words, ...]:
        """What a player feeds."""
        fed = [self._named(sink) for player, sink in self.plan.fed if player == part]
        return (say("to {parts}", parts=tuple(fed)),) if fed else ()

    def _named(self, part: str) -> Words:
        return part_named(self.plan.sides.proposed, part)


def part_named(scene: Scene, part: str) -> Words:
    """`P2 (hands player)`; a part without a name by its identifier."""
    found = scene.case.scopes.proposed.every.get(part)
    return say("{part} ({name})", part=part, name=found.name) if found and found.name else part


def signals_of(sides: Sides) -> Signals:
    return Signals(channel_plan_of(sides))
