"""What an earlier installation has already shown of each departure, and how many steps lead to it.

A precedent is told and never counts: what was carried out once is not thereby permitted.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum

from intent.analysis.history.consenting import consenting_people
from intent.analysis.history.steps import Value, departs, distance_words, is_between, is_same, value_of
from intent.model.installation import Installation
from intent.model.work import Work
from intent.names import THE_VENUE
from intent.variance.judge import rows_about
from intent.variance.result import Row, Variance, Verdict
from intent.variance.state import State, documented_state, proposed_state
from intent.vocabulary.terms import Characteristic

Key = tuple[str, str]
"""A row's subject and characteristic, as it names them."""


class Reach(StrEnum):
    SAME = "same"
    """The earlier installation had the same value."""
    WIDER = "wider"
    """It went as far or farther: the value lies within its set, or between the documented one and its own."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Precedent:
    """An earlier installation that departed in the same way, or farther."""

    installation: Installation
    reach: Reach
    value: str
    verdict: Verdict | None
    """How it was judged on its days; none where nothing spoke of it then."""
    consents: tuple[str, ...]
    """Who had consented: identifiers of people."""


@dataclass(frozen=True, slots=True)
class Step:
    """A change of one characteristic from one installation to the next that departs."""

    installation: Installation
    value: str
    distance: str
    """How far from the value before; nothing where it is not measured."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Forerunners:
    """How one departure stands to what was shown before."""

    subject: str
    characteristic: str
    precedents: tuple[Precedent, ...]
    documented: str = ""
    steps: tuple[Step, ...] = ()
    """From the documented value to the proposed one, by way of the installations carried out; the last is its own."""
    distance: str = ""
    """How far the proposed value lies from the documented one, where it is measured."""


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
    value: str


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
    matters = [_matter(row, documented, proposed) for row in variance.departures]
    found = {matter.key: tuple(_reaching(shown, matter)) for matter in matters if matter}
    together = {key_of(row) for row in variance.departures if row.members != (row.subject,)}
    judged = {one.installation.iri: _judged(work, one, found, together) for one in shown}
    standings = [
        _alone(variance, shown, matter, found[matter.key], judged)
        if matter
        else _together(work, shown, row, judged)
        for row, matter in zip(variance.departures, matters, strict=True)
    ]
    return tuple(one for one in standings if one.precedents or len(one.steps) > 1)


@dataclass(frozen=True, slots=True, kw_only=True)
class Departed:
    """A departure of one subject in one characteristic, with its values."""

    key: Key
    characteristic: Characteristic
    documented: Value
    proposed: Value


def _matter(row: Row, documented: State, proposed: State) -> Departed | None:
    """What a row about one subject by itself is about; nothing of numbers, totals and the like, and of additions."""
    characteristic = documented.vocabulary.characteristics.get(row.term or "")
    if characteristic is None or row.members != (row.subject,) or row.subject not in documented.statements:
        return None
    before, after = (value_of(state, row.subject, characteristic) for state in (documented, proposed))
    return Departed(key=key_of(row), characteristic=characteristic, documented=before, proposed=after)


def key_of(row: Row) -> Key:
    return row.subject, row.characteristic


def _reaching(shown: Sequence[Shown], matter: Departed) -> Iterator[Reaching]:
    """The earlier installations that departed as far, or farther on the same way."""
    characteristic, proposed = matter.characteristic, matter.proposed
    for one in shown:
        earlier = value_of(one.state, matter.key[0], characteristic)
        if not departs(earlier, matter.documented, characteristic):
            continue
        if is_same(proposed, earlier, characteristic):
            reach = Reach.SAME if is_same(earlier, proposed, characteristic) else Reach.WIDER
            yield Reaching(one.installation, reach, earlier.words)
        elif is_between(proposed, matter.documented, earlier, characteristic):
            yield Reaching(one.installation, Reach.WIDER, earlier.words)


def _judged(
    work: Work, one: Shown, found: Mapping[Key, Sequence[Reaching]], together: Collection[Key]
) -> Mapping[Key, Row]:
    """The rows that are wanted of an earlier installation: those of precedents, and of numbers and the like."""
    reached = {key for key, each in found.items() if any(it.installation is one.installation for it in each)}
    wanted = reached | set(together)
    return {key_of(row): row for row in rows_about(work, one.installation, wanted)} if wanted else {}


def _alone(
    variance: Variance,
    shown: Sequence[Shown],
    matter: Departed,
    found: Sequence[Reaching],
    judged: Mapping[str, Mapping[Key, Row]],
) -> Forerunners:
    told = tuple(
        _precedent(variance.work, one, judged[one.installation.iri].get(matter.key)) for one in found
    )
    subject, characteristic = matter.key
    if subject == THE_VENUE:
        return Forerunners(subject=subject, characteristic=characteristic, precedents=told)
    measured = matter.characteristic, variance.work.vocabulary
    whole = distance_words(matter.documented, matter.proposed, *measured)
    return Forerunners(
        subject=subject,
        characteristic=characteristic,
        precedents=told,
        documented=matter.documented.words,
        steps=tuple(_steps(variance, shown, matter)),
        distance=whole,
    )


def _steps(variance: Variance, shown: Sequence[Shown], matter: Departed) -> Iterator[Step]:
    """The steps from the documented value, each departing installation that changed it being one."""
    characteristic, last = matter.characteristic, matter.documented
    values = [(one.installation, value_of(one.state, matter.key[0], characteristic)) for one in shown]
    for installation, value in [*values, (variance.installation, matter.proposed)]:
        if departs(value, matter.documented, characteristic) and departs(value, last, characteristic):
            way = distance_words(last, value, characteristic, variance.work.vocabulary)
            yield Step(installation, value.words, way)
            last = value


def _together(
    work: Work, shown: Sequence[Shown], row: Row, judged: Mapping[str, Mapping[Key, Row]]
) -> Forerunners:
    """Of a number, a total or a relation: where it departed to the same value before."""
    told = []
    for one in shown:
        then = judged[one.installation.iri].get(key_of(row))
        if then is not None and _is_like(then, row):
            told.append(_precedent(work, Reaching(one.installation, Reach.SAME, then.proposed), then))
    return Forerunners(subject=row.subject, characteristic=row.characteristic, precedents=tuple(told))


def _is_like(then: Row, row: Row) -> bool:
    return then.verdict.is_departure and then.proposed == row.proposed and then.members == row.members


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
