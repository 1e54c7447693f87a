"""In what order a work is switched on and off.

What the dossier says goes first. Where it says nothing, what feeds power comes first, then control, what shows, what
stands between, what plays, and what amplifies sound last of all, so that each finds the next one ready and no switching
is heard; of parts alike that are joined, what takes the signal before what gives it. Off goes the other way. Common
practice, no source; the places are the vocabulary's.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from intent.effects.power.consumers import consumers, supplies
from intent.effects.scene import Scene
from intent.model.work import Part
from intent.names import term_iri
from intent.values.sets import Answer

_UP, _DOWN = "start-up-order", "shut-down-order"


@dataclass(frozen=True, slots=True, kw_only=True)
class SwitchingStep:
    """Parts that are switched one after another, in any order among themselves."""

    parts: tuple[str, ...]
    sort: str
    """The IRI of the kind that they all are, or of the technology that gives them their place; else empty."""
    is_stated: bool
    """Whether the dossier says that it is their turn; else it is common practice."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Switching:
    """The order of switching on and off."""

    on: tuple[SwitchingStep, ...]
    off: tuple[SwitchingStep, ...]
    stays_off: tuple[str, ...]
    """What is surely off while the work is shown."""
    unsaid: tuple[str, ...]
    """What is in the order, though it is not known whether it is on."""


def switching_of(scene: Scene) -> Switching:
    """The order of a showing, every part that takes power in it once in each direction, or off."""
    powered = _powered(scene)
    off = tuple(one.identifier for one in powered if scene.runs(one.identifier) is Answer.OUT)
    switched = tuple(one for one in powered if one.identifier not in off)
    on = _steps(scene, switched, _UP, lambda part: _usual(scene, part, switched))
    turns = {name: -place for place, step in enumerate(on) for name in step.parts}
    down = _steps(scene, switched, _DOWN, lambda part: (turns[part.identifier],))
    unsaid = tuple(one.identifier for one in switched if scene.runs(one.identifier) is Answer.OPEN)
    return Switching(on=on, off=down, stays_off=off, unsaid=unsaid)


def _powered(scene: Scene) -> tuple[Part, ...]:
    """What takes power or feeds it, and what shares a device with that; and whatever the dossier gives a turn."""
    fed = {*consumers(scene), *supplies(scene)}
    devices = {scene.device(part) for part in fed} - {None}
    return tuple(
        part
        for part in scene.parts()
        if part.identifier in fed
        or scene.device(part.identifier) in devices
        or any(scene.states(part.identifier, order) for order in (_UP, _DOWN))
    )


def _steps(
    scene: Scene, parts: Iterable[Part], order: str, usual: Callable[[Part], tuple[int, ...]]
) -> tuple[SwitchingStep, ...]:
    """Those with a turn of their own first, by it; then the others as usual."""
    turns: dict[tuple[bool, tuple[int, ...]], list[Part]] = {}
    for part in parts:
        stated = scene.states(part.identifier, order)
        turn = scene.bounds(part.identifier, order).low if stated else None
        key = usual(part) if turn is None else (int(turn),)
        turns.setdefault((turn is None, key), []).append(part)
    return tuple(_step(scene, turns[turn], is_stated=not turn[0]) for turn in sorted(turns))


def _step(scene: Scene, parts: list[Part], *, is_stated: bool) -> SwitchingStep:
    sorts = {_placed(scene, part)[1] for part in parts}
    return SwitchingStep(
        parts=tuple(part.identifier for part in parts),
        sort=sorts.pop() if len(sorts) == 1 else "",
        is_stated=is_stated,
    )


def _usual(scene: Scene, part: Part, among: tuple[Part, ...]) -> tuple[int, ...]:
    """The place of its technology, else of its kind; then how many alike its signal goes through after it."""
    place, _ = _placed(scene, part)
    alike = {one.identifier for one in among if _placed(scene, one)[0] == place}
    return place, len(_after(scene, part.identifier) & alike)


def _placed(scene: Scene, part: Part) -> tuple[int, str]:
    """A part's place, and what gives it; what has no place of its own comes after all that have one."""
    concepts = scene.vocabulary.concepts
    kind = part.kind.start_place
    found = [concepts[term_iri(name)] for name in scene.stated_names(part.identifier, "technology")]
    if len(found) == 1 and found[0].start_place not in {None, kind}:
        return found[0].start_place or 0, found[0].iri
    last = max(one.start_place or 0 for one in concepts.values())
    return kind or last + 1, part.kind.iri


def _after(scene: Scene, part: str) -> frozenset[str]:
    """All that a part's signal reaches."""
    seen, waiting = set[str](), [part]
    while waiting:
        start = waiting.pop()
        for link in scene.connections:
            if link.start == start and link.end not in seen:
                seen.add(link.end)
                waiting.append(link.end)
    return frozenset(seen - {part})
