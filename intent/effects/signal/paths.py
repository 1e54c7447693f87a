"""The ways of picture and sound through the connections of the work, from each player to where it is seen or heard.

A way may run through any part that is connected: converters, cables, amplifiers, a display that passes its signal on.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from intent.effects.scene import Scene, Sides
from intent.effects.signal.links import Link, carrying_links
from intent.effects.signal.misfits import Misfit, new_misfit
from intent.language.message import Message, say
from intent.names import term_iri
from intent.values.sets import Answer

PICTURE = ("video-signal", "network", "usb")
SOUND = ("audio-signal", "hdmi", "displayport", "sdi", "rf", "network", "usb")
"""The signals that can carry a picture, and those that can carry sound (definitions of the vocabulary)."""
Way = tuple[Link, ...]
"""Connections from a player to a part, in this order."""


@dataclass(frozen=True, slots=True)
class Lost:
    """A picture or sound that reached a part as documented and does not as proposed."""

    before: int
    """From how many players it came as documented."""
    after: int
    """From how many it comes as proposed."""
    reasons: tuple[Message, ...]
    """Why it no longer comes from the others."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Ways:
    """The connections that could carry a picture, or sound, as documented and as proposed."""

    sides: Sides
    links: tuple[Link, ...]
    misfits: Mapping[Link, Misfit]
    """The connections that fit as documented and do not as proposed."""
    before: Mapping[str, tuple[Link, ...]]
    """The connections into each part as documented."""
    after: Mapping[str, tuple[Link, ...]]
    """The connections into each part that work as proposed."""

    def documented(self, part: str) -> dict[str, Way]:
        """The ways to a part as documented, by the player at which they begin."""
        return sources_of(self.sides.documented, part, self.before)

    def proposed(self, part: str) -> dict[str, Way]:
        """The ways to a part as proposed, by the player at which they begin."""
        return sources_of(self.sides.proposed, part, self.after)

    def lost(self, part: str) -> Lost | None:
        """What reached a part and does so no longer; nothing where all of it still does."""
        before, after = self.documented(part), self.proposed(part)
        reasons = [self._reason(player, way, part) for player, way in before.items() if player not in after]
        return Lost(len(before), len(after), tuple(dict.fromkeys(reasons))) if reasons else None

    def _reason(self, player: str, way: Way, part: str) -> Message:
        present = self.sides.proposed.state.present
        if not self.sides.proposed.state.is_there(player):
            return say("{player}, from which it comes, is left out", player=player)
        for link in way:
            misfit = self.misfits.get(link)
            if misfit is not None and link.end == part:
                return misfit.here
            if misfit is not None:
                return say("{why}, so that {player} does not reach it", why=misfit.beyond, player=player)
            if link.end != part and link.end not in present:
                return say(
                    "{part}, through which {player} reached it, is left out", part=link.end, player=player
                )
        return say("{player} no longer reaches it", player=player)


def ways_of(sides: Sides, carriers: tuple[str, ...]) -> Ways:
    """The ways along all connections that could carry one of some signals."""
    links, now = (carrying_links(sides, scene, carriers) for scene in (sides.documented, sides.proposed))
    misfits = {link: misfit for link in (*links, *now) if (misfit := new_misfit(sides, link)) is not None}
    state = sides.proposed.state
    working = [
        link
        for link in now
        if link not in misfits and state.is_there(link.start) and state.is_there(link.end)
    ]
    return Ways(sides=sides, links=links, misfits=misfits, before=by_end(links), after=by_end(working))


def by_end(links: tuple[Link, ...] | list[Link]) -> dict[str, tuple[Link, ...]]:
    found: dict[str, tuple[Link, ...]] = {}
    for link in links:
        found[link.end] = (*found.get(link.end, ()), link)
    return found


def sources_of(scene: Scene, part: str, into: Mapping[str, tuple[Link, ...]]) -> dict[str, Way]:
    """One way from each player (or material joined directly) to a part, the shortest."""
    ways: dict[str, Way] = {part: ()}
    waiting = deque([part])
    while waiting:
        reached = waiting.popleft()
        for link in into.get(reached, ()):
            if link.start not in ways:
                ways[link.start] = (link, *ways[reached])
                waiting.append(link.start)
    return {start: way for start, way in ways.items() if way and _is_source(scene, start)}


def players_of(scene: Scene) -> tuple[str, ...]:
    return tuple(part.identifier for part in scene.running("player"))


def carrying_channel(scene: Scene, part: str, sources: Iterable[str]) -> tuple[str, ...]:
    """Those that carry the channel of a part, or may, as those do of which no channel is given."""
    return tuple(source for source in sources if carries(scene, part, source) is not Answer.OUT)


def carries(scene: Scene, part: str, source: str) -> Answer:
    """Whether something carries the channel of a part; open where that of either may be any."""
    if not all(scene.states(name, "channel") for name in (part, source)):
        return Answer.IN
    shown, carried = scene.stated_names(part, "channel"), scene.stated_names(source, "channel")
    if not shown or not carried:
        return Answer.OPEN
    if shown <= carried:
        return Answer.IN
    return Answer.OPEN if shown & carried else Answer.OUT


def _is_source(scene: Scene, start: str) -> bool:
    part = scene.case.scopes.proposed.every.get(start)
    return part is None or scene.vocabulary.is_kind(part.kind.iri, term_iri("player"))
