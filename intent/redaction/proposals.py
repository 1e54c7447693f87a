"""An installation as it may be read by anybody who opens a cabinet: without what stays in the house."""

from __future__ import annotations

from collections.abc import Collection

from intent.reading.proposal import Proposal
from intent.record.load_installation import load_installation
from intent.record.load_work import load_work
from intent.redaction.withholding import without_internal
from intent.variance.result import Row, Variance


def without_what_stays(proposal: Proposal, judged: Variance) -> Variance:
    """The same proposal without what is marked `keep: internal`, with the verdicts of the whole one on its parts."""
    own, other = proposal.documentation.reading.triples, proposal.reading.triples
    left = without_internal(own, other)
    work = load_work(left.triples, judged.work.iri, judged.work.vocabulary)
    more = without_internal(other, own)
    installation = load_installation(more.triples, judged.installation.iri, work, left.triples)
    kept = {part.identifier for part in (*work.parts, *installation.additions) if part.internal}
    rows = tuple(row for row in judged.rows if not _tells_of(row, kept))
    return Variance(
        work=work, installation=installation, outcome=judged.outcome, sentence=judged.sentence, rows=rows
    )


def _tells_of(row: Row, kept: Collection[str]) -> bool:
    return any(member in kept for member in row.members)
