"""The documentation looked at by itself: every check, in one table, and its findings placed in the text."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence

from intent.analysis.examination.asks_in_vain import asks_in_vain
from intent.analysis.examination.breakable_aggregates import aggregate_can_break
from intent.analysis.examination.clashes import cannot_be_met
from intent.analysis.examination.documented_departures import documented_departs
from intent.analysis.examination.findings import Finding, placed
from intent.analysis.examination.idle import idle
from intent.analysis.examination.irreconcilable import dilemma
from intent.analysis.examination.left_silent import left_silent
from intent.analysis.examination.out_of_time import answers_out_of_time, out_of_time
from intent.analysis.examination.superseding import no_effect
from intent.analysis.examination.topic_claims import TopicClaims, topics_claimed
from intent.analysis.examination.unusable_permissions import never_used
from intent.diagnostics import Diagnostic, Span
from intent.model.installation import Installation
from intent.model.work import Work
from intent.values.dates import FIRST_DAY, LAST_DAY, DaySpan
from intent.variance.case import Case, lay_out

Check = Callable[[Case, Sequence[TopicClaims]], Iterator[Finding]]

CHECKS: tuple[Check, ...] = (
    cannot_be_met,
    dilemma,
    never_used,
    idle,
    documented_departs,
    asks_in_vain,
    aggregate_can_break,
    no_effect,
    left_silent,
    out_of_time,
)
"""Each yields findings of one kind; none rests on another's. What has no source is said by the shapes."""


def undisturbed(work: Work) -> Case:
    """The case of a work on all days, with nothing proposed and nothing answered."""
    return lay_out(work, Installation(iri="", title="", dates=DaySpan(FIRST_DAY, LAST_DAY), work=work.iri))


def analyse(work: Work, spans: Mapping[str, Span]) -> tuple[Diagnostic, ...]:
    """What is found in the documentation of a work, before any installation; ``spans`` says where each node stands."""
    return placed(findings_about(undisturbed(work)), spans, work.iri)


def findings_about(case: Case) -> Iterator[Finding]:
    """What every check finds in a documentation, in the order of the checks."""
    topics = topics_claimed(case)
    for check in CHECKS:
        yield from check(case, topics)


def analyse_answers(
    work: Work, installation: Installation, spans: Mapping[str, Span]
) -> tuple[Diagnostic, ...]:
    """What is found in the answers that an installation has had."""
    return placed(answers_out_of_time(work, installation), spans, installation.iri)
