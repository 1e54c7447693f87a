"""What follows of a device, on a day, from the log of what happened to it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from fractions import Fraction

from intent.model.assertions import Expression, Measured, Statements
from intent.model.log_entry import LogEntry
from intent.model.work import Device, Part
from intent.vocabulary.terms import Vocabulary


@dataclass(frozen=True, slots=True, kw_only=True)
class LoggedState:
    """What a log tells of one device as of a day."""

    status: str | None = None
    """The status that follows from it; none where it tells of none, or of none any more."""
    over: frozenset[str] = frozenset()
    """The statuses that it tells to be over: what was repaired, what came back."""
    statements: Statements = field(default_factory=dict)
    """The measured values that were read last, such as running hours."""


def entries_about(device: str, log: Iterable[LogEntry], parts: Iterable[Part]) -> tuple[LogEntry, ...]:
    """The entries of a device: those that name it, and those of a part in whose row it stands."""
    names = {device, *(part.identifier for part in parts if part.device == device)}
    return tuple(entry for entry in log if entry.about in names)


def state_of(entries: Iterable[LogEntry], vocabulary: Vocabulary, at: date | None = None) -> LoggedState:
    """What the entries about one device tell of it as of a day; of the day after them all, where none is named.

    The order in which they are given plays no part. Where their dates do not tell which came later, the gravest status
    and the most hours count.
    """
    known = tuple(entry for entry in entries if at is None or entry.days.first <= at)
    standing = [one for one in known if one.event.gives_status and not _is_over(one, known, at)]
    sure = [one for one in standing if not _may_be_over(one, known)]
    latest = [one for one in standing if not any(_is_after(later, one, at) for later in sure)]
    statuses = {one.event.gives_status: _gravity(one, vocabulary) for one in latest if one.event.gives_status}
    ended = {name for one in known for name in one.event.ends}
    over = {
        concept.gives_status
        for name in ended
        if (concept := vocabulary.concepts.get(name)) is not None and concept.gives_status
    }
    return LoggedState(
        status=max(statuses, key=lambda status: (statuses[status], status), default=None),
        over=frozenset(over),
        statements=_latest_readings(known, vocabulary, at),
    )


def _gravity(entry: LogEntry, vocabulary: Vocabulary) -> int:
    status = vocabulary.concepts.get(entry.event.gives_status or "")
    return status.gravity if status else 0


def _is_after(later: LogEntry, earlier: LogEntry, at: date | None) -> bool:
    """Whether one entry is surely of a later day than another, and happened by the day that is asked for."""
    return later.days.first > earlier.days.last and (at is None or later.days.last <= at)


def _is_over(entry: LogEntry, known: Iterable[LogEntry], at: date | None) -> bool:
    return any(entry.event.iri in other.event.ends and _is_after(other, entry, at) for other in known)


def _may_be_over(entry: LogEntry, known: Iterable[LogEntry]) -> bool:
    return any(entry.event.iri in other.event.ends and other.days.last >= entry.days.first for other in known)


def _latest_readings(known: Iterable[LogEntry], vocabulary: Vocabulary, at: date | None) -> Statements:
    """The last value of each measured characteristic; of several that may be the last, the greatest."""
    found: dict[str, Expression] = {}
    read = [(entry, iri, value) for entry in known for iri, value in entry.value.items()]
    for entry, iri, value in read:
        characteristic = vocabulary.characteristics.get(iri)
        if characteristic is None or not characteristic.is_measured:
            continue
        if any(iri in later.value and _is_after(later, entry, at) for later in known):
            continue
        if iri not in found or _most(value) > _most(found[iri]):
            found[iri] = value
    return found


def _most(value: Expression) -> tuple[Fraction, str]:
    numbers = [number for item in value.items if isinstance(item, Measured) for number in item.numbers]
    return max(numbers, default=Fraction(0)), value.written


def as_logged(device: Device, told: LoggedState, vocabulary: Vocabulary) -> Device:
    """A device with what its log tells, which goes before its row."""
    status = device.status
    if told.status is not None:
        status = vocabulary.concepts[told.status]
    elif status is not None and status.iri in told.over:
        status = None
    return replace(device, status=status, statements={**device.statements, **told.statements})


def devices_as_logged(
    devices: Iterable[Device],
    log: Iterable[LogEntry],
    parts: Iterable[Part],
    vocabulary: Vocabulary,
    *,
    at: date | None = None,
) -> Mapping[str, Device]:
    """Every device by its identifier, as its log and its row have it together.

    As of a day in the past the status is that of the log alone, since a row has that of today.
    """
    entries, there = tuple(log), tuple(parts)
    found: dict[str, Device] = {}
    for device in devices:
        told = state_of(entries_about(device.identifier, entries, there), vocabulary, at)
        known = device if at is None else replace(device, status=None)
        found[device.identifier] = as_logged(known, told, vocabulary)
    return found
