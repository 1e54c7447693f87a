"""Whether a device surely takes, or gives, what a connection carries: of several sockets one is enough.

What a device gives and takes is a list (`one of HDMI or composite` names two sockets); a broader term (`analogue
video`) may stand for any one that is narrower, so that nobody can tell whether it is the one that is needed.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from intent.effects.limits_kept import FEW, all_alike
from intent.effects.scene import Scene
from intent.effects.signal.links import Link, listed_of, with_narrower
from intent.names import term_iri
from intent.values.sets import Answer
from intent.vocabulary.terms import Vocabulary

STATE = "power-state"


@dataclass(frozen=True, slots=True, kw_only=True)
class Fit:
    """Whether one end of a connection fits, and on what of which device that depends."""

    answer: Answer
    bearer: str
    characteristic: str
    is_stated: bool
    """Whether anything is said of it."""
    wanted: tuple[str, ...]
    """What it has to be, by local names; none where that is not said."""
    there: tuple[str, ...]
    """What is listed of the device."""
    is_end: bool
    """Whether it is the device at the end of the connection, else the one at its start."""


def fits_of(scene: Scene, link: Link) -> tuple[Fit, ...]:
    """What has to fit at both ends of a connection: what is given, what is taken, the cable at either end.

    What is switched off at its start gives nothing, whatever fits.
    """
    gives = listed_of(scene, link.start, "output-signal")
    sent = link.carries or gives
    found = [
        _fit(scene, link.start, "output-signal", wanted=link.carries),
        _fit(scene, link.end, "input-signal", wanted=sent, is_list=not link.carries),
        _fit(scene, link.start, "output-connector", wanted=link.plugs),
        _fit(scene, link.end, "input-connector", wanted=link.plugs),
    ]
    runs = scene.runs(link.start)
    if runs is not Answer.IN:
        found.append(_of_state(scene, link.start, runs))
    takes = scene.states(link.end, "input-signal")
    if not sent and takes and _applies(scene, link.start, "output-signal"):
        found.append(_open(link.start, "output-signal", is_stated=scene.states(link.start, "output-signal")))
    return tuple(fit for fit in found if fit is not None)


def misfit_among(fits: Iterable[Fit]) -> Fit | None:
    """The first of them that surely does not fit."""
    return next((fit for fit in fits if fit.answer is Answer.OUT), None)


def lies_in(vocabulary: Vocabulary, wanted: str, there: Sequence[str]) -> Answer:
    """Whether a term is surely among those that are listed, surely not, or perhaps."""
    names = with_narrower(vocabulary, wanted)
    found = Answer.OUT
    for listed in there:
        narrower = with_narrower(vocabulary, listed)
        if len(narrower) <= FEW and wanted in narrower and len(names) <= FEW:
            return Answer.IN
        if names & narrower:
            found = Answer.OPEN
    return found


def _fit(
    scene: Scene, bearer: str, name: str, *, wanted: tuple[str, ...], is_list: bool = False
) -> Fit | None:
    if not wanted or not _applies(scene, bearer, name):
        return None
    is_stated, there = scene.states(bearer, name), listed_of(scene, bearer, name)
    answer = Answer.OPEN
    if there:
        answers = [lies_in(scene.vocabulary, one, there) for one in wanted]
        # of what a device gives, one that is taken is enough; of what a cable is said to carry, nobody says which
        is_one_enough = is_list and Answer.IN in answers
        answer = Answer.IN if is_one_enough else all_alike(answers)
    return Fit(
        answer=answer,
        bearer=bearer,
        characteristic=name,
        is_stated=is_stated,
        wanted=wanted,
        there=there,
        is_end=name.startswith("input"),
    )


def _of_state(scene: Scene, bearer: str, runs: Answer) -> Fit:
    """What is switched off gives nothing, and passes nothing on."""
    return Fit(
        answer=runs,
        bearer=bearer,
        characteristic=STATE,
        is_stated=True,
        wanted=("switched-on",),
        there=listed_of(scene, bearer, STATE),
        is_end=False,
    )


def _open(bearer: str, name: str, *, is_stated: bool) -> Fit:
    return Fit(
        answer=Answer.OPEN,
        bearer=bearer,
        characteristic=name,
        is_stated=is_stated,
        wanted=(),
        there=(),
        is_end=False,
    )


def _applies(scene: Scene, bearer: str, name: str) -> bool:
    """Whether a device can have it: cables pass on what they get, and material joined directly has no sockets."""
    part = scene.case.scopes.proposed.every.get(bearer)
    if part is None or bearer not in scene.state.devices:
        return False
    passes_on = any(scene.vocabulary.is_kind(part.kind.iri, term_iri(kind)) for kind in ("cable", "carrier"))
    return not passes_on and scene.vocabulary.applies(scene.characteristic(name), part.kind.iri)
