"""A graph by what is said of each thing, and by what names it, so that a rule asks either without searching."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from rdflib.term import Node

from intent.names import Triple


class Described:
    """Triples by subject, and who names what."""

    def __init__(self, triples: Iterable[Triple]) -> None:
        self.triples = tuple(dict.fromkeys(triples))
        self._properties: dict[Node, dict[Node, list[Node]]] = {}
        self._naming: dict[Node, list[tuple[Node, Node]]] = {}
        for subject, predicate, value in self.triples:
            self._properties.setdefault(subject, {}).setdefault(predicate, []).append(value)
            self._naming.setdefault(value, []).append((subject, predicate))

    @property
    def subjects(self) -> Iterable[Node]:
        return self._properties

    def values(self, node: Node, predicate: Node) -> Sequence[Node]:
        return self._properties.get(node, {}).get(predicate, ())

    def of(self, node: Node) -> Iterator[Triple]:
        """Everything that is said of a thing."""
        for predicate, values in self._properties.get(node, {}).items():
            yield from ((node, predicate, value) for value in values)

    def naming(self, value: Node) -> Sequence[tuple[Node, Node]]:
        """Each thing that names this one, with the property by which it does."""
        return self._naming.get(value, ())
