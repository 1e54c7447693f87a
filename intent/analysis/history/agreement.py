"""What was carried out beside what had been agreed: each difference, at its place in the text."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from intent.diagnostics import Diagnostic, Severity, Span
from intent.language.message import joined, say
from intent.model.installation import Change, Installation, Omission, Substitution
from intent.model.work import Part, Work
from intent.names import PRESENCE, THE_VENUE, THE_WORK
from intent.reading.documentation import Findings
from intent.values.dates import DaySpan
from intent.variance.state import State, documented_state, proposed_state
from intent.vocabulary.terms import Characteristic

NO_DEVICE = say("no device named")


@dataclass(frozen=True, slots=True, kw_only=True)
class Otherwise:
    """One thing that was carried out otherwise than agreed."""

    subject: str
    """An identifier, `the work`, `the venue`; nothing for the showing as a whole."""
    matter: str
    agreed: str
    done: str

    @property
    def in_words(self) -> str:
        return say(
            "{matter}: {done}, where {agreed} was agreed",
            matter=joined([self.subject, self.matter], ", "),
            done=self.done,
            agreed=self.agreed,
        )


def not_as_agreed(
    work: Work, agreed: Installation, done: Installation, spans: Mapping[str, Span]
) -> Findings:
    """A warning for each difference of what was carried out from what was agreed."""
    places = _places(done)
    head = spans.get(done.iri, Span(file=""))
    return tuple(
        Diagnostic(
            slug="not-as-agreed",
            message=say("not as agreed: {found}", found=found.in_words),
            span=spans.get(places.get(found.subject, ""), head),
            severity=Severity.WARNING,
            subject=found.subject,
        )
        for found in otherwise(work, agreed, done)
    )


def otherwise(work: Work, agreed: Installation, done: Installation) -> Iterator[Otherwise]:
    """Every difference: days and venue, then what is at the venue, the parts in their order, and the whole."""
    if _days(agreed.dates) != _days(done.dates):
        yield Otherwise(subject="", matter=say("dates"), agreed=str(agreed.dates), done=str(done.dates))
    nowhere = say("none named")
    if agreed.venue != done.venue:
        yield Otherwise(
            subject="", matter=say("venue"), agreed=agreed.venue or nowhere, done=done.venue or nowhere
        )
    documented = documented_state(work)
    before, after = (proposed_state(work, one, documented) for one in (agreed, done))
    added = dict.fromkeys(part.identifier for one in (agreed, done) for part in one.additions)
    parts = [*(part.identifier for part in work.parts), *added]
    material = [one.identifier for one in work.material]
    for subject in (THE_VENUE, *parts, *material, THE_WORK):
        if subject in added:
            yield from _addition(_added(agreed, subject), _added(done, subject))
        yield from _of_subject(subject, before, after)


def _of_subject(subject: str, before: State, after: State) -> Iterator[Otherwise]:
    is_part = subject in before.devices or subject in after.devices
    if is_part and (subject in before.present) != (subject in after.present):
        presence = after.vocabulary.characteristics[PRESENCE]
        yield Otherwise(
            subject=subject,
            matter=presence.label,
            agreed=before.words(subject, presence),
            done=after.words(subject, presence),
        )
        return
    if before.devices.get(subject) != after.devices.get(subject):
        agreed, done = (state.devices.get(subject) or NO_DEVICE for state in (before, after))
        yield Otherwise(subject=subject, matter=say("device"), agreed=agreed, done=done)
    stated = dict.fromkeys([*before.statements.get(subject, {}), *after.statements.get(subject, {})])
    for characteristic in _in_order(after, stated):
        values = [state.value(subject, characteristic) for state in (before, after)]
        given = [state.is_given(subject, characteristic) for state in (before, after)]
        if values[0] != values[1] or given[0] != given[1]:
            agreed, done = (state.words(subject, characteristic) for state in (before, after))
            yield Otherwise(subject=subject, matter=characteristic.label, agreed=agreed, done=done)


def _in_order(state: State, stated: Mapping[str, None]) -> list[Characteristic]:
    return [found for iri, found in state.vocabulary.characteristics.items() if iri in stated]


def _addition(agreed: Part | None, done: Part | None) -> Iterator[Otherwise]:
    """What an addition is; whether it is there is told of every part alike."""
    if agreed is None or done is None:
        return
    for matter, before, after in (
        (say("kind of part"), agreed.kind.label, done.kind.label),
        (say("group"), agreed.group, done.group),
        (say("name"), agreed.name, done.name),
    ):
        if before != after:
            yield Otherwise(
                subject=done.identifier,
                matter=matter,
                agreed=before or say("none"),
                done=after or say("none"),
            )


def _added(installation: Installation, identifier: str) -> Part | None:
    return next((part for part in installation.additions if part.identifier == identifier), None)


def _days(span: DaySpan) -> tuple[object, object]:
    return span.first, span.last


def _places(installation: Installation) -> dict[str, str]:
    """Where each subject is spoken of in an installation: the IRI of its row."""
    changed: tuple[Omission | Substitution | Change, ...] = (
        *installation.omissions,
        *installation.substitutions,
        *installation.changes,
    )
    added = {part.identifier: part.iri for part in installation.additions}
    return added | {one.part: one.iri for one in changed}
