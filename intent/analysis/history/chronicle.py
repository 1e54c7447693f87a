"""How a work was shown: every departure of the installations carried out, part by part, in order of date."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator
from dataclasses import dataclass

from intent.analysis.explanation import Unknown, characteristic_named, members_named
from intent.analysis.history.consenting import consenting_people
from intent.analysis.history.steps import departs, distance_words, value_of
from intent.effects.assess import assess
from intent.model.installation import Installation
from intent.model.work import Work
from intent.variance.result import Row, Variance, Verdict
from intent.variance.state import State, documented_state, proposed_state

DEVICE = "device"
"""What a chapter about the devices in a part's place is called."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Showing:
    """What one installation made of one thing."""

    installation: Installation
    value: str
    verdict: Verdict | None
    """How it is judged on its days; none of a device, which is judged by its characteristics."""
    consents: tuple[str, ...] = ()
    """Who had consented: identifiers of people."""
    distance: str = ""
    """How far from what is documented, where it is measured."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Chapter:
    """One characteristic of one subject through the years."""

    subject: str
    name: str
    characteristic: str
    documented: str
    entries: tuple[Showing, ...]


@dataclass(frozen=True, slots=True)
class Chronicle:
    """The installations carried out, each judged on its own days, and what departed in them."""

    work: Work
    variances: tuple[Variance, ...]
    chapters: tuple[Chapter, ...]


def chronicle(
    work: Work, past: Iterable[Installation], subject: str | None = None, characteristic: str | None = None
) -> Chronicle:
    """The history of a work, of a part, or of one characteristic of it. Raises `Unknown` for an unknown name."""
    members = members_named(work, subject) if subject else None
    if subject and not members:
        raise Unknown(f"there is no part or group `{subject}` in “{work.title}”")
    term = characteristic_named(work, characteristic).iri if characteristic else None
    variances = tuple(assess(work, one) for one in sorted(past, key=lambda one: one.dates.first))
    documented = documented_state(work)
    found: dict[tuple[str, str, str, str], list[Showing]] = {}
    for variance in variances:
        state = proposed_state(work, variance.installation, documented)
        told = [*_devices(variance, documented, state)] if term is None else []
        rows = (row for row in variance.rows if term is None or row.term == term)
        told += [
            _of_row(variance, row, documented, state) for row in rows if _departed(row, documented, state)
        ]
        for key, entry, concerned in told:
            if members is None or {*members} & {key[0], *concerned}:
                found.setdefault(key, []).append(entry)
    chapters = [
        Chapter(subject=subject, name=name, characteristic=of, documented=value, entries=tuple(entries))
        for (subject, name, of, value), entries in found.items()
    ]
    order = [*(part.identifier for part in work.parts), *(one.identifier for one in work.material)]
    places = {identifier: place for place, identifier in enumerate(order)}
    chapters.sort(key=lambda one: (places.get(one.subject, len(places)), one.characteristic != DEVICE))
    return Chronicle(work, variances, tuple(chapters))


Told = tuple[tuple[str, str, str, str], Showing, Collection[str]]
"""Subject, its name, characteristic and documented value; what became of it; the parts concerned."""


def _devices(variance: Variance, documented: State, state: State) -> Iterator[Told]:
    """The devices that stood in the place of those documented."""
    for substitution in variance.installation.substitutions:
        part = substitution.part
        before, after = documented.devices.get(part) or "none named", state.devices.get(part) or "not named"
        yield (
            (part, _name(variance, part), DEVICE, before),
            Showing(installation=variance.installation, value=after, verdict=None),
            (part,),
        )


def _departed(row: Row, documented: State, state: State) -> bool:
    """Whether a row tells of a departure: by its verdict, or because the value is not the documented one."""
    if row.verdict.is_departure:
        return True
    characteristic = state.vocabulary.characteristics.get(row.term or "")
    if characteristic is None or row.members != (row.subject,) or not documented.statements.get(row.subject):
        return False
    shown, before = (value_of(one, row.subject, characteristic) for one in (state, documented))
    return before.is_given and departs(shown, before, characteristic)


def _of_row(variance: Variance, row: Row, documented: State, state: State) -> Told:
    characteristic = state.vocabulary.characteristics.get(row.term or "")
    distance = ""
    if characteristic is not None and row.members == (row.subject,):
        ends = [value_of(one, row.subject, characteristic) for one in (documented, state)]
        distance = distance_words(ends[0], ends[1], characteristic, state.vocabulary)
    consents = consenting_people(variance.work, variance.installation, row)
    entry = Showing(
        installation=variance.installation,
        value=row.proposed,
        verdict=row.verdict,
        consents=consents,
        distance=distance,
    )
    return (row.subject, _name(variance, row.subject), row.characteristic, row.documented), entry, row.members


def _name(variance: Variance, subject: str) -> str:
    every = (*variance.work.parts, *variance.installation.additions)
    return next((part.name for part in every if part.identifier == subject), "")
