"""What a proposal makes of the connections and boxes of a work."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from intent.model.installation import Installation
from intent.model.work import Connection, Crate, Part, Work


def connections_as_proposed(work: Work, installation: Installation) -> tuple[Connection, ...]:
    """The connections of a showing, those of the work first.

    A row of the installation takes the place of all that lead into the part where it ends; one without a start leaves
    that part unfed. Connections from and to omitted parts go.
    """
    omitted = {omission.part for omission in installation.omissions}
    replaced = {connection.end for connection in installation.connections}
    kept = [connection for connection in work.connections if connection.end not in replaced]
    made = [connection for connection in installation.connections if connection.start]
    return tuple(one for one in (*kept, *made) if not {one.start, one.end} & omitted)


def boxes_as_proposed(work: Work, installation: Installation) -> tuple[Crate, ...]:
    """The boxes that travel: a box of the installation takes the place of the work's box of the same identifier."""
    packed = {box.identifier for box in installation.boxes}
    return (*(box for box in work.boxes if box.identifier not in packed), *installation.boxes)


@dataclass(frozen=True, slots=True)
class PackedBox:
    """A box on its way to a showing."""

    box: Crate
    parts: tuple[str, ...]
    """The parts in it, in the order of the work, additions last."""


def packed_boxes(work: Work, installation: Installation | None) -> tuple[PackedBox, ...]:
    """The boxes that travel, and the parts in them: one of the work's whose parts all stay at home stays with them.

    Another device that comes in a part's place has no room in the box of the one that left, unless a box holds that
    device by name, or the installation packs the box itself. Where nothing is proposed every box has all its parts.
    """
    if installation is None:
        return tuple(PackedBox(box, parts_of(box, work.parts)) for box in work.boxes)
    there = parts_as_proposed(work, installation)
    substituted = {substitution.part for substitution in installation.substitutions}
    found: list[PackedBox] = []
    for box in boxes_as_proposed(work, installation):
        is_packed_anew = box in installation.boxes
        parts = tuple(
            part.identifier
            for part in there
            if part.device in box.holds
            or ((is_packed_anew or part.identifier not in substituted) and parts_of(box, [part]))
        )
        if parts or is_packed_anew or not parts_of(box, work.parts):
            found.append(PackedBox(box, parts))
    return tuple(found)


def parts_as_proposed(work: Work, installation: Installation | None) -> tuple[Part, ...]:
    """The parts that are there, additions last, each with the device that is proposed for it."""
    if installation is None:
        return work.parts
    omitted = {omission.part for omission in installation.omissions}
    devices = {one.part: one.device for one in installation.substitutions}
    return tuple(
        replace(part, device=devices.get(part.identifier, part.device))
        for part in (*work.parts, *installation.additions)
        if part.identifier not in omitted
    )


def parts_of(box: Crate, parts: Iterable[Part]) -> tuple[str, ...]:
    """The parts, of some, that a box holds by name, with their group, or by their device."""
    return tuple(
        part.identifier
        for part in parts
        if not {part.identifier, part.group, part.device}.isdisjoint(box.holds)
    )
