"""RDF received from elsewhere is read closed, and what cannot be used is refused at its place.

Sources: W3C, RDF 1.1 Turtle (25 February 2014), section 2; W3C, JSON-LD 1.1 (16 July 2020), sections 3.1 (contexts
named by IRI), 4.1.9 (``@import``) and 4.1.3 (relative IRIs); XML Schema 1.1 Part 2: Datatypes (5 April 2012),
sections 3.3.2 and 3.3.3 (how booleans and decimals are written). rdflib's own readers are the second opinion.
"""

from __future__ import annotations

import contextlib
import json
import logging

import pytest
from hypothesis import given
from hypothesis import strategies as st
from rdflib import XSD, BNode, Graph, Literal, URIRef
from rdflib.compare import isomorphic

from intent.diagnostics import Diagnostic, Unusable
from intent.language.locale import ENGLISH
from intent.record.closed_json import MAXIMUM_DEPTH
from intent.record.parse import FORMATS, parse_rdf

A, B, C = (URIRef(f"https://example.org/{name}") for name in "abc")

TURTLE = """\
# The first example of the Turtle recommendation, with invented people.
@base <http://example.org/> .
@prefix foaf: <http://xmlns.com/foaf/0.1/> .
@prefix rel: <http://www.perceive.net/schemas/relationship/> .

<#brandvold>
    rel:friendOf <#varga-finn> ;
    a foaf:Person ;
    foaf:name "Ilka Brandvold" .

<#varga-finn>
    a foaf:Person ;
    foaf:name "Odile Varga-Finn", "Odile Varga-Finn"@hu, 4, 4.0, true, [ foaf:name "nobody" ] .
"""

JSON_LD = """{"@context": {"@vocab": "https://example.org/", "on": {"@type": "@id"}},
 "@id": "https://example.org/a", "@type": "Work", "title": "Slow Water", "on": "https://example.org/b",
 "numbers": [1, true], "nested": {"title": {"@value": "Langsames Wasser", "@language": "de"}}}"""


def refusal(data: str | bytes, format: str) -> Diagnostic:
    with pytest.raises(Unusable) as caught:
        parse_rdf(data.encode() if isinstance(data, str) else data, "received", format)
    (found,) = caught.value.diagnostics
    return found


@pytest.mark.parametrize(("text", "format"), [(TURTLE, "turtle"), (JSON_LD, "json-ld")])
def test_reads_the_same_graph_as_rdflib(text: str, format: str) -> None:
    assert isomorphic(parse_rdf(text.encode(), "received", format), Graph().parse(data=text, format=format))


def test_keeps_blank_nodes_and_the_way_a_value_is_written() -> None:
    graph = parse_rdf(
        b'_:one <https://example.org/b> "012"^^<http://www.w3.org/2001/XMLSchema#integer> .', "x", "turtle"
    )
    assert set(graph) == {(BNode("one"), B, Literal("012", datatype=XSD.integer, normalize=False))}


def test_reads_a_file_that_begins_with_a_byte_order_mark() -> None:
    assert len(parse_rdf(b"\xef\xbb\xbf<urn:a> <urn:b> <urn:c> .", "x", "n-triples")) == 1


def test_imports_are_kept_and_not_followed() -> None:
    text = b"<urn:a> <http://www.w3.org/2002/07/owl#imports> <file:///etc/passwd> ."
    assert len(parse_rdf(text, "x", "turtle")) == 1


@pytest.mark.parametrize(
    ("text", "line", "column", "said"),
    [
        ("<urn:a> <urn:b> c:d .", 1, 17, "the prefix c: has not been declared"),
        ('<urn:a> <urn:b> "Ölbild .\n', 1, 17, ""),
        ("\n\n<urn:a> <urn:b>\n<urn:c> <urn:d> .", 4, 9, ""),
        ("<urn:a> <urn:b> <c> .", 1, 17, "no scheme found"),
    ],
)
def test_a_fault_in_turtle_is_told_with_its_place(text: str, line: int, column: int, said: str) -> None:
    found = refusal(text, "turtle")
    assert (found.slug, found.span.line, found.span.column) == ("bad-turtle", line, column)
    assert found.span.text == text.split("\n")[line - 1]
    assert ENGLISH.say(found.message).startswith("this is not Turtle: ")
    assert said in ENGLISH.say(found.message).casefold()
    assert "ask the sender" in ENGLISH.say(found.message)


def test_a_line_too_long_to_quote_is_not_quoted() -> None:
    found = refusal(f'<urn:a> <urn:b> "{"x" * 500}" ; .. ', "turtle")
    assert (found.span.line, found.span.text) == (1, "")


@pytest.mark.parametrize(
    ("text", "named", "line", "column"),
    [
        (
            '{"@context": "https://example.org/c.jsonld", "@id": "urn:a"}',
            "https://example.org/c.jsonld",
            1,
            14,
        ),
        ('{"@context":\n [{"v": "urn:v#"}, "//example.org/c"]}', "//example.org/c", 2, 20),
        (
            '{"@context": {"v": {"@id": "urn:v", "@context": "file:///etc/passwd"}}}',
            "file:///etc/passwd",
            1,
            49,
        ),
        ('{"@context": {"@version": 1.1, "@import": "c.jsonld"}}', "c.jsonld", 1, 43),
        ('{"@graph": [{"@id": "urn:a", "urn:b": {"@context": "c.jsonld"}}]}', "c.jsonld", 1, 52),
        ('{"\\u0040context": "c.jsonld"}', "c.jsonld", 1, 19),
        ('{"@context": "c.jsonld", "@context": {}}', "c.jsonld", 1, 14),
    ],
)
def test_a_context_kept_elsewhere_is_refused_by_name(text: str, named: str, line: int, column: int) -> None:
    found = refusal(text, "json-ld")
    assert found.slug == "remote-context"
    assert f"`{named}`" in ENGLISH.say(found.message)
    assert (found.span.line, found.span.column) == (line, column)


@pytest.mark.parametrize(
    ("text", "format", "slug"),
    [
        ("{", "json-ld", "bad-json-ld"),
        ('{"@id": "urn:a" "urn:b": 1}', "json-ld", "bad-json-ld"),
        ('{"@id": 3}', "json-ld", "bad-json-ld"),
        ("", "json-ld", "bad-json-ld"),
        ('{"@context": {"@vocab": "urn:v#"}, "@id": "#a", "b": 1}', "json-ld", "relative-iri"),
        ('{"@context": {"@vocab": "urn:v#"}, "@id": "../a", "b": 1}', "json-ld", "relative-iri"),
        ('{"@id": "urn:g", "urn:p": 1, "@graph": [{"@id": "urn:a", "urn:b": 1}]}', "json-ld", "named-graph"),
        ("[" * 100_000 + "]" * 100_000, "json-ld", "nested-too-deeply"),
        ('{"a":' * 5_000, "json-ld", "nested-too-deeply"),
        ('"' + '\\"' * 50_000, "json-ld", "bad-json-ld"),
        ("<urn:a> <urn:b> <<( <urn:a> <urn:b> <urn:c> )>> .", "turtle", "not-held"),
        ('<urn:a> <urn:b> "x"@he--rtl .', "turtle", "not-held"),
        (f'<urn:a> <urn:b> "many"^^<{XSD.integer}> .', "turtle", "bad-literal"),
        (f'<urn:a> <urn:b> "{"9" * 10_000}"^^<{XSD.integer}> .', "turtle", "bad-literal"),
        (f'<urn:a> <urn:b> "1E999999999"^^<{XSD.decimal}> .', "turtle", "bad-literal"),
        (f'<urn:a> <urn:b> "yes"^^<{XSD.boolean}> .', "turtle", "bad-literal"),
        (
            '<urn:a> <urn:b> "<b/>"^^<http://www.w3.org/1999/02/22-rdf-syntax-ns#XMLLiteral> .',
            "turtle",
            "markup",
        ),
        (b'<urn:a> <urn:b> "\xe4" .', "turtle", "not-utf-8"),
        ('<!DOCTYPE a [<!ENTITY b "c">]><a/>', "rdf-xml", "xml-doctype"),
        ("<a>", "rdf-xml", "bad-rdf-xml"),
    ],
)
def test_what_cannot_be_used_is_refused(text: str | bytes, format: str, slug: str) -> None:
    assert refusal(text, format).slug == slug


def test_numbers_of_any_size_are_read_from_json() -> None:
    text = '{"@id": "urn:a", "urn:b": [1e400, -1e-400, ' + "9" * 5000 + "]}"
    assert len(parse_rdf(text.encode(), "x", "json-ld")) == 3


def test_a_fraction_in_json_is_written_as_the_standard_says() -> None:
    """JSON-LD 1.1 Processing Algorithms and API, section 8.6: 5.3 becomes ``5.3E0``."""
    graph = parse_rdf(b'{"@id": "urn:a", "urn:b": 5.3}', "x", "json-ld")
    assert list(graph.objects()) == [Literal("5.3E0", datatype=XSD.double, normalize=False)]


def test_as_deep_as_allowed_is_read() -> None:
    depth = MAXIMUM_DEPTH - 2
    text = '{"@id": "urn:a", "urn:b": ' + "[" * depth + "1" + "]" * depth + "}"
    assert len(parse_rdf(text.encode(), "x", "json-ld")) == 1


def test_a_value_that_python_has_no_type_for_is_kept_without_a_word(caplog: pytest.LogCaptureFixture) -> None:
    with caplog.at_level(logging.DEBUG):
        graph = parse_rdf(f'<urn:a> <urn:b> "-0500-01-01"^^<{XSD.date}> .'.encode(), "x", "turtle")
    assert [str(value) for value in graph.objects()] == ["-0500-01-01"]
    assert not caplog.records


@pytest.mark.parametrize("format", FORMATS)
@given(data=st.binary(max_size=200) | st.text(max_size=200).map(str.encode))
def test_no_input_ends_in_a_traceback(format: str, data: bytes) -> None:
    with contextlib.suppress(Unusable):
        parse_rdf(data, "received", format)


_JSON = st.recursive(
    st.none() | st.booleans() | st.floats(allow_nan=False) | st.integers() | st.text(max_size=8),
    lambda inner: (
        st.lists(inner, max_size=3)
        | st.dictionaries(
            st.sampled_from(
                ["@context", "@id", "@type", "@graph", "@value", "@list", "@import", "@vocab", "urn:p"]
            ),
            inner,
            max_size=4,
        )
    ),
    max_leaves=12,
)


@given(_JSON)
def test_no_json_ends_in_a_traceback(document: object) -> None:
    with contextlib.suppress(Unusable):
        parse_rdf(json.dumps(document).encode(), "received", "json-ld")
