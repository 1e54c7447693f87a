"""The days of an installation, cut where anything about the instructions changes."""

from __future__ import annotations

import datetime
from collections.abc import Iterator

from intent.values.dates import LAST_DAY, ONE_DAY, DaySpan
from intent.variance.attesting import attestation_days
from intent.variance.case import Case
from intent.variance.people import answer_days


def segments(case: Case) -> tuple[DaySpan, ...]:
    """Spans of days on each of which the same instructions, consents and attestations hold."""
    whole = case.installation.dates
    starts = sorted({day for day in _turns(case) if whole.first < day <= whole.last} | {whole.first})
    ends = [start - ONE_DAY for start in starts[1:]] + [whole.last]
    return tuple(DaySpan(start, end) for start, end in zip(starts, ends, strict=True))


def _turns(case: Case) -> Iterator[datetime.date]:
    """The days on which something begins to hold or no longer does."""
    begun = [line.on for line in case.work.instructions] + [line.withdrawn for line in case.work.instructions]
    ended = [line.until for line in case.work.instructions] + [person.until for person in case.work.people]
    ended += [consent.until for consent in case.installation.consents]
    yield from (span.first for span in begun if span is not None)
    yield from _answered(case)
    yield from (span.last + ONE_DAY for span in ended if span is not None and span.last < LAST_DAY)


def _answered(case: Case) -> Iterator[datetime.date]:
    """The days on which a yes or a no may begin to count, whoever it is given for; and on which a fact is attested."""
    for attestation in case.installation.attestations:
        attested = attestation_days(case.work, attestation)
        if attested is not None:
            yield from (attested.first, attested.last)
    for consent in case.installation.consents:
        for person in case.work.people:
            days = answer_days(case.work, consent.person, person.identifier, consent.date)
            if days is not None:
                yield from (days.first, days.last)
