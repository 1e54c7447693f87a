"""Whether every plug goes into the venue's sockets, and the earth with it where a device needs one.

Which plug goes into which socket stands in the vocabulary (IEC TR 60083, from memory). Sockets that are listed are all
there, so that one that fits is enough.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from intent.effects.limits_kept import (
    Input,
    Limited,
    all_alike,
    any_of,
    every,
    inputs,
    obstacles,
    unchecked,
)
from intent.effects.power.at_the_wall import Plugged, loose, plugged_in
from intent.effects.power.consumers import inputs_taken
from intent.effects.scene import Scene, Sides
from intent.effects.signal.links import listed_of
from intent.effects.signal.mending import CONNECTION, perhaps_mended
from intent.language.message import Message, say
from intent.model.subject import WHOLE_VENUE, one
from intent.names import THE_VENUE, term_iri
from intent.values.sets import Answer
from intent.variance.obstacle import Need, Obstacle, Unchecked
from intent.vocabulary.terms import Concept

NO_EARTH = say("needs a protective earth, and the socket has none: an electrician has to give it one")
PERHAPS_NO_EARTH = say(
    "whether it needs a protective earth, which its plug or the socket does not give, cannot be said"
)
UNSURE = say("whether its plug goes into the venue's sockets cannot be said: look at it before")
HARD_WIRED = say(
    "has no plug, and whether the venue has a fixed connection for it is not said: a licensed electrician connects it"
)
FIXED, LOW_VOLTAGE = "hard-wired", "low-voltage-plug"


def plug_obstacles(sides: Sides, takers: Sequence[str]) -> Iterator[Obstacle | Unchecked]:
    """The plugs that do not go into the venue's sockets, or may not, and the devices that lack an earth."""
    scene, plugged = sides.proposed, plugged_in(sides, takers)
    if plugged and not scene.states(THE_VENUE, "socket"):
        yield from unchecked(sides, THE_VENUE, "socket")
        return
    fitting = [lead for lead in loose(sides) if _goes_in(scene, lead) is not Answer.OUT]
    for each in plugged:
        is_idle = every(scene.runs(part).negated for part in each.served)
        answer = any_of([_fits(scene, each), is_idle])
        mending = tuple(lead for lead in fitting if lead != each.part)
        if answer is Answer.OUT and mending:
            answer = Answer.OPEN
        yield from obstacles(sides, answer, _limited(sides, each, mending))


def _fits(scene: Scene, plugged: Plugged) -> Answer:
    """Whether a plug goes in, with its earth where a device needs one; of one that may be several, whether all do."""
    needs_none = any_of(scene.is_(part, "earthing", "class-i") for part in plugged.served).negated
    return all_alike(
        every([_goes(scene, plug), any_of([_earthed(scene, plug), needs_none])])
        for plug in _plugs(scene, plugged.part)
    )


def _goes_in(scene: Scene, part: str) -> Answer:
    """Whether the plug goes into one of the sockets, with an earth or without."""
    return all_alike(_goes(scene, plug) for plug in _plugs(scene, part))


def _goes(scene: Scene, plug: str) -> Answer:
    if plug == LOW_VOLTAGE or _taking(scene, plug):
        return Answer.IN
    # a fixed connection may be there though nobody lists it among the sockets
    return Answer.OPEN if plug == FIXED or not _sockets(scene) else Answer.OUT


def _gives_earth(scene: Scene, part: str) -> Answer:
    """Whether the earth comes with the plug; it does with a fixed connection, and is not asked of low voltage."""
    return all_alike(_earthed(scene, plug) for plug in _plugs(scene, part))


def _earthed(scene: Scene, plug: str) -> Answer:
    if plug in (LOW_VOLTAGE, FIXED):
        return Answer.IN
    into = [_concept(scene, name) for name in (plug, *_taking(scene, plug))]
    return Answer.OUT if any(each.gives_no_earth for each in into) else Answer.IN


def _plugs(scene: Scene, part: str) -> frozenset[str]:
    """The plugs that a part may have: any where nobody says."""
    return scene.names(part, "plug")


def _sockets(scene: Scene) -> tuple[str, ...]:
    """The sockets of the venue, as listed; none where they may be any."""
    return listed_of(scene, THE_VENUE, "socket")


def _taking(scene: Scene, plug: str) -> tuple[str, ...]:
    """The sockets that take a plug."""
    into = _concept(scene, plug).goes_into
    return tuple(name for name in _sockets(scene) if name == plug or term_iri(name) in into)


def _concept(scene: Scene, name: str) -> Concept:
    return scene.vocabulary.concepts[term_iri(name)]


def _limited(sides: Sides, plugged: Plugged, mending: tuple[str, ...]) -> Limited:
    scene = sides.proposed
    goes = _goes_in(scene, plugged.part)
    needs = [Input(need=Need(CONNECTION, one(lead)), is_exact=False, is_changed=True) for lead in mending]
    sockets = Input(
        need=Need(scene.called("socket"), WHOLE_VENUE), is_exact=bool(_sockets(scene)), is_changed=True
    )
    is_mended = bool(mending) and _fits(scene, plugged) is Answer.OUT
    sure = NO_EARTH if goes is Answer.IN else _misfit_words(scene, plugged.part)
    return Limited(
        slug="plug" if goes is not Answer.IN else "no-earth",
        subject=one(plugged.part),
        inputs=needs if is_mended else [sockets, *_inputs(sides, plugged)],
        sure=sure,
        unsure=perhaps_mended(sure, mending) if is_mended else _unsure_words(scene, plugged.part, goes),
    )


def _inputs(sides: Sides, plugged: Plugged) -> Iterator[Input]:
    scene = sides.proposed
    yield from inputs(sides, plugged.part, "plug")
    is_asked = _gives_earth(scene, plugged.part) is not Answer.IN
    for part in plugged.served:
        yield from inputs_taken(sides, part, *(("earthing",) if is_asked else ()))


def _unsure_words(scene: Scene, part: str, goes: Answer) -> Message:
    if goes is Answer.IN:
        return PERHAPS_NO_EARTH
    return HARD_WIRED if scene.names(part, "plug") == {FIXED} else UNSURE


def _misfit_words(scene: Scene, part: str) -> Message:
    return say(
        "{plug} does not go into the venue's sockets, which are for {socket}: another lead or an adapter is needed "
        "that carries the protective earth through; a plug that fits says nothing of the voltage",
        plug=tuple(map(scene.term, sorted(scene.names(part, "plug")))),
        socket=tuple(map(scene.term, sorted(_sockets(scene)))),
    )
