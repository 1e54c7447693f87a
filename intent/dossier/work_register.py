"""The register of a work that is read already: what an installation of it, or a line written back, may name."""

from __future__ import annotations

from intent.dossier.register import IdentifierKind, Register, RegisterEntry
from intent.model.work import Work


def register_of(work: Work) -> Register:
    """The identifiers and groups of a work that has been read, as an installation of it may name them."""
    register = Register()
    in_group: dict[str, tuple[str, ...]] = {}
    for part in work.parts:
        if part.group:
            in_group[part.group] = (*in_group.get(part.group, ()), part.identifier)
        register.enter(
            RegisterEntry(
                identifier=part.identifier, sort=IdentifierKind.PART, iri=part.iri, kind=part.kind.iri
            )
        )
    for group in work.groups:
        register.enter(
            RegisterEntry(
                identifier=group.name,
                sort=IdentifierKind.GROUP,
                iri=group.iri,
                members=in_group.get(group.name, ()),
            )
        )
    lines: dict[str, tuple[str, ...]] = {}
    for line in work.instructions:
        lines[line.heading] = (*lines.get(line.heading, ()), line.identifier)
        register.enter(
            RegisterEntry(identifier=line.identifier, sort=IdentifierKind.INSTRUCTION, iri=line.iri)
        )
    for heading in work.headings:
        members = lines.get(heading.identifier, ())
        register.enter(
            RegisterEntry(
                identifier=heading.identifier, sort=IdentifierKind.HEADING, iri=heading.iri, members=members
            )
        )
    for sort, things in (
        (IdentifierKind.DUTY, work.duties),
        (IdentifierKind.PERSON, work.people),
        (IdentifierKind.DEVICE, work.devices),
        (IdentifierKind.SOURCE, work.sources),
        (IdentifierKind.MATERIAL, work.material),
        (IdentifierKind.BOX, work.boxes),
        (IdentifierKind.TASK, work.tasks),
    ):
        for thing in things:
            register.enter(RegisterEntry(identifier=thing.identifier, sort=sort, iri=thing.iri))
    return register
