"""Why a connection does not work: what it carries is not given or not taken, or the cable does not fit."""

from __future__ import annotations

from dataclasses import dataclass

from intent.effects.scene import Scene
from intent.effects.signal.fits import Fit
from intent.effects.signal.links import Link, terms_of
from intent.language.message import Message, say


@dataclass(frozen=True, slots=True)
class Misfit:
    """Why a connection does not work."""

    here: Message
    """As it is told of the part at its end."""
    beyond: Message
    """As it is told of a part further on."""


def misfit_of(scene: Scene, link: Link, fit: Fit) -> Misfit:
    """Why an end of a connection does not fit, in words."""
    wanted, there = frozenset(fit.wanted), frozenset(fit.there)
    match fit.characteristic:
        case "power-state":
            return _switched_off(link)
        case "output-signal":
            return _not_given(scene, link, there)
        case "input-signal":
            return _not_taken(scene, link, sent=wanted, takes=there)
        case "output-connector":
            return _no_plug(scene, link, there)
    return _no_socket(scene, link, there)


def _switched_off(link: Link) -> Misfit:
    words = say("{start} is switched off", start=link.start)
    return Misfit(here=words, beyond=words)


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


def _not_taken(scene: Scene, link: Link, *, sent: frozenset[str], takes: frozenset[str]) -> Misfit:
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
