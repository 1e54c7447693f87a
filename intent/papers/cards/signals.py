"""What a part shows or sounds, and from which player it comes, along the connections of the work."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from intent.drawings.feeding import links_of
from intent.effects.scene import Scene, Sides
from intent.effects.signal.paths import PICTURE, SOUND, Way, Ways, ways_of
from intent.language.message import Message, Words, joined, named, say
from intent.papers.cards.card import CardRow


@dataclass(frozen=True, slots=True, kw_only=True)
class Signals:
    """Every way through the connections, worked out once for all cards."""

    sides: Sides
    picture: Ways
    sound: Ways
    fed: tuple[tuple[str, str], ...]
    """A player and what it feeds: along the connections, else by the channel they share."""

    def rows(self, part: str) -> Iterator[CardRow]:
        """The channel, and what comes from where or goes where; of a part without one its cables say as much."""
        scene = self.sides.proposed
        channel = scene.text(part, "channel")
        if not channel and any(part in {one.start, one.end} for one in scene.connections):
            return
        lines = (*([channel] if channel else []), *self._arriving(part), *self._leaving(part))
        if lines:
            label = named(scene.term("channel")) if channel else say("joined")
            yield CardRow(label, (joined(lines, ", "),))

    def _arriving(self, part: str) -> Iterator[Words]:
        ways: dict[str, Way] = {**self.sound.proposed(part), **self.picture.proposed(part)}
        for player, way in ways.items():
            yield self._from(player, [link.start for link in way[1:]])
        yield from (self._from(player, ()) for player, fed in self.fed if fed == part and player not in ways)

    def _from(self, player: str, through: Sequence[str]) -> Message:
        if not through:
            return say("from {player}", player=self._named(player))
        return say("from {player}, through {through}", player=self._named(player), through=tuple(through))

    def _leaving(self, part: str) -> tuple[Words, ...]:
        """What a player feeds."""
        fed = [self._named(sink) for player, sink in self.fed if player == part]
        return (say("to {parts}", parts=tuple(fed)),) if fed else ()

    def _named(self, part: str) -> Words:
        return part_named(self.sides.proposed, part)


def part_named(scene: Scene, part: str) -> Words:
    """`P2 (hands player)`; a part without a name by its identifier."""
    found = scene.case.scopes.proposed.every.get(part)
    return say("{part} ({name})", part=part, name=found.name) if found and found.name else part


def signals_of(sides: Sides) -> Signals:
    return Signals(
        sides=sides,
        picture=ways_of(sides, PICTURE),
        sound=ways_of(sides, SOUND),
        fed=links_of(sides.proposed),
    )
