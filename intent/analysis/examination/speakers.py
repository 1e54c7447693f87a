"""Who said what, and when: superseding that has no effect, and people who could not have said it then."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from intent.analysis.examination.findings import Finding, names
from intent.analysis.examination.matters import Matter
from intent.language.message import listed
from intent.model.installation import Installation
from intent.model.work import Instruction, Person, Work
from intent.values.dates import DaySpan
from intent.variance.case import Case, lines_by_name, superseding_fault
from intent.variance.people import is_in_time


def no_effect(case: Case, _: Sequence[Matter]) -> Iterator[Finding]:
    """Instructions that would supersede what they cannot: something later, higher, or of another ground."""
    work = case.work
    lines, found = lines_by_name(work), dict[tuple[str, str], list[tuple[Instruction, Instruction]]]()
    for line in work.instructions:
        for name in line.supersedes:
            for identifier in lines.get(name, ()):
                earlier = work.instruction(identifier)
                if earlier is None or earlier.heading == line.heading:
                    continue
                fault = superseding_fault(work, line, earlier)
                if fault:
                    what = fault.removeprefix(identifier).removeprefix(" is ")
                    found.setdefault((line.heading, what), []).append((line, earlier))
    for (heading, what), pairs in found.items():
        line = pairs[0][0]
        superseded = list(dict.fromkeys(earlier.identifier for _, earlier in pairs))
        verb = "is" if len(superseded) == 1 else "are"
        message = (
            f"{heading} supersedes {listed(superseded)} without effect: {listed(superseded)} {verb} {what}"
        )
        yield Finding(slug="no-effect", message=message, node=_heading(work, line), subject=heading)


def out_of_time(case: Case, _: Sequence[Matter]) -> Iterator[Finding]:
    """Instructions and sources of people who could not have said it then."""
    work = case.work
    by_heading: dict[tuple[str, str, str], list[Instruction]] = {}
    for line in work.instructions:
        why = _why(work.person(line.by), line.on)
        if why:
            by_heading.setdefault((line.heading, why, str(line.on)), []).append(line)
    for (heading, why, date), lines in by_heading.items():
        message = f"{names(lines)} cannot be of {date}: {why}"
        yield Finding(slug="out-of-time", message=message, node=_heading(work, lines[0]), subject=heading)
    for source in work.sources:
        reporter = [source.reported_by] if source.reported_by else []
        for identifier in dict.fromkeys([*source.by, *source.spoken_with, *reporter]):
            why = _why(work.person(identifier), source.date)
            if why:
                message = f"{source.identifier} cannot be of {source.date}: {why}"
                yield Finding(slug="out-of-time", message=message, node=source.iri, subject=source.identifier)


def answers_out_of_time(work: Work, installation: Installation) -> Iterator[Finding]:
    """Consents and attestations of people who could not have given them then, and so do not count."""
    for consent in installation.consents:
        why = _why(work.person(consent.person), consent.date)
        if why:
            message = f"this consent cannot be of {consent.date}, and does not count: {why}"
            yield Finding(slug="out-of-time", message=message, node=consent.iri, subject=consent.person)
    for attestation in installation.attestations:
        why = _why(work.person(attestation.by), attestation.date)
        if why:
            message = f"this attestation cannot be of {attestation.date}, and does not count: {why}"
            yield Finding(
                slug="out-of-time", message=message, node=attestation.iri, subject=attestation.by or ""
            )


def _why(person: Person | None, date: DaySpan | None) -> str:
    """Why a person could not have said something of a date; nothing where they could."""
    if person is None or date is None or is_in_time(person, date):
        return ""
    name = person.name or person.identifier
    if person.until is not None and person.until.last < date.first:
        return f"the time of {name} was over in {person.until}"
    return f"the time of {name} begins in {person.since}"


def _heading(work: Work, line: Instruction) -> str:
    heading = work.heading(line.heading)
    return heading.iri if heading is not None else line.iri
