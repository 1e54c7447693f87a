"""Instructions, sources, consents and attestations of people who could not have given them then."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from intent.analysis.examination.findings import Finding, heading_node, identifiers
from intent.analysis.examination.topic_claims import TopicClaims
from intent.language.message import Words, say
from intent.model.installation import Installation
from intent.model.work import Instruction, Person, Work
from intent.values.dates import DaySpan
from intent.variance.case import Case
from intent.variance.people import is_in_time


def out_of_time(case: Case, _: Sequence[TopicClaims]) -> Iterator[Finding]:
    """Instructions and sources of people who could not have said it then."""
    work = case.work
    by_heading: dict[tuple[str, Words, str], list[Instruction]] = {}
    for line in work.instructions:
        why = _why(work.person(line.by), line.on)
        if why:
            by_heading.setdefault((line.heading, why, str(line.on)), []).append(line)
    for (heading, why, date), lines in by_heading.items():
        named = identifiers(lines)
        yield Finding(
            slug="out-of-time",
            message=say("{lines} cannot be of {date}: {why}", lines=named, date=date, why=why),
            node=heading_node(work, lines[0]),
            subject=heading,
            lines=named,
        )
    for source in work.sources:
        reporter = [source.reported_by] if source.reported_by else []
        for identifier in dict.fromkeys([*source.by, *source.spoken_with, *reporter]):
            why = _why(work.person(identifier), source.date)
            if why:
                message = say(
                    "{source} cannot be of {date}: {why}",
                    source=source.identifier,
                    date=str(source.date),
                    why=why,
                )
                yield Finding(slug="out-of-time", message=message, node=source.iri, subject=source.identifier)


def answers_out_of_time(work: Work, installation: Installation) -> Iterator[Finding]:
    """Consents and attestations of people who could not have given them then, and so do not count."""
    for consent in installation.consents:
        why = _why(work.person(consent.person), consent.date)
        if why:
            message = say(
                "this consent cannot be of {date}, and does not count: {why}", date=str(consent.date), why=why
            )
            yield Finding(slug="out-of-time", message=message, node=consent.iri, subject=consent.person)
    for attestation in installation.attestations:
        why = _why(work.person(attestation.by), attestation.date)
        if why:
            message = say(
                "this attestation cannot be of {date}, and does not count: {why}",
                date=str(attestation.date),
                why=why,
            )
            yield Finding(
                slug="out-of-time", message=message, node=attestation.iri, subject=attestation.by or ""
            )


def _why(person: Person | None, date: DaySpan | None) -> Words:
    """Why a person could not have said something of a date; nothing where they could."""
    if person is None or date is None or is_in_time(person, date):
        return ""
    name = person.name or person.identifier
    if person.until is not None and person.until.last < date.first:
        return say("the time of {name} was over in {date}", name=name, date=str(person.until))
    return say("the time of {name} begins in {date}", name=name, date=str(person.since))
