"""A work or an installation in another form of its record: the text form, or RDF in one of its formats."""

from __future__ import annotations

from intent.diagnostics import Diagnostic, Severity, Span
from intent.dossier.work_text import read_work
from intent.dossier.write_installation import write_installation
from intent.dossier.write_work import write_work
from intent.language.message import say_of
from intent.reading.documentation import Documentation
from intent.reading.proposal import Proposal
from intent.record.serialize import serialize_rdf

Converted = tuple[str, tuple[Diagnostic, ...]]
"""The other form, and what has no place in it."""


def converted_work(documentation: Documentation, to: str) -> Converted:
    """A work as ``markdown``, or in a format of `serialize_rdf`."""
    if to != "markdown":
        return serialize_rdf(documentation.graph, to), ()
    text = write_work(documentation.work)
    again = read_work(text, "", documentation.work.vocabulary).graph
    return text, _lost(len(set(documentation.graph) - set(again)), documentation.files[0].name)


def converted_installation(proposal: Proposal, to: str) -> Converted:
    """An installation as ``markdown``, or in a format of `serialize_rdf`."""
    if to != "markdown":
        return serialize_rdf(proposal.graph, to), ()
    return write_installation(proposal.installation, proposal.documentation.work), ()


def _lost(count: int, name: str) -> tuple[Diagnostic, ...]:
    if not count:
        return ()
    message = say_of(
        count,
        "1 statement of the graph has no place in the text form and would be lost; keep the graph as well",
        "{count} statements of the graph have no place in the text form and would be lost; keep the graph as well",
        count=count,
    )
    return (Diagnostic(slug="not-in-text", message=message, span=Span(file=name), severity=Severity.WARNING),)
