"""Where those to whom something is sent find another verdict, since what is kept in the house is not told to them."""

from __future__ import annotations

from collections.abc import Iterator

from intent.analysis.comparison.turns import compare_verdicts
from intent.diagnostics import Diagnostic, Severity, Span
from intent.effects.assess import assess
from intent.language.message import say
from intent.names import INTENT
from intent.reading.proposal import Proposal
from intent.variance.result import Variance, Verdict


def turned_by_withholding(proposal: Proposal, sent: Variance) -> Iterator[Diagnostic]:
    """A warning for each row; ``sent`` is what those who receive it find."""
    turn = compare_verdicts(assess(proposal.documentation.work, proposal.installation), sent)
    span = proposal.reading.spans.get(proposal.installation.iri, Span(file=str(INTENT.Installation)))
    for row in turn.rows:
        message = say(
            "with what is kept in the house, {characteristic} of {subject} is {before}; "
            "for those who receive it, it is {after}",
            characteristic=row.characteristic,
            subject=row.subject.written,
            before=row.before or Verdict.AS_DOCUMENTED,
            after=row.after or Verdict.AS_DOCUMENTED,
        )
        yield Diagnostic(
            slug="verdict-turns",
            message=message,
            span=span,
            severity=Severity.WARNING,
            subject=row.subject.written,
        )
