"""RDF in five formats, written by another library: read as the same record, from files only, closed to the network.

Sources: W3C, RDF 1.1 Turtle, TriG, N-Triples and XML Syntax (25 February 2014), JSON-LD 1.1 (16 July 2020). The graphs
are written by rdflib, whose writers have nothing in common with the reader here.
"""

from __future__ import annotations

import json
import shutil
import socket
from pathlib import Path

import pytest
from examples_read import LATEST_OF_EACH, checked, work_of
from examples_read import graph as graph_of
from oracle.program import rows_of
from rdflib import Dataset, Graph, URIRef

from intent.diagnostics import Diagnostic, Unusable
from intent.reading.heads import RDF_FORMATS
from intent.record.parse import FORMATS, empty_graph, parse_rdf
from intent.record.serialize import serialize_rdf
from intent.verbs import check

WRITERS = {".ttl": "turtle", ".nt": "nt", ".rdf": "xml", ".trig": "trig", ".jsonld": "json-ld"}
GRAPH = URIRef("urn:graph:received")
RDF_XML = '<rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#" xmlns:u="urn:"{}>{}</rdf:RDF>'


@pytest.fixture(autouse=True)
def no_network(monkeypatch: pytest.MonkeyPatch) -> None:
    """Nothing in this file may so much as ask for a connection, or for the address of a name."""

    def refused(*_: object, **__: object) -> None:
        raise AssertionError("the program asked for the network")

    for name in ("connect", "connect_ex"):
        monkeypatch.setattr(socket.socket, name, refused)
    monkeypatch.setattr(socket, "getaddrinfo", refused)
    monkeypatch.setattr(socket, "create_connection", refused)


def written(graph: Graph, suffix: str) -> str:
    """The graph as rdflib writes it; in TriG within a named graph, as such files mostly come."""
    if suffix == ".trig":
        dataset = Dataset()
        named = dataset.graph(GRAPH)
        for triple in graph:
            named.add(triple)
        return str(dataset.serialize(format="trig"))
    if suffix == ".jsonld":
        return str(graph.serialize(format="json-ld", auto_compact=True))
    return str(graph.serialize(format=WRITERS[suffix]))


def refusal(text: str, format: str) -> Diagnostic:
    with pytest.raises(Unusable) as caught:
        parse_rdf(text.encode(), "received", format)
    (found,) = caught.value.diagnostics
    return found


def test_every_format_that_can_be_read_is_tried_here() -> None:
    assert set(WRITERS) | {".json"} == set(RDF_FORMATS)
    assert {RDF_FORMATS[suffix] for suffix in WRITERS} == set(FORMATS)


@pytest.mark.parametrize("suffix", WRITERS)
@pytest.mark.parametrize("path", LATEST_OF_EACH, ids=lambda path: path.stem)
def test_a_received_graph_is_the_one_that_was_sent(path: Path, suffix: str) -> None:
    """By value: some writers say `13.0` where `13` was written. The canonical form of N-Triples tells by value."""
    sent = graph_of(work_of(path))
    received = parse_rdf(written(sent, suffix).encode(), "x", RDF_FORMATS[suffix])
    assert serialize_rdf(received, "n-triples") == serialize_rdf(sent, "n-triples")


@pytest.mark.parametrize("suffix", WRITERS)
def test_a_received_graph_is_judged_as_its_text(suffix: str, tmp_path: Path) -> None:
    """design.md, section 7, property 6; of the smallest example, since the graphs of all are compared above."""
    path = LATEST_OF_EACH[0]
    folder, received = path.parents[1], tmp_path / "received"
    shutil.copytree(folder, received, ignore=shutil.ignore_patterns("work.md", path.name))
    of_text = checked(path).variance
    sent = {
        file: (received / file.relative_to(folder)).with_suffix(suffix) for file in (path, folder / "work.md")
    }
    for file, place in sent.items():
        place.write_text(written(graph_of(file), suffix), encoding="utf-8")
    of_graph = check(sent[path], sent[folder / "work.md"]).variance
    assert rows_of(of_graph) == rows_of(of_text)
    assert of_graph.outcome is of_text.outcome


@pytest.mark.parametrize(
    "text",
    [
        "<urn:a> <urn:b> <urn:c> .",
        "{ <urn:a> <urn:b> <urn:c> }",
        "GRAPH <urn:g> { <urn:a> <urn:b> <urn:c> }",
        "<urn:g> { <urn:a> <urn:b> <urn:c> } <urn:h> { }",
        "_:g { <urn:a> <urn:b> <urn:c> }",
    ],
)
def test_one_graph_of_trig_is_a_record_whatever_its_name(text: str) -> None:
    """RDF 1.1 TriG, section 2.2: triples in the default graph, in braces or not, and in named graphs."""
    assert set(parse_rdf(text.encode(), "x", "trig")) == {(URIRef("urn:a"), URIRef("urn:b"), URIRef("urn:c"))}


@pytest.mark.parametrize(
    "text",
    [
        "<urn:g> { <urn:a> <urn:b> <urn:c> } <urn:h> { <urn:a> <urn:b> <urn:d> }",
        "<urn:a> <urn:b> <urn:c> . <urn:g> { <urn:a> <urn:b> <urn:d> }",
        "<urn:g> { <urn:a> <urn:b> <urn:d> } <urn:a> <urn:b> <urn:c> .",
    ],
)
def test_several_graphs_of_trig_are_refused(text: str) -> None:
    found = refusal(text, "trig")
    assert found.slug == "named-graph"
    assert "urn:g" in str(found) or "urn:h" in str(found)


@pytest.mark.parametrize(
    ("text", "format", "slug"),
    [
        (
            '<!DOCTYPE rdf:RDF [<!ENTITY e SYSTEM "file:///etc/passwd">]>' + RDF_XML.format("", ""),
            "rdf-xml",
            "xml-doctype",
        ),
        (
            '<!DOCTYPE rdf:RDF SYSTEM "http://example.org/a.dtd">' + RDF_XML.format("", ""),
            "rdf-xml",
            "xml-doctype",
        ),
        (
            RDF_XML.format("", '<rdf:Description rdf:about="a"><u:b>c</u:b></rdf:Description>'),
            "rdf-xml",
            "bad-rdf-xml",
        ),
        (
            RDF_XML.format("", '<rdf:Description rdf:about="urn:a"><u:b>&e;</u:b></rdf:Description>'),
            "rdf-xml",
            "bad-rdf-xml",
        ),
        (
            RDF_XML.format(
                "",
                '<rdf:Description rdf:about="urn:a"><u:b rdf:parseType="Literal"><i/></u:b></rdf:Description>',
            ),
            "rdf-xml",
            "markup",
        ),
        ('{"@context": "http://example.org/c.jsonld", "@id": "urn:a"}', "json-ld", "remote-context"),
        ("<urn:g> { <urn:a> <urn:b> <c> }", "trig", "bad-trig"),
        ("<urn:g> { <urn:a> <urn:b> ", "trig", "bad-trig"),
    ],
)
def test_what_would_need_more_than_the_file_is_refused(text: str, format: str, slug: str) -> None:
    """XML 1.0, section 4.2.2 (external entities); RDF 1.1 XML Syntax, section 2.14 (relative IRIs need a base)."""
    assert refusal(text, format).slug == slug


@pytest.mark.parametrize("format", ["turtle", "trig", "n-triples", "rdf-xml", "json-ld"])
def test_an_import_is_a_statement_like_any_other(format: str) -> None:
    """OWL 2 Web Ontology Language, section 3.4: `owl:imports` is not followed here."""
    graph = empty_graph()
    imports = URIRef("http://www.w3.org/2002/07/owl#imports")
    graph.add((URIRef("urn:a"), imports, URIRef("http://example.org/ontology")))
    suffix = next(one for one, name in RDF_FORMATS.items() if name == format)
    assert len(parse_rdf(written(graph, suffix).encode(), "x", format)) == 1


def test_a_base_in_xml_makes_relative_names_whole() -> None:
    """RDF 1.1 XML Syntax, section 2.14."""
    text = RDF_XML.format(' xml:base="urn:x:y"', '<rdf:Description rdf:ID="a"><u:b>c</u:b></rdf:Description>')
    assert {str(subject) for subject in parse_rdf(text.encode(), "x", "rdf-xml").subjects()} == {"urn:x:y#a"}


def test_a_context_written_out_is_read() -> None:
    text = json.dumps({"@context": {"b": "urn:b"}, "@id": "urn:a", "b": "c"})
    assert len(parse_rdf(text.encode(), "x", "json-ld")) == 1
