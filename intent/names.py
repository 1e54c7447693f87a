"""The namespaces of the record, its statements, and how IRIs are made from what a text says."""

from __future__ import annotations

import re
import uuid
from urllib.parse import quote

from rdflib import DC, DCTERMS, PROV, RDF, RDFS, SKOS, XSD, Namespace, URIRef
from rdflib.term import Node

Triple = tuple[Node, Node, Node]
"""One statement of a graph: its subject, property and value."""


class Interned(Namespace):
    """A namespace that makes each of its terms once."""

    def __getattr__(self, name: str) -> URIRef:
        term = super().__getattr__(name)
        if not name.startswith("__"):
            self.__dict__[name] = term
        return term


INTENT = Interned("https://w3id.org/intent-record/ns#")
TERM = Interned("https://w3id.org/intent-record/term/")
_TERMS = str(TERM)


def term_iri(name: str) -> str:
    """The IRI of a term of the vocabulary, by its local name."""
    return _TERMS + name


CRM = Namespace("http://www.cidoc-crm.org/cidoc-crm/")
OA = Interned("http://www.w3.org/ns/oa#")
QUDT = Interned("http://qudt.org/schema/qudt/")
UNIT = Namespace("http://qudt.org/vocab/unit/")
EDTF = URIRef("http://id.loc.gov/datatypes/edtf/EDTF")
MEDIA_FRAGMENTS = URIRef("http://www.w3.org/TR/media-frags/")

PREFIXES = {
    "crm": str(CRM),
    "dc": str(DC),
    "dcterms": str(DCTERMS),
    "edtf": "http://id.loc.gov/datatypes/edtf/",
    "intent": str(INTENT),
    "oa": str(OA),
    "odrl": "http://www.w3.org/ns/odrl/2/",
    "prov": str(PROV),
    "qudt": str(QUDT),
    "rdf": str(RDF),
    "rdfs": str(RDFS),
    "sh": "http://www.w3.org/ns/shacl#",
    "skos": str(SKOS),
    "term": str(TERM),
    "unit": str(UNIT),
    "xsd": str(XSD),
}

THE_WORK = "the work"
THE_VENUE = "the venue"
"""The subjects that are no part, as sentences name them."""

YES = str(TERM.yes)
NO = str(TERM.no)
BORROWER = str(TERM.borrower)
ARTIST = str(TERM.artist)
A_PERSON = str(TERM.person)
PRESENCE = str(TERM.presence)
PRESENT = str(TERM.present)
ABSENT = str(TERM.absent)
POSITION = str(TERM.position)
HEIGHT = str(TERM.height)
CHANNEL = str(TERM.channel)
DURATION = str(TERM.duration)
START_OFFSET = str(TERM["start-offset"])
LOOP_LENGTH = str(TERM["loop-length"])
FAILED = str(TERM.failed)
POWER_STATE = str(TERM["power-state"])
SWITCHED_OFF = str(TERM["switched-off"])
SPARE = str(TERM.spare)
AGREED = str(TERM.agreed)
CARRIED_OUT = str(TERM["carried-out"])
"""The few terms that the rules themselves speak of."""

_RECORD = uuid.uuid5(uuid.NAMESPACE_URL, str(INTENT))
_SAFE = re.compile(r"[A-Za-z0-9._-]*$")
_UNSAFE = re.compile(r"[\x00-\x20<>\"{}|^`\\]")


def work_iri(base: str | None, owner: str, number: str, title: str) -> str:
    """A work's IRI: its base; or else made from owner and number, and from the title where both lack."""
    if base:
        return base.rstrip("#")
    return uuid.uuid5(_RECORD, "\n".join(["work", owner, number] if owner or number else ["work", title])).urn


def installation_iri(base: str | None, work: str, title: str, dates: str) -> str:
    """An installation's IRI: its base; or else made from the work's, the title and the dates."""
    if base:
        return base.rstrip("#")
    return uuid.uuid5(_RECORD, "\n".join(["installation", work, title, dates])).urn


def pool_iri(work: str, title: str) -> str:
    """The IRI of a pool of devices, made from the work's and the pool's title."""
    return uuid.uuid5(_RECORD, "\n".join(["pool", work, title])).urn


def local_iri(base: str, *steps: str) -> URIRef:
    """The IRI of something within a work or an installation."""
    local = ".".join(steps)
    if not _SAFE.match(local):
        local = ".".join(quote(re.sub(r"\s+", "-", step.strip()), safe="-_.~") for step in steps)
    joint = "" if base.endswith(("/", "#")) else "." if "#" in base else "#"
    return URIRef(base + joint + local)


def is_iri(text: str) -> bool:
    """Whether a text is an absolute IRI that RDF can hold."""
    return bool(re.match(r"[A-Za-z][A-Za-z0-9+.-]*:\S", text)) and not _UNSAFE.search(text)
