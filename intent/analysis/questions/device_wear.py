"""How worn the devices of some parts are: spares, failures, hours and years."""

from __future__ import annotations

import re
from collections.abc import Sequence
from fractions import Fraction

from rdflib import DCTERMS

from intent.analysis.questions.measure import Wear
from intent.analysis.questions.occasion import Occasion
from intent.model.assertions import Dated, Measured, Named, Statements
from intent.model.work import Device, Part
from intent.names import FAILED, TERM
from intent.variance.two_states import Entries, entries_of

SPARE = str(TERM.spare)
HOURS = str(TERM.hours)
YEAR_MADE = str(TERM["year-made"])
TECHNOLOGY = str(TERM.technology)
YEAR = str(DCTERMS.created)


def wear_of(occasion: Occasion, parts: Sequence[Part]) -> Wear:
    """How soon the devices in some parts' places must be replaced.

    Alike are the devices that are said to be like them; where there are none, those of the same technology.
    """
    work = occasion.work
    serving = {part.device for part in parts if part.device}
    entries = entries_of(work)
    known = dict(entries.devices)
    alike = _alike(tuple(known.values()), serving, entries)
    ours = [known[name] for name in serving if name in known]
    others = [device for device in alike if device.identifier not in serving]
    hours = [found for device in ours if (found := _number(device.statements)) is not None]
    theirs = [found for device in others if (found := _number(device.statements)) is not None]
    made = [year for device in ours if (year := _year(entries.of(device.identifier))) is not None]
    oldest = min(made) if made else _year_of_work(occasion)
    return Wear(
        devices=len(serving),
        spares=sum(_is(device, SPARE) for device in others),
        failed=sum(_is(device, FAILED) for device in ours),
        hours=max(hours, default=None),
        hours_of_others=sum(theirs, Fraction(0)) / len(theirs) if theirs else None,
        years=max(occasion.day.year - oldest, 0) if oldest else 0,
        since_made=bool(made),
    )


def _alike(devices: Sequence[Device], serving: set[str], entries: Entries) -> list[Device]:
    known = {device.identifier: device for device in devices}
    roots = {_root(known, name) for name in serving}
    alike = [device for device in devices if _root(known, device.identifier) in roots]
    if any(device.identifier not in serving for device in alike):
        return alike
    technologies = {_technology(entries, name) for name in serving} - {None}
    return [device for device in devices if _technology(entries, device.identifier) in technologies]


def _root(known: dict[str, Device], name: str) -> str:
    """The device that a device is like, and that one is like, to the last."""
    seen: set[str] = set()
    while name not in seen and name in known and known[name].like:
        seen.add(name)
        name = known[name].like or name
    return name


def _technology(entries: Entries, device: str) -> str | None:
    stated = entries.of(device).get(TECHNOLOGY)
    named = [item.concept for item in stated.items if isinstance(item, Named)] if stated else []
    return named[0] if named else None


def _is(device: Device, status: str) -> bool:
    return device.status is not None and device.status.iri == status


def _number(statements: Statements) -> Fraction | None:
    stated = statements.get(HOURS)
    items = [item for item in stated.items if isinstance(item, Measured)] if stated else []
    return items[0].numbers[0] if items else None


def _year(statements: Statements) -> int | None:
    stated = statements.get(YEAR_MADE)
    items = [item for item in stated.items if isinstance(item, Dated)] if stated else []
    return items[0].span.first.year if items else None


def _year_of_work(occasion: Occasion) -> int | None:
    year = re.search(r"\d{4}", occasion.work.fields.get(YEAR, ""))
    return int(year[0]) if year else None
