"""The usual cautions for the devices at hand, from the vocabulary's kinds and technologies."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from intent.assertions import Named, Statements
from intent.model import Device, Part
from intent.reports.wording import runs, sentence
from intent.variance.result import Variance
from intent.vocabulary.terms import Vocabulary

DEFERENCE = (
    "These are the usual cautions, not all that could apply. Local codes, the maker's instructions and "
    "the judgement of licensed practitioners come first."
)


@dataclass(frozen=True, slots=True)
class Caution:
    """One caution, and the parts whose devices call for it."""

    label: str
    text: str
    concerns: str


def cautions(variance: Variance) -> tuple[Caution, ...]:
    """In the order of the parts that call for them; a device that leaves its place for another still counts,
    since somebody has to lift it out."""
    vocabulary = variance.work.vocabulary
    called: dict[str, list[str]] = {}
    for part in _parts_present(variance):
        concepts = [part.kind.iri, *_concepts_of(variance, part)]
        for caution in dict.fromkeys(found for iri in concepts for found in inherited(vocabulary, iri)):
            called.setdefault(caution, []).append(part.identifier)
    return tuple(_caution(vocabulary, iri, parts) for iri, parts in called.items())


def inherited(vocabulary: Vocabulary, iri: str) -> tuple[str, ...]:
    """The cautions of a concept and of all that is broader, nearest first."""
    found: dict[str, None] = {}
    waiting, seen = [iri], set[str]()
    while waiting:
        concept = vocabulary.concepts.get(waiting.pop(0))
        if concept is None or concept.iri in seen:
            continue
        seen.add(concept.iri)
        found.update(dict.fromkeys(concept.cautions))
        waiting.extend(concept.broader)
    return tuple(found)


def _caution(vocabulary: Vocabulary, iri: str, parts: list[str]) -> Caution:
    concept = vocabulary.concepts.get(iri)
    if concept is None:
        return Caution(iri.rsplit("/", 1)[-1], "", runs(parts))
    return Caution(concept.label, sentence(concept.texts.get("en") or concept.definition), runs(parts))


def _parts_present(variance: Variance) -> Iterator[Part]:
    omitted = {omission.part for omission in variance.installation.omissions}
    yield from (part for part in variance.work.parts if part.identifier not in omitted)
    yield from variance.installation.additions


def _concepts_of(variance: Variance, part: Part) -> Iterator[str]:
    """The named values of a part: as documented, and of the device that takes its place."""
    yield from _named(part.statements)
    yield from _device_concepts(variance, part.device)
    for change in variance.installation.changes:
        if change.part == part.identifier:
            yield from _named(change.statements)
    for substitution in variance.installation.substitutions:
        if substitution.part == part.identifier:
            yield from _named(substitution.statements)
            yield from _device_concepts(variance, substitution.device)


def _device_concepts(variance: Variance, identifier: str | None) -> Iterator[str]:
    """The named values of a device's own entry, and of those that it is like."""
    seen: set[str] = set()
    while identifier and identifier not in seen:
        seen.add(identifier)
        device = _device(variance, identifier)
        if device is None:
            return
        yield from _named(device.statements)
        identifier = device.like


def _device(variance: Variance, identifier: str) -> Device | None:
    devices = (*variance.work.devices, *variance.installation.devices)
    return next((device for device in devices if device.identifier == identifier), None)


def _named(statements: Statements) -> Iterator[str]:
    for expression in statements.values():
        yield from (item.concept for item in expression.items if isinstance(item, Named))
