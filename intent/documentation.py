"""The whole way in: from a file, in text or RDF, to a validated graph and typed objects.

A work's folder is that of its dossier. What a text names (terms, pool, the work of an installation) is read from
there and from nowhere else.
"""

from __future__ import annotations

import hashlib
import os
import re
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from rdflib import RDF, Graph, URIRef

from intent.diagnostics import Diagnostic, Span, Unusable, has_errors, in_order
from intent.dossier.draft import Reading
from intent.dossier.installation import read_installation, read_pool
from intent.dossier.terms import read_terms
from intent.dossier.work import read_work
from intent.files import as_text, read_bytes, within
from intent.installation import Installation
from intent.model import Work
from intent.names import INTENT, TERM
from intent.record.consistency import consistency_findings
from intent.record.load_installation import load_installation
from intent.record.load_work import load_work
from intent.record.parse import parse_rdf
from intent.record.validate import validate_record
from intent.vocabulary.loader import extended
from intent.vocabulary.phrases import normal
from intent.vocabulary.terms import Vocabulary

RDF_FORMATS = {
    ".ttl": "turtle",
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


@dataclass(frozen=True, slots=True)
class Documentation:
    """A work as read, with its graph, the places of its nodes, findings that are not errors, and its files."""

    work: Work
    graph: Graph
    spans: Mapping[str, Span]
    findings: tuple[Diagnostic, ...]
    files: tuple[ReadFile, ...]
    folder: Path


@dataclass(frozen=True, slots=True)
class Proposal:
    """An installation as read, beside its work."""

    documentation: Documentation
    installation: Installation
    graph: Graph
    spans: Mapping[str, Span]
    findings: tuple[Diagnostic, ...]
    files: tuple[ReadFile, ...]


def read_documentation(path: Path, shipped: Vocabulary) -> Documentation:
    """A work from a dossier or from RDF, with the shipped vocabulary and its own terms.

    Raises `Unusable` with every error in the file.
    """
    content = read_bytes(path)
    name, folder = str(path), path.parent
    files = [_read(path, "dossier", content)]
    if _is_rdf(path):
        graph = parse_rdf(content, name, RDF_FORMATS[path.suffix.lower()])
        iri = _only(graph, INTENT.Work, name)
        terms = graph.value(URIRef(iri), INTENT.termsFile)
        vocabulary, more = _vocabulary(shipped, folder, str(terms) if terms else None, Span(name))
        reading = Reading(iri, graph, {iri: Span(name)}, ())
    else:
        text = as_text(content, name)
        _refuse_empty(text, name)
        written, span = _field(text, name, shipped, "field-terms")
        vocabulary, more = _vocabulary(shipped, folder, written, span)
        reading = read_work(text, name, vocabulary)
    findings = _validated(reading, "work")
    work = load_work(reading.graph, reading.iri, vocabulary)
    findings = _usable([*findings, *consistency_findings(work, reading.spans)])
    return Documentation(work, reading.graph, reading.spans, findings, (*files, *more), folder)


def read_proposal(path: Path, work_path: Path | None, shipped: Vocabulary) -> Proposal:
    """An installation, with the work that it names or that is given. Raises `Unusable`."""
    content = read_bytes(path)
    name = str(path)
    if _is_rdf(path):
        return _proposal_from_rdf(path, content, work_path, shipped)
    text = as_text(content, name)
    _refuse_empty(text, name)
    named, span = _field(text, name, shipped, "field-work")
    documentation = read_documentation(_work_path(path, named, span, work_path), shipped)
    work = documentation.work
    pool_name, pool_span = _field(text, name, work.vocabulary, "field-pool")
    pool, pool_files = _pool(path, documentation, pool_name, pool_span)
    reading = read_installation(text, name, work, pool)
    graph, spans = _with_pool(reading, pool)
    findings = _validated(
        Reading(reading.iri, graph, spans, reading.findings), "installation", documentation.graph
    )
    installation = load_installation(graph, reading.iri, work, documentation.graph)
    files = (*documentation.files, _read(path, "installation", content), *pool_files)
    return Proposal(documentation, installation, graph, spans, findings, files)


def _proposal_from_rdf(path: Path, content: bytes, work_path: Path | None, shipped: Vocabulary) -> Proposal:
    name = str(path)
    graph = parse_rdf(content, name, RDF_FORMATS[path.suffix.lower()])
    iri = _only(graph, INTENT.Installation, name)
    written = graph.value(URIRef(iri), INTENT.workFile)
    is_whole = (None, RDF.type, INTENT.Work) in graph
    if is_whole and work_path is None:
        documentation = read_documentation(path, shipped)
    else:
        given = _work_path(path, str(written) if written else None, Span(name), work_path)
        documentation = read_documentation(given, shipped)
    if URIRef(documentation.work.iri) not in set(graph.objects(URIRef(iri), INTENT.ofWork)):
        raise Unusable([_another_work(documentation.work, Span(name))])
    reading = Reading(iri, graph, {iri: Span(name)}, ())
    findings = _validated(reading, "installation", documentation.graph)
    installation = load_installation(graph, iri, documentation.work, documentation.graph)
    files = (*documentation.files, _read(path, "installation", content))
    return Proposal(documentation, installation, graph, reading.spans, findings, files)


def is_installation(path: Path, shipped: Vocabulary) -> bool:
    """Whether a file holds an installation rather than a work. Raises `Unusable` where it cannot be read."""
    content = read_bytes(path)
    if _is_rdf(path):
        graph = parse_rdf(content, str(path), RDF_FORMATS[path.suffix.lower()])
        return (None, RDF.type, INTENT.Work) not in graph and (None, RDF.type, INTENT.Installation) in graph
    text = as_text(content, str(path))
    return any(_field(text, "", shipped, key)[0] for key in ("field-work", "field-dates"))


def _is_rdf(path: Path) -> bool:
    return path.suffix.lower() in RDF_FORMATS


def _read(path: Path, role: str, content: bytes) -> ReadFile:
    return ReadFile(role, str(path), hashlib.sha256(content).hexdigest())


def _refuse_empty(text: str, name: str) -> None:
    if not text.strip():
        message = "the file is empty; `intent new` writes a dossier to start from"
        raise Unusable([Diagnostic("empty-file", message, Span(name))])


def _only(graph: Graph, kind: URIRef, name: str) -> str:
    found = sorted(str(node) for node in graph.subjects(RDF.type, kind))
    label = str(kind).rsplit("#", 1)[-1].lower()
    if len(found) != 1:
        what = f"no {label}" if not found else f"{len(found)} of the kind {label}, where one is wanted"
        raise Unusable([Diagnostic(f"no-{label}", f"the graph holds {what}", Span(name))])
    return found[0]


def _validated(reading: Reading, shapes: str, beside: Graph | None = None) -> tuple[Diagnostic, ...]:
    """The findings of a reading with those of the shapes; no shape speaks where the text has an error already."""
    shaped = validate_record(reading.graph, reading.spans, shapes, reading.findings, beside)
    return _usable([*reading.findings, *shaped])


def _usable(findings: list[Diagnostic]) -> tuple[Diagnostic, ...]:
    if has_errors(findings):
        raise Unusable(findings)
    return in_order(findings)


def _field(text: str, name: str, vocabulary: Vocabulary, key: str) -> tuple[str | None, Span]:
    """A field of the head, found before the text is read as a whole, since reading needs what it names."""
    names = vocabulary.fields[str(TERM[key])].names
    for number, line in enumerate(text.splitlines(), start=1):
        if line.startswith("## "):
            break
        match = re.match(r"\s*[-*+]\s+(?P<name>[^:]+?)\s*:\s+(?P<value>\S.*?)\s*$", line)
        if match and normal(match["name"]) in names:
            return match["value"], Span(name, number, match.start("value") + 1, line, len(match["value"]))
    return None, Span(name)


def _vocabulary(
    shipped: Vocabulary, folder: Path, written: str | None, span: Span
) -> tuple[Vocabulary, tuple[ReadFile, ...]]:
    """The vocabulary with a collection's own terms, from Turtle or from a Markdown table."""
    if written is None:
        return shipped, ()
    path = within(folder, written, span)
    content = _named_file(path, span)
    if _is_rdf(path):
        parse_rdf(content, str(path), RDF_FORMATS[path.suffix.lower()])
        turtle = content
    else:
        turtle, findings = read_terms(as_text(content, str(path)), str(path), shipped)
        _usable(list(findings))
    return extended(shipped, turtle), (_read(path, "terms", content),)


def _named_file(path: Path, span: Span) -> bytes:
    try:
        return read_bytes(path)
    except Unusable as error:
        raise Unusable([Diagnostic(found.slug, found.message, span) for found in error.diagnostics]) from None


def _work_path(path: Path, named: str | None, span: Span, given: Path | None) -> Path:
    """Where the work of an installation is: as given, or as the installation names it; the two must agree."""
    from_text = Path(os.path.normpath(path.parent / named)) if named else None
    if given is None and from_text is None:
        message = "the installation names no work; write `- work: ../work.md`, or name the work before it"
        raise Unusable([Diagnostic("no-work", message, span)])
    if given is not None and from_text is not None and not _same_file(given, from_text):
        message = f"this is an installation of `{named}`, not of `{given}`"
        raise Unusable([Diagnostic("another-work", message, span)])
    if given is None and from_text is not None and not from_text.exists():
        message = f"there is no file `{named}` beside this one; say where the work is"
        raise Unusable([Diagnostic("no-file", message, span)])
    return given or from_text or path


def _same_file(one: Path, two: Path) -> bool:
    return not two.exists() or one.resolve() == two.resolve()


def _another_work(work: Work, span: Span) -> Diagnostic:
    return Diagnostic("another-work", f"this is not an installation of “{work.title}” ({work.iri})", span)


def _pool(
    path: Path, documentation: Documentation, written: str | None, span: Span
) -> tuple[Reading | None, tuple[ReadFile, ...]]:
    if written is None:
        return None, ()
    inside = path.parent.resolve().is_relative_to(documentation.folder.resolve())
    pool_path = within(documentation.folder, written, span, path.parent if inside else None)
    content = _named_file(pool_path, span)
    reading = read_pool(as_text(content, str(pool_path)), str(pool_path), documentation.work)
    _usable(list(reading.findings))
    return reading, (_read(pool_path, "pool", content),)


def _with_pool(reading: Reading, pool: Reading | None) -> tuple[Graph, dict[str, Span]]:
    if pool is None:
        return reading.graph, dict(reading.spans)
    for triple in pool.graph:
        reading.graph.add(triple)
    return reading.graph, {**pool.spans, **reading.spans}
