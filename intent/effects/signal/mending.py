"""What would mend a connection that does not fit: the converter or adapter, and which devices at hand are one."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from intent.effects.scene import Scene, Sides
from intent.effects.signal.fits import STATE, Fit
from intent.effects.signal.links import Link, listed_names, terms_of
from intent.language.message import Message, Words, say, say_of
from intent.model.work import Device
from intent.names import term_iri

CONNECTION = say("connection")
JOINING = ("player", "converter", "cable", "control")
"""The kinds of part that stand in a way."""
CONVERTER = say("a converter from {one} to {two} would mend it")
ADAPTER = say("an adapter from {one} to {two} would mend it")


def mended(sides: Sides, fit: Fit) -> Message:
    """What would mend a misfit, by name where a spare or a device of the pool is one."""
    scene = sides.proposed
    if fit.characteristic == STATE:
        return say("to switch it on would mend it")
    # at its start, the device gives what is there and the cable is for what is wanted; at its end, the other way round
    one, two = (fit.wanted, fit.there) if fit.is_end else (fit.there, fit.wanted)
    pattern = CONVERTER if fit.characteristic.endswith("signal") else ADAPTER
    would = pattern.filled(one=terms_of(scene, frozenset(one)), two=terms_of(scene, frozenset(two)))
    kind = fit.characteristic.partition("-")[2]
    at_hand = tuple(_at_hand(scene, (f"input-{kind}", frozenset(one)), (f"output-{kind}", frozenset(two))))
    return say("{what}, such as {devices}", what=would, devices=at_hand) if at_hand else would


def loose_additions(sides: Sides, links: Iterable[Link]) -> tuple[str, ...]:
    """What is added that could join others, and that none of some connections joins."""
    joined = {end for link in links for end in (link.start, link.end)}
    return tuple(
        part.identifier
        for part in sides.proposed.parts(*JOINING)
        if not sides.was_there(part.identifier) and part.identifier not in joined
    )


def perhaps_mended(why: Words, added: tuple[str, ...]) -> Message:
    """That what is added may mend it, which nobody says."""
    return say_of(
        len(added),
        "{why}; whether {added} mends it is not said, for no connection joins it",
        "{why}; whether {added} mend it is not said, for no connection joins them",
        why=why,
        added=added,
    )


def _at_hand(scene: Scene, *wanted: tuple[str, frozenset[str]]) -> Iterator[str]:
    """The devices of work and pool that stand nowhere and of which both are stated."""
    placed = set(scene.state.devices.values())
    for device in (*scene.case.work.devices, *scene.case.installation.devices):
        if device.identifier not in placed and all(_has(device, name, names) for name, names in wanted):
            yield device.identifier


def _has(device: Device, name: str, names: frozenset[str]) -> bool:
    return bool(names.intersection(listed_names(device.statements.get(term_iri(name)))))
