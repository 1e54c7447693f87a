"""What was carried out beside what had been agreed: each difference, at its place in the text."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from intent.diagnostics import Diagnostic, Severity, Span, Unusable
from intent.language.message import Words, joined, named, say
from intent.model.installation import Change, Installation, Omission, Substitution
from intent.model.naming import subject_name
from intent.model.subject import Subject, one
from intent.model.work import Part, Work
from intent.names import INTENT, PRESENCE, THE_VENUE, THE_WORK
from intent.reading.documentation import Findings
from intent.reading.files import within
from intent.reading.past import is_carried_out, usable_text
from intent.reading.proposal import Proposal, read_beside
from intent.values.dates import DaySpan
from intent.variance.scopes import subject_called
from intent.variance.state import State
from intent.variance.two_states import documented_state, proposed_state
from intent.vocabulary.terms import Characteristic


@dataclass(frozen=True, slots=True, kw_only=True)
class Otherwise:
    """One thing that was carried out otherwise than agreed."""

    subject: Subject | None
    """None for the showing as a whole."""
    respect: Words
    """A characteristic, or what else is agreed: dates, venue, device …"""
    agreed: Words
    done: Words

    @property
    def message(self) -> Words:
        """`M1, rotation: upside down, where upright was agreed`."""
        of = subject_name(self.subject) if self.subject else ""
        return say(
            "{matter}: {done}, where {agreed} was agreed",
            matter=joined([of, self.respect], ", "),
            done=self.done,
            agreed=self.agreed,
        )


def not_as_agreed(
    work: Work, agreed: Installation, done: Installation, spans: Mapping[str, Span]
) -> Findings:
    """A warning for each difference of what was carried out from what was agreed."""
    places = _places(done)
    head = spans.get(done.iri, Span(file=""))
    found = []
    for difference in otherwise(work, agreed, done):
        name = difference.subject.written if difference.subject else ""
        found.append(
            Diagnostic(
                slug="not-as-agreed",
                message=say("not as agreed: {found}", found=difference.message),
                span=spans.get(places.get(name, ""), head),
                severity=Severity.WARNING,
                subject=name,
            )
        )
    return tuple(found)


def otherwise(work: Work, agreed: Installation, done: Installation) -> Iterator[Otherwise]:
    """Every difference: days and venue, then what is at the venue, the parts in their order, and the whole."""
    if _days(agreed.dates) != _days(done.dates):
        yield Otherwise(subject=None, respect=say("dates"), agreed=str(agreed.dates), done=str(done.dates))
    nowhere = say("none named")
    if agreed.venue != done.venue:
        yield Otherwise(
            subject=None, respect=say("venue"), agreed=agreed.venue or nowhere, done=done.venue or nowhere
        )
    documented = documented_state(work)
    before, after = (proposed_state(work, state, documented) for state in (agreed, done))
    added = dict.fromkeys(part.identifier for part in (*agreed.additions, *done.additions))
    parts = [*(part.identifier for part in work.parts), *added]
    material = [thing.identifier for thing in work.material]
    for name in (THE_VENUE, *parts, *material, THE_WORK):
        if name in added:
            yield from _addition(_added(agreed, name), _added(done, name))
        yield from _of_subject(name, before, after)


def _of_subject(name: str, before: State, after: State) -> Iterator[Otherwise]:
    subject = subject_called(name)
    is_part = name in before.devices or name in after.devices
    if is_part and (name in before.present) != (name in after.present):
        presence = after.vocabulary.characteristics[PRESENCE]
        yield Otherwise(
            subject=subject,
            respect=named(presence),
            agreed=before.words(name, presence),
            done=after.words(name, presence),
        )
        return
    if before.devices.get(name) != after.devices.get(name):
        agreed, done = (state.devices.get(name) or say("no device named") for state in (before, after))
        yield Otherwise(subject=subject, respect=say("device"), agreed=agreed, done=done)
    stated = dict.fromkeys([*before.statements.get(name, {}), *after.statements.get(name, {})])
    for characteristic in _in_order(after, stated):
        values = [state.value(name, characteristic) for state in (before, after)]
        given = [state.is_given(name, characteristic) for state in (before, after)]
        if values[0] != values[1] or given[0] != given[1]:
            agreed, done = (state.words(name, characteristic) for state in (before, after))
            yield Otherwise(subject=subject, respect=named(characteristic), agreed=agreed, done=done)


def _in_order(state: State, stated: Mapping[str, None]) -> list[Characteristic]:
    return [found for iri, found in state.vocabulary.characteristics.items() if iri in stated]


def _addition(agreed: Part | None, done: Part | None) -> Iterator[Otherwise]:
    """What an addition is; whether it is there is told of every part alike."""
    if agreed is None or done is None:
        return
    respects: tuple[tuple[Words, Words | None, Words | None], ...] = (
        (say("kind of part"), named(agreed.kind), named(done.kind)),
        (say("group"), agreed.group, done.group),
        (say("name"), agreed.name, done.name),
    )
    for respect, before, after in respects:
        if before != after:
            yield Otherwise(
                subject=one(done.identifier),
                respect=respect,
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


def read_agreement(proposal: Proposal) -> Findings:
    """How what was carried out differs from the installation that it names as agreed; nothing where it names none."""
    written = proposal.installation.fields.get(str(INTENT.agreedAs))
    if written is None or not is_carried_out(proposal.installation):
        return ()
    work, spans, path = proposal.documentation.work, proposal.reading.spans, _file_of(proposal)
    head = spans.get(proposal.installation.iri, Span(file=str(path)))
    try:
        inside = path.parent.resolve().is_relative_to(proposal.documentation.folder.resolve())
        agreed_path = within(proposal.documentation.folder, written, head, path.parent if inside else None)
        agreed = usable_text(read_beside(agreed_path, proposal.documentation)).installation
    except Unusable as error:
        message = say("what was agreed cannot be read: {fault}", fault=error.diagnostics[0].message)
        return (Diagnostic(slug="not-as-agreed", message=message, span=head, severity=Severity.WARNING),)
    return not_as_agreed(work, agreed, proposal.installation, spans)


def _file_of(proposal: Proposal) -> Path:
    return next(Path(file.name) for file in proposal.files if file.role == "installation")
