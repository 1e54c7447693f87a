"""A topic judged on one day: ground by ground, each part, pair or whole by itself, and the gravest of all."""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from intent.language.message import Words, say
from intent.model.assertions import Aggregate, Assertion, ScopeKind
from intent.model.meaning import admitted_values
from intent.model.work import Instruction
from intent.values.sets import ValueSet, are_disjoint, is_within
from intent.variance.aggregates import Amount, amounts
from intent.variance.amounts import amount_words, presence_words
from intent.variance.case import Case
from intent.variance.change import Deviation, change_of, documented_for
from intent.variance.conditions import admitted_amounts, documented_amounts, unchanged_amounts
from intent.variance.excuses import excusing_permissions
from intent.variance.result import Verdict
from intent.variance.says import Inquiry, Said, Says, ask
from intent.variance.speaking import Speaker, speakers
from intent.variance.topics import EachIndex, Topic, TopicKind
from intent.variance.verdict import Judgement, judge_ground, once


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """The judgement of one day, or of its gravest ground, with the values it was about."""

    judgement: Judgement
    ground: str
    documented: Words
    proposed: Words
    also_against: tuple[Instruction, ...] = ()
    is_broken_beyond_practice: bool = False
    """Whether something is broken, on any ground, that does not rank with observed practice."""


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
        return _aggregate(case, index, topic, ground, day)
    if topic.kind is TopicKind.PRESENCE:
        return _presence(case, topic, ground, day)
    assert topic.characteristic is not None
    characteristic, (subject,) = topic.characteristic, topic.members
    value, documented = (
        case.proposed.value(subject, characteristic),
        documented_for(case, subject, characteristic),
    )
    speaking = _speaking(case, topic.lines, topic.members, ground, day)
    questions = _inquiries(case, topic, speaking, value=value, documented=documented)
    judgement = judge_ground(
        case, ask(case, questions, topic.members, day), change_of(case, subject, characteristic), ground
    )
    if judgement is None:
        return None
    before, after = (state.words(subject, characteristic) for state in (case.documented, case.proposed))
    return Found(judgement=judgement, ground=ground, documented=before, proposed=after)


def _inquiries(
    case: Case, topic: Topic, speaking: Iterable[Speaker], *, value: ValueSet, documented: ValueSet | None
) -> list[Inquiry]:
    """What each instruction that speaks of one value is asked."""
    return [
        Inquiry(
            speaker=speaker,
            value=value,
            admitted=admitted_by(case, speaker.line, documented),
            text=topic.said_of,
        )
        for speaker in speaking
    ]


def _speaking(
    case: Case, lines: Sequence[Instruction], members: Sequence[str], ground: str, day: datetime.date
) -> list[Speaker]:
    return speakers(case, [line for line in lines if line.ground == ground], members, day)


def admitted_by(case: Case, line: Instruction, documented: ValueSet | None) -> ValueSet | None:
    assertion = line.assertion
    characteristic = case.vocabulary.characteristics[assertion.characteristic or ""]
    return admitted_values(assertion.expression, characteristic, case.vocabulary, documented)


def _presence(case: Case, topic: Topic, ground: str, day: datetime.date) -> Found | None:
    """Decided by instructions on presence; where none speaks, by those on the number of its scope."""
    assert topic.characteristic is not None
    (subject,) = topic.members
    value, documented = (
        state.value(subject, topic.characteristic) for state in (case.proposed, case.documented)
    )
    is_addition = subject not in case.documented.devices
    speaking = _speaking(case, topic.lines, topic.members, ground, day)
    if not speaking and value == documented:
        return None
    questions = _inquiries(case, topic, speaking, value=value, documented=documented)
    is_decided = any(speaker.over is None for speaker in speaking)
    if not is_decided and value != documented:
        counting = _speaking(case, topic.counters, topic.members, ground, day)
        questions += [question for speaker in counting for question in _counted(case, speaker)]
    said = ask(case, questions, topic.members, day)
    if any(speaker.over is not None and not speaker.over.is_taken_back for speaker in speaking):
        said = [word for word in said if word.says in _AGAINST or not _is_of_number(word)]
    if is_addition:
        said = [word for word in said if not _asks_for_no_more(word)]
    elif value != documented:
        said = [word for word in said if not _is_met_by_additions_alone(case, word)]
    judgement = judge_ground(
        case, said, Deviation(is_unchanged=value == documented, counts_unasked=True), ground
    )
    if judgement is None:
        return None
    before, after = presence_words(case, subject)
    return Found(judgement=judgement, ground=ground, documented=before, proposed=after)


_AGAINST = frozenset({Says.AGAINST, Says.PERHAPS_AGAINST, Says.NOTHING})
"""What a number may still say of a presence whose permission somebody's answer ended: no answer ends in a better
verdict than none would."""


def _is_of_number(said: Said) -> bool:
    return said.line.assertion.aggregate is Aggregate.NUMBER


def _asks_for_no_more(said: Said) -> bool:
    """That a group must be there, or must have a number, does not ask for anything to be added."""
    is_of_additions = said.line.assertion.scope.kind is ScopeKind.ADDITIONS
    return (
        said.says in {Says.MEETS, Says.PERMITS}
        and said.is_requirement
        and (_is_of_number(said) or not is_of_additions)
    )


def _is_met_by_additions_alone(case: Case, said: Said) -> bool:
    """Whether a required number is met, but would not be without what is added: no even exchange."""
    assertion = said.line.assertion
    if not _is_of_number(said) or not said.is_requirement:
        return False
    if said.says not in {Says.MEETS, Says.PERMITS} or said.claim.admitted is None:
        return False
    members = [name for name in case.members[said.line.identifier] if name not in case.scopes.added]
    return any(
        not is_within(amount.value, said.claim.admitted)
        for amount in amounts(assertion, members, case.proposed)
    )


def _counted(case: Case, speaker: Speaker) -> Iterator[Inquiry]:
    assertion = speaker.line.assertion
    members = case.members[speaker.line.identifier]
    documented = documented_amounts(case, assertion, members)
    for amount in amounts(assertion, members, case.proposed):
        admitted = admitted_amounts(case, assertion, documented.get(amount.members))
        counted = say("number of {scope}", scope=assertion.scope.written)
        yield Inquiry(
            speaker=speaker,
            value=amount.value,
            admitted=admitted,
            text=counted,
            measure=case.breadths[speaker.line.identifier],
        )


def _aggregate(case: Case, index: EachIndex, topic: Topic, ground: str, day: datetime.date) -> Found | None:
    """Each pair by itself, and the worst of them; a number, a total or a relation at once."""
    assert topic.assertion is not None
    speaking = _speaking(case, topic.lines, topic.members, ground, day)
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


def gravity(case: Case, judgement: Judgement) -> tuple[int, bool]:
    """How much a judgement weighs; where more than observed practice is broken, it weighs more."""
    return judgement.verdict.badness, judgement.is_broken_beyond_practice(case)
