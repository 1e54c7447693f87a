"""Every identifier of a text into the register, wherever it is defined, before any sentence is read."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from rdflib import DCTERMS, RDF, Literal, URIRef

from intent.diagnostics import Severity, Span
from intent.dossier.blocks import TextSection
from intent.dossier.fields import Desk
from intent.dossier.register import (
    KIND_WORDS,
    IdentifierKind,
    RegisterEntry,
    group_fault,
    identifier_fault,
    taken_message,
)
from intent.dossier.rows import SectionForm, TableRow, Term, read_fields, read_rows
from intent.dossier.tables import Cell
from intent.language.message import say
from intent.names import INTENT, TERM


@dataclass(frozen=True, slots=True)
class GroupText:
    """A heading under Parts, with its fields and rows."""

    section: TextSection
    cells: Sequence[tuple[Term, Cell]]
    rows: Sequence[TableRow]


def read_groups(desk: Desk, form: SectionForm, section: TextSection) -> list[GroupText]:
    return [
        GroupText(group, read_fields(desk, form, group.fields), read_rows(desk, form, group.tables))
        for group in section.sections
    ]


def enter_groups(desk: Desk, groups: Sequence[GroupText]) -> None:
    for group in groups:
        section = group.section
        fault = group_fault(section.title, desk.draft.vocabulary)
        if fault:
            desk.draft.wrong("word-of-the-sentence", fault, section.span)
        enter(
            desk,
            RegisterEntry(
                identifier=section.title,
                sort=IdentifierKind.GROUP,
                iri=str(desk.draft.node(section.title)),
                span=section.span,
            ),
            section.span,
        )
        kind = next((cell for term, cell in group.cells if term.iri == str(TERM["field-kind-of-part"])), None)
        for row in group.rows:
            enter_part(desk, row, section.title, kind_of(desk, kind.text if kind else None))


def kind_of(desk: Desk, text: str | None) -> str | None:
    found = desk.draft.vocabulary.find_value([str(TERM.kinds)], text) if text else None
    return found.iri if found else None


def enter(desk: Desk, entry: RegisterEntry, span: Span) -> bool:
    """Enter an identifier; a fault in it, or an earlier one of the same name, is found."""
    fault = (
        ""
        if entry.sort is IdentifierKind.GROUP
        else identifier_fault(entry.identifier, desk.draft.vocabulary)
    )
    if fault:
        desk.draft.wrong("bad-identifier", fault, span)
        return False
    taken = desk.register.enter(entry)
    if taken is not None:
        desk.draft.wrong("repeated-identifier", taken_message(entry.identifier, taken), span)
    return taken is None


def enter_row(desk: Desk, row: TableRow, sort: IdentifierKind, kind: str | None = None) -> bool:
    cell = row.cell("defines")
    if cell is None:
        message = say("this row has no identifier for its {sort}", sort=KIND_WORDS[sort])
        desk.draft.wrong("no-identifier", message, row.span)
        return False
    entry = RegisterEntry(
        identifier=cell.text,
        sort=sort,
        iri=str(desk.draft.node(cell.text, span=row.span)),
        span=cell.span,
        kind=kind,
    )
    return enter(desk, entry, cell.span)


def enter_part(desk: Desk, row: TableRow, group: str | None, group_kind: str | None) -> None:
    own = row.named("kind-of-part")
    entered = enter_row(desk, row, IdentifierKind.PART, kind_of(desk, own.text) if own else group_kind)
    cell = row.cell("defines")
    if entered and cell is not None and group is not None and desk.register.get(group, IdentifierKind.GROUP):
        desk.register.join(group, cell.text)


def enter_device(desk: Desk, row: TableRow) -> None:
    """A device that only a part's row names is known by that."""
    cell = row.named("device-of-part")
    if cell is not None and desk.register.get(cell.text, IdentifierKind.DEVICE) is None:
        entry = RegisterEntry(
            identifier=cell.text,
            sort=IdentifierKind.DEVICE,
            iri=str(desk.draft.node(cell.text, span=cell.span)),
            span=cell.span,
        )
        if enter(desk, entry, cell.span):
            node = URIRef(entry.iri)
            desk.draft.add(node, RDF.type, INTENT.Device)
            desk.draft.add(node, DCTERMS.identifier, Literal(cell.text))
            desk.draft.add(node, DCTERMS.isPartOf, URIRef(desk.draft.base))


def enter_heading(desk: Desk, section: TextSection, sort: IdentifierKind) -> bool:
    identifier = section.title.partition(" ")[0]
    iri = str(desk.draft.node(identifier, span=section.span))
    return enter(
        desk, RegisterEntry(identifier=identifier, sort=sort, iri=iri, span=section.span), section.span
    )


def doubt_identifier(desk: Desk, section: TextSection, sample: str) -> None:
    """Ask of a heading whose first word looks like the beginning of its title, not like an identifier."""
    identifier, _, title = section.title.partition(" ")
    if title and not any(letter.isdigit() for letter in identifier):
        message = say(
            "`{identifier}` is taken as the identifier; write `### {sample} {title}`",
            identifier=identifier,
            sample=sample,
            title=section.title,
        )
        desk.draft.wrong("doubtful-identifier", message, section.span, Severity.WARNING)
