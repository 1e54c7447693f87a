"""How a work was shown: every departure of the installations carried out, part by part, in order of date."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from intent.analysis.asked_about import characteristic_named, members_named
from intent.analysis.history.consenting import consenting_people
from intent.analysis.history.steps import ValueChange, change_in
from intent.effects.assess import assess
from intent.language.message import Words, say
from intent.model.installation import Installation
from intent.model.naming import find_part
from intent.model.subject import Subject, SubjectKey, SubjectKind, one
from intent.model.work import Work
from intent.variance.result import Row, Variance, Verdict
from intent.variance.state import State
from intent.variance.two_states import documented_state, proposed_state

_AGAINST = {Verdict.FORBIDDEN, Verdict.BREACH, Verdict.CONTRADICTION}
DEVICE = say("device")
"""What a chapter about the devices in a part's place is called."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PastShowing:
    """What one installation made of one thing."""

    installation: Installation
    value: Words
    verdict: Verdict | None
    """How it is judged on its days; none of a device, which is judged by its characteristics."""
    consents: tuple[str, ...] = ()
    """Who had consented: identifiers of people."""
    distance: Words = ""
    """How far from what is documented, where it is measured and is another."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Chapter:
    """One characteristic of one subject through the years."""

    subject: Subject
    name: str
    """The part's name; nothing where it has none."""
    characteristic: Words
    documented: Words
    entries: tuple[PastShowing, ...]

    @property
    def key(self) -> ChapterKey:
        """What tells it from the others."""
        return self.subject.key, self.name, self.characteristic, self.documented


ChapterKey = tuple[SubjectKey, str, Words, Words]


@dataclass(frozen=True, slots=True)
class Chronicle:
    """The installations carried out, each judged on its own days, and what departed in them."""

    work: Work
    variances: tuple[Variance, ...]
    chapters: tuple[Chapter, ...]


def chronicle(
    work: Work, past: Iterable[Installation], subject: str | None = None, characteristic: str | None = None
) -> Chronicle:
    """The history of a work, of a part, or of one characteristic of it. Raises `UnknownName`."""
    members = frozenset(members_named(work, subject)) if subject else None
    term = characteristic_named(work, characteristic).iri if characteristic else None
    variances = tuple(assess(work, each) for each in sorted(past, key=lambda each: each.dates.first))
    documented = documented_state(work)
    found: dict[ChapterKey, Chapter] = {}
    for variance in variances:
        for chapter in _chapters(variance, documented, term):
            if members is None or members & {chapter.subject.written, *chapter.subject.members}:
                before = found.get(chapter.key)
                entries = (*before.entries, *chapter.entries) if before else chapter.entries
                found[chapter.key] = replace(before or chapter, entries=entries)
    order = [*(part.identifier for part in work.parts), *(thing.identifier for thing in work.material)]
    places = {identifier: place for place, identifier in enumerate(order)}
    chapters = sorted(
        found.values(),
        key=lambda each: (places.get(each.subject.written, len(places)), each.characteristic != DEVICE),
    )
    return Chronicle(work, variances, tuple(chapters))


def _chapters(variance: Variance, documented: State, term: str | None) -> Iterator[Chapter]:
    """What departed in one installation, each with this one entry; of one characteristic, where one is asked for."""
    state = proposed_state(variance.work, variance.installation, documented)
    if term is None:
        yield from _devices(variance, documented, state)
    for row in variance.rows:
        if term is None or row.term == term:
            change = change_in(row, documented, state)
            if _departed(row) or (change is not None and change.departs):
                yield _of_row(variance, row, change)


def _departed(row: Row) -> bool:
    """Whether what was shown departed; a room is as it is, and departs only from what is asked of it."""
    if row.subject.kind is SubjectKind.VENUE:
        return row.verdict in _AGAINST or bool(row.set_aside)
    return row.verdict.is_departure


def _devices(variance: Variance, documented: State, state: State) -> Iterator[Chapter]:
    """The devices that stood in the place of those documented."""
    for substitution in variance.installation.substitutions:
        part = substitution.part
        shown = state.devices.get(part) or say("not named")
        yield Chapter(
            subject=one(part),
            name=_name(variance, part),
            characteristic=DEVICE,
            documented=documented.devices.get(part) or say("none named"),
            entries=(PastShowing(installation=variance.installation, value=shown, verdict=None),),
        )


def _of_row(variance: Variance, row: Row, change: ValueChange | None) -> Chapter:
    is_apart = change is not None and change.now.values != change.documented.values
    showing = PastShowing(
        installation=variance.installation,
        value=row.proposed,
        verdict=row.verdict,
        consents=consenting_people(variance.work, variance.installation, row),
        distance=change.distance(variance.work.vocabulary) if change is not None and is_apart else "",
    )
    return Chapter(
        subject=row.subject,
        name=_name(variance, row.subject.written),
        characteristic=row.characteristic,
        documented=row.documented,
        entries=(showing,),
    )


def _name(variance: Variance, identifier: str) -> str:
    part = find_part(variance.work, variance.installation, identifier)
    return part.name if part else ""
