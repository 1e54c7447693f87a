"""What an earlier installation has already shown of each departure, and how many steps lead to it.

A precedent is told and never counts: what was carried out once is not thereby permitted.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum

from intent.analysis.history.consenting import consenting_people
from intent.analysis.history.steps import (
    ValueChange,
    change_in,
    departs,
    distance_words,
    is_between,
    is_same,
    value_of,
)
from intent.language.message import Words
from intent.model.installation import Installation
from intent.model.subject import Subject, SubjectKind
from intent.model.work import Work
from intent.variance.judge import rows_about
from intent.variance.result import Row, RowKey, Variance, Verdict
from intent.variance.state import State
from intent.variance.two_states import documented_state, proposed_state

Judged = Mapping[str, Mapping[RowKey, Row]]
"""The rows of earlier installations, by the installation's IRI and their keys."""


class Reach(StrEnum):
    """How far an earlier installation went."""

    SAME = "same"
    """The earlier installation had the same value."""
    WIDER = "wider"
    """It went as far or farther: the value lies within its set, or between the documented one and its own."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Precedent:
    """An earlier installation that departed in the same way, or farther."""

    installation: Installation
    reach: Reach
    value: Words
    verdict: Verdict | None
    """How it was judged on its days; none where nothing spoke of it then."""
    consents: tuple[str, ...]
    """Who had consented: identifiers of people."""


@dataclass(frozen=True, slots=True)
class Step:
    """A change of one characteristic from one installation to the next that departs."""

    installation: Installation
    value: Words
    distance: Words
    """How far from the value before; nothing where it is not measured."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Forerunners:
    """How one departure stands to what was shown before."""

    subject: Subject
    characteristic: Words
    precedents: tuple[Precedent, ...]
    documented: Words = ""
    steps: tuple[Step, ...] = ()
    """From the documented value to the proposed one, by way of the installations carried out; the last is its own."""
    distance: Words = ""
    """How far the proposed value lies from the documented one, where it is measured."""

    @property
    def key(self) -> RowKey:
        """The key of the row that it is about."""
        return self.subject.key, self.characteristic


@dataclass(frozen=True, slots=True)
class Shown:
    """An earlier installation with the state in which it left the work."""

    installation: Installation
    state: State


@dataclass(frozen=True, slots=True)
class Reaching:
    """An earlier installation that reached as far, with its value in words."""

    installation: Installation
    reach: Reach
    value: Words


def precedents_of(variance: Variance, past: Iterable[Installation]) -> tuple[Forerunners, ...]:
    """What was shown before of each departure that has a precedent, or more steps than its own behind it."""
    work, day = variance.work, variance.installation.dates.first
    before = sorted(
        (one for one in past if one.dates.first < day and one.iri != variance.installation.iri),
        key=lambda one: one.dates.first,
    )
    if not before or not variance.departures:
        return ()
    documented = documented_state(work)
    shown = [Shown(one, proposed_state(work, one, documented)) for one in before]
    proposed = proposed_state(work, variance.installation, documented)
    changes = [change_in(row, documented, proposed) for row in variance.departures]
    reached = {
        row.key: tuple(_reaching(shown, change))
        for row, change in zip(variance.departures, changes, strict=True)
        if change is not None
    }
    wholes = {row.key for row in variance.departures if row.is_whole}
    judged = {one.installation.iri: _judged(work, one, reached, wholes) for one in shown}
    found = [
        _of_whole(work, shown, row, judged)
        if change is None
        else _of_one(variance, row, _precedents(work, row, reached[row.key], judged), change, shown)
        for row, change in zip(variance.departures, changes, strict=True)
    ]
    return tuple(one for one in found if one.precedents or len(one.steps) > 1)


def _reaching(shown: Sequence[Shown], change: ValueChange) -> Iterator[Reaching]:
    """The earlier installations that departed as far, or farther on the same way."""
    characteristic, proposed = change.characteristic, change.now
    for one in shown:
        earlier = value_of(one.state, change.name, characteristic)
        if not departs(earlier, change.documented, characteristic):
            continue
        if is_same(proposed, earlier, characteristic):
            reach = Reach.SAME if is_same(earlier, proposed, characteristic) else Reach.WIDER
            yield Reaching(one.installation, reach, earlier.words)
        elif is_between(proposed, change.documented, earlier, characteristic):
            yield Reaching(one.installation, Reach.WIDER, earlier.words)


def _judged(
    work: Work, one: Shown, reached: Mapping[RowKey, Sequence[Reaching]], wholes: Collection[RowKey]
) -> Mapping[RowKey, Row]:
    """The rows that are wanted of an earlier installation: those of precedents, and of numbers and the like."""
    wanted = {
        key for key, each in reached.items() if any(it.installation is one.installation for it in each)
    } | {*wholes}
    return {row.key: row for row in rows_about(work, one.installation, wanted)} if wanted else {}


def _precedents(work: Work, row: Row, reached: Sequence[Reaching], judged: Judged) -> tuple[Precedent, ...]:
    return tuple(_precedent(work, one, judged[one.installation.iri].get(row.key)) for one in reached)


def _of_one(
    variance: Variance,
    row: Row,
    precedents: tuple[Precedent, ...],
    change: ValueChange,
    shown: Sequence[Shown],
) -> Forerunners:
    """Of a value of one subject by itself: its precedents, and the steps to it; a venue is another each time."""
    if row.subject.kind is SubjectKind.VENUE:
        return Forerunners(subject=row.subject, characteristic=row.characteristic, precedents=precedents)
    return Forerunners(
        subject=row.subject,
        characteristic=row.characteristic,
        precedents=precedents,
        documented=change.documented.words,
        steps=tuple(_steps(variance, shown, change)),
        distance=change.distance(variance.work.vocabulary),
    )


def _steps(variance: Variance, shown: Sequence[Shown], change: ValueChange) -> Iterator[Step]:
    """The steps from the documented value, each departing installation that changed it being one."""
    characteristic, last = change.characteristic, change.documented
    values = [(one.installation, value_of(one.state, change.name, characteristic)) for one in shown]
    for installation, value in [*values, (variance.installation, change.now)]:
        if departs(value, change.documented, characteristic) and departs(value, last, characteristic):
            way = distance_words(last, value, characteristic, variance.work.vocabulary)
            yield Step(installation, value.words, way)
            last = value


def _of_whole(work: Work, shown: Sequence[Shown], row: Row, judged: Judged) -> Forerunners:
    """Of a number, a total or a relation: where it departed to the same value before."""
    told = []
    for one in shown:
        then = judged[one.installation.iri].get(row.key)
        if then is not None and _is_like(then, row):
            told.append(_precedent(work, Reaching(one.installation, Reach.SAME, then.proposed), then))
    return Forerunners(subject=row.subject, characteristic=row.characteristic, precedents=tuple(told))


def _is_like(then: Row, row: Row) -> bool:
    """Whether a row of an earlier installation departed to the same value, of the same members."""
    is_same_value = then.proposed == row.proposed and then.subject.members == row.subject.members
    return then.verdict.is_departure and is_same_value


def _precedent(work: Work, found: Reaching, row: Row | None) -> Precedent:
    consents = consenting_people(work, found.installation, row) if row is not None else ()
    verdict = row.verdict if row is not None else None
    return Precedent(
        installation=found.installation,
        reach=found.reach,
        value=found.value,
        verdict=verdict,
        consents=consents,
    )
