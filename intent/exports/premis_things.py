"""Pieces of a PREMIS document: identifiers, properties, relationships, agents, rights.

Source: PREMIS Editorial Committee, PREMIS Data Dictionary for Preservation Metadata, version 3.0 (2015): units 1.1
objectIdentifier, 1.4 significantProperties, 1.13 relationship, 3 agent, 4.1 rightsStatement.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from intent.exports.catalogue import citations, line_words, person_words, speaker
from intent.exports.xml_text import Content, Element, holding, saying
from intent.model.phrasing import condition_words
from intent.model.work import Instruction, Person, Work
from intent.names import THE_VENUE, THE_WORK
from intent.values.dates import LAST_DAY
from intent.variance.scopes import Scopes

IRI = "URI"
_OPEN = "OPEN"


def identifier(thing: str, value: str, kind: str) -> Element | None:
    """The identifier of an object, event or agent; nothing where there is no value."""
    if not value:
        return None
    name = f"{thing}Identifier"
    return holding(name, saying(f"{name}Type", kind), saying(f"{name}Value", value))


def properties(found: Iterable[tuple[str, str]]) -> Iterator[Element]:
    """Significant properties, as a name and a text each."""
    for name, text in found:
        made = holding(
            "significantProperties",
            saying("significantPropertiesType", name),
            saying("significantPropertiesValue", text),
        )
        if made is not None:
            yield made


def relationship(kind: str, subtype: str, iris: Iterable[str], environment: str = "") -> Element | None:
    """A relationship to other objects; ``environment`` says how sure it is that an environment does."""
    related = [
        holding(
            "relatedObjectIdentifier",
            saying("relatedObjectIdentifierType", IRI),
            saying("relatedObjectIdentifierValue", iri),
        )
        for iri in iris
    ]
    if not related:
        return None
    return holding(
        "relationship",
        saying("relationshipType", kind),
        saying("relationshipSubType", subtype),
        [one for one in related if one is not None],
        saying("relatedEnvironmentPurpose", "render" if environment else ""),
        saying("relatedEnvironmentCharacteristic", environment),
    )


def agent(person: Person) -> Element:
    """A person or body; the record does not tell which, so that no type is stated."""
    content: tuple[Content, ...] = (
        identifier("agent", person.iri, IRI),
        identifier("agent", person.identifier, "person"),
        saying("agentName", person.name),
        saying("agentNote", person.role.label),
    )
    made = holding("agent", *content)
    assert made is not None
    return made


def linking_agent(iri: str, role: str) -> Element:
    made = holding(
        "linkingAgentIdentifier",
        saying("linkingAgentIdentifierType", IRI),
        saying("linkingAgentIdentifierValue", iri),
        saying("linkingAgentRole", role),
    )
    assert made is not None
    return made


def rights(work: Work, line: Instruction, scopes: Scopes) -> Element:
    """A permission: what may be modified, under which restrictions, from when to when, and who granted it."""
    person = work.person(line.by)
    made = holding(
        "rightsStatement",
        holding(
            "rightsStatementIdentifier",
            saying("rightsStatementIdentifierType", IRI),
            saying("rightsStatementIdentifierValue", line.iri),
        ),
        saying("rightsBasis", "other"),
        holding("otherRightsInformation", *_basis(work, line)),
        holding(
            "rightsGranted",
            saying("act", "modify"),
            list(_restrictions(work, line)),
            _term(line),
            saying("rightsGrantedNote", line_words(work, line)),
        ),
        [_linked(iri) for iri in _meant(work, line, scopes)],
        linking_agent(person.iri, person.role.label) if person else None,
    )
    assert made is not None
    return made


def _basis(work: Work, line: Instruction) -> Iterator[Content]:
    for text in citations(work, line):
        yield holding(
            "otherRightsDocumentationIdentifier",
            saying("otherRightsDocumentationIdentifierType", "source"),
            saying("otherRightsDocumentationIdentifierValue", text),
        )
    yield saying("otherRightsBasis", f"instruction on the ground of {line.ground}")
    yield saying("otherRightsNote", speaker(work, line))


def _restrictions(work: Work, line: Instruction) -> Iterator[Element]:
    words = [condition_words(condition, work.vocabulary) for condition in line.conditions]
    people = ((name, work.person(name)) for name in line.consents)
    words += [f"with consent of {person_words(person) if person else name}" for name, person in people]
    yield from (one for text in words if (one := saying("restriction", text)) is not None)


def _term(line: Instruction) -> Element | None:
    """From the first day of the instruction's date; data dictionary, 4.1.6.3: an end that is not known is OPEN."""
    if line.on is None:
        return None
    is_open = line.until is None or line.until.last == LAST_DAY
    end = _OPEN if is_open or line.until is None else line.until.last.isoformat()
    return holding("termOfGrant", saying("startDate", line.on.first.isoformat()), saying("endDate", end))


def _meant(work: Work, line: Instruction, scopes: Scopes) -> Iterator[str]:
    """The objects that the permission is about; the work where it is about the whole, or about what is added."""
    iris = {part.identifier: part.iri for part in work.parts}
    iris.update({one.identifier: one.iri for one in work.material})
    members = [name for name in scopes.of_work(line.assertion) if name not in {THE_WORK, THE_VENUE}]
    found = [iris[name] for name in members if name in iris]
    yield from found or [work.iri]


def _linked(iri: str) -> Element:
    made = holding(
        "linkingObjectIdentifier",
        saying("linkingObjectIdentifierType", IRI),
        saying("linkingObjectIdentifierValue", iri),
    )
    assert made is not None
    return made
