"""Events of PREMIS: how the work came to be, and what a log tells of its devices and parts.

Source: PREMIS Data Dictionary for Preservation Metadata, version 3.0 (2015): section 2, events; its dates are in the
Extended Date/Time Format.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from intent.exports.catalogue import Catalogue, facts_of
from intent.exports.premis_things import IRI, identifier, linking_agent, linking_object
from intent.exports.xml_text import XmlElement, branch, leaf, present
from intent.model.log_entry import LogEntry
from intent.model.work import Work
from intent.names import local_iri

_NO_DATE = "unknown"
"""An event has a date or says that nobody knows it: the schema demands the element."""


def creation(catalogue: Catalogue) -> XmlElement | None:
    """How the work came to be, where the record has its date."""
    work = catalogue.work
    if catalogue.made is None:
        return None
    makers = [maker.person for maker in catalogue.makers if maker.person]
    content = (
        identifier("event", str(local_iri(work.iri, "creation")), IRI),
        leaf("eventType", "creation"),
        leaf("eventDateTime", str(catalogue.made)),
        (linking_agent(person.iri, person.role.label) for person in makers),
        linking_object(work.iri),
    )
    return branch("event", content)


def logged(work: Work) -> Iterator[XmlElement]:
    """What happened to devices and parts; of boxes, which are no objects of preservation, nothing."""
    iris = {device.identifier: device.iri for device in work.devices}
    iris.update({part.identifier: part.iri for part in work.parts})
    yield from (_happened(work, entry, iris) for entry in work.log if entry.about in iris)


def _happened(work: Work, entry: LogEntry, iris: Mapping[str, str]) -> XmlElement:
    person = work.person(entry.by)
    values = [f"{fact.characteristic.label}: {fact.text}" for fact in facts_of(entry.value, work.vocabulary)]
    content = (
        identifier("event", entry.iri, IRI),
        leaf("eventType", entry.event.label, valueURI=entry.event.iri),
        leaf("eventDateTime", str(entry.date) if entry.date else _NO_DATE),
        branch("eventDetailInformation", leaf("eventDetail", entry.note)),
        (branch("eventOutcomeInformation", leaf("eventOutcome", text)) for text in values),
        linking_agent(person.iri, person.role.label) if person else None,
        linking_object(iris[entry.about]),
    )
    return present(branch("event", content))
