"""What shapes cannot say: statements that disagree, and superseding that has no effect."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from intent.diagnostics import Diagnostic, Severity, Span
from intent.dossier.register import group_fault
from intent.language.message import Words, named, say
from intent.model.assertions import Expression
from intent.model.logged import devices_as_logged
from intent.model.meaning import given_value
from intent.model.work import Device, Part, Work
from intent.record.contradictions import contradictions_in_work
from intent.values.sets import ValueSet
from intent.vocabulary.named_term import local_name

_NOWHERE = Span(file="")


def consistency_findings(work: Work, spans: Mapping[str, Span]) -> tuple[Diagnostic, ...]:
    return (
        *_misleading_groups(work, spans),
        *_disagreeing_devices(work, spans),
        *_disagreeing_rows(work, spans),
        *contradictions_in_work(work, spans),
        *_otherwise_in_the_log(work, spans),
    )


def _misleading_groups(work: Work, spans: Mapping[str, Span]) -> Iterator[Diagnostic]:
    """A group of a graph, called like something that a sentence says already: no text could name it."""
    for group in work.groups:
        fault = group_fault(group.name, work.vocabulary)
        if fault:
            span = spans.get(group.iri) or spans.get(work.iri) or _NOWHERE
            yield Diagnostic(slug="word-of-the-sentence", message=fault, span=span, subject=group.name)


def _disagreeing_devices(work: Work, spans: Mapping[str, Span]) -> Iterator[Diagnostic]:
    """A part's row and its device's own row that say different things are an error."""
    devices = {device.identifier: device for device in work.devices}
    for part in work.parts:
        device = devices.get(part.device or "")
        if device is None:
            continue
        for iri, expression in part.statements.items():
            other = device.statements.get(iri)
            if other is None or _value(work, iri, expression) == _value(work, iri, other):
                continue
            label = work.vocabulary.characteristics[iri].label
            message = say(
                "{characteristic} of {part} is {value}, but its device {device} says {other}; make the two agree",
                characteristic=label,
                part=part.identifier,
                value=expression.written,
                device=device.identifier,
                other=other.written,
            )
            yield Diagnostic(
                slug="disagreement",
                message=message,
                span=_place(work, part, iri, spans),
                subject=part.identifier,
            )


def _disagreeing_rows(work: Work, spans: Mapping[str, Span]) -> Iterator[Diagnostic]:
    """Two parts that one device serves cannot give it two values of its own."""
    first: dict[tuple[str, str], Part] = {}
    for part in work.parts:
        for iri, expression in part.statements.items():
            if part.device is None or "device" not in work.vocabulary.characteristics[iri].bearers:
                continue
            earlier = first.setdefault((part.device, iri), part)
            if _value(work, iri, earlier.statements[iri]) != _value(work, iri, expression):
                label = work.vocabulary.characteristics[iri].label
                message = say(
                    "device {device} serves {one} and {other}, which give it two values of {characteristic}; "
                    "make the two agree",
                    device=part.device,
                    one=earlier.identifier,
                    other=part.identifier,
                    characteristic=label,
                )
                yield Diagnostic(
                    slug="disagreement",
                    message=message,
                    span=_place(work, part, iri, spans),
                    subject=part.identifier,
                )


def _otherwise_in_the_log(work: Work, spans: Mapping[str, Span]) -> Iterator[Diagnostic]:
    """A device's row that says something else than its log, which goes before it, is noted."""
    logged = devices_as_logged(work.devices, work.log, work.parts, work.vocabulary)
    for device in work.devices:
        told = logged[device.identifier]
        if device.status is not None and told.status != device.status:
            after = named(told.status) if told.status else say("not any more")
            yield _noted(device, say("status"), named(device.status), after, spans.get(device.iri))
        for iri, expression in device.statements.items():
            other = told.statements[iri]
            if _value(work, iri, expression) != _value(work, iri, other):
                label = named(work.vocabulary.characteristics[iri])
                place = spans.get(f"{device.iri}.{local_name(iri)}") or spans.get(device.iri)
                yield _noted(device, label, expression.written, other.written, place)


def _noted(device: Device, respect: Words, row: Words, log: Words, span: Span | None) -> Diagnostic:
    message = say(
        "{respect} of {device} is {row} in its row and {log} by its log, which counts",
        respect=respect,
        device=device.identifier,
        row=row,
        log=log,
    )
    return Diagnostic(
        slug="otherwise-in-the-log",
        message=message,
        span=span or _NOWHERE,
        severity=Severity.NOTE,
        subject=device.identifier,
    )


def _value(work: Work, iri: str, expression: Expression) -> ValueSet:
    return given_value(expression, work.vocabulary.characteristics[iri], work.vocabulary)


def _place(work: Work, part: Part, iri: str, spans: Mapping[str, Span]) -> Span:
    statement = f"{part.iri}.{iri.rsplit('/', 1)[-1].rsplit('#', 1)[-1]}"
    return spans.get(statement) or spans.get(part.iri) or spans.get(work.iri) or _NOWHERE
