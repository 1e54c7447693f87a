"""The presence of a part judged on one day and ground: that of what is left out, kept or added."""

from __future__ import annotations

import datetime
from collections.abc import Iterator

from intent.language.message import say
from intent.model.assertions import Aggregate, ScopeKind
from intent.values.sets import is_within
from intent.variance.aggregates import amounts
from intent.variance.amounts import presence_words
from intent.variance.case import Case
from intent.variance.change import Deviation
from intent.variance.conditions import admitted_amounts, documented_amounts
from intent.variance.found import Found
from intent.variance.inquiring import inquiries, speaking_on
from intent.variance.says import Inquiry, Said, Says, ask
from intent.variance.speaking import Speaker
from intent.variance.topics import Topic
from intent.variance.verdict import judge_ground


def judge_presence(case: Case, topic: Topic, ground: str, day: datetime.date) -> Found | None:
    """Decided by instructions on presence; where none speaks, by those on the number of its scope."""
    assert topic.characteristic is not None
    (subject,) = topic.members
    value, documented = (
        state.value(subject, topic.characteristic) for state in (case.proposed, case.documented)
    )
    is_addition = subject not in case.documented.devices
    speaking = speaking_on(case, topic.lines, topic.members, ground, day)
    if not speaking and value == documented:
        return None
    questions = inquiries(case, topic, speaking, value=value, documented=documented)
    is_decided = any(speaker.over is None for speaker in speaking)
    if not is_decided and value != documented:
        counting = speaking_on(case, topic.counters, topic.members, ground, day)
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
