"""On which days a duty is in force: given, and neither withdrawn, superseded nor past its `until`."""

from __future__ import annotations

import datetime
from collections.abc import Iterator

from intent.model.duty import Duty
from intent.model.work import Work
from intent.values.dates import first_day
from intent.variance.case import superseders_of


def is_held(work: Work, duty: Duty, day: datetime.date) -> bool:
    """Whether a duty has been given and has not ended by a day, its conditions aside."""
    if duty.on is not None and day < duty.on.first:
        return False
    if duty.withdrawn is not None and duty.withdrawn.first <= day:
        return False
    if duty.until is not None and duty.until.last < day:
        return False
    return not any(begun <= day for begun, _ in superseded_from(work, duty))


def superseded_from(work: Work, duty: Duty) -> Iterator[tuple[datetime.date, str]]:
    """The headings that supersede a duty with effect, each with the day from which it does."""
    by_heading = {line.heading: line for line in superseders_of(work).get(duty.identifier, ())}
    for heading, line in by_heading.items():
        yield first_day(line.on), heading
