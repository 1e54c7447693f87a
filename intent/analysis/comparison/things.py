"""Everything in a state of the documentation that can be new, gone or changed, with its respects."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import replace

from rdflib import DCTERMS

from intent.analysis.comparison.difference import (
    Facet,
    Thing,
    ThingKind,
    facets,
    meant,
    of_fields,
    of_statements,
)
from intent.analysis.comparison.unnamed import unnamed_things
from intent.language.message import Message, Words, joined, named, say
from intent.model.assertions import Condition
from intent.model.citation import Citation
from intent.model.duty import Duty
from intent.model.instruction_text import (
    ConditionSentence,
    DutySentence,
    InstructionSentence,
    modality_term,
)
from intent.model.phrasing import characteristic_words, compared_words, scope_words
from intent.model.task import Task
from intent.model.work import Connection, Heading, Instruction, Work
from intent.names import INTENT
from intent.vocabulary.named_term import UnknownTerm

_TOLD_OF_A_SOURCE = {str(DCTERMS.date), str(INTENT.file)}
"""Fields of a source that are compared as what they mean, and not as they are written."""


def things_of(work: Work) -> tuple[Thing, ...]:
    """The work itself, its instructions, and all that they speak of."""
    return (
        _work(work),
        *(_instruction(work, line) for line in work.instructions),
        *(_duty(work, duty) for duty in work.duties),
        *(_heading(heading) for heading in work.headings),
        *_parts(work),
        *_devices(work),
        *_people(work),
        *_sources(work),
        *_belongings(work),
        *(_task(task) for task in work.tasks),
        *unnamed_things(work),
        *_sections(work),
    )


def _work(work: Work) -> Thing:
    told = facets(title=work.title, note=work.note)
    told |= of_fields(work.fields, work.vocabulary) | of_statements(work.statements, work.vocabulary)
    return Thing(sort=ThingKind.WORK, name="", facets=told)


def _instruction(work: Work, line: Instruction) -> Thing:
    """An instruction; who gave it, when and where is said by its heading, and told there."""
    vocabulary, said = work.vocabulary, line.assertion
    modality = modality_term(line.modality, vocabulary)
    topic = (said.aggregate, said.characteristic, said.relation, said.other)
    told = facets(modality=modality)
    told[say("characteristic")] = Facet(topic, characteristic_words(said, vocabulary))
    told[say("scope")] = Facet(said.scope, scope_words(said.scope, vocabulary))
    told[say("value")] = Facet(meant(said.expression), compared_words(said.expression, vocabulary))
    if line.conditions:
        conditions = (named(ConditionSentence(condition, vocabulary)) for condition in line.conditions)
        told[say("conditions")] = Facet(tuple(map(_meant, line.conditions)), joined(conditions, ", "))
    told |= facets(until=line.until, consent_of=line.consents, choice=line.choice)
    return Thing(
        sort=ThingKind.INSTRUCTION,
        name=line.identifier,
        facets=told,
        told=say("{modality}: {sentence}", modality=modality, sentence=InstructionSentence(line, vocabulary)),
    )


def _duty(work: Work, duty: Duty) -> Thing:
    """Something to be done; what counts is what the line says, not how it is written."""
    people = tuple(person.identifier for person in work.people)
    line = named(DutySentence(duty, people, vocabulary=work.vocabulary))
    conditions = tuple(map(_meant, duty.conditions))
    said = duty.what, duty.person, duty.role, duty.timing, conditions, duty.until
    told = {**facets(words=duty.words), say("duty"): Facet(said, line)}
    return Thing(sort=ThingKind.DUTY, name=duty.identifier, facets=told, told=line)


def _task(task: Task) -> Thing:
    told = facets(what=task.what, parts=task.parts, after=task.after, people=task.people, time=task.time)
    told |= facets(by=task.by, note=task.note, internal=task.internal)
    return Thing(sort=ThingKind.TASK, name=task.identifier, facets=told, told=task.what)


def _meant(condition: Condition) -> Condition:
    said = condition.assertion
    return (
        replace(condition, assertion=replace(said, expression=meant(said.expression))) if said else condition
    )


def _cited(sources: tuple[Citation, ...]) -> tuple[Words, ...]:
    return tuple(
        say("{source} at {time}", source=one.source, time=one.at) if one.at else one.source for one in sources
    )


def _heading(heading: Heading) -> Thing:
    told = facets(title=heading.title, words=heading.words, reason=heading.reason, note=heading.note)
    told |= facets(by=heading.by, on=heading.on, ground=heading.ground)
    told |= facets(lifted_by=say("nobody") if heading.lifted_by == () else heading.lifted_by)
    told |= facets(withdrawn=heading.withdrawn, supersedes=heading.supersedes, source=_cited(heading.sources))
    return Thing(sort=ThingKind.HEADING, name=heading.identifier, facets=told, told=heading.title)


def _parts(work: Work) -> Iterator[Thing]:
    for part in work.parts:
        told = facets(kind=part.kind, name=part.name, group=part.group, device=part.device)
        told |= facets(note=part.note, internal=part.internal)
        told |= of_statements(part.statements, work.vocabulary)
        yield Thing(sort=ThingKind.PART, name=part.identifier, facets=told, told=part.name)
    for group in work.groups:
        told = facets(kind=group.kind, note=group.note, afterword=group.afterword)
        yield Thing(sort=ThingKind.GROUP, name=group.name, facets=told)


def _devices(work: Work) -> Iterator[Thing]:
    """The devices that have an entry; one that a part's row alone names is told of the part."""
    for device in work.devices:
        if device.listed:
            told = facets(like=device.like, status=device.status)
            told |= facets(internal=device.internal)
            told |= of_fields(device.fields, work.vocabulary)
            told |= of_statements(device.statements, work.vocabulary)
            yield Thing(sort=ThingKind.DEVICE, name=device.identifier, facets=told)


def _people(work: Work) -> Iterator[Thing]:
    for person in work.people:
        told = facets(name=person.name, role=person.role, authority=person.authority)
        told |= facets(actor=person.actor)
        told |= facets(since=person.since, until=person.until, successor=person.successor)
        told |= facets(contact=person.contact, contact_leaves=person.contact_leaves)
        told |= facets(note=person.note, internal=person.internal)
        yield Thing(sort=ThingKind.PERSON, name=person.identifier, facets=told, told=person.name)


def _sources(work: Work) -> Iterator[Thing]:
    for source in work.sources:
        written = {iri: value for iri, value in source.fields.items() if iri not in _TOLD_OF_A_SOURCE}
        told = of_fields(written, work.vocabulary)
        told |= facets(title=source.title, kind=source.kind)
        told |= facets(
            spoken_with=source.spoken_with,
            by=source.by,
            date=source.date,
            file=source.file,
            reported_by=source.reported_by,
        )
        told |= facets(words=source.words, note=source.note, internal=source.internal)
        yield Thing(sort=ThingKind.SOURCE, name=source.identifier, facets=told, told=source.title)


def _belongings(work: Work) -> Iterator[Thing]:
    vocabulary = work.vocabulary
    for one in work.material:
        told = facets(name=one.name, file=one.file, note=one.note, internal=one.internal)
        yield Thing(
            sort=ThingKind.MATERIAL,
            name=one.identifier,
            facets=told | of_statements(one.statements, vocabulary),
            told=one.name,
        )
    yield from _connections(work)
    for box in work.boxes:
        told = facets(holds=box.holds, internal=box.internal) | of_fields(box.fields, vocabulary)
        yield Thing(
            sort=ThingKind.BOX, name=box.identifier, facets=told | of_statements(box.statements, vocabulary)
        )


def _connections(work: Work) -> Iterator[Thing]:
    """Connections have no names: they are told apart by their ends, and in their order where those are alike."""
    seen: Counter[Message] = Counter()
    for one in work.connections:
        ends = _ends(one)
        seen[ends] += 1
        name = ends if seen[ends] == 1 else say("{connection} ({number})", connection=ends, number=seen[ends])
        told = facets(note=one.note, internal=one.internal) | of_statements(one.statements, work.vocabulary)
        yield Thing(sort=ThingKind.CONNECTION, name=name, facets=told)


def _ends(one: Connection) -> Message:
    return say("{one} to {other}", one=one.start, other=one.end)


def _sections(work: Work) -> Iterator[Thing]:
    """What is said of a section as a whole: prose, an origin, whether it stays in the house."""
    sections = {form.iri: form for form in work.vocabulary.sections.values()}
    for section in work.sections:
        told = facets(note=section.note, afterword=section.afterword, internal=section.internal)
        told |= of_fields(section.fields, work.vocabulary)
        if told:
            name = named(sections.get(section.term) or UnknownTerm(section.term))
            yield Thing(sort=ThingKind.SECTION, name=name, facets=told)
