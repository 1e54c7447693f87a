"""Turtle for shapes and facts, written as text: in the order in which it is made, with no generated names.

Shapes nest, and a reader follows them best where each stands whole; a graph library would tear them apart.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction

from rdflib import Literal

from intent.names import PREFIXES

_PREFIXES = {**PREFIXES, "odrl": "http://www.w3.org/ns/odrl/2/", "sh": "http://www.w3.org/ns/shacl#"}
_PLACES = 20
"""Decimals of a number that no decimal gives exactly. Cutting off never turns two numbers round."""


def prologue(prefixes: Iterable[str], comment: str) -> str:
    """The comment on top, and the prefixes."""
    lines = [f"# {line}".rstrip() for line in comment.splitlines()]
    lines += ["", *(f"@prefix {name}: <{_PREFIXES[name]}> ." for name in sorted(prefixes))]
    return "\n".join(lines) + "\n"


def iri(text: str) -> str:
    """An IRI with its prefix where one fits, else in angle brackets."""
    for name, namespace in _PREFIXES.items():
        rest = text.removeprefix(namespace)
        if rest != text and rest.replace("-", "").isalnum() and rest.isascii():
            return f"{name}:{rest}"
    return f"<{text}>"


def words(text: str, language: str = "en") -> str:
    return str(Literal(text, lang=language).n3())


def plain(text: str) -> str:
    return str(Literal(text).n3())


def number(value: Fraction) -> str:
    """A decimal of XML Schema."""
    scaled = value.numerator * 10**_PLACES // value.denominator
    whole, rest = divmod(abs(scaled), 10**_PLACES)
    digits = f"{rest:0{_PLACES}d}".rstrip("0") or "0"
    return f"{'-' if scaled < 0 else ''}{whole}.{digits}"


def listed(items: Iterable[str]) -> str:
    return f"( {' '.join(items)} )"


def block(subject: str, statements: Sequence[tuple[str, str]]) -> str:
    """One subject with its statements, a line each."""
    lines = [f"    {predicate} {value}" for predicate, value in statements]
    return f"{subject}\n" + " ;\n".join(lines) + " .\n"


def node(statements: Iterable[tuple[str, str]]) -> str:
    """A nested node without a name."""
    return "[ " + " ; ".join(f"{predicate} {value}" for predicate, value in statements) + " ]"


def together(statements: Mapping[str, Sequence[str]]) -> list[tuple[str, str]]:
    """Statements with all the values of a predicate on one line."""
    return [(predicate, ", ".join(values)) for predicate, values in statements.items()]
