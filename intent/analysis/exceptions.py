"""Which instructions prevail over which requirements and prohibitions, whatever is proposed."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from intent.analysis.examination.examine import undisturbed
from intent.analysis.examination.topic_claims import TopicClaims, topics_claimed
from intent.model.work import Modality, Work
from intent.values.sets import is_within, meet
from intent.variance.case import Case
from intent.variance.precedence import Claim, leaves_no_value, prevails


@dataclass(frozen=True, slots=True)
class Exceptions:
    """By identifier of an instruction, in the order of the text."""

    to: Mapping[str, tuple[str, ...]]
    """Of a requirement or prohibition: what prevails over it wherever both speak of the same."""
    earlier: Mapping[str, tuple[str, ...]]
    """Of a later choice without a condition of its own: the earlier ones, which must not be to be had."""


def exceptions_in(work: Work) -> Exceptions:
    """The exceptions of a documentation, by the rules of precedence."""
    case = undisturbed(work)
    to: dict[str, dict[str, None]] = {}
    earlier: dict[str, dict[str, None]] = {}
    for topic in topics_claimed(case):
        for demand in topic.demands:
            over = [one for one in topic.claims if _is_exception(case, topic, one, demand)]
            to.setdefault(demand.line.identifier, {}).update((one.line.identifier, None) for one in over)
        chosen = [one.line for one in topic.permissions if one.line.choice is not None]
        for later in chosen:
            if not later.conditions:
                before = [one for one in chosen if (one.choice or 0) < (later.choice or 0)]
                earlier.setdefault(later.identifier, {}).update((one.identifier, None) for one in before)
    return Exceptions(
        {line: tuple(found) for line, found in to.items()},
        {line: tuple(found) for line, found in earlier.items()},
    )


def _is_exception(case: Case, topic: TopicClaims, one: Claim, demand: Claim) -> bool:
    """Whether it prevails, and admits something that the demand is against."""
    if one.line.modality is not Modality.ALLOWED and not leaves_no_value(one, demand):
        return False
    assert one.admitted is not None  # claims whose values are not known are no part of a topic
    satisfying = topic.satisfied_by[demand.line.identifier]
    if is_within(meet(topic.whole, one.admitted), satisfying):
        return False
    return prevails(case, one, demand) is not None
