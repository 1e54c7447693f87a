"""Turtle written by hand: what is written is read back as the same terms by two unrelated readers.

Source: W3C, RDF 1.1 Turtle (25 February 2014). The readers are rdflib and Oxigraph.
"""

from __future__ import annotations

from fractions import Fraction

import pyoxigraph as ox
import pytest
from hypothesis import given
from hypothesis import strategies as st
from rdflib import XSD, Graph, Literal, URIRef

from intent.names import INTENT, PREFIXES
from intent.record.turtle_text import (
    collection,
    decimal_term,
    iri_term,
    nested_node,
    prologue,
    subject_block,
    text_term,
)

XML_TEXT = st.text(st.characters(exclude_categories=["Cs"]))
SUBJECT = URIRef("urn:subject")


def value_of(term: str) -> Literal | URIRef:
    """The one value that a term is read as, by both readers."""
    text = prologue(PREFIXES, "A comment,\n\nand more of it.") + subject_block(
        iri_term(SUBJECT), [("rdf:value", term)]
    )
    (found,) = Graph().parse(data=text, format="turtle").objects(SUBJECT)
    (quad,) = ox.parse(text.encode(), format=ox.RdfFormat.TURTLE)
    assert isinstance(found, Literal | URIRef)
    assert isinstance(quad.object, ox.Literal | ox.NamedNode)
    assert quad.object.value == str(found)
    return found


@given(XML_TEXT)
def test_a_text_is_read_back(text: str) -> None:
    assert str(value_of(text_term(text))) == text
    assert value_of(text_term(text, "en")) == Literal(text, lang="en")


@pytest.mark.parametrize("sign", ["\x1b", "\x7f", "\x85", "\x9b"])
def test_nothing_that_a_terminal_obeys_is_written(sign: str) -> None:
    """ISO/IEC 6429: the control characters C0 (but line end and tab, in a long text), delete, and C1."""
    assert sign not in text_term(f"a{sign}b\nc")
    assert str(value_of(text_term(f"a{sign}b\nc"))) == f"a{sign}b\nc"


@given(st.fractions())
def test_a_number_is_a_decimal_next_to_it(number: Fraction) -> None:
    found = value_of(decimal_term(number))
    assert isinstance(found, Literal)
    assert found.datatype == XSD.decimal
    assert abs(Fraction(str(found)) - number) < Fraction(1, 10**19)


@given(st.fractions(), st.fractions())
def test_numbers_keep_their_order(one: Fraction, other: Fraction) -> None:
    low, high = sorted((one, other))
    written = [Fraction(decimal_term(number)) for number in (low, high)]
    assert written == sorted(written)


@pytest.mark.parametrize(
    ("iri", "term"),
    [
        (str(INTENT.Fact), "intent:Fact"),
        ("http://www.w3.org/ns/shacl#path", "sh:path"),
        ("http://www.w3.org/ns/odrl/2/Set", "odrl:Set"),
        (f"{INTENT}a.", f"<{INTENT}a.>"),
        (f"{INTENT}", f"<{INTENT}>"),
        ("urn:uuid:1#R1.1", "<urn:uuid:1#R1.1>"),
    ],
)
def test_an_iri_has_a_prefix_where_one_fits(iri: str, term: str) -> None:
    assert iri_term(iri) == term
    assert value_of(term) == URIRef(iri)


def test_nodes_and_lists_nest() -> None:
    inner = nested_node([("intent:value", collection(["1", "2"])), ("rdf:value", collection([]))])
    text = prologue(["intent", "rdf"], "") + subject_block("<urn:a>", [("intent:value", inner)])
    expected = Graph().parse(
        data=f"<urn:a> <{INTENT.value}> _:b . _:b <{INTENT.value}> (1 2) ; "
        "<http://www.w3.org/1999/02/22-rdf-syntax-ns#value> () .",
        format="turtle",
    )
    assert expected.isomorphic(Graph().parse(data=text, format="turtle"))
