"""What two grounds ask that no value meets together, found in the documentation before anything is proposed."""

from __future__ import annotations

from collections.abc import Hashable, Iterator, Sequence

from intent.analysis.examination.compatibility import can_hold_together
from intent.analysis.examination.findings import Finding, topic_words, where_conditions_hold
from intent.analysis.examination.topic_claims import TopicClaims
from intent.language.message import say
from intent.model.assertions import Aggregate
from intent.values.dates import LAST_DAY
from intent.variance.case import Case
from intent.variance.dilemmas import Demand, Dilemma, across_grounds, dilemma_words
from intent.variance.wholes import whole_key


def dilemma(case: Case, topics: Sequence[TopicClaims]) -> Iterator[Finding]:
    """One finding for each set of instructions of several grounds, over all the subjects on which it clashes."""
    together: dict[Hashable, list[TopicClaims]] = {}
    for topic in topics:
        if topic.demands:
            together.setdefault(_of_one_thing(case, topic), []).append(topic)
    found: dict[Dilemma, list[TopicClaims]] = {}
    for every in together.values():
        demands = [demand for topic in every for demand in _demands(topic)]
        for clash in across_grounds(every[0].whole, demands):
            if can_hold_together(case, clash, every[0].members):
                found.setdefault(clash, []).append(every[0])
    for clash, concerned in found.items():
        yield _finding(case, clash, concerned)


def _of_one_thing(case: Case, topic: TopicClaims) -> Hashable:
    """What several grounds speak of, whichever way each puts it."""
    is_whole = topic.aggregate is not Aggregate.EACH
    return whole_key(case, topic.demands[0].line) if is_whole else topic.key


def _demands(topic: TopicClaims) -> Iterator[Demand]:
    for claim in topic.demands:
        yield claim.line, topic.satisfied_by[claim.line.identifier]


def _finding(case: Case, dilemma: Dilemma, topics: Sequence[TopicClaims]) -> Finding:
    last = dilemma[-1]
    message = say(
        "a dilemma about the {topic}: {text}",
        topic=topic_words(case.work, topics),
        text=dilemma_words(case, dilemma, LAST_DAY),
    )
    return Finding(
        slug="dilemma",
        message=where_conditions_hold(message, dilemma),
        node=last.iri,
        subject=last.identifier,
        lines=tuple(line.identifier for line in dilemma),
    )
