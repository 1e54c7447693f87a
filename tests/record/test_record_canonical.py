"""The same graph is always written as the same bytes, and reads back as the same graph.

Sources: W3C, RDF 1.1 Turtle and RDF 1.1 N-Triples (25 February 2014); XML Schema 1.1 Part 2: Datatypes (5 April
2012), section 3.3.3.2 and appendix E, canonical mappings; RDF 1.1 Concepts, section 3.3, language tags. rdflib's
readers and its test for isomorphism are the second opinion.
"""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path
from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st
from rdflib import RDF, XSD, BNode, Graph, Literal, URIRef
from rdflib.compare import isomorphic
from rdflib.term import Node

from intent.names import EDTF, INTENT, QUDT, TERM, UNIT
from intent.record.canonical import canonical_turtle
from intent.record.lexical import canonical_value
from intent.record.parse import empty_graph, parse_rdf
from intent.record.serialize import serialize_rdf

WORK = "urn:uuid:0b0e8a3c-52f1-5d1c-9c3c-000000000001"
FORMATS = ("turtle", "json-ld", "n-triples")
EXPECTED = Path(__file__).parent / "cases" / "canonical.ttl"

Triple = tuple[Node, Node, Node]


def graph_of(triples: list[Triple]) -> Graph:
    graph = empty_graph()
    for triple in triples:
        graph.add(triple)
    return graph


_LOCAL = st.sampled_from(["M1", "M10", "M2", "R1", "R1.1", "R1.1.value-1", "a%20b", "é", "-x", "x.", ""])
_IRIS = st.one_of(
    _LOCAL.map(lambda local: URIRef(f"{WORK}#{local}")),
    st.sampled_from(
        [URIRef(WORK), INTENT.states, TERM["flat-panel"], UNIT.M, URIRef("work:M1"), URIRef("http://a.b/")]
    ),
)
_BLANK = st.sampled_from([BNode(f"n{number}") for number in range(6)])
_NUMBERS = st.integers(-(10**20), 10**20)
_LITERALS = st.one_of(
    st.text(max_size=12).map(Literal),
    st.sampled_from(['"""', 'a\n"', "a\r\nb", "tab\tbed\n", "\\u0041\n", "x\n\\", "\x00\x7f"]).map(Literal),
    st.text(max_size=4).map(lambda text: Literal(text, lang="de-ch")),
    _NUMBERS.map(lambda number: Literal(str(number), datatype=XSD.integer)),
    _NUMBERS.map(
        lambda number: Literal(canonical_value(f"{number}.25", str(XSD.decimal)), datatype=XSD.decimal)
    ),
    st.booleans().map(Literal),
    st.text(max_size=6).map(lambda text: Literal(text, datatype=EDTF)),
)
_PREDICATES = st.sampled_from([RDF.type, INTENT.states, INTENT.value, QUDT.numericValue, URIRef("urn:p")])


def _graphs(ends: st.SearchStrategy[Node]) -> st.SearchStrategy[list[Triple]]:
    return st.lists(st.tuples(ends, _PREDICATES, ends | _LITERALS), max_size=14)


@pytest.mark.parametrize("format", FORMATS)
@given(triples=_graphs(_IRIS), random=st.randoms())
def test_the_order_of_insertion_does_not_count(format: str, triples: list[Triple], random: Random) -> None:
    shuffled = random.sample(triples, len(triples))
    assert serialize_rdf(graph_of(triples), format) == serialize_rdf(graph_of(shuffled), format)


@pytest.mark.parametrize("format", FORMATS)
@given(triples=_graphs(_IRIS | _BLANK), random=st.randoms())
def test_the_names_of_blank_nodes_do_not_count(format: str, triples: list[Triple], random: Random) -> None:
    names = random.sample(range(100), 6)
    renamed = {BNode(f"n{number}"): BNode(f"z{name}") for number, name in enumerate(names)}
    other = [(renamed.get(s, s), p, renamed.get(o, o)) for s, p, o in triples]  # type: ignore[call-overload]
    assert serialize_rdf(graph_of(triples), format) == serialize_rdf(graph_of(other), format)


@pytest.mark.parametrize("format", FORMATS)
@given(triples=_graphs(_IRIS | _BLANK))
def test_what_is_written_reads_back_as_the_same_graph(format: str, triples: list[Triple]) -> None:
    graph = graph_of(triples)
    assert isomorphic(parse_rdf(serialize_rdf(graph, format).encode(), "x", format), graph)


@pytest.mark.parametrize(
    ("format", "theirs"), [("turtle", "turtle"), ("json-ld", "json-ld"), ("n-triples", "nt")]
)
@given(triples=_graphs(_IRIS | _BLANK))
def test_rdflib_reads_the_same_graph(format: str, theirs: str, triples: list[Triple]) -> None:
    graph = graph_of(triples)
    read = Graph().parse(data=serialize_rdf(graph, format), format=theirs)
    assert isomorphic(read, graph)


def test_it_reads_well() -> None:
    """Prefixes that are used; a work, then people, parts with what is said of them, and instructions."""
    expected = EXPECTED.read_text(encoding="utf-8")
    assert canonical_turtle(parse_rdf(expected.encode(), "x", "turtle")) == expected


def test_every_run_gives_the_same_bytes() -> None:
    """Python's hashes of texts differ from run to run; the case holds blank nodes as well."""
    text = (
        EXPECTED.read_text(encoding="utf-8") + "\n[] a <urn:x> ; <urn:y> [ <urn:z> 1, 2 ], [ <urn:z> 3 ] .\n"
    )
    program = (
        "import sys; from intent.record.parse import parse_rdf; from intent.record.canonical import canonical_turtle;"
        "sys.stdout.write(canonical_turtle(parse_rdf(sys.stdin.buffer.read(), 'x', 'turtle')))"
    )
    runs = {
        subprocess.run(
            [sys.executable, "-c", program],
            input=text,
            capture_output=True,
            text=True,
            check=True,
            encoding="utf-8",
            cwd=Path(__file__).parents[2],
            env={**os.environ, "PYTHONHASHSEED": seed, "PYTHONIOENCODING": "utf-8"},
        ).stdout
        for seed in ("1", "2", "3")
    }
    assert len(runs) == 1


@pytest.mark.parametrize(
    ("written", "datatype", "canonical"),
    [
        ("0", XSD.boolean, "false"),
        ("1", XSD.boolean, "true"),
        ("+007", XSD.integer, "7"),
        ("-0", XSD.integer, "0"),
        ("-0100", XSD.integer, "-100"),
        ("00210.500", XSD.decimal, "210.5"),  # XSD 1.1, 3.3.3.1: leading and trailing zeros are optional
        ("210.", XSD.decimal, "210"),
        ("+.5", XSD.decimal, "0.5"),
        ("-0.0", XSD.decimal, "0"),
        ("100", XSD.decimal, "100"),
        ("x", XSD.decimal, "x"),
        (".", XSD.decimal, "."),
        ("1993~", EDTF, "1993~"),
    ],
)
def test_a_value_is_written_in_its_canonical_form(written: str, datatype: URIRef, canonical: str) -> None:
    assert canonical_value(written, str(datatype)) == canonical


def test_equal_values_are_written_once() -> None:
    triples: list[Triple] = [
        (URIRef("urn:a"), URIRef("urn:b"), Literal(text, datatype=XSD.integer, normalize=False))
        for text in ("1", "01", "+1")
    ]
    assert serialize_rdf(graph_of(triples), "n-triples").count("\n") == 1
    assert canonical_turtle(graph_of(triples)) == "\n<urn:a> <urn:b> 1 .\n"


def test_json_names_nothing_outside_itself() -> None:
    document = json.loads(serialize_rdf(parse_rdf(EXPECTED.read_bytes(), "x", "turtle"), "json-ld"))
    assert all(
        isinstance(namespace, str) and namespace[-1] in "#/" for namespace in document["@context"].values()
    )
    assert document["@graph"][0] == {
        "@id": WORK,
        "@type": "intent:Work",
        "dcterms:title": "Slow Water",
        "intent:note": 'Two sets.\n\nThe artist calls them "the ears".',
    }
