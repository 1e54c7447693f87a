"""The devices of a proposal that cannot be as proposed, apart from anything the artist said."""

from __future__ import annotations

from collections.abc import Iterator

from intent.language.message import say
from intent.model.logged import devices_as_logged
from intent.model.subject import one
from intent.names import CARRIED_OUT, FAILED
from intent.variance.case import Case
from intent.variance.obstacle import Obstacle


def device_obstacles(case: Case) -> tuple[Obstacle, ...]:
    return (*_failed(case), *_used_twice(case))


def _placed(case: Case) -> dict[str, list[str]]:
    """The parts that each device serves as proposed."""
    placed: dict[str, list[str]] = {}
    for part in case.proposed.present:
        device = case.proposed.devices.get(part)
        if device:
            placed.setdefault(device, []).append(part)
    return placed


def _failed(case: Case) -> Iterator[Obstacle]:
    """A device marked failed is not to be relied on; its row is of today, its log of a past showing's first day too."""
    work, installation = case.work, case.installation
    devices, log = (*work.devices, *installation.devices), (*work.log, *installation.log)
    is_past = installation.status is not None and installation.status.iri == CARRIED_OUT
    at = installation.dates.first if is_past else None
    marked = devices_as_logged(devices, log, work.parts, work.vocabulary, at=at)
    for device, parts in _placed(case).items():
        known = marked.get(device)
        if known is not None and known.status is not None and known.status.iri == FAILED:
            text = say(
                "device {device}, in the place of {parts}, is marked as failed",
                device=device,
                parts=tuple(parts),
            )
            yield Obstacle(
                slug="device-failed",
                text=text,
                subject=one(device),
                ask=case.installation.proposers,
                names_subject=True,
            )


def _used_twice(case: Case) -> Iterator[Obstacle]:
    """A device in two places at once, unless the work documents it as serving both."""
    documented: dict[str, set[str]] = {}
    for part, device in case.documented.devices.items():
        if device:
            documented.setdefault(device, set()).add(part)
    for device, parts in _placed(case).items():
        if len(parts) > 1 and not set(parts) <= documented.get(device, set()):
            text = say(
                "device {device} is proposed in {number} places at once: {parts}",
                device=device,
                number=len(parts),
                parts=tuple(parts),
            )
            yield Obstacle(
                slug="device-used-twice",
                text=text,
                subject=one(device),
                ask=case.installation.proposers,
                names_subject=True,
            )
