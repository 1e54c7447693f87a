"""An installation from a file, in text or RDF, beside the work that it is of."""

from __future__ import annotations

import os
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from rdflib import RDF, Graph, URIRef

from intent.diagnostics import Span, refusal, refusal_of_file
from intent.dossier.draft import Reading
from intent.dossier.installation_text import read_installation, read_pool
from intent.model.installation import Installation
from intent.names import INTENT, Triple
from intent.reading.documentation import (
    Documentation,
    Findings,
    ToBeShaped,
    loadable,
    named_file,
    read_documentation,
    usable,
)
from intent.reading.files import as_text, read_bytes, within
from intent.reading.heads import (
    ReadFile,
    is_rdf,
    named_in_head,
    only_one,
    read_file,
    read_graph,
    read_text,
    refuse_work,
)
from intent.record.contradictions import contradictions_in_installation
from intent.record.load_installation import load_installation
from intent.redaction.leaving import Leaving, what_may_leave
from intent.vocabulary.terms import Vocabulary


@dataclass(frozen=True, slots=True, kw_only=True)
class Proposal:
    """An installation as read, beside its work."""

    documentation: Documentation
    installation: Installation
    reading: Reading
    shaped: Callable[[], Findings]
    """What the reading and the shapes found, once they have spoken."""
    files: tuple[ReadFile, ...]

    @property
    def graph(self) -> Graph:
        return self.reading.graph

    def validated(self) -> Findings:
        """All findings of the work and the installation. Raises `Unusable` where there are errors."""
        return (*self.documentation.validated(), *usable(self.shaped()))


def read_proposal(path: Path, work_path: Path | None, shipped: Vocabulary) -> Proposal:
    """An installation, with the work that it names or that is given.

    Raises `Unusable` with every error in the file. The shapes have yet to be heard: see `Proposal.validated`.
    """
    opened = _open(path)
    named, span = _named_work(opened, shipped)
    is_whole = isinstance(opened.held, Graph) and (None, RDF.type, INTENT.Work) in opened.held
    given = path if is_whole and work_path is None else _work_path(path, named, span, work_path)
    documentation = read_documentation(given, shipped)
    if work_path is not None:
        _refuse_another(path, named, span, documentation, shipped)
    return _beside(opened, documentation)


def read_beside(path: Path, documentation: Documentation) -> Proposal:
    """An installation beside a work already read, whatever work it names. Raises `Unusable` like `read_proposal`."""
    return _beside(_open(path), documentation)


@dataclass(frozen=True, slots=True)
class _Opened:
    """The file of an installation, and the text or graph that it holds."""

    path: Path
    content: bytes
    held: str | Graph


def _open(path: Path) -> _Opened:
    content = read_bytes(path)
    return _Opened(path, content, read_graph(path, content) if is_rdf(path) else read_text(path, content))


def _named_work(opened: _Opened, vocabulary: Vocabulary) -> tuple[str | None, Span]:
    """The file of the work that an installation names, and where it does so."""
    name = str(opened.path)
    if isinstance(opened.held, str):
        named, span = named_in_head(opened.held, name, vocabulary, "work")
        if named is None:
            refuse_work(opened.held, name, vocabulary)
        return named, span
    written = opened.held.value(URIRef(only_one(opened.held, INTENT.Installation, name)), INTENT.workFile)
    return str(written) if written else None, Span(file=name)


def _beside(opened: _Opened, documentation: Documentation) -> Proposal:
    path, work = opened.path, documentation.work
    read = _from_text if isinstance(opened.held, str) else _from_rdf
    reading, pool_files = read(opened, documentation)
    shaped = ToBeShaped(reading, "installation", _named_in(reading, documentation.reading))
    found = loadable(shaped, work.vocabulary, not is_rdf(path))
    installation = load_installation(reading.triples, reading.iri, work, documentation.reading.triples)
    usable(tuple(contradictions_in_installation(work, installation, reading.spans)))
    files = (*documentation.files, read_file(path, "installation", opened.content), *pool_files)
    return Proposal(
        documentation=documentation, installation=installation, reading=reading, shaped=found, files=files
    )


def _from_text(opened: _Opened, documentation: Documentation) -> tuple[Reading, tuple[ReadFile, ...]]:
    path, name, text, work = opened.path, str(opened.path), str(opened.held), documentation.work
    pool, pool_files = _pool(path, documentation, *named_in_head(text, name, work.vocabulary, "pool"))
    return _joined(read_installation(text, name, work, pool), pool), pool_files


def _from_rdf(opened: _Opened, documentation: Documentation) -> tuple[Reading, tuple[ReadFile, ...]]:
    name, graph = str(opened.path), opened.held
    assert isinstance(graph, Graph)
    iri = only_one(graph, INTENT.Installation, name)
    if URIRef(documentation.work.iri) not in set(graph.objects(URIRef(iri), INTENT.ofWork)):
        message = f"this is not an installation of “{documentation.work.title}” ({documentation.work.iri})"
        raise refusal_of_file("another-work", message, name)
    return Reading(iri=iri, triples=graph, spans={iri: Span(file=name)}, findings=()), ()


def _work_path(path: Path, named: str | None, span: Span, given: Path | None) -> Path:
    """Where the work of an installation is: as given, or as the installation names it."""
    from_text = Path(os.path.normpath(path.parent / named)) if named else None
    if given is None and from_text is None:
        message = "the installation names no work; write `- work: ../work.md`, or name the work before it"
        raise refusal("no-work", message, span)
    if given is None and from_text is not None and not from_text.exists():
        message = f"there is no file `{named}` beside this one; say where the work is"
        raise refusal("no-file", message, span)
    return given or from_text or path


def _refuse_another(
    path: Path, named: str | None, span: Span, documentation: Documentation, shipped: Vocabulary
) -> None:
    """The work that was given must be the one that the installation names, in whatever form."""
    other = Path(os.path.normpath(path.parent / named)) if named else None
    if other is None or not other.exists() or other.resolve() == Path(documentation.files[0].name).resolve():
        return
    if read_documentation(other, shipped).work.iri != documentation.work.iri:
        message = f"this is an installation of `{named}`, not of “{documentation.work.title}”"
        raise refusal("another-work", message, span)


def _pool(
    path: Path, documentation: Documentation, written: str | None, span: Span
) -> tuple[Reading | None, tuple[ReadFile, ...]]:
    """The pool file that an installation names, which lies in the work's folder."""
    if written is None:
        return None, ()
    inside = path.parent.resolve().is_relative_to(documentation.folder.resolve())
    pool_path = within(documentation.folder, written, span, path.parent if inside else None)
    content = named_file(pool_path, span)
    reading = read_pool(as_text(content, str(pool_path)), str(pool_path), documentation.work)
    usable(reading.findings)
    return reading, (read_file(pool_path, "pool", content),)


def leaving_of(documentation: Documentation, proposal: Proposal | None) -> Leaving:
    """What may leave the house of a work as read, and of an installation of it if there is one."""
    own = documentation.reading.triples
    if proposal is None:
        return what_may_leave(documentation.work, own)
    return what_may_leave(documentation.work, own, proposal.installation, proposal.reading.triples)


def _named_in(reading: Reading, of_work: Reading) -> tuple[Triple, ...]:
    """What the work says of the things that an installation names, and of the lines of the headings that it names."""
    named = {value for _, _, value in reading.triples}
    named |= {
        line for line, joint, heading in of_work.triples if joint == INTENT.inHeading and heading in named
    }
    return tuple(triple for triple in of_work.triples if triple[0] in named)


def _joined(reading: Reading, pool: Reading | None) -> Reading:
    """An installation's graph with the devices of its pool."""
    if pool is None:
        return reading
    triples = [*reading.triples, *pool.triples]
    return Reading(
        iri=reading.iri, triples=triples, spans={**pool.spans, **reading.spans}, findings=reading.findings
    )
