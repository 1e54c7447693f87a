"""A work as Linked Art 1.0: the work, its components, people, instructions and sources, each a document of its own.

Source: Linked Art 1.0 (linked.art/api/1.0), endpoints object, person, group, text, digital and abstract. A component
points to its work with `part_of`; an instruction is a text `about` what it speaks of. Each document names the context
as published, which the schemas demand; it can be read as plain JSON without it, and nothing here fetches it.
"""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from urllib.parse import quote

from rdflib import DC, DCTERMS

from intent.exports.catalogue import (
    TECHNOLOGY,
    Catalogue,
    Component,
    catalogue_of,
    facts_of,
)
from intent.exports.linked_art_things import (
    ACCESSION_NUMBER,
    ARTWORK,
    CREDIT_LINE,
    DESCRIPTION,
    MATERIALS,
    Json,
    Object,
    activity,
    concept_type,
    dimensions,
    document,
    fact_statements,
    identifier,
    kind_of_person,
    name,
    named,
    not_told,
    own_statement,
    part_type,
    reference,
    statement,
    typed,
)
from intent.exports.linked_art_words import heading_document, instruction_document, source_document
from intent.exports.published_matches import Published, read_published
from intent.model.work import Material, Person, Work
from intent.names import local_iri
from intent.variance.scopes import scopes_of


def export_linked_art(work: Work) -> Mapping[str, bytes]:
    """The documents by the names of their files. The work is one that may leave the house. Raises nothing."""
    found: dict[str, bytes] = {}
    for file, content in _documents(work):
        text = json.dumps(content, ensure_ascii=False, indent=2, allow_nan=False) + "\n"
        found[_free(file, found)] = text.encode()
    return found


def _documents(work: Work) -> Iterator[tuple[str, Object]]:
    """Every document with the name of its file, in the order of the work."""
    catalogue, scopes, published = catalogue_of(work), scopes_of(work), read_published()
    yield "work", _work(catalogue, published)
    yield from (
        (f"part-{one.part.identifier}", _component(catalogue, one, published)) for one in catalogue.components
    )
    if catalogue.owner:
        yield "owner", _owner(catalogue)
    yield from ((f"person-{person.identifier}", _person(work, person, published)) for person in work.people)
    yield from ((f"instructions-{one.identifier}", heading_document(work, one)) for one in work.headings)
    for line in work.instructions:
        yield f"instruction-{line.identifier}", instruction_document(work, line, scopes)
    yield from ((f"source-{one.identifier}", source_document(work, one, published)) for one in work.sources)
    yield from ((f"material-{one.identifier}", _material(work, one, published)) for one in work.material)


def _free(name: str, taken: Mapping[str, bytes]) -> str:
    """A name of a file that every system can hold, and that differs from the others by more than case."""
    safe, known = quote(name, safe="-_."), {one.casefold() for one in taken}
    names = (f"{safe}{f'-{number}' if number else ''}.json" for number in range(len(taken) + 1))
    return next(one for one in names if one.casefold() not in known)


def _work(catalogue: Catalogue, published: Published) -> Object:
    work = catalogue.work
    people = [maker.person for maker in catalogue.makers if maker.person]
    unknown = [maker.name for maker in catalogue.makers if not maker.person]
    return document(
        work.iri,
        "HumanMadeObject",
        work.title,
        identified_by=[
            *name(work.title),
            *identifier(catalogue.number, ACCESSION_NUMBER, "Accession Number"),
        ],
        classified_as=typed(ARTWORK, "Works of Art"),
        referred_to_by=[
            *statement(work.note, DESCRIPTION, "Description"),
            *statement(work.fields.get(str(DCTERMS.medium), ""), MATERIALS, "Material Statement"),
            *statement(work.fields.get(str(DCTERMS.bibliographicCitation), ""), CREDIT_LINE, "Credit Line"),
            *statement(", ".join(unknown), str(DC.creator), "artist"),
            *fact_statements(catalogue.facts, published),
        ],
        dimension=dimensions(catalogue.facts, published),
        current_owner=[reference(_owner_iri(work), "Group", catalogue.owner)] if catalogue.owner else [],
        produced_by=activity("Production", people, catalogue.made),
    )


def _component(catalogue: Catalogue, component: Component, published: Published) -> Object:
    work, part = catalogue.work, component.part
    return document(
        part.iri,
        "HumanMadeObject",
        component.title,
        identified_by=[*name(component.title), *identifier(part.identifier)],
        classified_as=[
            *part_type(part.kind, published),
            *named(component.facts, TECHNOLOGY, "Type", work.vocabulary),
        ],
        referred_to_by=[
            *statement(part.note, DESCRIPTION, "Description"),
            *own_statement(part.group or "", "inGroup"),
            *own_statement(component.device.identifier if component.device else "", "device"),
            *fact_statements(component.facts, published),
        ],
        dimension=dimensions(component.facts, published),
        part_of=reference(work.iri, "HumanMadeObject", work.title),
    )


def _owner_iri(work: Work) -> str:
    return str(local_iri(work.iri, "work", "owner"))


def _owner(catalogue: Catalogue) -> Object:
    """Whoever owns the work; the head of a dossier does not say whether that is a person or a body."""
    return document(
        _owner_iri(catalogue.work),
        "Group",
        catalogue.owner,
        identified_by=name(catalogue.owner),
        referred_to_by=not_told(None),
    )


def _person(work: Work, person: Person, published: Published) -> Object:
    """Who may speak, with role, and from when to when; the end of speaking is not taken for a death."""
    successor = work.person(person.successor)
    after = successor.name or successor.identifier if successor else ""
    return document(
        person.iri,
        kind_of_person(person),
        person.name or person.role.label,
        identified_by=[*name(person.name), *identifier(person.identifier)],
        classified_as=concept_type(person.role, published),
        referred_to_by=[
            *statement(person.note, DESCRIPTION, "Description"),
            *own_statement(str(person.since) if person.since else "", "since"),
            *own_statement(str(person.until) if person.until else "", "until"),
            *own_statement(after, "successor"),
            *not_told(person),
        ],
    )


def _material(work: Work, material: Material, published: Published) -> Object:
    """What a channel shows: a digital object where there is a file, else what it is in the abstract."""
    facts = facts_of(material.statements, work.vocabulary)
    about: list[Json] = [reference(work.iri, "HumanMadeObject", work.title)]
    return document(
        material.iri,
        "DigitalObject" if material.file else "PropositionalObject",
        material.name or material.identifier,
        identified_by=[*name(material.name), *identifier(material.identifier)],
        referred_to_by=[
            *statement(material.note, DESCRIPTION, "Description"),
            *own_statement(material.file or "", "file"),
            *fact_statements(facts, published),
        ],
        dimension=dimensions(facts, published),
        about=None if material.file else about,
    )
