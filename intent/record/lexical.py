"""How terms are written: prefixes, canonical values, quotation marks. One term is always written one way.

Sources: RDF 1.1 Turtle (grammar of PN_LOCAL and of strings), RDF 1.1 N-Triples, XML Schema Datatypes 1.1
(canonical mappings of boolean, integer and decimal), RDF 1.1 Concepts (language tags in lower case).
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field

from rdflib import RDF, XSD, Graph, URIRef

from intent.names import INTENT, PREFIXES

XSD_BOOLEAN, XSD_INTEGER, XSD_DECIMAL = str(XSD.boolean), str(XSD.integer), str(XSD.decimal)
_LOCAL = re.compile(r"[A-Za-z0-9_](?:[A-Za-z0-9_.-]*[A-Za-z0-9_-])?")
_INTEGER = re.compile(r"([+-]?)0*([0-9]+)")
_DECIMAL = re.compile(r"([+-]?)0*([0-9]*)(?:\.([0-9]*?)0*)?")
_BOOLEAN = {"1": "true", "0": "false"}
_ESCAPES = str.maketrans(
    {
        **{chr(code): f"\\u{code:04X}" for code in (*range(32), *range(127, 160))},
        "\b": "\\b",
        "\t": "\\t",
        "\n": "\\n",
        "\f": "\\f",
        "\r": "\\r",
        '"': '\\"',
        "\\": "\\\\",
    }
)
_LONG_ESCAPES = {code: escape for code, escape in _ESCAPES.items() if chr(code) not in '\n\t"'}
_IN_IRI = str.maketrans({char: f"\\u{ord(char):04X}" for char in [*map(chr, range(33)), *'<>"{}|^`\\']})


def prefixes_of(graph: Graph) -> dict[str, str]:
    """The record's prefixes, and one for what belongs to each work and installation of the graph."""
    found = dict(PREFIXES)
    for name, kind in (("work", INTENT.Work), ("installation", INTENT.Installation)):
        bases = sorted(str(node) for node in graph.subjects(RDF.type, kind) if isinstance(node, URIRef))
        for number, base in enumerate(bases, start=1):
            found[name if len(bases) == 1 else f"{name}{number}"] = namespace_of(base)
    return found


def namespace_of(base: str) -> str:
    """What the IRIs within a work or an installation begin with."""
    return base if base.endswith(("/", "#")) else base + "#"


@dataclass(slots=True)
class Shortener:
    """Writes IRIs with a prefix where one fits, and remembers which prefixes it used."""

    prefixes: Mapping[str, str]
    used: dict[str, str] = field(default_factory=dict)
    by_namespace: dict[str, str] = field(init=False)

    def __post_init__(self) -> None:
        self.by_namespace = {name: prefix for prefix, name in sorted(self.prefixes.items(), reverse=True)}

    def short(self, iri: str) -> str | None:
        """The IRI as `work:M1`, if there is a prefix for it."""
        namespace, local = split_iri(iri)
        prefix = self.by_namespace.get(namespace)
        if prefix is None or not local:
            return None
        self.used[prefix] = namespace
        return f"{prefix}:{local}"


def split_iri(iri: str) -> tuple[str, str]:
    """Namespace and local name; no local name where the rest of the IRI cannot stand after a prefix as it is."""
    end = max(iri.rfind("#"), iri.rfind("/")) + 1
    return iri[:end], iri[end:] if _LOCAL.fullmatch(iri, end) else ""


def full_iri(iri: str) -> str:
    return f"<{iri.translate(_IN_IRI)}>"


def quoted(text: str) -> str:
    return f'"{text.translate(_ESCAPES)}"'


def quoted_at_length(text: str) -> str:
    """A text of several lines between three quotation marks, as it reads; any other between one."""
    if "\n" not in text:
        return quoted(text)
    escaped = text.translate(_LONG_ESCAPES).replace('"""', '""\\"')
    if escaped.endswith('"'):
        escaped = escaped[:-1] + '\\"'
    return f'"""{escaped}"""'


def canonical_value(text: str, datatype: str) -> str:
    """The canonical form of a boolean, an integer or a decimal; any other as written."""
    if datatype == XSD_BOOLEAN:
        return _BOOLEAN.get(text, text)
    if datatype == XSD_INTEGER:
        match = _INTEGER.fullmatch(text)
        return text if match is None else _signed(match[1], match[2])
    if datatype == XSD_DECIMAL:
        match = _DECIMAL.fullmatch(text)
        if match is None or not (match[2] or match[3] or text.strip("+-.")):
            return text
        whole = match[2] or "0"
        return _signed(match[1], f"{whole}.{match[3]}" if match[3] else whole)
    return text


def _signed(sign: str, number: str) -> str:
    return f"-{number}" if sign == "-" and number.strip("0.") else number
