"""What was judged of a proposal, as it may be told to anybody who opens a cabinet: without what stays in the house."""

from __future__ import annotations

from intent.reading.proposal import Proposal, leaving_of
from intent.variance.result import Variance


def without_what_stays(proposal: Proposal, judged: Variance) -> Variance:
    """The work and the installation as they may leave, with the verdicts of the whole proposal on what is left."""
    leaving = leaving_of(proposal.documentation, proposal)
    assert leaving.installation is not None
    kept = leaving.internal_parts
    rows = tuple(row for row in judged.rows if kept.isdisjoint(row.subject.members))
    return Variance(
        work=leaving.work,
        installation=leaving.installation,
        outcome=judged.outcome,
        sentence=judged.sentence,
        rows=rows,
    )
