"""A work from a file, in text or RDF: to a graph, and to typed objects.

A work's folder is that of its dossier. What a text names is read from there and from nowhere else.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from pathlib import Path

from rdflib import Graph, URIRef

from intent.diagnostics import Diagnostic, Span, Unusable, has_errors, in_order
from intent.dossier.draft import Reading
from intent.dossier.own_terms import read_terms
from intent.dossier.work_text import read_work
from intent.model.work import Work
from intent.names import INTENT, Triple
from intent.reading.files import as_text, read_bytes, within
from intent.reading.heads import (
    ReadFile,
    is_rdf,
    named_in_head,
    only_one,
    read_file,
    read_graph,
    read_text,
    refuse_installation,
)
from intent.record.closed import closed_findings
from intent.record.consistency import consistency_findings
from intent.record.known_terms import term_findings
from intent.record.load_work import load_work
from intent.record.sent_terms import term_faults
from intent.record.validate import validate_record
from intent.record.written_again import belied_sentences
from intent.vocabulary.loader import extended
from intent.vocabulary.terms import Vocabulary

Findings = tuple[Diagnostic, ...]


@dataclass(frozen=True, slots=True)
class ToBeShaped:
    """A graph as read, with the shapes that it is to meet."""

    reading: Reading
    shapes: str
    beside: Iterable[Triple] = ()
    """The triples of what it refers to."""

    def findings(self) -> Findings:
        """What the reading and the shapes found; no shape speaks where the text has an error already."""
        reading = self.reading
        earlier = (*reading.findings, *reading.forgotten)
        shaped = validate_record(reading.triples, reading.spans, self.shapes, earlier, self.beside)
        return (*reading.findings, *shaped)

    def closed(self, vocabulary: Vocabulary) -> Findings:
        """What a graph from elsewhere says that no text could say."""
        reading = self.reading
        return closed_findings(reading.triples, reading.spans, vocabulary, self.shapes, self.beside)


@dataclass(frozen=True, slots=True, kw_only=True)
class Documentation:
    """A work as read, with its graph, what was found beside the shapes, and its files."""

    work: Work
    reading: Reading
    shaped: Callable[[], Findings]
    """What the reading and the shapes found, once they have spoken."""
    consistency: Findings
    files: tuple[ReadFile, ...]
    folder: Path

    @property
    def graph(self) -> Graph:
        return self.reading.graph

    def validated(self) -> Findings:
        """All findings, those of the shapes among them. Raises `Unusable` where there are errors."""
        return usable([*self.shaped(), *self.consistency])


def usable(findings: Iterable[Diagnostic]) -> tuple[Diagnostic, ...]:
    """The findings in the order of the text. Raises `Unusable` where there are errors among them."""
    ordered = in_order(findings)
    if has_errors(ordered):
        raise Unusable(ordered)
    return ordered


def loadable(shaped: ToBeShaped, vocabulary: Vocabulary, is_text: bool) -> Callable[[], Findings]:
    """What the shapes find of a graph that is about to be loaded, to be asked for.

    A text without errors compiles to a graph that can be loaded unasked, its words being looked up as it is read; a
    graph from elsewhere must first meet its shapes, and use terms that the vocabulary knows; of a text with errors
    everything is to be said. Raises `Unusable` where it cannot be loaded.
    """
    if is_text and not has_errors(shaped.reading.findings):
        return shaped.findings
    reading = shaped.reading
    closed = () if is_text else shaped.closed(vocabulary)
    found = usable((*closed, *shaped.findings()))
    usable(term_findings(reading.triples, reading.spans, vocabulary, shaped.shapes, shaped.beside))
    return lambda: found


def read_documentation(path: Path, shipped: Vocabulary) -> Documentation:
    """A work from a dossier or from RDF, with the shipped vocabulary and its own terms.

    Raises `Unusable` with every error in the file. The shapes have yet to be heard: see `Documentation.validated`.
    """
    content, name = read_bytes(path), str(path)
    if is_rdf(path):
        graph = read_graph(path, content)
        iri = only_one(graph, INTENT.Work, name)
        terms = graph.value(URIRef(iri), INTENT.termsFile)
        vocabulary, more = _vocabulary(shipped, path.parent, str(terms) if terms else None, Span(file=name))
        reading = Reading(iri=iri, triples=graph, spans={iri: Span(file=name)}, findings=())
    else:
        text = read_text(path, content)
        refuse_installation(text, name, shipped)
        vocabulary, more = _vocabulary(shipped, path.parent, *named_in_head(text, name, shipped, "terms"))
        reading = read_work(text, name, vocabulary)
    found = loadable(ToBeShaped(reading, "work"), vocabulary, not is_rdf(path))
    work = load_work(reading.triples, reading.iri, vocabulary)
    belied = belied_sentences(work, reading.spans) if is_rdf(path) else ()
    consistency = usable((*belied, *consistency_findings(work, reading.spans)))
    files = (read_file(path, "dossier", content), *more)
    return Documentation(
        work=work, reading=reading, shaped=found, consistency=consistency, files=files, folder=path.parent
    )


def _vocabulary(
    shipped: Vocabulary, folder: Path, written: str | None, span: Span
) -> tuple[Vocabulary, tuple[ReadFile, ...]]:
    """The vocabulary with a collection's own terms, from Turtle or from a Markdown table."""
    if written is None:
        return shipped, ()
    path = within(folder, written, span)
    content = named_file(path, span)
    if is_rdf(path):
        graph = read_graph(path, content)
        usable(term_faults(graph, str(path), shipped))
        turtle = graph.serialize(format="nt").encode()
    else:
        turtle, findings = read_terms(as_text(content, str(path)), str(path), shipped)
        usable(findings)
    return extended(shipped, turtle), (read_file(path, "terms", content),)


def named_file(path: Path, span: Span) -> bytes:
    """The bytes of a file that a text names. Raises `Unusable` at the place where it is named."""
    try:
        return read_bytes(path)
    except Unusable as error:
        raise Unusable(
            [Diagnostic(slug=found.slug, message=found.message, span=span) for found in error.diagnostics]
        ) from None
