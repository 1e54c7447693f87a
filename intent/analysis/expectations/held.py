"""Expectations held against what is judged: each by the same judging as a proposal, and which lines never spoke."""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Iterator, Mapping, Sequence

from intent.analysis.examination.findings import Finding, placed
from intent.analysis.expectations.expected_case import ExpectedCase, expected_case, presence_of
from intent.diagnostics import Diagnostic, Severity, Span, in_order
from intent.language.message import Words, joined, listed, say, say_of
from intent.model.assertions import Aggregate
from intent.model.expectation import NO_ROW
from intent.model.installation import Installation
from intent.model.naming import person_name
from intent.model.work import Instruction, Work
from intent.names import POSITION, PRESENCE, TERM
from intent.record.contradictions import contradictions_in_installation
from intent.variance.case import Case, lay_out, superseders_of
from intent.variance.days import segments
from intent.variance.judge import Ruling, rulings
from intent.variance.speaking import speakers
from intent.variance.topics import TopicKind


def hold_expectations(
    work: Work, showings: Iterable[Installation], today: datetime.date, spans: Mapping[str, Span]
) -> tuple[Diagnostic, ...]:
    """What is judged otherwise than expected, and which instructions spoke in no expectation and no showing.

    An expectation without a day of its own is judged ``today``. A work without expectations has no findings.
    """
    if not work.expectations:
        return ()
    impossible: list[Diagnostic] = []
    findings: list[Finding] = []
    spoken: set[str] = set()
    for expectation in work.expectations:
        tried = expected_case(work, expectation, today)
        belied = dict.fromkeys(contradictions_in_installation(work, tried.installation, spans))
        impossible += belied
        if not belied:
            case = lay_out(work, tried.installation)
            found = rulings(case)
            spoken.update(
                name for one in found if _is_tried(case, tried, one) for name in _speaking(case, one)
            )
            findings += _otherwise(work, tried, [one for one in found if _is_expected(tried, one)])
    for showing in showings:
        case = lay_out(work, showing)
        spoken.update(name for one in rulings(case) for name in _speaking(case, one))
    findings += _never_spoke(work, spoken, today)
    return in_order([*impossible, *placed(findings, spans, work.iri)])


def _is_expected(tried: ExpectedCase, ruling: Ruling) -> bool:
    """Whether a row is of the characteristic and of one of the things that are expected to have the value."""
    topic = ruling.topic
    is_about = topic.characteristic is not None and topic.characteristic.iri == tried.characteristic
    return topic.kind is not TopicKind.AGGREGATE and is_about and topic.members[0] in tried.members


def _is_tried(case: Case, tried: ExpectedCase, ruling: Ruling) -> bool:
    """Whether the value has a part in a row: it is about the value, or it counts, sums or compares it with others."""
    if _is_expected(tried, ruling):
        return True
    assertion = ruling.topic.assertion
    if assertion is None or not _named(case, ruling) & set(tried.members):
        return False
    compared = {Aggregate.NUMBER: PRESENCE, Aggregate.DISTANCE: POSITION, Aggregate.RELATION: POSITION}
    return compared.get(assertion.aggregate, assertion.characteristic) == tried.characteristic


def _named(case: Case, ruling: Ruling) -> frozenset[str]:
    """All that the lines of a whole speak of in the documented work, an omitted part too, and what it stands to."""
    lines = ruling.topic.lines
    others = (line.assertion.other for line in lines if line.assertion.other)
    return frozenset(others).union(*(case.breadths[line.identifier] for line in lines))


def _speaking(case: Case, ruling: Ruling) -> Iterator[str]:
    """The instructions that speak of what a row is about, on any day."""
    topic = ruling.topic
    for span in segments(case):
        found = speakers(case, (*topic.lines, *topic.counters), topic.members, span.first)
        yield from (speaker.line.identifier for speaker in found)


def _otherwise(work: Work, tried: ExpectedCase, expected: Sequence[Ruling]) -> Iterator[Finding]:
    expectation, vocabulary = tried.expectation, work.vocabulary
    subject = expectation.scope.written
    for person in dict.fromkeys(tried.unasked):
        message = say(
            "no instruction that speaks of this asks {person}, so the answer plays no part; "
            "name the one that it is to: `to R1.2`",
            person=person_name(work, person),
        )
        yield Finding(slug="answer-unasked", message=message, node=expectation.iri, subject=subject)
    if PRESENCE in expectation.value and len(presence_of(work, expectation.value)) != 1:
        message = say("a part is there or it is not; write `present` or `absent`")
        yield Finding(
            slug="presence-open",
            message=message,
            node=expectation.iri,
            subject=subject,
            severity=Severity.ERROR,
        )
        return
    worst = max(expected, key=lambda one: one.row.verdict.badness, default=None)
    verdict = worst.row.verdict.value if worst else NO_ROW
    if verdict != expectation.verdict:
        yield Finding(
            slug="not-as-expected",
            message=say(
                "`{expected}` is expected, and {found}",
                expected=vocabulary.verdict_words[expectation.verdict],
                found=_found(work, tried, worst),
            ),
            node=expectation.iri,
            subject=subject,
            lines=tuple(line.identifier for line in worst.row.governing) if worst else (),
            severity=Severity.ERROR,
        )


def _found(work: Work, tried: ExpectedCase, worst: Ruling | None) -> Words:
    """`M2 is judged `breach`: R1.1 requires otherwise, and nothing that prevails allows it.`"""
    if worst is None:
        return say(
            "there is no row: nothing in the documentation speaks of it, and it does not count unasked"
        )
    said = say(
        "{subject} is judged `{verdict}`:",
        subject=worst.row.subject.written,
        verdict=work.vocabulary.verdict_words[worst.row.verdict.value],
    )
    return joined([said, worst.row.reason])


def _never_spoke(work: Work, spoken: set[str], today: datetime.date) -> Iterator[Finding]:
    """The instructions, none that is withdrawn or superseded by now, that no case has come to."""
    superseded = superseders_of(work)
    silent = [
        line.identifier
        for line in work.instructions
        if line.identifier not in spoken
        and not _is_withdrawn(line, today)
        and not superseded.get(line.identifier)
    ]
    if silent:
        message = say_of(
            len(silent),
            "{lines} spoke in no expectation and in no showing",
            "{lines} spoke in no expectation and in no showing",
            lines=listed(silent),
        )
        node = next(
            (one.iri for one in work.sections if one.term == str(TERM["expectations-section"])), work.iri
        )
        yield Finding(slug="never-spoke", message=message, node=node, subject="", severity=Severity.NOTE)


def _is_withdrawn(line: Instruction, today: datetime.date) -> bool:
    return line.withdrawn is not None and line.withdrawn.first <= today
