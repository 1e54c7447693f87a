"""The documented state laid against the instructions: what it departs from, and on which days."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from intent.analysis.examination.findings import Finding, identifiers, members_words
from intent.analysis.examination.topic_claims import TopicClaims
from intent.diagnostics import Severity
from intent.language.message import Words, listed, say, say_of
from intent.model.assertions import Aggregate
from intent.model.instruction_text import AssertionSentence
from intent.model.meaning import scale
from intent.model.naming import subject_name
from intent.model.phrasing import region_words
from intent.model.work import Instruction, Modality, Work
from intent.values.dates import LAST_DAY, DaySpan
from intent.values.regions import Region
from intent.values.sets import Answer, ValueSet
from intent.variance.aggregates import Amount, amounts
from intent.variance.case import Case
from intent.variance.conditions import admitted_amounts, documented_amounts, lies_among
from intent.variance.days import segments
from intent.variance.says import Inquiry, ask
from intent.variance.speaking import speakers
from intent.variance.verdict import Weighed, weigh

_BAD = {Modality.REQUIRED: Answer.OUT, Modality.FORBIDDEN: Answer.IN}


@dataclass(frozen=True, slots=True, kw_only=True)
class DocumentedDeparture:
    """A documented value that is against an instruction on some days, and does not fall."""

    line: Instruction
    topic: TopicClaims
    documented: Words
    ties_with: tuple[Instruction, ...]
    last: DaySpan
    """The last days on which it does."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Stated:
    """One documented value, with what each instruction about it admits."""

    value: ValueSet
    words: Words
    """Nothing of what has no value in words: a distance, or what is true or not."""
    lines: tuple[Instruction, ...]
    admitted: Mapping[str, ValueSet | None]


def documented_departs(case: Case, topics: Sequence[TopicClaims]) -> Iterator[Finding]:
    """One finding for each instruction that the documented state departs from, and what speaks for it."""
    spans = segments(case)
    found: dict[tuple[str, ...], list[DocumentedDeparture]] = {}
    for topic in topics:
        for departure in _departures(case, topic, spans):
            ties = (tie.identifier for tie in departure.ties_with)
            found.setdefault((departure.line.identifier, *ties), []).append(departure)
    for every in found.values():
        yield _finding(case, every)


def _finding(case: Case, departures: Sequence[DocumentedDeparture]) -> Finding:
    line, ties = departures[0].line, identifiers(departures[0].ties_with)
    message: Words = say(
        "what is documented departs from {line}: {how}", line=line.identifier, how=_told(case, departures)
    )
    if ties:
        message = say_of(
            len(ties),
            "{text}; {lines} speaks for it, and no rule says which prevails",
            "{text}; {lines} speak for it, and no rule says which prevails",
            text=message,
            lines=ties,
        )
    last = max(departure.last.last for departure in departures)
    is_past = (line.until is None or last < line.until.last) and last < LAST_DAY
    if is_past:
        message = say("{text}; {line} held until {date}", text=message, line=line.identifier, date=str(last))
    return Finding(
        slug="documented-departs",
        message=message,
        node=line.iri,
        subject=line.identifier,
        lines=(line.identifier, *ties),
        severity=Severity.NOTE if is_past else Severity.WARNING,
    )


def _told(case: Case, departures: Sequence[DocumentedDeparture]) -> Words:
    """The documented values, and whose they are; of a whole that has none, that it is not as the sentence says."""
    line = departures[0].line
    by_value: dict[Words, list[TopicClaims]] = {}
    for departure in departures:
        by_value.setdefault(departure.documented, []).append(departure.topic)
    if "" in by_value:
        statement = AssertionSentence(line.assertion, case.vocabulary)
        if line.modality is Modality.FORBIDDEN:
            return say("it holds that {statement}", statement=statement)
        return say("it does not hold that {statement}", statement=statement)
    of_subjects = (
        say("{value} for {subject}", value=value, subject=_whose(case.work, topics))
        for value, topics in by_value.items()
    )
    return say(
        "{characteristic} is documented as {values}",
        characteristic=departures[0].topic.name,
        values=listed(of_subjects),
    )


def _whose(work: Work, topics: Sequence[TopicClaims]) -> Words:
    """Whose a documented value is: of one or several, the group where they are all of it; of a whole, what it is of."""
    if topics[0].aggregate is not Aggregate.EACH:
        return subject_name(topics[0].subject)
    return members_words(work, dict.fromkeys(topic.members[0] for topic in topics))


def _departures(case: Case, topic: TopicClaims, spans: Sequence[DaySpan]) -> Iterator[DocumentedDeparture]:
    told: set[str] = set()
    for stated in _documented(case, topic):
        for line in stated.lines:
            answer = lies_among(stated.value, stated.admitted[line.identifier])
            if answer is not _BAD.get(line.modality) or line.identifier in told:
                continue
            days = [
                (span, weighed)
                for span in spans
                if (weighed := _weighed(case, stated, line, topic, span)) and not weighed.falls
            ]
            if days:
                span, weighed = days[-1]
                ties = tuple(said.line for said in weighed.ties_with)
                told.add(line.identifier)
                yield DocumentedDeparture(
                    line=line, topic=topic, documented=stated.words, ties_with=ties, last=span
                )


def _weighed(
    case: Case, stated: Stated, line: Instruction, topic: TopicClaims, span: DaySpan
) -> Weighed | None:
    """How an instruction that the documented value is against fares on some days; none where it is silent."""
    questions = [
        Inquiry(
            speaker=speaker,
            value=stated.value,
            admitted=stated.admitted[speaker.line.identifier],
            text=topic.name,
        )
        for speaker in speakers(case, stated.lines, topic.members, span.first)
    ]
    weighed = weigh(case, ask(case, questions, topic.members, span.first))
    return next((one for one in weighed if one.said.line is line and one.is_sure), None)


def _documented(case: Case, topic: TopicClaims) -> Iterator[Stated]:
    """The documented value; of an aggregate one for each pair, and for each relation."""
    if topic.aggregate is Aggregate.EACH:
        characteristic, member = topic.characteristic, topic.members[0]
        if characteristic is not None and member in case.documented.statements:
            words = case.documented.words(member, characteristic)
            admitted = {claim.line.identifier: claim.admitted for claim in topic.claims}
            yield Stated(
                value=case.documented.value(member, characteristic),
                words=words,
                lines=topic.lines,
                admitted=admitted,
            )
        return
    alike: dict[tuple[object, ...], list[Instruction]] = {}
    for line in topic.lines:
        key = (line.assertion.aggregate, line.assertion.relation, line.assertion.other)
        alike.setdefault(key, []).append(line)
    for lines in alike.values():
        first = lines[0].assertion
        documented = documented_amounts(case, first, topic.members)
        for amount in amounts(first, topic.members, case.documented):
            admitted = {
                line.identifier: admitted_amounts(case, line.assertion, documented.get(amount.members))
                for line in lines
            }
            yield Stated(
                value=amount.value, words=_words(case, topic, amount), lines=tuple(lines), admitted=admitted
            )


def _words(case: Case, topic: TopicClaims, amount: Amount) -> Words:
    """A number in words; nothing of a distance, which is held as its square, nor of what is true or not."""
    if topic.aggregate is Aggregate.DISTANCE or not isinstance(amount.value, Region):
        return ""
    compared = scale(topic.aggregate, topic.characteristic, case.vocabulary)
    return region_words(amount.value, compared, case.vocabulary)
