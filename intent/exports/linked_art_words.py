"""Instructions, their headings and sources as texts of Linked Art.

Source: Linked Art 1.0 (linked.art/api/1.0/endpoint/textual_work): `about`, `created_by`, `part_of`, `content`.
"""

from __future__ import annotations

from intent.exports.catalogue import citations, line_text, standing
from intent.exports.linked_art_things import (
    DESCRIPTION,
    Json,
    Object,
    activity,
    concept_type,
    document,
    identifier,
    name,
    own_statement,
    reference,
    statement,
    typed,
)
from intent.exports.published_matches import Published
from intent.model.work import Heading, Instruction, Person, Source, Work
from intent.names import INTENT
from intent.variance.scopes import Scopes


def instruction_document(work: Work, line: Instruction, scopes: Scopes) -> Object:
    """A line: what it says, what it is about, who said it when, and on which sources it rests."""
    person, heading = work.person(line.by), work.heading(line.heading)
    sources: list[Json] = [
        reference(source.iri, "LinguisticObject", source.title)
        for one in line.sources
        if (source := work.source(one.source)) is not None
    ]
    return document(
        line.iri,
        "LinguisticObject",
        f"{line.identifier} {line_text(work, line)}",
        identified_by=identifier(line.identifier),
        classified_as=typed(str(INTENT[line.modality.value]), line.modality.value),
        referred_to_by=[
            *(one for text in citations(work, line) for one in own_statement(text, "cites")),
            *(one for key, text in standing(line) for one in own_statement(text, key)),
        ],
        content=line_text(work, line),
        about=_about(work, line, scopes),
        created_by=activity("Creation", [person] if person else [], line.on, sources),
        part_of=[reference(heading.iri, "LinguisticObject", heading.title)] if heading else [],
    )


def _about(work: Work, line: Instruction, scopes: Scopes) -> list[Json]:
    """The components and material that are meant; the work where it is the whole, the venue, or what is added."""
    meant = {*scopes.of_work(line.assertion), line.assertion.other}
    found: list[Json] = [
        reference(part.iri, "HumanMadeObject", part.name or part.identifier)
        for part in work.parts
        if part.identifier in meant
    ]
    found += [
        reference(one.iri, "DigitalObject" if one.file else "PropositionalObject", one.name or one.identifier)
        for one in work.material
        if one.identifier in meant
    ]
    return found or [reference(work.iri, "HumanMadeObject", work.title)]


def heading_document(work: Work, heading: Heading) -> Object:
    """What lines share: the words quoted, and why."""
    person = work.person(heading.by)
    return document(
        heading.iri,
        "LinguisticObject",
        f"{heading.identifier} {heading.title}".strip(),
        identified_by=[*name(heading.title), *identifier(heading.identifier)],
        referred_to_by=[
            *own_statement(heading.reason, "reason"),
            *statement(heading.note, DESCRIPTION, "Description"),
        ],
        content=heading.words,
        about=[reference(work.iri, "HumanMadeObject", work.title)],
        created_by=activity("Creation", [person] if person else [], heading.on),
    )


def source_document(work: Work, source: Source, published: Published) -> Object:
    """A source: its kind, who made it, with whom and when, and the words given of it."""
    return document(
        source.iri,
        "LinguisticObject",
        source.title or source.identifier,
        identified_by=[*name(source.title), *identifier(source.identifier)],
        classified_as=concept_type(source.kind, published),
        referred_to_by=[
            *(
                one
                for person in _people(work, source.spoken_with)
                for one in own_statement(_named(person), "with")
            ),
            *own_statement(_named(work.person(source.reported_by)), "reportedBy"),
            *own_statement(source.file or "", "file"),
            *own_statement(source.fields.get(str(INTENT.sha256), ""), "sha256"),
            *statement(source.note, DESCRIPTION, "Description"),
        ],
        content=source.words,
        about=[reference(work.iri, "HumanMadeObject", work.title)],
        created_by=activity("Creation", _people(work, source.by), source.date),
    )


def _people(work: Work, identifiers: tuple[str, ...]) -> list[Person]:
    return [person for one in identifiers if (person := work.person(one)) is not None]


def _named(person: Person | None) -> str:
    return (person.name or person.identifier) if person else ""
