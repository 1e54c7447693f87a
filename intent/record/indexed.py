"""A graph held in dictionaries, for those who ask it many small questions.

A validator asks some thirty thousand. rdflib's stores answer each through several generators, in about 4 µs; a
dictionary answers in a tenth of that. What is asked seldom goes the way that rdflib takes.
"""

from __future__ import annotations

from collections.abc import Generator, Iterable
from typing import Any

from rdflib import Graph
from rdflib.term import Node

from intent.names import Triple

Values = Generator[Node, None, None]
Pairs = Generator[tuple[Node, Node], None, None]

_NOTHING: dict[Node, list[Node]] = {}


class IndexedGraph(Graph):
    """The triples given, indexed by subject and by value; it may look up things that it only names in another.

    What there is to find by a property or a value is in this graph alone; what is said of a subject may stand in
    the graph ``beside`` it too.
    """

    def __init__(self, triples: Iterable[Triple] = (), beside: Graph | None = None) -> None:
        super().__init__(bind_namespaces="none")
        self.beside = beside
        self.by_subject: dict[Node, dict[Node, list[Node]]] = {}
        self.by_value: dict[Node, dict[Node, dict[Node, None]]] = {}
        for triple in triples:
            self.add(triple)

    def add(self, triple: Any) -> IndexedGraph:
        """Add a triple, if it is not there."""
        subject, predicate, value = triple
        subjects = self.by_value.setdefault(predicate, {}).setdefault(value, {})
        if subject not in subjects:
            subjects[subject] = None
            self.by_subject.setdefault(subject, {}).setdefault(predicate, []).append(value)
        return self

    def triples(self, triple: Any) -> Generator[Any, None, None]:
        """Those that fit a pattern, in which ``None`` stands for anything."""
        subject, predicate, value = triple
        for each in list(self.by_subject) if subject is None else [subject]:
            for name, found in self._of(each):
                if predicate is None or predicate == name:
                    yield from ((each, name, one) for one in found if value is None or value == one)

    def objects(self, subject: Any = None, predicate: Any = None, unique: bool = False) -> Values:
        """The values of a property of a subject."""
        if subject is None or predicate is None:
            yield from super().objects(subject, predicate, unique)
            return
        found = self.by_subject.get(subject, _NOTHING).get(predicate)
        if found is not None:
            yield from found
        elif self.beside is not None:
            yield from self.beside.objects(subject, predicate)

    def subjects(self, predicate: Any = None, object: Any = None, unique: bool = False) -> Values:
        """The subjects that have a property with a value."""
        if predicate is None or object is None:
            yield from super().subjects(predicate, object, unique)
        else:
            yield from self.by_value.get(predicate, {}).get(object, ())

    def subject_objects(self, predicate: Any = None, unique: bool = False) -> Pairs:
        """Subjects and values of a property."""
        if predicate is None:
            yield from super().subject_objects(predicate, unique)
            return
        for value, subjects in self.by_value.get(predicate, {}).items():
            yield from ((subject, value) for subject in subjects)

    def predicate_objects(self, subject: Any = None, unique: bool = False) -> Pairs:
        """Properties and values of a subject."""
        if subject is None:
            yield from super().predicate_objects(subject, unique)
            return
        for name, found in self._of(subject):
            yield from ((name, value) for value in found)

    def _of(self, subject: Node) -> Iterable[tuple[Node, list[Node]]]:
        """What is said of a subject, here or else beside."""
        own = self.by_subject.get(subject)
        if own is not None or self.beside is None:
            return (own or {}).items()
        said: dict[Node, list[Node]] = {}
        for name, value in self.beside.predicate_objects(subject):
            said.setdefault(name, []).append(value)
        return said.items()

    def __len__(self) -> int:
        return sum(len(subjects) for values in self.by_value.values() for subjects in values.values())
