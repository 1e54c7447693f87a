"""The ways of picture and sound through the connections of the work, from each player to where it is seen or heard.

A way may run through any part that is connected: converters, cables, amplifiers, a display that passes its signal on.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from intent.effects.scene import Scene, Sides
from intent.effects.signal.fits import Fit, fits_of, misfit_among
from intent.effects.signal.links import Link, carrying_links
from intent.effects.signal.misfits import misfit_of
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
class Arrivals:
    """The connections that could carry a picture, or sound, in one state, and how each end of them fits."""

    scene: Scene
    links: tuple[Link, ...]
    fits: Mapping[Link, tuple[Fit, ...]]

    def misfit(self, link: Link) -> Fit | None:
        """The first end that surely does not fit."""
        return misfit_among(self.fits[link])

    def ways(self, part: str, *, working: bool = True) -> dict[str, Way]:
        """A way from each player to a part; over all connections, or over those alone that may work."""
        links = [link for link in self.links if not working or self.misfit(link) is None]
        return sources_of(self.scene, part, by_end(links))


@dataclass(frozen=True, slots=True, kw_only=True)
class Ways:
    """What arrives as documented, and what as proposed."""

    before: Arrivals
    after: Arrivals

    def documented(self, part: str) -> dict[str, Way]:
        """The ways to a part that may work as documented, by the player at which they begin."""
        return self.before.ways(part)

    def proposed(self, part: str) -> dict[str, Way]:
        """The ways to a part that may work as proposed, by the player at which they begin."""
        return self.after.ways(part)

    def lost(self, part: str) -> Lost | None:
        """What reached a part and does so no longer; nothing where all of it still does."""
        before, after = self.documented(part), self.proposed(part)
        reasons = [self._reason(player, way, part) for player, way in before.items() if player not in after]
        return Lost(len(before), len(after), tuple(dict.fromkeys(reasons))) if reasons else None

    def _reason(self, player: str, way: Way, part: str) -> Message:
        """Why a way that worked as documented is there no more."""
        scene = self.after.scene
        if not scene.state.is_there(player):
            return say("{player}, from which it comes, is left out", player=player)
        for link in way:
            fit = misfit_among(fits_of(scene, link))
            if fit is not None:
                why = misfit_of(scene, link, fit)
                if link.end == part:
                    return why.here
                return say("{why}, so that {player} does not reach it", why=why.beyond, player=player)
            if link.end != part and not scene.state.is_there(link.end):
                return say(
                    "{part}, through which {player} reached it, is left out", part=link.end, player=player
                )
        return say("{player} no longer reaches it", player=player)


def ways_of(sides: Sides, carriers: tuple[str, ...]) -> Ways:
    """What arrives along all connections that could carry one of some signals."""
    before, after = (_arrivals(sides, scene, carriers) for scene in (sides.documented, sides.proposed))
    return Ways(before=before, after=after)


def _arrivals(sides: Sides, scene: Scene, carriers: tuple[str, ...]) -> Arrivals:
    links = tuple(
        link
        for link in carrying_links(sides, scene, carriers)
        if scene.state.is_there(link.start) and scene.state.is_there(link.end)
    )
    return Arrivals(scene=scene, links=links, fits={link: fits_of(scene, link) for link in links})


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
