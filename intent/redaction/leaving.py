"""What may leave the house of a work, and of an installation of it: what every export, package, card and paper asks.

It is a pure function of the two and their graphs. Nothing that is written for somebody else may be made of anything
but what it gives.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field

from intent.model.installation import Installation
from intent.model.work import Work
from intent.names import Triple
from intent.record.load_installation import load_installation
from intent.record.load_work import load_work
from intent.redaction.withholding import RedactedGraph, WithheldKind, without_internal


@dataclass(frozen=True, slots=True, kw_only=True)
class Leaving:
    """A work as it may leave the house, with an installation of it if there is one, and what was left out."""

    work: Work
    work_graph: tuple[Triple, ...]
    installation: Installation | None
    installation_graph: tuple[Triple, ...]
    withheld: tuple[WithheldKind, ...]
    """The kinds of thing that were left out, in their own order."""
    kept_texts: frozenset[str] = field(repr=False)
    """The texts that were left out, so that they can be looked for in what leaves. Never to be written."""

    @property
    def internal_parts(self) -> frozenset[str]:
        """The parts of which no more may leave than that there are such."""
        added = self.installation.additions if self.installation else ()
        return frozenset(part.identifier for part in (*self.work.parts, *added) if part.internal)


def what_may_leave(
    work: Work,
    work_graph: Iterable[Triple],
    installation: Installation | None = None,
    installation_graph: Iterable[Triple] = (),
) -> Leaving:
    """A work and an installation of it, read anew from what may leave of their graphs."""
    own = without_internal(work_graph, installation_graph)
    other = without_internal(installation_graph, work_graph)
    redacted = load_work(own.triples, work.iri, work.vocabulary)
    return Leaving(
        work=redacted,
        work_graph=own.triples,
        installation=_redacted(installation, other, redacted, own) if installation else None,
        installation_graph=other.triples,
        withheld=tuple(kind for kind in WithheldKind if kind in own.withheld | other.withheld),
        kept_texts=own.texts | other.texts,
    )


def _redacted(
    installation: Installation, graph: RedactedGraph, work: Work, work_graph: RedactedGraph
) -> Installation:
    return load_installation(graph.triples, installation.iri, work, work_graph.triples)
