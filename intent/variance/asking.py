"""Whom to ask: who could close what is open in a row, or lift its verdict."""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Iterator

from intent.model.phrasing import NOT_GIVEN
from intent.model.subject import SubjectKind
from intent.variance.case import Case
from intent.variance.change import is_broad
from intent.variance.obstacle import Need
from intent.variance.people import highest_living, staff, who_can_answer
from intent.variance.result import OpenKind, Row, Verdict
from intent.variance.venue_asked import who_knows_the_venue

_OF_THE_GIVERS = {Verdict.FORBIDDEN, Verdict.BREACH, Verdict.CONTRADICTION}


def who_could_lift(case: Case, row: Row, day: datetime.date) -> tuple[str, ...]:
    """Identifiers of people, without repetition; of those who are gone, their successors."""
    return tuple(dict.fromkeys(_named(case, row, day)))


def _named(case: Case, row: Row, day: datetime.date) -> Iterator[str]:
    if not row.verdict.is_departure or row.verdict is Verdict.ALLOWED:
        return
    for item in row.open:
        if item.person is not None:
            yield item.person
        else:
            yield from staff(case.work, day)
    if row.verdict in _OF_THE_GIVERS:
        yield from _givers(case, row, day)
    elif row.verdict is Verdict.UNCOVERED or (row.verdict is Verdict.UNKNOWN and not row.open):
        yield from _who_knows(case, row, day)


def _who_knows(case: Case, row: Row, day: datetime.date) -> Iterator[str]:
    """Of the venue, whoever is there; of the proposal, whoever proposes it; of what stood there, the house; of what
    nobody ever said, the artist."""
    proposer = case.installation.by
    if row.verdict is Verdict.UNKNOWN and row.subject.kind is SubjectKind.VENUE:
        yield from who_knows_the_venue(case.work, case.installation)
    elif row.verdict is Verdict.UNKNOWN and _is_documented_broadly(case, row):
        yield from staff(case.work, day)
    elif proposer and (row.proposed == NOT_GIVEN or _is_unclear(row)):
        yield proposer
    else:
        yield from highest_living(case.work, day)


def _is_unclear(row: Row) -> bool:
    """Whether it is documented, and what is proposed cannot be told apart from that."""
    return row.verdict is Verdict.UNKNOWN and row.documented != NOT_GIVEN


def _is_documented_broadly(case: Case, row: Row) -> bool:
    characteristic = case.vocabulary.characteristics.get(row.term or "")
    return characteristic is not None and any(
        is_broad(case, member, characteristic) for member in row.subject.members
    )


def _givers(case: Case, row: Row, day: datetime.date) -> Iterator[str]:
    found = False
    lifting = (name for line in row.governing for name in line.lifted_by or ((line.by,) if line.by else ()))
    for name in lifting:
        person = who_can_answer(case.work, name, day)
        if person is not None:
            found = True
            yield person.identifier
    if not found:
        yield from highest_living(case.work, day)


def needs_beside_rows(rows: Iterable[Row], needs: Iterable[Need]) -> tuple[Need, ...]:
    """What has to be known to hold something against a limit, without the values that a row asks for already."""
    asked = {(row.characteristic, row.subject.key) for row in rows if _asks_for_its_value(row)}
    return tuple(need for need in needs if (need.characteristic, need.subject.key) not in asked)


def _asks_for_its_value(row: Row) -> bool:
    is_open = not row.open or any(item.kind is OpenKind.VALUE for item in row.open)
    return row.verdict is Verdict.UNKNOWN and is_open
