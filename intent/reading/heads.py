"""What a file is, and what the head of a text names, found before it is read as a whole."""

from __future__ import annotations

import hashlib
import re
from dataclasses import dataclass
from pathlib import Path

from rdflib import RDF, Graph, URIRef

from intent.diagnostics import Diagnostic, Span, Unusable, refusal, refusal_of_file
from intent.names import INTENT, TERM
from intent.reading.files import as_text, read_bytes
from intent.record.parse import parse_rdf
from intent.vocabulary.phrases import normal
from intent.vocabulary.terms import Vocabulary

RDF_FORMATS = {
    ".ttl": "turtle",
    ".trig": "trig",
    ".rdf": "rdf-xml",
    ".nt": "n-triples",
    ".jsonld": "json-ld",
    ".json": "json-ld",
}


@dataclass(frozen=True, slots=True)
class ReadFile:
    """A file that was read: what it was, its name as a reader knows it, and its digest."""

    role: str
    name: str
    sha256: str


def read_file(path: Path, role: str, content: bytes) -> ReadFile:
    return ReadFile(role, str(path), hashlib.sha256(content).hexdigest())


def is_rdf(path: Path) -> bool:
    return path.suffix.lower() in RDF_FORMATS


def read_graph(path: Path, content: bytes) -> Graph:
    """The graph of an RDF file. Raises `Unusable`."""
    return parse_rdf(content, str(path), RDF_FORMATS[path.suffix.lower()])


def read_text(path: Path, content: bytes) -> str:
    """The text of a file that must not be empty. Raises `Unusable`."""
    text = as_text(content, str(path))
    if not text.strip():
        message = "the file is empty; `intent new` writes a dossier to start from"
        raise refusal_of_file("empty-file", message, path)
    return text


def named_in_head(text: str, name: str, vocabulary: Vocabulary, key: str) -> tuple[str | None, Span]:
    """The value of a field of the head, and where it stands; none where the head has no such field."""
    names = vocabulary.fields[str(TERM[f"field-{key}"])].names
    for number, line in enumerate(text.splitlines(), start=1):
        if line.startswith("## "):
            break
        match = re.match(r"\s*[-*+]\s+(?P<name>[^:]+?)\s*:\s+(?P<value>\S.*?)\s*$", line)
        if match and normal(match["name"]) in names:
            return match["value"], Span(
                file=name, line=number, column=match.start("value") + 1, text=line, length=len(match["value"])
            )
    return None, Span(file=name)


def only_one(graph: Graph, kind: URIRef, name: str) -> str:
    """The IRI of the one thing of a class in a graph. Raises `Unusable` where there is none, or several."""
    found = sorted(str(node) for node in graph.subjects(RDF.type, kind))
    label = str(kind).rsplit("#", 1)[-1].lower()
    if len(found) != 1:
        what = f"no {label}" if not found else f"{len(found)} of the kind {label}, where one is wanted"
        raise Unusable(
            [Diagnostic(slug=f"no-{label}", message=f"the graph holds {what}", span=Span(file=name))]
        )
    return found[0]


def is_installation(path: Path, shipped: Vocabulary) -> bool:
    """Whether a file holds an installation rather than a work. Raises `Unusable` where it cannot be read."""
    content = read_bytes(path)
    if is_rdf(path):
        graph = read_graph(path, content)
        return (None, RDF.type, INTENT.Work) not in graph and (None, RDF.type, INTENT.Installation) in graph
    text = as_text(content, str(path))
    return any(named_in_head(text, "", shipped, key)[0] for key in ("work", "dates"))


def refuse_installation(text: str, name: str, vocabulary: Vocabulary) -> None:
    """Raises `Unusable` where the text of an installation is named in the place of a work's."""
    written, span = named_in_head(text, name, vocabulary, "work")
    if written:
        message = f"this is an installation; name its work, `{written}`"
        raise refusal("is-an-installation", message, span)


def refuse_work(text: str, name: str, vocabulary: Vocabulary) -> None:
    """Raises `Unusable` where the text of a work is named in the place of an installation's."""
    own = vocabulary.sections[str(TERM["instructions-section"])].names
    parts = vocabulary.sections[str(TERM["parts-section"])].names
    for line in text.splitlines():
        if line.startswith("## ") and normal(line[3:]) in {*own, *parts}:
            message = "this is a work; name an installation"
            raise refusal_of_file("is-a-work", message, name)
