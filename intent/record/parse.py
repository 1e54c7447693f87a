"""RDF received from elsewhere, read without opening anything but what is given.

Nothing that a document names is fetched: no context, no import, no entity. It is read with pyoxigraph, which
says where a fault stands and which loads no remote context.

A record is one graph. Where a format has several, the statements may all stand in one of them, whatever its name; in
two or more they are refused: graphs of one file may be states of different days, which put together would be none.
"""

from __future__ import annotations

import logging
import re
from collections.abc import Iterable, Iterator
from contextlib import contextmanager

import pyoxigraph as ox
from rdflib import RDF, XSD, BNode, Graph, Literal, URIRef
from rdflib.term import Node

from intent.diagnostics import Span, refusal, refusal_of_file
from intent.language.message import say
from intent.names import PREFIXES, Triple
from intent.record.closed_json import LONGEST_LINE, refuse_unclosed

_READERS = {
    "turtle": (ox.RdfFormat.TURTLE, "Turtle"),
    "trig": (ox.RdfFormat.TRIG, "TriG"),
    "n-triples": (ox.RdfFormat.N_TRIPLES, "N-Triples"),
    "json-ld": (ox.RdfFormat.JSON_LD, "JSON-LD"),
    "rdf-xml": (ox.RdfFormat.RDF_XML, "RDF/XML"),
}
FORMATS = tuple(_READERS)
_RELATIVE = "relative://document/"
"""A base that no IRI can have, so that relative ones are noticed: the JSON-LD reader drops them silently."""
_PLACE = re.compile(r"^Parser error at [^:]*: |\s*\(line \d+\)$")
_DOCTYPE = re.compile(r"<!\s*(?:DOCTYPE|ENTITY)\b")
_MARKUP = {RDF.XMLLiteral, RDF.HTML}
_LEXICAL = {
    XSD.boolean: re.compile(r"true|false|0|1"),
    XSD.integer: re.compile(r"[+-]?[0-9]{1,100}"),
    XSD.decimal: re.compile(r"[+-]?(?=\.?[0-9])[0-9]{0,100}(?:\.[0-9]{0,100})?"),
}
"""How values that are counted with are written; XML Schema Datatypes 1.1, with a limit to their length."""


def empty_graph() -> Graph:
    """A graph that knows the record's prefixes and no others."""
    graph = Graph(bind_namespaces="none")
    for prefix, namespace in PREFIXES.items():
        graph.bind(prefix, namespace)
    return graph


def parse_rdf(data: bytes, file: str, format: str) -> Graph:
    """The graph of a document in one of `FORMATS`; blank nodes are kept.

    Raises `Unusable` with the place of the first fault, where the document is not in the format, or asks for
    anything outside itself.
    """
    graph = empty_graph()
    for triple in parse_triples(data, file, format):
        graph.add(triple)
    return graph


def parse_triples(data: bytes, file: str, format: str) -> list[Triple]:
    """The same as triples, in the order of the document."""
    kind, name = _READERS[format]
    text = _decoded(data, file)
    if format == "json-ld":
        refuse_unclosed(text, file)
    elif format == "rdf-xml":
        _refuse_doctype(text, file)
    try:
        quads = ox.parse(text.encode(), format=kind, base_iri=_RELATIVE if format == "json-ld" else None)
        with _no_warnings():
            return [_triple(quad, file) for quad in _of_one_graph(quads, file)]
    except SyntaxError as error:
        message = say(
            "this is not {format}: {fault}; correct it here, or ask the sender for the file again",
            format=name,
            fault=_what(error),
        )
        raise refusal(f"bad-{format}", message, _span(text, file, error)) from None


def _decoded(data: bytes, file: str) -> str:
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        before = data[: error.start].split(b"\n")
        column = len(before[-1].decode(errors="replace")) + 1
        shown = data.split(b"\n")[len(before) - 1].decode(errors="replace").rstrip("\r")
        message = say("the file is not in UTF-8; save it again with that encoding")
        raise refusal(
            "not-utf-8", message, Span(file=file, line=len(before), column=column, text=shown)
        ) from None


def _refuse_doctype(text: str, file: str) -> None:
    found = _DOCTYPE.search(text)
    if found is not None:
        before = text[: found.start()].split("\n")
        shown = text.split("\n")[len(before) - 1].rstrip("\r")
        message = say(
            "the file declares a document type or entities, which are not read; remove the declaration, "
            "and write out what the entities stand for"
        )
        span = Span(
            file=file, line=len(before), column=len(before[-1]) + 1, text=shown, length=len(found.group())
        )
        raise refusal("xml-doctype", message, span)


def _of_one_graph(quads: Iterable[ox.Quad], file: str) -> Iterator[ox.Quad]:
    """The statements, which must all stand in one graph."""
    first: object = None
    for quad in quads:
        first = first or quad.graph_name
        if quad.graph_name != first:
            other = first if isinstance(quad.graph_name, ox.DefaultGraph) else quad.graph_name
            message = say(
                "the file has statements in more than one graph, one of them {other}; put them into one, or "
                "name a file for each, since a record is one graph",
                other=str(other),
            )
            raise refusal_of_file("named-graph", message, file)
        yield quad


def _triple(quad: ox.Quad, file: str) -> Triple:
    return _node(quad.subject, file), _node(quad.predicate, file), _node(quad.object, file)


def _node(node: object, file: str) -> Node:
    if isinstance(node, ox.NamedNode):
        return _iri(node.value, file)
    if isinstance(node, ox.BlankNode):
        return BNode(node.value)
    if isinstance(node, ox.Literal):
        return _literal(node, file)
    message = say(
        "the file makes a statement about a statement, {statement}; a record cannot hold it",
        statement=str(node),
    )
    raise refusal_of_file("not-held", message, file)


def _iri(iri: str, file: str) -> URIRef:
    if iri.startswith("relative:"):
        message = say(
            "`{iri}` is not a whole IRI, and the file says nothing that completes it; "
            "write `https://…` or `urn:…`, or give an `@base`",
            iri=iri.removeprefix(_RELATIVE),
        )
        raise refusal_of_file("relative-iri", message, file)
    return URIRef(iri)


def _literal(node: ox.Literal, file: str) -> Literal:
    if node.language is not None:
        if node.direction is not None:
            message = say(
                "the text {text} has a direction of writing, which a record cannot hold; leave it out",
                text=str(node),
            )
            raise refusal_of_file("not-held", message, file)
        return Literal(node.value, lang=node.language)
    datatype = URIRef(node.datatype.value)
    if datatype == XSD.string:
        return Literal(node.value)
    if datatype in _MARKUP:
        message = say(
            "the file holds marked-up text (`{text}`); a record holds plain text, so leave the tags out",
            text=_short(node.value),
        )
        raise refusal_of_file("markup", message, file)
    lexical = _LEXICAL.get(datatype)
    if lexical is not None and not lexical.fullmatch(node.value):
        short = datatype.rsplit("#", 1)[-1]
        raise refusal(
            "bad-literal",
            say("`{text}` is not written as xsd:{datatype} is", text=_short(node.value), datatype=short),
            Span(file=file),
        )
    return Literal(node.value, datatype=datatype, normalize=False)


def _short(text: str) -> str:
    return text if len(text) <= 40 else f"{text[:40]}…"


@contextmanager
def _no_warnings() -> Iterator[None]:
    """rdflib logs a traceback for a value that it cannot convert (a year before 1, say); it is kept as written."""
    log = logging.getLogger("rdflib.term")
    before = log.disabled
    log.disabled = True
    try:
        yield
    finally:
        log.disabled = before


def _what(error: SyntaxError) -> str:
    message = _PLACE.sub("", _PLACE.sub("", error.msg))
    return message[:1].lower() + message[1:] if message[1:2].islower() else message


def _span(text: str, file: str, error: SyntaxError) -> Span:
    if not error.lineno:
        return Span(file=file)
    lines = text.split("\n")
    shown = lines[error.lineno - 1].rstrip("\r") if error.lineno <= len(lines) else ""
    start, end = error.offset or 0, error.end_offset or 0
    length = end - start if error.end_lineno == error.lineno else 1
    return Span(
        file=file,
        line=error.lineno,
        column=start,
        text=shown if len(shown) <= LONGEST_LINE else "",
        length=max(1, length),
    )
