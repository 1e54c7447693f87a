"""A graph in dictionaries answers as rdflib's own does."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st
from rdflib import Graph, Literal, URIRef
from rdflib.term import Node

from intent.record.indexed import IndexedGraph

IRIS: list[Node] = [URIRef(f"urn:{name}") for name in "abcd"]
NODES: list[Node] = [*IRIS, Literal("a"), Literal(1)]
triples = st.lists(
    st.tuples(st.sampled_from(IRIS), st.sampled_from(IRIS), st.sampled_from(NODES)), max_size=12
)
one_or_any = st.none() | st.sampled_from(NODES)


def plain(found: list[tuple[Node, Node, Node]]) -> Graph:
    graph = Graph()
    for triple in found:
        graph.add(triple)
    return graph


@given(triples, one_or_any, one_or_any, one_or_any)
def test_it_answers_as_a_graph_does(
    found: list[tuple[Node, Node, Node]], subject: Node | None, predicate: Node | None, value: Node | None
) -> None:
    ours, theirs = IndexedGraph(found), plain(found)
    assert len(ours) == len(theirs)
    assert set(ours) == set(theirs)
    for pattern in ((subject, predicate, value), (None, None, None)):
        assert set(ours.triples(pattern)) == set(theirs.triples(pattern))
        assert (pattern in ours) == (pattern in theirs)
    assert sorted(ours.objects(subject, predicate), key=str) == sorted(
        theirs.objects(subject, predicate), key=str
    )
    assert sorted(ours.subjects(predicate, value), key=str) == sorted(
        theirs.subjects(predicate, value), key=str
    )
    assert sorted(ours.subject_objects(predicate), key=str) == sorted(
        theirs.subject_objects(predicate), key=str
    )
    assert sorted(ours.predicate_objects(subject), key=str) == sorted(
        theirs.predicate_objects(subject), key=str
    )


@given(triples, triples, st.sampled_from(IRIS), st.sampled_from(IRIS))
def test_what_is_said_of_a_subject_may_stand_beside_it(
    own: list[tuple[Node, Node, Node]], beside: list[tuple[Node, Node, Node]], subject: Node, predicate: Node
) -> None:
    graph = IndexedGraph(own, plain(beside))
    found = set(plain(own).objects(subject, predicate)) or set(plain(beside).objects(subject, predicate))
    assert set(graph.objects(subject, predicate)) == found
    assert set(graph.subject_objects(predicate)) == set(plain(own).subject_objects(predicate))
