"""Pieces of a PREMIS document: identifiers, properties, relationships, agents.

Source: PREMIS Editorial Committee, PREMIS Data Dictionary for Preservation Metadata, version 3.0 (2015): units 1.1
objectIdentifier, 1.4 significantProperties, 1.13 relationship, 3 agent.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from intent.exports.xml_text import XmlElement, branch, leaf, present
from intent.model.work import Person
from intent.names import A_PERSON

IRI = "URI"


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
    """Somebody; whether a person or a body only where the record tells it (data dictionary, 3.3 agentType)."""
    kind = ""
    if person.actor is not None:
        kind = "person" if person.actor.iri == A_PERSON else "organization"
    content = (
        identifier("agent", person.iri, IRI),
        identifier("agent", person.identifier, "person"),
        leaf("agentName", person.name),
        leaf("agentType", kind),
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
