"""Which plugs go into the venue's sockets, and whether the earth comes with them.

Which plug goes into which socket: IEC TR 60083, from memory.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from intent.effects.scene import THE_VENUE, Scene
from intent.effects.signal.paths import stated_names
from intent.language.message import Saying, say
from intent.values.sets import Answer
from intent.variance.result import Effect, EffectTopic

SOURCE = "which plug goes into which socket: IEC TR 60083, from memory"
GOES_INTO: Mapping[str, frozenset[str]] = {
    "plug-a": frozenset({"plug-b"}),
    "plug-c": frozenset({"plug-e", "plug-f", "plug-j", "plug-k", "plug-l", "plug-n"}),
}
"""The sockets that a plug goes into besides its own."""
WITHOUT_EARTH = frozenset({"plug-a", "plug-c"})


def plug_effects(scene: Scene, parts: Sequence[str]) -> Iterator[Effect]:
    """The devices whose plug does not go into the venue's sockets, or that need an earth where there is none."""
    sockets = stated_names(scene, THE_VENUE, "socket")
    if not sockets:
        return
    by_plug: dict[frozenset[str], list[str]] = {}
    for part in parts:
        by_plug.setdefault(stated_names(scene, part, "plug"), []).append(part)
    for plugs, members in by_plug.items():
        if plugs and not any(_goes(plug, sockets) for plug in plugs):
            yield _effect(members, _misfit_words(scene, plugs, sockets))
        elif sockets <= WITHOUT_EARTH:
            earthed = [part for part in members if scene.is_(part, "earthing", "class-i") is Answer.IN]
            if earthed:
                yield _effect(
                    earthed,
                    say(
                        "needs a protective earth, and the socket has none: an electrician has to give it one"
                    ),
                )


def _goes(plug: str, sockets: frozenset[str]) -> bool:
    return plug in sockets or bool(GOES_INTO.get(plug, frozenset()) & sockets)


def _misfit_words(scene: Scene, plugs: frozenset[str], sockets: frozenset[str]) -> Saying:
    places = {
        "plug": tuple(map(scene.term, sorted(plugs))),
        "socket": tuple(map(scene.term, sorted(sockets))),
    }
    if plugs == {"hard-wired"}:
        return say("has no plug: a licensed electrician connects it")
    return say(
        "{plug} does not go into the venue's sockets, which are for {socket}: another lead or an adapter is needed "
        "that carries the protective earth through; a plug that fits says nothing of the voltage",
        **places,
    )


def _effect(members: Sequence[str], words: Saying) -> Effect:
    return Effect(
        topic=EffectTopic.POWER,
        members=tuple(members),
        quantity="plug",
        unit="",
        documented=None,
        proposed=None,
        sentence=words,
        source=SOURCE,
    )
