"""What is said of several parts judged on one day and ground: each pair by itself, a whole at once."""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from dataclasses import replace

from intent.model.assertions import Assertion
from intent.values.sets import ValueSet, are_disjoint, is_within
from intent.variance.aggregates import Amount, amounts
from intent.variance.amounts import amount_words
from intent.variance.case import Case
from intent.variance.change import Deviation
from intent.variance.conditions import admitted_amounts, documented_amounts, unchanged_amounts
from intent.variance.excuses import excusing_permissions
from intent.variance.found import Found, gravity
from intent.variance.inquiring import speaking_on
from intent.variance.result import Verdict
from intent.variance.says import Inquiry, ask
from intent.variance.speaking import Speaker
from intent.variance.topics import EachIndex, Topic
from intent.variance.verdict import judge_ground


def judge_aggregate(
    case: Case, index: EachIndex, topic: Topic, ground: str, day: datetime.date
) -> Found | None:
    """Each pair by itself, and the worst of them; a number, a total or a relation at once."""
    assert topic.assertion is not None
    speaking = speaking_on(case, topic.lines, topic.members, ground, day)
    if not speaking:
        return None
    documented = documented_amounts(case, topic.assertion, topic.members)
    found = [
        judged
        for amount in amounts(topic.assertion, topic.members, case.proposed)
        if (
            judged := _amount(
                case,
                index=index,
                topic=topic,
                speaking=speaking,
                amount=amount,
                documented=documented.get(amount.members),
                ground=ground,
                day=day,
            )
        )
    ]
    return max(found, key=lambda judged: gravity(case, judged.judgement), default=None)


def _amount(
    case: Case,
    index: EachIndex,
    topic: Topic,
    speaking: Sequence[Speaker],
    amount: Amount,
    documented: ValueSet | None,
    ground: str,
    day: datetime.date,
) -> Found | None:
    assert topic.assertion is not None
    questions = [
        Inquiry(
            speaker=speaker,
            value=amount.value,
            admitted=admitted_amounts(case, speaker.line.assertion, documented),
            text=topic.said_of,
        )
        for speaker in speaking
    ]
    said = ask(case, questions, topic.members, day)
    change = _change_of_amount(case, topic.assertion, amount.value, documented)
    judgement = judge_ground(case, said, change, ground)
    if judgement is not None and judgement.verdict in {Verdict.FORBIDDEN, Verdict.BREACH}:
        permissions = excusing_permissions(case, index=index, topic=topic, broken=judgement.broken, day=day)
        if permissions is not None:
            judgement = replace(judgement, verdict=Verdict.CONTRADICTION, excused_by=permissions, broken=())
    if judgement is None:
        return None
    before, after = amount_words(case, topic, amount, documented)
    return Found(judgement=judgement, ground=ground, documented=before, proposed=after)


def _change_of_amount(
    case: Case, assertion: Assertion, value: ValueSet, documented: ValueSet | None
) -> Deviation:
    """An amount that is not known to be one value is unchanged only where the same is documented."""
    if documented is None:
        return Deviation(is_unchanged=False, differs=False, is_documented=False)
    same = unchanged_amounts(case, assertion, documented)
    is_within_it = documented.is_point and is_within(value, same)
    return Deviation(is_unchanged=value == documented or is_within_it, differs=are_disjoint(value, same))
