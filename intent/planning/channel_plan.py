"""Which player feeds which part, and through what: the ways of picture and sound as proposed, each told once."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import Enum

from intent.effects.scene import Sides
from intent.effects.signal.paths import PICTURE, SOUND, Way, Ways, ways_of
from intent.planning.feeding import links_of


class DeliveryState(Enum):
    """Whether what a player gives reaches a part."""

    ARRIVES = "arrives"
    MISFITS = "misfits"
    """The connections lead there, but a signal, a plug or a standard on the way does not fit."""
    UNCONNECTED = "unconnected"
    """The two share a channel, and nobody says through what they are joined."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Delivery:
    """What one player gives to one part."""

    part: str
    player: str
    """A player, or material that is joined directly."""
    through: tuple[str, ...]
    """The parts between the two, in the order of the signal."""
    signals: tuple[str, ...]
    """The local names of the signals on the way, each once, as the connections list them."""
    state: DeliveryState


@dataclass(frozen=True, slots=True, kw_only=True)
class ChannelPlan:
    """Every way through the connections of a proposal, worked out once for all parts."""

    sides: Sides
    picture: Ways
    sound: Ways
    fed: tuple[tuple[str, str], ...]
    """A player and what it feeds: along the connections, else by the channel they share."""

    def into(self, part: str) -> Iterator[Delivery]:
        """What reaches a part; then what is meant to reach it."""
        ways = {**self.sound.proposed(part), **self.picture.proposed(part)}
        for player, way in ways.items():
            yield _along(part, player, way, DeliveryState.ARRIVES)
        broken = {
            **self.sound.after.ways(part, working=False),
            **self.picture.after.ways(part, working=False),
        }
        for player, fed in self.fed:
            if fed == part and player not in ways:
                state = DeliveryState.MISFITS if player in broken else DeliveryState.UNCONNECTED
                yield _along(part, player, broken.get(player, ()), state)

    @property
    def screens(self) -> tuple[str, ...]:
        """The displays and loudspeakers that are there, in the order of the work."""
        return tuple(part.identifier for part in self.sides.proposed.parts("display", "loudspeaker"))


def _along(part: str, player: str, way: Way, state: DeliveryState) -> Delivery:
    signals = dict.fromkeys(signal for link in way for signal in link.carries)
    return Delivery(
        part=part,
        player=player,
        through=tuple(link.start for link in way[1:]),
        signals=tuple(signals),
        state=state,
    )


def channel_plan_of(sides: Sides) -> ChannelPlan:
    """The channel plan of a proposal."""
    return ChannelPlan(
        sides=sides,
        picture=ways_of(sides, PICTURE),
        sound=ways_of(sides, SOUND),
        fed=links_of(sides.proposed),
    )
