"""A topic judged on one day: ground by ground, each part, pair or whole by itself, and the gravest of all."""

from __future__ import annotations

import datetime
from collections.abc import Iterable
from dataclasses import replace

from intent.variance.case import Case
from intent.variance.change import change_of, documented_for
from intent.variance.found import Found, gravity
from intent.variance.inquiring import inquiries, speaking_on
from intent.variance.judged_amounts import judge_aggregate
from intent.variance.judged_presence import judge_presence
from intent.variance.result import Verdict
from intent.variance.says import Said, ask
from intent.variance.topics import EachIndex, Topic, TopicKind
from intent.variance.verdict import Judgement, judge_ground, once


def judge_day(case: Case, index: EachIndex, topic: Topic, day: datetime.date) -> Found | None:
    """The gravest of all grounds; of equals the artist's intent, with what is open on the others."""
    grounds = sorted(
        {line.ground for line in (*topic.lines, *topic.counters)} | {"intent"}, key=_ground_order
    )
    found = [
        judged for ground in grounds if (judged := _of_ground(case, index, topic, ground, day)) is not None
    ]
    if not found:
        return None
    gravest = max(found, key=lambda judged: gravity(case, judged.judgement))
    rest = [judged.judgement for judged in found if judged is not gravest]
    others = [said.line for judgement in rest for said in _against(judgement)]
    return replace(
        gravest,
        judgement=together(gravest.judgement, [one for one in rest if one.verdict in _HALF_SAID]),
        also_against=(*(said.line for said in gravest.judgement.also_against), *others),
        is_broken_beyond_practice=any(one.judgement.is_broken_beyond_practice(case) for one in found),
    )


_HALF_SAID = frozenset({Verdict.CONDITIONAL, Verdict.UNKNOWN})
"""Verdicts of which everything that is open must be named: closing what one ground asks leaves the other's."""


def together(gravest: Judgement, others: Iterable[Judgement]) -> Judgement:
    """One judgement with all that governs, and all that is open, in others of the same verdict."""
    every = [gravest, *(one for one in others if one.verdict is gravest.verdict)]
    return replace(
        gravest,
        governing=once(said for one in every for said in one.governing),
        excused_by=tuple(dict.fromkeys(line for one in every for line in one.excused_by)),
        set_aside=tuple(dict.fromkeys(aside for one in every for aside in one.set_aside)),
        open=tuple(dict.fromkeys(item for one in every for item in one.open)),
        over=once(said for one in every for said in one.over),
    )


def _against(judgement: Judgement) -> tuple[Said, ...]:
    """The instructions that stand against a value, where any does."""
    if judgement.verdict not in {Verdict.FORBIDDEN, Verdict.BREACH, Verdict.CONTRADICTION}:
        return ()
    return (*judgement.governing, *judgement.also_against)


def _ground_order(ground: str) -> tuple[bool, str]:
    return ground != "intent", ground


def _of_ground(case: Case, index: EachIndex, topic: Topic, ground: str, day: datetime.date) -> Found | None:
    if topic.kind is TopicKind.AGGREGATE:
        return judge_aggregate(case, index, topic, ground, day)
    if topic.kind is TopicKind.PRESENCE:
        return judge_presence(case, topic, ground, day)
    assert topic.characteristic is not None
    characteristic, (subject,) = topic.characteristic, topic.members
    value, documented = (
        case.proposed.value(subject, characteristic),
        documented_for(case, subject, characteristic),
    )
    speaking = speaking_on(case, topic.lines, topic.members, ground, day)
    questions = inquiries(case, topic, speaking, value=value, documented=documented)
    judgement = judge_ground(
        case, ask(case, questions, topic.members, day), change_of(case, subject, characteristic), ground
    )
    if judgement is None:
        return None
    before, after = (state.words(subject, characteristic) for state in (case.documented, case.proposed))
    return Found(judgement=judgement, ground=ground, documented=before, proposed=after)
