"""In what condition each part's device is, what is to stay so, and what happened to it last."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from intent.effects.scene import Scene
from intent.language.calendar import span_words
from intent.language.message import Words, joined, named, say
from intent.model.log_entry import LogEntry
from intent.model.logged import devices_as_logged, entries_about
from intent.model.naming import person_name, runs
from intent.model.phrasing import expression_words
from intent.model.work import Part
from intent.names import CARRIED_OUT
from intent.papers.document import Column, PaperSection, PaperTable, Paragraph, ParagraphRole
from intent.papers.inline import Break, Content, Inline, strong, with_below
from intent.papers.statements_told import characterised, in_order
from intent.planning.concerns import Concern, stated_of
from intent.vocabulary.terms import Concept

_COLUMNS = (Column(say("part"), 22), Column(say("condition")), Column(say("what happened last"), 38))


def condition_section(scene: Scene) -> PaperSection:
    """Every part of whose condition, status or log something is known, in the order of the work."""
    statuses = _statuses(scene)
    alike: dict[tuple[tuple[Inline, ...], tuple[Inline, ...]], list[Part]] = {}
    for part in scene.parts():
        known = tuple(_lines(_condition(scene, part, statuses))), tuple(_lines(_happened(scene, part)))
        if any(known):
            alike.setdefault(known, []).append(part)
    rows = tuple((_named(scene, parts), *known) for known, parts in alike.items())
    remark = Paragraph(
        say(
            "What is meant to be as it is, is not to be mended. Whoever is not sure asks before touching it."
        ),
        ParagraphRole.QUIET,
    )
    table = PaperTable(columns=_COLUMNS, rows=rows)
    return PaperSection(
        title=say("Condition, and what happened last"),
        anchor="condition",
        blocks=(remark, table) if rows else (),
    )


def _named(scene: Scene, parts: list[Part]) -> Content:
    """A part with its device and name; of several their identifiers."""
    if len(parts) > 1:
        return runs([part.identifier for part in parts])
    (part,) = parts
    return with_below(part.identifier, joined([scene.device(part.identifier) or "", part.name], ", "))


def _statuses(scene: Scene) -> dict[str, Concept]:
    """The status of each device that has one; of a past showing, that of its first day."""
    work, installation = scene.case.work, scene.case.installation
    devices, log = (*work.devices, *installation.devices), (*work.log, *installation.log)
    is_past = installation.status is not None and installation.status.iri == CARRIED_OUT
    at = installation.dates.first if is_past else None
    known = devices_as_logged(devices, log, work.parts, work.vocabulary, at=at)
    return {name: device.status for name, device in known.items() if device.status is not None}


def _condition(scene: Scene, part: Part, statuses: dict[str, Concept]) -> Iterator[Inline]:
    """What is wrong first, then what is stated."""
    status = statuses.get(scene.device(part.identifier) or "")
    if status is not None and status.gravity:
        yield strong(named(status))
    stated = stated_of(scene, part.identifier, Concern.CONDITION)
    for iri in in_order(scene.vocabulary, stated):
        term = named(scene.vocabulary.named(iri))
        yield characterised(term, expression_words(stated[iri], scene.vocabulary))


def _happened(scene: Scene, part: Part) -> Iterator[Words]:
    """The latest entry of each kind of event, the latest first."""
    work, device = scene.case.work, scene.device(part.identifier)
    log = (*work.log, *scene.case.installation.log)
    # an entry about a part is about the device documented in its place, and not about another that has come
    about = (
        entries_about(device, log, work.parts)
        if device
        else [entry for entry in log if entry.about == part.identifier]
    )
    latest: dict[str, LogEntry] = {}
    for entry in sorted(about, key=lambda one: one.date.last.toordinal() if one.date else 0):
        latest.pop(entry.event.iri, None)
        latest[entry.event.iri] = entry
    for entry in reversed(latest.values()):
        yield _entry(scene, entry)


def _entry(scene: Scene, entry: LogEntry) -> Words:
    """`19 November 2025: fault, upper third burnt (Odile Varga-Finn)`."""
    values = (expression_words(value, scene.vocabulary) for value in entry.value.values())
    told = joined([named(entry.event), *values, entry.note], ", ")
    if entry.date:
        told = say("{subject}: {text}", subject=span_words(entry.date), text=told)
    if not entry.by:
        return told
    return say("{name} ({role})", name=told, role=person_name(scene.case.work, entry.by))


def _lines(told: Iterable[Inline]) -> Iterator[Inline]:
    """Each in a line of its own."""
    for place, one in enumerate(told):
        if place:
            yield Break.LINE
        yield one
