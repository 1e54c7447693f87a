"""What goes into the wall: a device by its own plug, or the adapter, mains lead or supply that feeds it.

What an adapter or a lead feeds goes into that, and it into the wall; what a transformer or a power supply feeds has no
plug for the wall, and no earth but by the device that feeds it.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass

from intent.effects.power.consumers import has_own_supply, supplies
from intent.effects.scene import Sides
from intent.effects.signal.links import links_of

MAINS = "mains-supply"
"""The signal of a connection into which a device goes with its plug; one of low voltage leaves the plug as it is."""
Feeders = Mapping[str, Sequence[str]]
"""What feeds each part."""


@dataclass(frozen=True, slots=True)
class Plugged:
    """What goes into the wall."""

    part: str
    served: tuple[str, ...]
    """The devices whose earth comes with this plug."""


def plugged_in(sides: Sides, takers: Sequence[str]) -> tuple[Plugged, ...]:
    """All that goes into the wall for some devices, and the supplies with a plug of their own."""
    scene = sides.proposed
    apart, feeders = supplies(scene), _feeders(sides)
    found: dict[str, list[str]] = {}
    for part in (*takers, *apart):
        if part in feeders or not has_own_supply(scene, part):
            for end in _ends(part, feeders, apart):
                found.setdefault(end, []).append(part)
    return tuple(Plugged(end, tuple(served)) for end, served in found.items())


def loose(sides: Sides) -> tuple[str, ...]:
    """The leads, adapters and supplies that no connection joins, so that any device may go into them."""
    scene = sides.proposed
    joining = {start for starts in _feeders(sides).values() for start in starts}
    leads = [part.identifier for part in scene.parts("cable") if scene.states(part.identifier, "plug")]
    return tuple(part for part in (*leads, *supplies(scene)) if part not in joining)


def _feeders(sides: Sides) -> Feeders:
    scene, apart = sides.proposed, supplies(sides.proposed)
    found: dict[str, list[str]] = {}
    for link in links_of(sides):
        if scene.state.is_there(link.start) and (link.start in apart or MAINS in link.signal):
            found.setdefault(link.end, []).append(link.start)
    return found


def _ends(part: str, feeders: Feeders, apart: Collection[str]) -> Iterator[str]:
    """The ends at the wall of what feeds a part, itself where nothing does; a supply has an end of its own."""
    waiting, seen = [part], {part}
    while waiting:
        reached = waiting.pop()
        into = feeders.get(reached, ())
        if not into:
            yield reached
        waiting.extend(each for each in into if each not in seen and each not in apart)
        seen.update(into)
