"""Which plugs go into the venue's sockets, and whether the earth comes with them.

Which plug goes into which socket stands in the vocabulary.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from intent.effects.scene import Scene
from intent.language.message import Message, say
from intent.model.subject import several
from intent.names import THE_VENUE, term_iri
from intent.values.sets import Answer
from intent.variance.result import Effect, EffectTopic
from intent.vocabulary.terms import Concept

SOURCE = say("which plug goes into which socket: IEC TR 60083, from memory")
NO_EARTH = say("needs a protective earth, and the socket has none: an electrician has to give it one")


def plug_effects(scene: Scene, parts: Sequence[str]) -> Iterator[Effect]:
    """The devices whose plug does not go into the venue's sockets, or that need an earth where there is none."""
    sockets = scene.stated_names(THE_VENUE, "socket")
    if not sockets:
        return
    by_plug: dict[frozenset[str], list[str]] = {}
    for part in parts:
        by_plug.setdefault(scene.stated_names(part, "plug"), []).append(part)
    for plugs, members in by_plug.items():
        if plugs and not any(_goes(scene, plug, sockets) for plug in plugs):
            yield _effect(members, _misfit_words(scene, plugs, sockets))
        elif all(_concept(scene, socket).gives_no_earth for socket in sockets):
            earthed = [part for part in members if scene.is_(part, "earthing", "class-i") is Answer.IN]
            if earthed:
                yield _effect(earthed, NO_EARTH)


def _goes(scene: Scene, plug: str, sockets: frozenset[str]) -> bool:
    return plug in sockets or bool(_concept(scene, plug).goes_into & {term_iri(socket) for socket in sockets})


def _concept(scene: Scene, name: str) -> Concept:
    return scene.vocabulary.concepts[term_iri(name)]


def _misfit_words(scene: Scene, plugs: frozenset[str], sockets: frozenset[str]) -> Message:
    if plugs == {"hard-wired"}:
        return say("has no plug: a licensed electrician connects it")
    return say(
        "{plug} does not go into the venue's sockets, which are for {socket}: another lead or an adapter is needed "
        "that carries the protective earth through; a plug that fits says nothing of the voltage",
        plug=tuple(map(scene.term, sorted(plugs))),
        socket=tuple(map(scene.term, sorted(sockets))),
    )


def _effect(members: Sequence[str], words: Message) -> Effect:
    return Effect(
        topic=EffectTopic.POWER,
        subject=several(members),
        quantity=say("plug"),
        sentence=words,
        source=SOURCE,
    )
