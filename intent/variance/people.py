"""Who may speak, when, and in whose place."""

from __future__ import annotations

import datetime
from collections.abc import Iterator

from intent.model.authority import OBSERVED_PRACTICE_RANK, STAFF_RANK
from intent.model.work import Person, Work
from intent.values.dates import FIRST_DAY, LAST_DAY, ONE_DAY, DaySpan


def is_over(person: Person, day: datetime.date) -> bool:
    """Whether a person's time is over on a day: it lasts to the last day of `until`."""
    return person.until is not None and person.until.last < day


def is_in_time(person: Person, date: DaySpan | None) -> bool:
    """Whether something of this date can be the person's; without a date only where their time has no end."""
    if date is None:
        return person.until is None and person.since is None
    begun = person.since is None or person.since.first <= date.last
    return begun and not is_over(person, date.first)


def chain(work: Work, identifier: str) -> Iterator[Person]:
    """A person, the successor, the successor's successor …"""
    seen: set[str] = set()
    person = work.person(identifier)
    while person is not None and person.identifier not in seen:
        seen.add(person.identifier)
        yield person
        person = work.person(person.successor)


def who_can_answer(work: Work, identifier: str, day: datetime.date) -> Person | None:
    """The person, or whoever has succeeded them by a day; none where nobody is left."""
    return next((person for person in chain(work, identifier) if not is_over(person, day)), None)


def answer_days(work: Work, giver: str, identifier: str, date: DaySpan | None) -> DaySpan | None:
    """The days of its date on which an answer of one person can count as another's: their own, or a successor's.

    They lie in the giver's time, and after that of everybody whom the giver succeeded; none where there is no such
    day. An answer without a date counts on every day, where it is the person's own and their time has no end.
    """
    line = list(chain(work, identifier))
    place = next((place for place, person in enumerate(line) if person.identifier == giver), None)
    if place is None or not is_in_time(line[place], date):
        return None
    if date is None:
        return DaySpan(FIRST_DAY, LAST_DAY) if place == 0 else None
    ends = [person.until for person in line[:place]]
    known = [end.last for end in ends if end is not None and end.last < LAST_DAY]
    if len(known) < len(ends):
        return None
    own, until = line[place].since, line[place].until
    first = max([date.first, *([own.first] if own else []), *(end + ONE_DAY for end in known)])
    last = min(date.last, until.last) if until else date.last
    return DaySpan(first, last) if first <= last else None


def speaks_for(work: Work, giver: str, identifier: str, date: DaySpan | None) -> bool:
    """Whether an answer of this date by one person counts as another's: their own, or a successor's after them."""
    return answer_days(work, giver, identifier, date) is not None


def highest_living(work: Work, day: datetime.date) -> tuple[str, ...]:
    """Those of the highest rank whose time is not over: whom to ask what nobody ever said."""
    living = [person for person in work.people if not is_over(person, day)]
    best = min((_rank(work, person, day) for person in living), default=OBSERVED_PRACTICE_RANK)
    return tuple(person.identifier for person in living if _rank(work, person, day) == best)


def _rank(work: Work, person: Person, day: datetime.date) -> int:
    """A person's rank on a day, or that of somebody whom they have succeeded, if it is higher; 1 is the highest."""
    date = DaySpan(day, day)
    return min(
        other.authority
        for other in work.people
        if other is person or speaks_for(work, person.identifier, other.identifier, date)
    )


def staff(work: Work, day: datetime.date) -> tuple[str, ...]:
    """Those in the house who can attest a fact: the highest rank from conservator down, still there."""
    living = [person for person in work.people if person.authority >= STAFF_RANK and not is_over(person, day)]
    best = min((person.authority for person in living), default=None)
    return tuple(person.identifier for person in living if person.authority == best)
