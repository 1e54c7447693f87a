"""What a museum keeps to itself, taken out of a graph before anything is written from it.

What is marked `keep: internal` goes, and with it what always stays in the house: contacts but those that are marked
to be told, insurance values, where things are kept, and comments in the text. Instructions are never internal. What
they name stays as a bare thing: a person with identifier, role, dates and successor; a source with identifier, kind and
date; a part with identifier, kind and group. The words quoted from a source that stays in the house stay there as well.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Set
from dataclasses import dataclass, field
from enum import Enum

from rdflib import DCTERMS, RDF, RDFS, Literal, URIRef
from rdflib.term import Node

from intent.dossier.comments import OPENS, without_comments
from intent.language.locale import ENGLISH
from intent.language.message import say
from intent.names import INTENT, OA, TERM, Triple
from intent.redaction.described import Described


class WithheldKind(Enum):
    """What kind of thing was left out, in the words of a package; never which."""

    PEOPLE = say("names of people")
    CONTACTS = say("contacts")
    SOURCES = say("sources")
    QUOTATIONS = say("words quoted from sources")
    PARTS = say("what is known of parts")
    DEVICES = say("devices")
    MATERIAL = say("material")
    CONNECTIONS = say("connections")
    BOXES = say("boxes")
    LOG = say("entries of the log")
    TASKS = say("tasks")
    EXPECTATIONS = say("expectations")
    VALUES = say("insurance values")
    PLACES = say("places where things are kept")
    PROSE = say("sections of prose")
    COMMENTS = say("comments in the text")
    WHOLE = say("what is known of the work as a whole")

    @property
    def text(self) -> str:
        """In English, for the metadata of a package."""
        return ENGLISH.say(self.value)


@dataclass(frozen=True, slots=True, kw_only=True)
class RedactedGraph:
    """A graph that may leave the house, and what was taken out of it."""

    triples: tuple[Triple, ...]
    withheld: frozenset[WithheldKind]
    texts: frozenset[str] = field(repr=False)
    """The texts that were taken out, so that they can be looked for in what leaves. Never to be written."""


_ALWAYS: Mapping[Node, WithheldKind] = {
    INTENT.contact: WithheldKind.CONTACTS,
    INTENT.insuranceValue: WithheldKind.VALUES,
    INTENT.store: WithheldKind.PLACES,
    DCTERMS.provenance: WithheldKind.PLACES,
}
"""The properties that never leave, whatever has them."""
_BARE = {RDF.type, DCTERMS.identifier, DCTERMS.isPartOf, INTENT.order, INTENT.keep}
_SPEAKERS = {INTENT["with"], INTENT.by}
_STAYS: Mapping[Node, frozenset[URIRef]] = {
    INTENT.Person: frozenset({INTENT.role, INTENT.authority, INTENT.since, INTENT.until, INTENT.successor}),
    INTENT.Source: frozenset({INTENT.sourceKind, DCTERMS.date}),
    INTENT.Part: frozenset({INTENT.kind, INTENT.inGroup}),
    INTENT.Group: frozenset({INTENT.kind, RDFS.label}),
    INTENT.Device: frozenset(),
    INTENT.Material: frozenset(),
    INTENT.Section: frozenset({INTENT.sectionTerm}),
}
"""What stays of a thing that is kept in the house and that something else names; of any other, nothing."""
_KINDS: Mapping[Node, WithheldKind] = {
    INTENT.Person: WithheldKind.PEOPLE,
    INTENT.Source: WithheldKind.SOURCES,
    INTENT.Part: WithheldKind.PARTS,
    INTENT.Group: WithheldKind.PARTS,
    INTENT.Device: WithheldKind.DEVICES,
    INTENT.Material: WithheldKind.MATERIAL,
    INTENT.Connection: WithheldKind.CONNECTIONS,
    INTENT.Box: WithheldKind.BOXES,
    INTENT.LogEntry: WithheldKind.LOG,
    INTENT.Task: WithheldKind.TASKS,
    INTENT.Expectation: WithheldKind.EXPECTATIONS,
    INTENT.Section: WithheldKind.PROSE,
}
_ALWAYS_NAMED = {INTENT.Person, INTENT.Source, INTENT.Part, INTENT.Group, INTENT.Section}
"""Things that count, or are cited, even where no statement names them."""
_WITHIN: Mapping[Node, Set[URIRef]] = {
    TERM["people-section"]: {INTENT.Person},
    TERM["sources-section"]: {INTENT.Source},
    TERM["parts-section"]: {INTENT.Part, INTENT.Group},
    TERM["devices-section"]: {INTENT.Device},
    TERM["material-section"]: {INTENT.Material},
    TERM["connections-section"]: {INTENT.Connection},
    TERM["boxes-section"]: {INTENT.Box},
    TERM["log-section"]: {INTENT.LogEntry},
    TERM["tasks-section"]: {INTENT.Task},
    TERM["expectations-section"]: {INTENT.Expectation},
}
"""What a section holds; one that is marked keeps all of it in the house, and instructions are never internal."""


def without_internal(graph: Iterable[Triple], beside: Iterable[Triple] = ()) -> RedactedGraph:
    """The graph that may leave. ``beside`` it is what else is sent: a work's installation, an installation's work."""
    described, other = Described(graph), Described(beside)
    marked = frozenset((*_kept(described), *_kept(other)))
    house = _House(
        described=described,
        beside=other,
        kept=frozenset((*_kept(described), *_told_of(described, marked))),
        kept_anywhere=frozenset((*marked, *_told_of(described, marked), *_told_of(other, marked))),
    )
    withheld = {
        triple: kind for triple in described.triples if (kind := house.withheld_as(triple)) is not None
    }
    left = [(triple, _uncommented(triple)) for triple in _without_orphans(described, set(withheld))]
    withheld |= {triple: WithheldKind.COMMENTS for triple, plain in left if plain != triple}
    texts = (_texts_of(triple, kind is WithheldKind.COMMENTS) for triple, kind in withheld.items())
    return RedactedGraph(
        triples=tuple(plain for _, plain in left if plain is not None),
        withheld=frozenset(withheld.values()),
        texts=frozenset(text for found in texts for text in found),
    )


def _uncommented(triple: Triple) -> Triple | None:
    """Prose without its comments, which are for those who write it; nothing where no more is left."""
    subject, predicate, value = triple
    if predicate not in _PROSE or OPENS not in str(value):
        return triple
    plain = re.sub(r"\n\s*\n", "\n\n", without_comments(str(value))).strip()
    return (subject, predicate, Literal(plain)) if plain else None


def _texts_of(triple: Triple, only_comments: bool) -> Iterator[str]:
    value = triple[2]
    if only_comments:
        yield from (text.strip() for text in re.findall(r"<!--(.*?)-->", str(value), re.DOTALL))
    elif isinstance(value, Literal) and not value.datatype:
        yield str(value)


_PROSE = {INTENT.note, INTENT.afterword}


def _kind(described: Described, node: Node) -> Node | None:
    """The class that says what stays of a thing."""
    found = described.values(node, RDF.type)
    return next((kind for kind in _KINDS if kind in found), None)


def _kept(described: Described) -> Iterator[Node]:
    """The things that are marked, and those within a section that is."""
    marked = {node for node, predicate in described.naming(TERM.internal) if predicate == INTENT.keep}
    if any(described.values(node, INTENT.section) for node in marked):
        marked |= {node for node, _ in described.naming(TERM["whole-section"])}
    terms = {term for node in marked for term in described.values(node, INTENT.sectionTerm)}
    classes = {kind for term in terms for kind in _WITHIN.get(term, ())}
    yield from marked
    yield from (node for node in described.subjects if _kind(described, node) in classes)


def _told_of(described: Described, kept: Set[Node]) -> Iterator[Node]:
    """The entries of a log about things that are kept: what happened to them stays with them."""
    yield from (
        entry
        for node in kept
        for entry, predicate in described.naming(node)
        if predicate == INTENT.happenedTo
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _House:
    """What is kept in the house, of a graph and of the one beside it."""

    described: Described
    beside: Described
    kept: frozenset[Node]
    kept_anywhere: frozenset[Node]

    def withheld_as(self, triple: Triple) -> WithheldKind | None:
        """What a triple tells of that does not leave; nothing where it leaves."""
        subject, predicate, _ = triple
        if predicate in _ALWAYS and not self._is_to_be_told(subject, predicate):
            return _ALWAYS[predicate]
        if predicate in {INTENT.states, INTENT.whole, INTENT.keep} and self._is_whole(subject):
            return WithheldKind.WHOLE
        if self._is_quotation(triple):
            return WithheldKind.QUOTATIONS
        kind = _kind(self.described, subject)
        if subject not in self.kept or kind is None or self._stays(subject, kind, predicate):
            return None
        return _KINDS[kind]

    def _is_to_be_told(self, subject: Node, predicate: Node) -> bool:
        """Whether it is the contact of somebody whom those who receive the documentation may call."""
        leaves = (str(one) for one in self.described.values(subject, INTENT.contactLeaves))
        return predicate == INTENT.contact and "true" in leaves and subject not in self.kept

    def _is_whole(self, subject: Node) -> bool:
        """Whether this is the work, or an installation's whole, and what is said of it as a whole is kept."""
        roots = (
            subject,
            *(root for root, predicate in self.described.naming(subject) if predicate == INTENT.whole),
        )
        sections = (section for root in roots for section in self.described.values(root, INTENT.section))
        whole = TERM["whole-section"]
        return any(
            one in self.kept and whole in self.described.values(one, INTENT.sectionTerm) for one in sections
        )

    def _is_quotation(self, triple: Triple) -> bool:
        subject, predicate, value = triple
        if predicate == INTENT.words:
            headings = self.described.values(subject, INTENT.inHeading) or [subject]
            return any(
                INTENT.Heading in self.described.values(one, RDF.type) and self._cites_kept(one)
                for one in headings
            )
        if predicate != OA.hasSelector or OA.TextQuoteSelector not in self.described.values(value, RDF.type):
            return False
        return any(self._cites_kept(heading) for heading, _ in self.described.naming(subject))

    def _cites_kept(self, heading: Node) -> bool:
        cited = self.described.values(heading, INTENT.cites)
        return any(
            source in self.kept_anywhere
            for one in cited
            for source in self.described.values(one, OA.hasSource)
        )

    def _stays(self, node: Node, kind: Node, predicate: Node) -> bool:
        if kind not in _STAYS or (kind not in _ALWAYS_NAMED and not self._is_named(node)):
            return False
        if kind == INTENT.Source and predicate in _SPEAKERS:
            return self._speaks_for_headings(node)
        return predicate in _BARE or predicate in _STAYS[kind]

    def _is_named(self, node: Node) -> bool:
        """Whether anything that leaves names the thing."""
        for described in (self.described, self.beside):
            for subject, predicate in described.naming(node):
                kind = _kind(described, subject)
                if subject not in self.kept_anywhere or (kind and predicate in _STAYS.get(kind, ())):
                    return True
        return False

    def _speaks_for_headings(self, source: Node) -> bool:
        """Whether a heading without a person of its own is given by those who speak in the source."""
        citations = [one for one, predicate in self.described.naming(source) if predicate == OA.hasSource]
        headings = [
            heading
            for one in citations
            for heading, predicate in self.described.naming(one)
            if predicate == INTENT.cites
        ]
        return any(not self.described.values(heading, INTENT.by) for heading in headings)


def _without_orphans(described: Described, withheld: set[Triple]) -> tuple[Triple, ...]:
    """The triples that are not withheld, without what only those that are had: statements, values, selectors."""
    gone, waiting = set(withheld), list(withheld)
    while waiting:
        value = waiting.pop()[2]
        if isinstance(value, Literal) or any(described.values(value, own) for own in _OWN):
            continue
        if all((subject, predicate, value) in gone for subject, predicate in described.naming(value)):
            more = [triple for triple in described.of(value) if triple not in gone]
            gone.update(more)
            waiting.extend(more)
    return tuple(triple for triple in described.triples if triple not in gone)


_OWN = (DCTERMS.isPartOf, DCTERMS.identifier, INTENT.sectionTerm, DCTERMS.title)
"""What has one of these stands for itself, whether or not anything names it."""
