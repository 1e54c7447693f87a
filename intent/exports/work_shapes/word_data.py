"""What people attested and answered, as data: each with the days on which it can have been said.

An answer has a node for each person as whom it counts (their own, or one whom the giver succeeded) and each
instruction that it answers, so that a shape needs no genealogy.
"""

from __future__ import annotations

import datetime
from collections.abc import Iterator
from dataclasses import dataclass

from intent.exports.value_shapes import value_in_data
from intent.exports.work_shapes.asked_values import meant
from intent.exports.work_shapes.shape_names import ShapeNames
from intent.model.installation import Consent
from intent.model.work import Instruction, Person
from intent.names import local_iri
from intent.record.turtle_text import Statement, iri_term, subject_block, text_term
from intent.values.dates import LAST_DAY, ONE_DAY, DaySpan
from intent.variance.answers import answered_values
from intent.variance.attesting import attestation_days
from intent.variance.case import Case
from intent.variance.people import answer_days
from intent.vocabulary.phrases import normal


@dataclass(frozen=True, slots=True, kw_only=True)
class _Counted:
    """An answer to one instruction, as it counts for one person."""

    line: Instruction
    consent: Consent
    person: Person
    days: DaySpan


def day_term(day: datetime.date) -> str:
    """A day as a date of XML Schema."""
    return f'"{day.isoformat()}"^^xsd:date'


def attestation_blocks(case: Case) -> Iterator[str]:
    """What was attested by somebody who could then."""
    for place, attestation in enumerate(case.installation.attestations, start=1):
        days = attestation_days(case.work, attestation)
        if days is not None:
            yield subject_block(
                iri_term(str(local_iri(case.installation.iri, "attested", str(place)))),
                [
                    ("a", "intent:Attestation"),
                    ("intent:fact", text_term(normal(attestation.fact))),
                    ("intent:answer", "true" if attestation.holds else "false"),
                    *_days(days),
                ],
            )


def answer_blocks(case: Case, names: ShapeNames) -> Iterator[str]:
    """What was answered, for each instruction and each person as whom it counts."""
    places = {consent.iri: place for place, consent in enumerate(case.installation.consents, start=1)}
    for line in case.work.instructions:
        for consent in case.consents.get(line.identifier, ()):
            for person in case.work.people:
                days = answer_days(case.work, consent.person, person.identifier, consent.date)
                if days is not None and consent.answer is not None:
                    steps = ("answer", str(places[consent.iri]), line.identifier, person.identifier)
                    yield subject_block(
                        iri_term(str(local_iri(case.installation.iri, *steps))),
                        list(
                            _answer(
                                case, names, _Counted(line=line, consent=consent, person=person, days=days)
                            )
                        ),
                    )


def _answer(case: Case, names: ShapeNames, counted: _Counted) -> Iterator[Statement]:
    line, consent, days = counted.line, counted.consent, counted.days
    is_late = consent.answer and consent.date is not None
    yield "a", "intent:CountedAnswer"
    yield "intent:answers", names.short(line.iri)
    yield "intent:countsFor", names.person(counted.person.identifier)
    yield "intent:answer", "true" if consent.answer else "false"
    yield from _days(days)
    yield "intent:countsFrom", day_term(days.last if is_late else days.first)
    if consent.until is not None and consent.until.last < LAST_DAY:
        yield "intent:overFrom", day_term(consent.until.last + ONE_DAY)
    parts = consent.parts or case.members[line.identifier]
    if parts:
        yield "intent:forPart", ", ".join(meant(case, names, part) for part in parts)
    if consent.terms:
        yield "intent:onTerms", ", ".join(dict.fromkeys(text_term(normal(term)) for term in consent.terms))
    answered = answered_values(case, line, consent)
    if answered is not None:
        yield "intent:toValue", ", ".join(value_in_data(answered))


def _days(days: DaySpan) -> list[Statement]:
    return [("intent:earliest", day_term(days.first)), ("intent:latest", day_term(days.last))]
