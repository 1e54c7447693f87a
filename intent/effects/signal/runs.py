"""The runs of cable from one device to the next: a connection, or several that parts of kind cable join."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from intent.effects.scene import Scene
from intent.effects.signal.links import listed_names
from intent.model.meaning import given_value
from intent.model.work import Connection
from intent.names import term_iri
from intent.values.bounds import NATURAL, larger, total
from intent.values.regions import Interval, Region
from intent.values.sets import Answer
from intent.vocabulary.reach import CableReach
from intent.vocabulary.terms import Concept


@dataclass(frozen=True, slots=True, kw_only=True)
class CableRun:
    """Cable from one device to the next."""

    start: str
    end: str
    cables: tuple[str, ...]
    """The parts of kind cable that it leads through."""
    length: Interval
    is_measured: bool
    """Whether any length is stated."""
    signals: tuple[str, ...]
    """What it is said to carry, by local names; of several connections what the first says."""

    @property
    def parts(self) -> tuple[str, ...]:
        return (self.start, *self.cables, self.end)


def runs_of(scene: Scene) -> tuple[CableRun, ...]:
    """All runs of a state between devices that are there."""
    cables = {part.identifier for part in scene.parts("cable")}
    there = [one for one in scene.connections if scene.state.is_there(one.start)]
    begun = [[one] for one in there if one.start not in cables]
    return tuple(_run(scene, chain) for start in begun for chain in _followed(start, there, cables))


def _followed(
    chain: list[Connection], connections: Sequence[Connection], cables: set[str]
) -> Iterator[list[Connection]]:
    """The ways on from the end of some connections, as far as cables join them; not in circles."""
    end, passed = chain[-1].end, {one.start for one in chain}
    onward = [one for one in connections if one.start == end and one.end not in passed]
    if end not in cables or not onward:
        yield chain
        return
    for one in onward:
        yield from _followed([*chain, one], connections, cables)


def _run(scene: Scene, chain: Sequence[Connection]) -> CableRun:
    lengths = [_length(scene, one) for one in chain]
    longest = lengths[0]
    for length in lengths[1:]:
        longest = larger(longest, length)
    signals = (listed_names(one.statements.get(term_iri("signal"))) for one in chain)
    return CableRun(
        start=chain[0].start,
        end=chain[-1].end,
        cables=tuple(one.end for one in chain[:-1]),
        # of a cable with a connection at either end, nobody knows whether its own length is written twice
        length=Interval(longest.low, total(lengths).high),
        is_measured=any(term_iri("length") in one.statements for one in chain),
        signals=next((found for found in signals if found), ()),
    )


def _length(scene: Scene, connection: Connection) -> Interval:
    expression = connection.statements.get(term_iri("length"))
    if expression is None:
        return NATURAL
    value = given_value(expression, scene.characteristic("length"), scene.vocabulary)
    return value.bounds if isinstance(value, Region) else NATURAL


def reaches_of(scene: Scene, run: CableRun) -> tuple[CableReach, ...]:
    """How far each signal that a run may carry is carried; nothing where that is not said of all of them."""
    found = [scene.vocabulary.concepts[term_iri(name)].reach for name in run.signals]
    said = tuple(reach for reach in found if reach is not None)
    return said if len(said) == len(found) else ()


def helped(scene: Scene, run: CableRun) -> Answer:
    """Whether fibre, radio or an extender carries a run further than plain cable does: surely, surely not, or open."""
    answers = [_carries_further(scene, part) for part in _helpers(scene, run)]
    if Answer.IN in answers:
        return Answer.IN
    return Answer.OPEN if Answer.OPEN in answers else Answer.OUT


def _helpers(scene: Scene, run: CableRun) -> Iterable[str]:
    """The parts of a run that may help it."""
    able = {part.identifier for part in scene.parts("cable", "converter")}
    return [part for part in run.parts if part in able]


def _carries_further(scene: Scene, part: str) -> Answer:
    concepts: list[Concept] = [
        scene.vocabulary.concepts[term_iri(name)] for name in scene.names(part, "technology")
    ]
    further = ["carriesFurther" in one.marks for one in concepts]
    if further and all(further):
        return Answer.IN
    return Answer.OPEN if any(further) or not further else Answer.OUT
