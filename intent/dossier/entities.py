"""Things with an identifier, from their rows: devices, people, material, boxes, and parts in their groups."""

from __future__ import annotations

from collections.abc import Sequence

from rdflib import DCTERMS, RDF, RDFS, Literal, URIRef

from intent.dossier.entering import GroupText
from intent.dossier.fields import Desk
from intent.dossier.register import IdentifierKind
from intent.dossier.rows import TableRow, inscribe_cells
from intent.dossier.words import Known
from intent.language.message import say
from intent.names import INTENT


def inscribe_entity(desk: Desk, identifier: str, kind: URIRef, sort: str) -> URIRef:
    """A thing with an identifier, as a part of the work or installation."""
    draft = desk.draft
    node = draft.node(identifier)
    draft.add(node, RDF.type, kind)
    draft.add(node, DCTERMS.identifier, Literal(identifier))
    draft.add(node, DCTERMS.isPartOf, URIRef(draft.base))
    draft.add(node, INTENT.order, Literal(draft.next_order(sort)))
    return node


def inscribe_numbered(desk: Desk, row: TableRow, local: str, kind: URIRef, number: int) -> URIRef:
    """What a row without an identifier tells, as a part of the work or installation: known by the row's number."""
    node = desk.draft.node(local, span=row.span)
    desk.draft.add(node, RDF.type, kind)
    desk.draft.add(node, DCTERMS.isPartOf, URIRef(desk.draft.base))
    desk.draft.add(node, INTENT.order, Literal(number))
    return node


def inscribe_row(desk: Desk, known: Known, row: TableRow, sort: IdentifierKind, kind: URIRef) -> None:
    cell = row.cell("defines")
    entry = desk.register.get(cell.text, sort) if cell else None
    if cell is None or entry is None or entry.span != cell.span:
        return
    node = inscribe_entity(desk, cell.text, kind, sort)
    inscribe_cells(desk, known, node, (cell.text,), row.cells)


def inscribe_box(desk: Desk, known: Known, row: TableRow) -> None:
    """A box of an installation: one of its own, or one of the work that is packed otherwise."""
    cell = row.cell("defines")
    if cell is None or desk.register.get(cell.text, IdentifierKind.BOX) is None:
        return
    desk.draft.spans.setdefault(str(desk.draft.node(cell.text)), row.span)
    node = inscribe_entity(desk, cell.text, INTENT.Box, "box")
    inscribe_cells(desk, known, node, (cell.text,), row.cells)


def inscribe_connection(desk: Desk, known: Known, row: TableRow, number: int) -> None:
    local = f"connection-{number}"
    node = inscribe_numbered(desk, row, local, INTENT.Connection, number)
    inscribe_cells(desk, known, node, (local,), row.cells)


def inscribe_group(desk: Desk, known: Known, group: GroupText) -> None:
    """A group of parts, with its kind and prose, and its parts."""
    draft, section = desk.draft, group.section
    entry = desk.register.get(section.title, IdentifierKind.GROUP)
    if entry is None or entry.span != section.span:
        return
    node = URIRef(entry.iri)
    draft.spans[entry.iri] = section.span
    draft.add(node, RDF.type, INTENT.Group)
    draft.add(node, DCTERMS.isPartOf, URIRef(draft.base))
    draft.add(node, RDFS.label, Literal(section.title))
    draft.add(node, INTENT.order, Literal(draft.next_order("group")))
    draft.say(node, INTENT.note, section.note)
    draft.say(node, INTENT.afterword, section.afterword)
    inscribe_cells(desk, known, node, (section.title,), group.cells)
    inscribe_parts(desk, known, group.rows, node)


def inscribe_parts(desk: Desk, known: Known, rows: Sequence[TableRow], group: URIRef | None = None) -> None:
    for row in rows:
        inscribe_part(desk, known, row, group)


def inscribe_part(desk: Desk, known: Known, row: TableRow, group: URIRef | None) -> None:
    """A part's row, with the kind of its group where it has none of its own."""
    draft = desk.draft
    cell = row.cell("defines")
    entry = desk.register.get(cell.text, IdentifierKind.PART) if cell else None
    if cell is None or entry is None or entry.span != cell.span:
        return
    node = inscribe_entity(desk, cell.text, INTENT.Part, "part")
    if group is not None:
        draft.add(node, INTENT.inGroup, group)
    if entry.kind is not None:
        draft.add(node, INTENT.kind, URIRef(entry.kind))
    elif row.named("kind-of-part") is None:
        message = say(
            "`{part}` has no kind; write `- kind: display` (or another kind) under its group's heading",
            part=cell.text,
        )
        draft.wrong("no-kind", message, cell.span)
    inscribe_cells(
        desk,
        known=known,
        node=node,
        local=(cell.text,),
        cells=row.cells,
        kinds=(entry.kind,) if entry.kind else (),
    )
