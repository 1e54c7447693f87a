"""A work as PREMIS 3: its components and devices as objects, people as agents, permissions as rights.

Source: PREMIS Editorial Committee, PREMIS Data Dictionary for Preservation Metadata, version 3.0 (2015), and its XML
schema. Instructions are significant properties; a right is what somebody allows who can grant one.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from intent.analysis.exceptions import exceptions_in
from intent.exports.catalogue import (
    Catalogue,
    Component,
    Fact,
    catalogue_of,
    facts_of,
    in_force,
    line_text,
)
from intent.exports.premis_events import creation, logged
from intent.exports.premis_files import files_of
from intent.exports.premis_rights import is_right, rights
from intent.exports.premis_things import IRI, agent, identifier, properties, relationship
from intent.exports.xml_text import XSI, Content, XmlElement, branch, leaf, present, xml_bytes
from intent.model.work import Device, Instruction, Work
from intent.variance.scopes import Scopes, scopes_of
from intent.variance.state import State
from intent.variance.two_states import Entries, documented_state, entries_of
from intent.vocabulary.named_term import local_name

NAMESPACE = "http://www.loc.gov/premis/v3"
SCHEMA = "https://www.loc.gov/standards/premis/premis.xsd"
_WORKS = (("knownToWork", "known to work"), ("knownNotToWork", "known not to work"))
"""What a status is marked with in the vocabulary, and how PREMIS says it."""
_PREFIXES = {"premis": NAMESPACE, "xsi": XSI}


def export_premis(work: Work) -> bytes:
    """The document. The work is one that may leave the house. Raises nothing."""
    catalogue, scopes, state = catalogue_of(work), scopes_of(work), documented_state(work)
    content: list[Content] = [_work_object(catalogue)]
    entries = entries_of(work)
    content.extend(
        _component_object(catalogue, component, state, entries) for component in catalogue.components
    )
    content.extend(_device_object(work, device, entries) for device in work.devices)
    content.append(files_of(work))
    content.append(creation(catalogue))
    content.append(logged(work))
    content.append(agent(person) for person in work.people)
    content.append(_rights(work, scopes))
    attributes = {"version": "3.0", f"{{{XSI}}}schemaLocation": f"{NAMESPACE} {SCHEMA}"}
    return xml_bytes(present(branch("premis", content, **attributes)), _PREFIXES)


def _intellectual_entity(content: Content) -> XmlElement | None:
    """An object of that category, as things that are no files are."""
    return branch("object", content, **{f"{{{XSI}}}type": "premis:intellectualEntity"})


def _work_object(catalogue: Catalogue) -> XmlElement | None:
    """The work, with the instructions that speak of no component: of the whole, the venue, what is added."""
    work = catalogue.work
    told = {line.identifier for component in catalogue.components for line in component.lines}
    lines = [line for line in work.instructions if line.identifier not in told]
    parts = [component.part.iri for component in catalogue.components]
    return _intellectual_entity(
        (
            identifier("object", work.iri, IRI),
            identifier("object", catalogue.number, "accession number"),
            _significant(work, catalogue.facts, lines),
            leaf("originalName", work.title),
            relationship("structural", "has part", parts),
        )
    )


def _component_object(
    catalogue: Catalogue, component: Component, state: State, entries: Entries
) -> XmlElement | None:
    work, part, device = catalogue.work, component.part, component.device
    shown = state.material_of(part.identifier)
    material = [one.iri for one in work.material if one.identifier in shown]
    return _intellectual_entity(
        (
            identifier("object", part.iri, IRI),
            identifier("object", part.identifier, "part"),
            _significant(work, component.facts, component.lines),
            leaf("originalName", component.title),
            relationship("structural", "is part of", [work.iri]),
            _equipped(device, entries),
            relationship("dependency", "requires", material),
        )
    )


def _equipped(device: Device | None, entries: Entries) -> XmlElement | None:
    """The device that a component requires, with what its log and its status tell of whether it works.

    Source: data dictionary, 1.13 relationship, relatedEnvironmentCharacteristic; `known not to work` is our own value.
    """
    if device is None:
        return None
    status = entries.devices[device.identifier].status
    marks = status.marks if status else frozenset()
    known = next((words for mark, words in _WORKS if mark in marks), "unspecified")
    return relationship("dependency", "requires", [device.iri], known)


def _significant(work: Work, facts: Iterable[Fact], lines: Iterable[Instruction]) -> Iterator[XmlElement]:
    """What is documented, and what is instructed about it and in force; what grants a right stands there."""
    yield from properties((fact.characteristic.label, fact.text) for fact in facts)
    standing = {line.identifier for line in in_force(work) if not is_right(work, line)}
    binding = [line for line in lines if line.identifier in standing]
    yield from properties((_named(line), line_text(work, line)) for line in binding)


def _named(line: Instruction) -> str:
    """An instruction by its identifier, with its ground where that is not intent."""
    ground = f", ground: {line.ground}" if line.ground != "intent" else ""
    return f"instruction {line.identifier}{ground}"


def _device_object(work: Work, device: Device, entries: Entries) -> XmlElement | None:
    """A device as an environment: PREMIS 3.0, section on environments, has hardware as objects of their own."""
    facts = facts_of(entries.of(device.identifier), work.vocabulary)
    known = {local_name(fact.characteristic.iri): fact.text for fact in facts}
    name = " ".join(filter(None, [known.get("maker", ""), known.get("model", "")])) or device.identifier
    status = entries.devices[device.identifier].status
    notes = [f"status: {status.label}"] if status else []
    notes += [f"{key}: {known[key]}" for key in ("operating-system", "software") if key in known]
    return _intellectual_entity(
        (
            identifier("object", device.iri, IRI),
            identifier("object", device.identifier, "device"),
            properties((fact.characteristic.label, fact.text) for fact in facts),
            branch(
                "environmentFunction",
                leaf("environmentFunctionType", "hardware"),
                leaf("environmentFunctionLevel", "1"),
            ),
            branch(
                "environmentDesignation",
                leaf("environmentName", name),
                leaf("environmentVersion", known.get("firmware", "")),
                leaf("environmentOrigin", known.get("maker", "")),
                (leaf("environmentDesignationNote", text) for text in notes),
            ),
        )
    )


def _rights(work: Work, scopes: Scopes) -> XmlElement | None:
    exceptions = exceptions_in(work)
    granted = [rights(work, line, scopes, exceptions) for line in in_force(work) if is_right(work, line)]
    return branch("rights", granted)
