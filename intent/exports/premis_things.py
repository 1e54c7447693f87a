"""Pieces of a PREMIS document: identifiers, properties, relationships, agents, rights.

Source: PREMIS Editorial Committee, PREMIS Data Dictionary for Preservation Metadata, version 3.0 (2015): units 1.1
objectIdentifier, 1.4 significantProperties, 1.13 relationship, 3 agent, 4.1 rightsStatement.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from intent.exports.catalogue import citations, line_text, person_text, speaker
from intent.exports.xml_text import Content, XmlElement, branch, leaf, present
from intent.model.instruction_text import condition_text
from intent.model.work import Instruction, Person, Work
from intent.names import THE_VENUE, THE_WORK
from intent.values.dates import LAST_DAY
from intent.variance.scopes import Scopes

IRI = "URI"
_OPEN = "OPEN"


def identifier(thing: str, value: str, kind: str) -> XmlElement | None:
    """The identifier of an object, event or agent; nothing where there is no value."""
    if not value:
        return None
    name = f"{thing}Identifier"
    return branch(name, leaf(f"{name}Type", kind), leaf(f"{name}Value", value))


def properties(found: Iterable[tuple[str, str]]) -> Iterator[XmlElement]:
    """Significant properties, as a name and a text each."""
    for name, text in found:
        yield present(
            branch(
                "significantProperties",
                leaf("significantPropertiesType", name),
                leaf("significantPropertiesValue", text),
            )
        )


def relationship(kind: str, subtype: str, iris: Iterable[str], environment: str = "") -> XmlElement | None:
    """A relationship to other objects; ``environment`` says how sure it is that an environment does."""
    related = [
        branch(
            "relatedObjectIdentifier",
            leaf("relatedObjectIdentifierType", IRI),
            leaf("relatedObjectIdentifierValue", iri),
        )
        for iri in iris
    ]
    content = (
        leaf("relationshipType", kind),
        leaf("relationshipSubType", subtype),
        related,
        leaf("relatedEnvironmentPurpose", "render" if environment else ""),
        leaf("relatedEnvironmentCharacteristic", environment),
    )
    return branch("relationship", content) if related else None


def agent(person: Person) -> XmlElement:
    """A person or body; the record does not tell which, so that no type is stated."""
    content = (
        identifier("agent", person.iri, IRI),
        identifier("agent", person.identifier, "person"),
        leaf("agentName", person.name),
        leaf("agentNote", person.role.label),
    )
    return present(branch("agent", content))


def linking_agent(iri: str, role: str) -> XmlElement:
    content = (
        leaf("linkingAgentIdentifierType", IRI),
        leaf("linkingAgentIdentifierValue", iri),
        leaf("linkingAgentRole", role),
    )
    return present(branch("linkingAgentIdentifier", content))


def linking_object(iri: str) -> XmlElement:
    content = (leaf("linkingObjectIdentifierType", IRI), leaf("linkingObjectIdentifierValue", iri))
    return present(branch("linkingObjectIdentifier", content))


def rights(work: Work, line: Instruction, scopes: Scopes) -> XmlElement:
    """A permission: what may be modified, under which restrictions, from when to when, and who granted it."""
    person = work.person(line.by)
    content = (
        branch(
            "rightsStatementIdentifier",
            leaf("rightsStatementIdentifierType", IRI),
            leaf("rightsStatementIdentifierValue", line.iri),
        ),
        leaf("rightsBasis", "other"),
        branch("otherRightsInformation", *_basis(work, line)),
        branch(
            "rightsGranted",
            leaf("act", "modify"),
            _restrictions(work, line),
            _term(line),
            leaf("rightsGrantedNote", line_text(work, line)),
        ),
        (linking_object(iri) for iri in _meant(work, line, scopes)),
        linking_agent(person.iri, person.role.label) if person else None,
    )
    return present(branch("rightsStatement", content))


def _basis(work: Work, line: Instruction) -> Iterator[Content]:
    for text in citations(work, line):
        yield branch(
            "otherRightsDocumentationIdentifier",
            leaf("otherRightsDocumentationIdentifierType", "source"),
            leaf("otherRightsDocumentationIdentifierValue", text),
        )
    yield leaf("otherRightsBasis", f"instruction on the ground of {line.ground}")
    yield leaf("otherRightsNote", speaker(work, line))


def _restrictions(work: Work, line: Instruction) -> Iterator[Content]:
    texts = [condition_text(condition, work.vocabulary) for condition in line.conditions]
    texts += [f"with consent of {person_text(work, name)}" for name in line.consents]
    yield from (leaf("restriction", text) for text in texts)


def _term(line: Instruction) -> XmlElement | None:
    """From the first day of the instruction's date; data dictionary, 4.1.6.3: an end that is not known is OPEN."""
    if line.on is None:
        return None
    is_open = line.until is None or line.until.last == LAST_DAY
    end = _OPEN if is_open or line.until is None else line.until.last.isoformat()
    return branch("termOfGrant", leaf("startDate", line.on.first.isoformat()), leaf("endDate", end))


def _meant(work: Work, line: Instruction, scopes: Scopes) -> Iterator[str]:
    """The objects that the permission is about; the work where it is about the whole, or about what is added."""
    iris = {part.identifier: part.iri for part in work.parts}
    iris.update({one.identifier: one.iri for one in work.material})
    members = [name for name in scopes.of_work(line.assertion) if name not in {THE_WORK, THE_VENUE}]
    found = [iris[name] for name in members if name in iris]
    yield from found or [work.iri]
