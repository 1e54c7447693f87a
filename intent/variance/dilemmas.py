"""Dilemmas: what two grounds ask cannot be met together, as where safety asks what the artist forbids."""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Iterator, Sequence

from intent.language.message import Words, listed, say
from intent.model.assertions import Aggregate
from intent.model.meaning import every_value, scale
from intent.model.naming import person_name
from intent.model.work import Instruction, Modality
from intent.names import term_iri
from intent.values.partition import smallest_clashes
from intent.values.sets import ValueSet
from intent.variance.case import Case
from intent.variance.change import documented_for
from intent.variance.inquiring import admitted_by
from intent.variance.people import highest_living, who_can_answer
from intent.variance.speaking import speakers
from intent.variance.topics import Topic, TopicKind
from intent.variance.wholes import admitted_of_whole, every_amount, whole_key

Demand = tuple[Instruction, ValueSet]
"""A requirement or prohibition, with the values that are not against it."""
Dilemma = tuple[Instruction, ...]
"""Demands of more than one ground that no value meets together, and of which none could be left out."""


def across_grounds(whole: ValueSet, demands: Sequence[Demand]) -> tuple[Dilemma, ...]:
    """The smallest sets of demands that no value of the whole meets together, where they are of several grounds."""
    if len({line.ground for line, _ in demands}) < 2:
        return ()
    clashes = smallest_clashes(whole, [values for _, values in demands])
    found = (tuple(demands[place][0] for place in sorted(clash)) for clash in clashes)
    return tuple(lines for lines in found if len({line.ground for line in lines}) > 1)


def dilemmas_about(case: Case, topic: Topic, days: Iterable[datetime.date]) -> tuple[Dilemma, ...]:
    """The dilemmas about one thing on any of some days, each once."""
    lines = _concerned(case, topic)
    if len({line.ground for line in lines}) < 2:
        return ()
    found = (dilemma for day in days for dilemma in _on(case, topic, lines, day))
    return tuple(dict.fromkeys(found))


def _concerned(case: Case, topic: Topic) -> Sequence[Instruction]:
    """The lines about one thing; of a whole, those of another row as well that put it the other way round."""
    if topic.kind is not TopicKind.AGGREGATE:
        return topic.lines
    key = whole_key(case, topic.lines[0])
    wholes = (line for line in case.work.instructions if line.assertion.aggregate is not Aggregate.EACH)
    return [line for line in wholes if whole_key(case, line) == key]


def _on(
    case: Case, topic: Topic, concerned: Sequence[Instruction], day: datetime.date
) -> tuple[Dilemma, ...]:
    lines = [
        line
        for line in concerned
        if line.modality is not Modality.ALLOWED and not _asks_of_its_own_value(line)
    ]
    speaking = speakers(case, lines, topic.members, day)
    return across_grounds(
        _whole(case, topic), list(_demands(case, topic, [speaker.line for speaker in speaking]))
    )


def _asks_of_its_own_value(line: Instruction) -> bool:
    """Whether a condition is about the very characteristic: such a line passes over some values."""
    asked = (condition.assertion for condition in line.conditions)
    return any(one is not None and one.characteristic == line.assertion.characteristic for one in asked)


def _demands(case: Case, topic: Topic, lines: Sequence[Instruction]) -> Iterator[Demand]:
    for line in lines:
        admitted = _admitted(case, topic, line)
        if admitted is not None:
            yield line, admitted if line.modality is Modality.REQUIRED else admitted.complement()


def _admitted(case: Case, topic: Topic, line: Instruction) -> ValueSet | None:
    if topic.kind is not TopicKind.AGGREGATE:
        assert topic.characteristic is not None
        return admitted_by(case, line, documented_for(case, topic.members[0], topic.characteristic))
    return admitted_of_whole(case, line, case.members[line.identifier])


def _whole(case: Case, topic: Topic) -> ValueSet:
    if topic.assertion is not None:
        return every_amount(case, topic.assertion, topic.members)
    return every_value(scale(Aggregate.EACH, topic.characteristic, case.vocabulary), case.vocabulary)


def settling(case: Case, dilemma: Dilemma, day: datetime.date) -> tuple[str, ...]:
    """Who would have to settle it: those who gave the lines, or who have succeeded them by a day; else the highest."""
    givers = (who_can_answer(case.work, line.by, day) for line in dilemma if line.by)
    names = dict.fromkeys(person.identifier for person in givers if person is not None)
    return tuple(names) or highest_living(case.work, day)


def dilemma_words(case: Case, dilemma: Dilemma, day: datetime.date) -> Words:
    """`R1.4 (intent) and R2.1 (safety) cannot be met together; Odile Varga-Finn would have to settle it.`"""
    lines = listed(
        say(
            "{line} ({ground})",
            line=line.identifier,
            ground=case.vocabulary.named(term_iri(line.ground)),
        )
        for line in dilemma
    )
    people = listed(person_name(case.work, person) for person in settling(case, dilemma, day))
    return say(
        "{lines} cannot be met together, whatever is proposed: {people} would have to settle which gives way",
        lines=lines,
        people=people,
    )
