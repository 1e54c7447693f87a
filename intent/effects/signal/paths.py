"""The ways of picture and sound through the connections of the work, from each player to where it is seen or heard.

A way may run through any part that is connected: converters, cables, amplifiers, a display that passes its signal on.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from intent.effects.scene import Scene, Sides
from intent.language.message import Labelled, Message, say
from intent.model.assertions import Statements
from intent.model.meaning import given_value
from intent.names import term_iri
from intent.values.sets import Labels
from intent.vocabulary.terms import Vocabulary, local_name

PICTURE = ("video-signal", "network", "usb")
SOUND = ("audio-signal", "hdmi", "displayport", "sdi", "rf", "network", "usb")
"""The signals that can carry a picture, and those that can carry sound (definitions of the vocabulary)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Link:
    """One connection; what it carries and what plugs it in by local names, empty where nothing is said."""

    start: str
    end: str
    signal: frozenset[str]
    connector: frozenset[str]


Way = tuple[Link, ...]
"""Connections from a player to a part, in this order."""


@dataclass(frozen=True, slots=True)
class Misfit:
    """Why a connection does not work."""

    here: Message
    """As it is told of the part at its end."""
    beyond: Message
    """As it is told of a part further on."""


@dataclass(frozen=True, slots=True)
class Lost:
    """A picture or sound that reached a part as documented and does not as proposed."""

    before: int
    """From how many players it came, and in the next line comes."""
    after: int
    reasons: tuple[Message, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Ways:
    """The connections that could carry a picture, or sound, as documented and as proposed."""

    sides: Sides
    links: tuple[Link, ...]
    misfits: Mapping[Link, Misfit]
    """The connections that fit as documented and do not as proposed."""
    before: Mapping[str, tuple[Link, ...]]
    after: Mapping[str, tuple[Link, ...]]
    """The connections into each part, of those that work."""

    def documented(self, part: str) -> dict[str, Way]:
        return _ways_to(self.sides.documented, part, self.before)

    def proposed(self, part: str) -> dict[str, Way]:
        return _ways_to(self.sides.proposed, part, self.after)

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
    vocabulary = sides.proposed.vocabulary
    carrying = frozenset[str]().union(*(_with_narrower(vocabulary, name) for name in carriers))
    links = tuple(link for link in links_of(sides) if not link.signal or link.signal & carrying)
    misfits = {link: misfit for link in links if (misfit := _new_misfit(sides, link)) is not None}
    state = sides.proposed.state
    working = [
        link
        for link in links
        if link not in misfits and state.is_there(link.start) and state.is_there(link.end)
    ]
    return Ways(sides=sides, links=links, misfits=misfits, before=_by_end(links), after=_by_end(working))


def links_of(sides: Sides) -> Iterator[Link]:
    """The connections of the work."""
    vocabulary = sides.proposed.vocabulary
    for found in sides.work.connections:
        signal = _stated(found.statements, "signal", vocabulary)
        connector = _stated(found.statements, "connector", vocabulary)
        yield Link(start=found.start, end=found.end, signal=signal, connector=connector)


def _stated(statements: Statements, name: str, vocabulary: Vocabulary) -> frozenset[str]:
    expression = statements.get(term_iri(name))
    if expression is None:
        return frozenset()
    value = given_value(expression, vocabulary.characteristics[term_iri(name)], vocabulary)
    if not isinstance(value, Labels) or value.all_but:
        return frozenset()
    return frozenset(map(local_name, value.names))


def _by_end(links: tuple[Link, ...] | list[Link]) -> dict[str, tuple[Link, ...]]:
    found: dict[str, tuple[Link, ...]] = {}
    for link in links:
        found[link.end] = (*found.get(link.end, ()), link)
    return found


def _ways_to(scene: Scene, part: str, into: Mapping[str, tuple[Link, ...]]) -> dict[str, Way]:
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


def _is_source(scene: Scene, start: str) -> bool:
    part = scene.case.scopes.proposed.every.get(start)
    return part is None or scene.vocabulary.is_kind(part.kind.iri, term_iri("player"))


def _new_misfit(sides: Sides, link: Link) -> Misfit | None:
    found = _misfit(sides.proposed, link)
    return found if found is not None and _misfit(sides.documented, link) is None else None


def _misfit(scene: Scene, link: Link) -> Misfit | None:
    """Why what a connection carries is not given at its start or not taken at its end; narrower names count."""
    gives = scene.stated_names(link.start, "output-signal")
    takes = scene.stated_names(link.end, "input-signal")
    sent = link.signal or gives
    if link.signal and gives and not link.signal & gives:
        return _not_given(scene, link, gives)
    if sent and takes and not sent & takes:
        return _not_taken(scene, link, sent, takes)
    plugs = scene.stated_names(link.start, "output-connector")
    sockets = scene.stated_names(link.end, "input-connector")
    if link.connector and plugs and not link.connector & plugs:
        return _no_plug(scene, link, plugs)
    if link.connector and sockets and not link.connector & sockets:
        return _no_socket(scene, link, sockets)
    return None


def _not_given(scene: Scene, link: Link, gives: frozenset[str]) -> Misfit:
    given, carried = terms_of(scene, gives), terms_of(scene, link.signal)
    return Misfit(
        here=say(
            "{start} gives {gives}, and the connection from it is for {carried}",
            start=link.start,
            gives=given,
            carried=carried,
        ),
        beyond=say(
            "{start} gives {gives}, and the connection to {end} is for {carried}",
            start=link.start,
            gives=given,
            end=link.end,
            carried=carried,
        ),
    )


def _not_taken(scene: Scene, link: Link, sent: frozenset[str], takes: frozenset[str]) -> Misfit:
    given, taken = terms_of(scene, sent), terms_of(scene, takes)
    return Misfit(
        here=say(
            "{start} sends it {sent}, and the device takes {takes}",
            start=link.start,
            sent=given,
            takes=taken,
        ),
        beyond=say(
            "{start} sends {sent} to {end}, which takes {takes}",
            start=link.start,
            sent=given,
            end=link.end,
            takes=taken,
        ),
    )


def _no_plug(scene: Scene, link: Link, plugs: frozenset[str]) -> Misfit:
    plug, has = terms_of(scene, link.connector), terms_of(scene, plugs)
    return Misfit(
        here=say(
            "the cable from {start} has {plug}, and {start} has {has}",
            start=link.start,
            plug=plug,
            has=has,
        ),
        beyond=say(
            "the cable from {start} to {end} has {plug}, and {start} has {has}",
            start=link.start,
            end=link.end,
            plug=plug,
            has=has,
        ),
    )


def _no_socket(scene: Scene, link: Link, sockets: frozenset[str]) -> Misfit:
    plug, has = terms_of(scene, link.connector), terms_of(scene, sockets)
    return Misfit(
        here=say(
            "the cable from {start} has {plug}, and the device has {has}",
            start=link.start,
            plug=plug,
            has=has,
        ),
        beyond=say(
            "the cable from {start} to {end} has {plug}, and {end} has {has}",
            start=link.start,
            end=link.end,
            plug=plug,
            has=has,
        ),
    )


def terms_of(scene: Scene, names: frozenset[str]) -> tuple[Labelled, ...]:
    """The terms of some names, without those that a broader one among them holds, to be put in a message."""
    held = {narrow for name in names for narrow in _with_narrower(scene.vocabulary, name) if narrow != name}
    return tuple(scene.term(name) for name in sorted(names - held))


def _with_narrower(vocabulary: Vocabulary, name: str) -> frozenset[str]:
    iri = term_iri(name)
    return frozenset(map(local_name, vocabulary.narrower.get(iri, frozenset({iri}))))
