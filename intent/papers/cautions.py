"""The usual cautions for what is at hand: those that kinds, technologies and values call for."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from intent.language.message import Words, closed, named, opened, say, sentence
from intent.model.assertions import Named, Statements
from intent.model.naming import runs, subject_name
from intent.model.subject import WHOLE_VENUE, WHOLE_WORK, Subject, one
from intent.model.work import Device, Part
from intent.names import YES
from intent.papers.document import Block, Paragraph, ParagraphRole
from intent.papers.inline import strong
from intent.values.regions import Interval
from intent.variance.result import Variance
from intent.vocabulary.definition import Definition
from intent.vocabulary.terms import Vocabulary

DEFERENCE = say(
    "These are the usual cautions, not all that could apply. Local codes, the maker's instructions and "
    "the judgement of licensed practitioners come first."
)


@dataclass(frozen=True, slots=True)
class Caution:
    """One caution, and the parts whose devices call for it."""

    label: Words
    text: Words
    concerns: Words


def caution_blocks(variance: Variance) -> tuple[Block, ...]:
    """Each caution as a paragraph, and whose judgement comes first; nothing where none is called for."""
    told = [
        Paragraph(
            (
                strong(closed(say("{name} ({role})", name=opened(caution.label), role=caution.concerns))),
                " ",
                caution.text,
            )
        )
        for caution in cautions(variance)
    ]
    return (*told, Paragraph(DEFERENCE, ParagraphRole.QUIET)) if told else ()


def cautions(variance: Variance) -> tuple[Caution, ...]:
    """In the order of the parts that call for them, those of the work and the venue last."""
    vocabulary = variance.work.vocabulary
    return tuple(_caution(vocabulary, iri, subjects) for iri, subjects in called_for(variance).items())


def _caution(vocabulary: Vocabulary, iri: str, subjects: Iterable[Subject]) -> Caution:
    concept = vocabulary.concepts.get(iri)
    text = sentence(named(Definition(concept))) if concept else ""
    return Caution(named(vocabulary.named(iri)), text, runs([subject_name(subject) for subject in subjects]))


def called_for(variance: Variance) -> dict[str, tuple[Subject, ...]]:
    """What calls for each caution, by its IRI, in the order in which they are called for: parts, the work, the venue.

    A device that leaves its place for another still counts, since somebody has to lift it out.
    """
    called: dict[str, list[Subject]] = {}
    for subject, found in _subjects(variance):
        for caution in dict.fromkeys(found):
            called.setdefault(caution, []).append(subject)
    return {caution: tuple(subjects) for caution, subjects in called.items()}


def called_for_by(
    vocabulary: Vocabulary, kind: str, stated: Statements, power: Interval | None
) -> tuple[str, ...]:
    """The cautions that one thing calls for by its kind and by what is said of it, by their IRIs.

    ``power`` is what it draws, in watts, where that is said. What draws none, or is of a kind that has no mains and
    says none, gets no caution that is about running: a wall closes a device in, and does not itself get hot.
    """
    of_kind = _inherited(vocabulary, kind)
    found = tuple(dict.fromkeys((*of_kind, *_of_a_device(vocabulary, [stated]))))
    if power is None:
        named = (item.concept for one in stated.values() for item in one.items if isinstance(item, Named))
        of_values = (caution for concept in named for caution in _inherited(vocabulary, concept))
        runs = any(vocabulary.concepts[one].only_under_power for one in (*of_kind, *of_values))
    else:
        runs = power.high is None or power.high > 0
    return found if runs else tuple(one for one in found if not vocabulary.concepts[one].only_under_power)


def _subjects(variance: Variance) -> Iterator[tuple[Subject, Iterable[str]]]:
    """Everything that is there or is said to be, with the cautions that it calls for, some more than once."""
    work, installation = variance.work, variance.installation
    vocabulary, given = work.vocabulary, _given(variance)
    for part in _parts_present(variance):
        of_kind = _inherited(vocabulary, part.kind.iri)
        of_values = (
            found for stated in given.get(part.identifier, ()) for found in _of_a_device(vocabulary, stated)
        )
        yield one(part.identifier), (*of_kind, *of_values)
    for stated in (work.statements, installation.work_statements):
        yield WHOLE_WORK, _of(vocabulary, stated)
    yield WHOLE_VENUE, _of(vocabulary, installation.venue_statements)


def _parts_present(variance: Variance) -> Iterator[Part]:
    omitted = {omission.part for omission in variance.installation.omissions}
    yield from (part for part in variance.work.parts if part.identifier not in omitted)
    yield from variance.installation.additions


def _given(variance: Variance) -> dict[str, list[tuple[Statements, ...]]]:
    """What is said of each part: of the documented device, changes included, and of that which takes its place."""
    installation = variance.installation
    devices = {device.identifier: device for device in (*installation.devices, *variance.work.devices)}
    given: dict[str, list[tuple[Statements, ...]]] = {}
    for part in (*variance.work.parts, *installation.additions):
        changed = (change.statements for change in installation.changes if change.part == part.identifier)
        given[part.identifier] = [(part.statements, *_entries(devices, part.device), *changed)]
    for substitution in installation.substitutions:
        arriving = (substitution.statements, *_entries(devices, substitution.device))
        given.setdefault(substitution.part, []).append(arriving)
    return given


def _entries(devices: Mapping[str, Device], identifier: str | None) -> Iterator[Statements]:
    """A device's own entry, and those of the devices that it is like."""
    seen: set[str] = set()
    device = devices.get(identifier or "")
    while device is not None and device.identifier not in seen:
        seen.add(device.identifier)
        yield device.statements
        device = devices.get(device.like or "")


def _of_a_device(vocabulary: Vocabulary, stated: Iterable[Statements]) -> Iterator[str]:
    """The cautions of all that is said of one device; one that is narrower stands in place of the broader one.

    A laser whose class is known calls for what is said of that class, and not for what is said of any laser.
    """
    found = dict.fromkeys(iri for statements in stated for iri in _of(vocabulary, statements))
    concepts = (vocabulary.concepts.get(iri) for iri in found)
    broader = {wider for concept in concepts if concept for wider in concept.broader}
    yield from (iri for iri in found if iri not in broader)


def _of(vocabulary: Vocabulary, statements: Statements) -> Iterator[str]:
    """The cautions of named values, and of characteristics that call for one by being stated."""
    for iri, expression in statements.items():
        named = [item.concept for item in expression.items if isinstance(item, Named)]
        for concept in named:
            yield from _inherited(vocabulary, concept)
        characteristic = vocabulary.characteristics.get(iri)
        if characteristic is not None and (characteristic.space != "yes-no" or YES in named):
            yield from characteristic.cautions


def _inherited(vocabulary: Vocabulary, iri: str) -> tuple[str, ...]:
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
