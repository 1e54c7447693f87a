"""How Turtle is written: prefixes, statements of one subject, nested nodes, and terms; by all who write it here.

Source: W3C, RDF 1.1 Turtle (25 February 2014). A graph is written by `canonical`; shapes nest, and a reader follows
them best where each stands whole and in the order in which it is made, so that an export writes them from these.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from fractions import Fraction

from rdflib import XSD, Literal

from intent.names import PREFIXES
from intent.record.lexical import (
    XSD_BOOLEAN,
    XSD_DECIMAL,
    XSD_INTEGER,
    Shortener,
    canonical_value,
    full_iri,
    quoted_at_length,
    split_iri,
)

Statement = tuple[str, str]
"""A property and its value, or its values, as they are written."""
_BARE = {
    XSD_BOOLEAN: re.compile(r"true|false"),
    XSD_INTEGER: re.compile(r"-?[0-9]+"),
    XSD_DECIMAL: re.compile(r"-?[0-9]+\.[0-9]+"),
}
"""What Turtle reads as a value of its datatype without quotation marks."""
_BY_NAMESPACE = {namespace: prefix for prefix, namespace in PREFIXES.items()}
_DECIMALS = 20
"""Decimals of a number that no decimal gives exactly. Cutting off never turns two numbers round."""


def prologue(prefixes: Iterable[str], comment: str) -> str:
    """A comment on top, and those of the record's own prefixes that are named."""
    lines = "".join(f"# {line}".rstrip() + "\n" for line in comment.splitlines())
    return f"{lines}\n{prefix_lines({name: PREFIXES[name] for name in prefixes})}"


def prefix_lines(prefixes: Mapping[str, str]) -> str:
    """The prefixes, a line each."""
    return "".join(f"@prefix {name}: {full_iri(prefixes[name])} .\n" for name in sorted(prefixes))


def subject_block(subject: str, statements: Iterable[Statement]) -> str:
    """Everything that is said of one subject, a line for each property."""
    return block_of_lines(subject, (f"{name} {value}" for name, value in statements))


def block_of_lines(subject: str, lines: Iterable[str]) -> str:
    """The same where each property and its values are written already."""
    return f"{subject} " + " ;\n    ".join(lines) + " .\n"


def nested_node(statements: Iterable[Statement]) -> str:
    """A node without a name, in the place of a value."""
    return "[ " + " ; ".join(f"{name} {value}" for name, value in statements) + " ]"


def collection(items: Iterable[str]) -> str:
    """Terms as a list of RDF."""
    return f"( {' '.join(items)} )"


def iri_term(iri: str) -> str:
    """An IRI with one of the record's own prefixes where one fits, else in angle brackets."""
    namespace, local = split_iri(iri)
    prefix = _BY_NAMESPACE.get(namespace)
    return f"{prefix}:{local}" if prefix is not None and local else full_iri(iri)


def text_term(text: str, language: str = "") -> str:
    """A text, in a language if one is named."""
    return f"{quoted_at_length(text)}@{language.lower()}" if language else quoted_at_length(text)


def decimal_term(number: Fraction) -> str:
    """A number as a decimal of XML Schema."""
    scaled = number.numerator * 10**_DECIMALS // number.denominator
    whole, rest = divmod(abs(scaled), 10**_DECIMALS)
    digits = f"{rest:0{_DECIMALS}d}".rstrip("0") or "0"
    return f"{'-' if scaled < 0 else ''}{whole}.{digits}"


def literal_term(literal: Literal, shortener: Shortener) -> str:
    """A literal of a graph, in the canonical form of its datatype."""
    if literal.language or literal.datatype is None or literal.datatype == XSD.string:
        return text_term(str(literal), literal.language or "")
    datatype = str(literal.datatype)
    text = canonical_value(str(literal), datatype)
    bare = _BARE.get(datatype)
    if bare is not None and bare.fullmatch(text):
        return text
    return f"{quoted_at_length(text)}^^{shortener.short(datatype) or full_iri(datatype)}"
