"""A record is closed: it uses the classes and properties that are declared, and each where it belongs.

A record whose property is misspelt says less than its writer thinks. So a name that the ontology does not have, a
property on a thing that cannot have it, and a value that is nothing of the sort wanted are errors, each named.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from rdflib import DCTERMS, PROV, RDF, RDFS, SKOS, Literal, URIRef
from rdflib.term import Node

from intent.diagnostics import Diagnostic, nearest, offered
from intent.language.message import joined, say
from intent.names import INTENT, PREFIXES
from intent.record.indexed import IndexedGraph
from intent.record.ontology import Ontology
from intent.record.places import Places

_STANDARDS = (DCTERMS, PROV, RDF, RDFS, SKOS)
"""The vocabularies that a record borrows from and whose terms are all known."""


def undeclared_names(data: IndexedGraph, places: Places, ontology: Ontology) -> Iterator[Diagnostic]:
    """Classes and properties that neither the ontology nor the standard that they are said to be from has."""
    kinds = data.by_value.get(RDF.type, {})
    for property_iri, values in data.by_value.items():
        if _is_strange(property_iri, ontology.properties):
            yield from _unknown(
                _having(values), places, property_iri, [*ontology.properties, *_borrowed(property_iri)]
            )
    for kind, having in kinds.items():
        if _is_strange(kind, ontology.classes):
            yield from _unknown(having, places, kind, ontology.classes)
    for property_iri, values in data.by_value.items():
        for value, having in values.items():
            if property_iri != RDF.type and _is_ours(value) and value not in ontology.names:
                wanted = ontology.ranges.get(property_iri, frozenset())
                known = [one for one, of in ontology.individuals.items() if not wanted or of & wanted]
                yield from _unknown(having, places, value, known)


def _having(values: Mapping[Node, Mapping[Node, None]]) -> Iterable[Node]:
    return dict.fromkeys(subject for having in values.values() for subject in having)


def _is_ours(node: Node) -> bool:
    return isinstance(node, URIRef) and node.startswith(str(INTENT))


def _is_strange(name: Node, declared: frozenset[Node]) -> bool:
    """Whether a name is of the record's namespace, or of a standard's, and is not declared there."""
    if _is_ours(name):
        return name not in declared
    borrowed = _borrowed(name)
    return bool(borrowed) and name not in borrowed


def _borrowed(name: Node) -> frozenset[Node]:
    """All names of the standard that a name is said to be from; none where it is from no standard known here."""
    standard = next((each for each in _STANDARDS if str(name).startswith(str(each))), None)
    return frozenset(map(URIRef, dir(standard))) if standard else frozenset()


def _unknown(
    subjects: Iterable[Node], places: Places, name: Node, known: Iterable[Node]
) -> Iterator[Diagnostic]:
    message = say("`{name}` is no name that a record uses", name=short_name(name))
    told = offered(message, nearest(short_name(name), sorted(map(short_name, known))))
    yield from (places.finding("undeclared-name", told, node) for node in subjects)


def short_name(name: Node) -> str:
    """A name with the prefix of its namespace, as `intent:value`."""
    for prefix, namespace in PREFIXES.items():
        if str(name).startswith(namespace):
            return f"{prefix}:{str(name).removeprefix(namespace)}"
    return str(name)


def misplaced_names(
    data: IndexedGraph, places: Places, ontology: Ontology, terms: Mapping[str, frozenset[Node]]
) -> Iterator[Diagnostic]:
    """Properties on things that cannot have them, and values of another sort than the property has.

    ``terms`` are the classes of the vocabulary's terms; a term that it does not have is left to others to name.
    """
    of_terms = ontology.with_wider(kind for kinds in terms.values() for kind in kinds)
    for property_iri, values in data.by_value.items():
        if property_iri not in ontology.properties:
            continue
        domain, wanted = ontology.domains.get(property_iri), ontology.ranges.get(property_iri, frozenset())
        for subject in _having(values):
            kinds = _kinds(data, subject, ontology, own=True)
            if not kinds or (domain is not None and not kinds & domain):
                yield _on_another(places, property_iri, subject, domain or frozenset())
        for value, having in values.items():
            kinds = _kinds(data, value, ontology) | terms.get(str(value), frozenset())
            is_left = not kinds and isinstance(value, URIRef) and bool(wanted & of_terms)
            if not is_left and not _is_within(value, kinds, wanted, property_iri in ontology.literal):
                yield from (_of_another_sort(places, property_iri, node, value, wanted) for node in having)


def _kinds(data: IndexedGraph, node: Node, ontology: Ontology, own: bool = False) -> frozenset[Node]:
    """The classes of a thing with all wider ones, as this graph has them, or the graph beside it too."""
    stated = data.by_subject.get(node, {}).get(RDF.type, ()) if own else data.objects(node, RDF.type)
    return ontology.with_wider((*stated, *ontology.individuals.get(node, ())))


def _is_within(value: Node, kinds: frozenset[Node], wanted: frozenset[Node], is_literal: bool) -> bool:
    if isinstance(value, Literal):
        return is_literal or RDFS.Resource in wanted
    return not is_literal and (RDFS.Resource in wanted or bool(kinds & wanted))


def _on_another(places: Places, property_iri: Node, subject: Node, domain: frozenset[Node]) -> Diagnostic:
    message = say("nothing says of what sort this is, though it has `{name}`", name=short_name(property_iri))
    if domain:
        message = say(
            "`{name}` is not said of this; it is said of {kinds}",
            name=short_name(property_iri),
            kinds=joined(sorted(f"`{short_name(kind)}`" for kind in domain), ", "),
        )
    return places.finding("misplaced-name", message, subject)


def _of_another_sort(
    places: Places, property_iri: Node, subject: Node, value: Node, wanted: frozenset[Node]
) -> Diagnostic:
    message = say(
        "after `{name}` stands {kinds}; `{value}` is none, or is not in this record",
        name=short_name(property_iri),
        kinds=joined(sorted(f"`{short_name(kind)}`" for kind in wanted), ", "),
        value=places.name(value),
    )
    return places.finding("misplaced-value", message, subject)
