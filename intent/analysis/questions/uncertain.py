"""What has been said, but not surely enough: without a tolerance, at second hand, long ago, by the one who proposes."""

from __future__ import annotations

import datetime
from collections.abc import Iterator, Sequence
from dataclasses import replace

from intent.analysis.examination.findings import identifiers
from intent.analysis.questions.line_factors import factors_of_lines
from intent.analysis.questions.occasion import Occasion, givers, highest
from intent.analysis.questions.question import Question
from intent.language.figures import Written
from intent.language.message import Words, listed, opened, say, say_of
from intent.model.assertions import Form, Measured
from intent.model.installation import Attestation, Installation
from intent.model.instruction_text import AssertionSentence
from intent.model.naming import person_words
from intent.model.work import Instruction, Modality, Source
from intent.variance.people import staff
from intent.vocabulary.phrases import normal
from intent.vocabulary.terms import Characteristic

YEARS = 5
"""An attestation of longer ago is asked for again. Common practice, no source."""


def uncertain(occasion: Occasion) -> Iterator[Question]:
    """Questions about what is said without a tolerance, at second hand, or attested long ago."""
    yield from _without_tolerance(occasion)
    yield from _at_second_hand(occasion)
    yield from _attested(occasion)


def _without_tolerance(occasion: Occasion) -> Iterator[Question]:
    vocabulary, bare = occasion.work.vocabulary, dict[tuple[str, str], list[Instruction]]()
    for line in occasion.lines:
        one = vocabulary.characteristics.get(line.assertion.characteristic or "")
        if line.modality is Modality.REQUIRED and one is not None and one.is_measured and _is_bare(line):
            bare.setdefault((line.heading, one.iri), []).append(line)
    for (_, iri), lines in bare.items():
        statements = listed(AssertionSentence(line.assertion, vocabulary) for line in lines)
        yield Question(
            text=say("{statements}: how far may it be off?", statements=opened(statements)),
            why=_no_tolerance(vocabulary.characteristics[iri], lines),
            factors=factors_of_lines(occasion, lines, 1),
            whom=givers(occasion, lines),
            near=tuple(lines),
        )


def _no_tolerance(characteristic: Characteristic, lines: Sequence[Instruction]) -> Words:
    if not characteristic.tolerance_written:
        return say("{lines}: no tolerance is stated.", lines=identifiers(lines))
    return say(
        "{lines}: no tolerance is stated; until it is, {tolerance} either way is taken.",
        lines=identifiers(lines),
        tolerance=Written(characteristic.tolerance_written),
    )


def _is_bare(line: Instruction) -> bool:
    expression = line.assertion.expression
    return expression.form is Form.ONE_OF and any(
        isinstance(item, Measured) and item.tolerance is None and item.tolerance_percent is None
        for item in expression.items
    )


def _at_second_hand(occasion: Occasion) -> Iterator[Question]:
    resting: dict[str, list[Instruction]] = {}
    for line in occasion.lines:
        cited = {one.source for one in line.sources}
        source = occasion.work.source(next(iter(cited))) if len(cited) == 1 else None
        if source is not None and source.reported_by:
            resting.setdefault(source.identifier, []).append(line)
    for identifier, lines in resting.items():
        source = occasion.work.source(identifier)
        if source is not None:
            yield _reported(occasion, source, lines)


def _reported(occasion: Occasion, source: Source, lines: list[Instruction]) -> Question:
    named, number = identifiers(lines), len(lines)
    return Question(
        text=say_of(number, "Is it so, as {lines} says?", "Is it so, as {lines} say?", lines=named),
        why=say_of(
            number,
            "{lines} rests on one source alone, “{title}” ({source}), as reported by {person}.",
            "{lines} rest on one source alone, “{title}” ({source}), as reported by {person}.",
            lines=named,
            title=source.title,
            source=source.identifier,
            person=person_words(occasion.work, source.reported_by),
        ),
        factors=factors_of_lines(occasion, lines, 1),
        whom=givers(occasion, lines),
        near=tuple(lines),
    )


def _attested(occasion: Occasion) -> Iterator[Question]:
    """Attestations to be had anew; where nobody in the house is left to give them, that is asked instead."""
    if not staff(occasion.work, occasion.day):
        return
    latest: dict[str, tuple[Attestation, Installation]] = {}
    for installation in occasion.past:
        for one in installation.attestations:
            before = latest.get(normal(one.fact))
            if before is None or _day(before[0]) <= _day(one):
                latest[normal(one.fact)] = (one, installation)
    for fact, (attestation, installation) in latest.items():
        asks = [
            line
            for line in occasion.lines
            if any(normal(condition.fact or "") == fact for condition in line.conditions)
        ]
        why = _doubt(occasion, attestation, installation)
        if asks and why:
            yield _again(occasion, attestation, why, asks)


def _again(occasion: Occasion, attestation: Attestation, why: Words, lines: list[Instruction]) -> Question:
    text = say(
        "Who else is to say, at the next showing, whether “{fact}”, and is it so now?", fact=attestation.fact
    )
    return Question(
        text=text,
        why=why,
        factors=replace(factors_of_lines(occasion, lines, 1), differed=0, shown=0),
        whom=_another_in_the_house(occasion, attestation.by) or highest(occasion),
        known=(_attested_before(occasion, attestation),),
        near=tuple(lines),
    )


def _attested_before(occasion: Occasion, attestation: Attestation) -> Words:
    person = person_words(occasion.work, attestation.by) or say("Somebody")
    date = attestation.date or say("on a day not told")
    if attestation.holds:
        return say("{person} attested that it held, {date}.", person=person, date=date)
    return say("{person} attested that it did not hold, {date}.", person=person, date=date)


def _another_in_the_house(occasion: Occasion, but: str | None) -> tuple[str, ...]:
    """The first in the house who can attest a fact, without the one who did so before."""
    others = [person for person in occasion.work.people if person.identifier != but]
    return staff(replace(occasion.work, people=tuple(others)), occasion.day)[:1]


def _doubt(occasion: Occasion, attestation: Attestation, installation: Installation) -> Words:
    """Why an attestation is to be had anew; nothing where it is fresh and another's."""
    if attestation.by is not None and attestation.by == installation.by:
        return say(
            "It was attested by the one who proposed “{installation}”, and by nobody else.",
            installation=installation.title,
        )
    if _day(attestation) < _years_before(occasion.day):
        return say(
            "It was last attested more than {years} years ago, for “{installation}”.",
            years=YEARS,
            installation=installation.title,
        )
    return ""


def _day(attestation: Attestation) -> datetime.date:
    return attestation.date.last if attestation.date else datetime.date.min


def _years_before(day: datetime.date) -> datetime.date:
    year = max(day.year - YEARS, 1)
    return day.replace(year=year, day=28) if (day.month, day.day) == (2, 29) else day.replace(year=year)
