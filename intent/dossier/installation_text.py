"""An installation, and the pool of devices it may draw on, from Markdown to graph."""

from __future__ import annotations

from collections.abc import Sequence

from rdflib import DCTERMS, RDF, URIRef

from intent.dossier.blocks import read_blocks
from intent.dossier.comments import find_comments
from intent.dossier.draft import Draft, Reading, forget_what_follows
from intent.dossier.entering import enter, enter_device, enter_row, kind_of
from intent.dossier.entities import (
    inscribe_box,
    inscribe_connection,
    inscribe_entity,
    inscribe_numbered,
    inscribe_parts,
)
from intent.dossier.fields import Desk
from intent.dossier.inscribe import inscribe_expression
from intent.dossier.log_rows import inscribe_log
from intent.dossier.lost_lines import find_lost_lines
from intent.dossier.omissions import find_repeated, read_omissions
from intent.dossier.register import IdentifierKind, Register, RegisterEntry
from intent.dossier.rows import TableRow, inscribe_cells, read_cell, read_fields, read_rows
from intent.dossier.sections import (
    PlacedSection,
    head_form,
    inscribe_fields,
    inscribe_section,
    place_sections,
)
from intent.dossier.template_text import find_template_text
from intent.dossier.words import Known
from intent.dossier.work_register import register_of
from intent.language.message import say
from intent.model.assertions import Aggregate
from intent.model.meaning import COUNT
from intent.model.work import Work
from intent.names import INTENT, installation_iri, pool_iri
from intent.vocabulary.terms import Characteristic

_ENTITIES = {
    "substitutions-section": ("substitution", INTENT.Substitution),
    "changes-section": ("change", INTENT.Change),
    "consents-section": ("consent", INTENT.Consent),
    "attestations-section": ("attestation", INTENT.Attestation),
}


def read_pool(text: str, file: str, work: Work) -> Reading:
    """The devices of a pool file: a title and a table of devices."""
    root, findings = read_blocks(text, file)
    draft = Draft(base="", vocabulary=work.vocabulary, file=file, findings=findings)
    if root is None:
        return draft.reading()
    draft.base = pool_iri(work.iri, root.title)
    desk = Desk(draft, Register())
    find_comments(draft, root)
    form = head_form(work.vocabulary, "pool-head")
    read_fields(desk, form, root.fields)
    placed = place_sections(draft, root, "pool")
    find_lost_lines(draft, root, form, placed, lambda name: False)
    for one in placed:
        rows = read_rows(desk, one.form, one.section.tables)
        entered = [row for row in rows if enter_row(desk, row, IdentifierKind.DEVICE)]
        known = desk.register.known(work.vocabulary)
        for row in entered:
            _inscribe_device(desk, known, row)
    return draft.reading()


def _inscribe_device(desk: Desk, known: Known, row: TableRow) -> None:
    cell = row.cell("defines")
    if cell is not None:
        node = inscribe_entity(desk, cell.text, INTENT.Device, "device")
        inscribe_cells(desk, known, node, (cell.text,), row.cells)


def read_installation(text: str, file: str, work: Work, pool: Reading | None = None) -> Reading:
    """The graph of an installation of a work. Names are those of the work, the pool, and its own additions."""
    root, findings = read_blocks(text, file)
    draft = Draft(base="", vocabulary=work.vocabulary, file=file, findings=findings)
    if root is None:
        return draft.reading()
    desk = Desk(draft, register_of(work))
    find_comments(draft, root)
    find_template_text(draft, text, "installation")
    form = head_form(work.vocabulary, "installation-head")
    head = read_fields(desk, form, root.fields)
    written = {term.iri.rsplit("/field-", 1)[-1]: cell for term, cell in head}
    dates = written["dates"].text if "dates" in written else ""
    if not dates:
        message = say("the installation has no `dates`; write `- dates: 2027-03-01/2027-06-30`")
        draft.wrong("no-dates", message, root.span)
    base = written["base"].text if "base" in written else None
    draft.base = installation_iri(base, work.iri, root.title, dates)
    if pool is not None:
        _enter_pool(desk, pool)
    placed = place_sections(draft, root, "installation")
    find_lost_lines(draft, root, form, placed, lambda name: bool(desk.register.parts_of(name)))
    rows = {one.key: read_rows(desk, one.form, one.tables) for one in placed}
    for one in placed:
        _enter(desk, one.key, rows[one.key])
    known = desk.register.known(work.vocabulary)
    node = URIRef(draft.base)
    draft.spans[draft.base] = root.span
    draft.add(node, RDF.type, INTENT.Installation)
    draft.add(node, INTENT.ofWork, URIRef(work.iri))
    draft.say(node, DCTERMS.title, root.title)
    draft.say(node, INTENT.note, root.everything)
    inscribe_cells(desk, known, node, (), head)
    for one in placed:
        inscribe_section(draft, one)
        _read_section(desk, known, one, rows[one.key])
        if one.key == "consents-section":
            _inscribe_consented_values(desk, known, rows[one.key], work)
    find_repeated(desk, rows)
    forget_what_follows(draft)
    return draft.reading()


def _enter_pool(desk: Desk, pool: Reading) -> None:
    for device, predicate, identifier in pool.triples:
        span = pool.spans.get(str(device))
        if predicate == DCTERMS.identifier and span is not None:
            enter(
                desk,
                RegisterEntry(
                    identifier=str(identifier), sort=IdentifierKind.DEVICE, iri=str(device), span=span
                ),
                span,
            )


def _enter(desk: Desk, key: str, rows: Sequence[TableRow]) -> None:
    if key == "additions-section":
        for row in rows:
            own = row.named("kind-of-part")
            kind = kind_of(desk, own.text) if own else _kind_in_group(desk, row)
            enter_row(desk, row, IdentifierKind.PART, kind)
    if key == "boxes-section":
        for row in rows:
            cell = row.cell("defines")
            if cell is None or desk.register.get(cell.text, IdentifierKind.BOX) is None:
                enter_row(desk, row, IdentifierKind.BOX)
    if key in {"additions-section", "substitutions-section"}:
        for row in rows:
            enter_device(desk, row)


def _kind_in_group(desk: Desk, row: TableRow) -> str | None:
    """An addition with no kind of its own takes that of the group it joins, where all there have one kind."""
    cell = row.named("group")
    kinds = {part.kind for part in desk.register.parts_of(cell.text)} if cell else set()
    return kinds.pop() if len(kinds) == 1 else None


def _read_section(desk: Desk, known: Known, one: PlacedSection, rows: Sequence[TableRow]) -> None:
    if one.key in _ENTITIES:
        sort, kind = _ENTITIES[one.key]
        for number, row in enumerate(rows, start=1):
            _inscribe_row(desk, known=known, row=row, local=f"{sort}-{number}", kind=kind, number=number)
    elif one.key == "additions-section":
        for row in rows:
            inscribe_parts(desk, known, [row], _own_group(desk, row))
    elif one.key == "connections-section":
        inscribe_fields(desk, known, one)
        for number, row in enumerate(rows, start=1):
            inscribe_connection(desk, known, row, number)
    elif one.key == "boxes-section":
        inscribe_fields(desk, known, one)
        for row in rows:
            inscribe_box(desk, known, row)
    elif one.key == "log-section":
        inscribe_fields(desk, known, one)
        inscribe_log(desk, known, rows)
    elif one.key == "omissions-section":
        read_omissions(desk, one)
    elif one.form.section.holds == "fields":
        is_venue = one.key == "venue-section"
        local = "venue" if is_venue else "whole"
        node = desk.draft.node(local)
        cells = read_fields(desk, one.form, one.section.fields)
        if cells:
            desk.draft.add(URIRef(desk.draft.base), INTENT.atVenue if is_venue else INTENT.whole, node)
            desk.draft.add(node, RDF.type, INTENT.Venue if is_venue else INTENT.Whole)
        inscribe_cells(desk, known, node, (local,), cells)


def _own_group(desk: Desk, row: TableRow) -> URIRef | None:
    cell = row.named("group")
    entry = desk.register.get(cell.text, IdentifierKind.GROUP) if cell else None
    return URIRef(entry.iri) if entry else None


def _inscribe_row(desk: Desk, known: Known, row: TableRow, local: str, kind: URIRef, number: int) -> None:
    node = inscribe_numbered(desk, row, local, kind, number)
    subject = row.named("substituted-part") or row.named("changed-part")
    entry = desk.register.get(subject.text) if subject else None
    kinds = (entry.kind,) if entry and entry.kind else ()
    inscribe_cells(
        desk,
        known=known,
        node=node,
        local=(local,),
        cells=row.cells,
        kinds=kinds,
        elsewhere=frozenset({"expression"}),
    )


def _inscribe_consented_values(desk: Desk, known: Known, rows: Sequence[TableRow], work: Work) -> None:
    """The values that consents are for, each read as its instruction's characteristic says."""
    for number, row in enumerate(rows, start=1):
        value, to = row.named("consent-value"), row.named("consent-to")
        if value is None or to is None:
            continue
        characteristic = _characteristic_of(desk, to.text, work)
        if characteristic is None:
            message = say(
                "`{line}` compares no characteristic, so a consent to it has no value", line=to.text
            )
            desk.draft.wrong("no-value-here", message, value.span)
            continue
        expression = read_cell(desk, known, characteristic, value)
        if expression is not None:
            inscribe_expression(desk.draft, desk.draft.node(f"consent-{number}"), expression)


def _characteristic_of(desk: Desk, to: str, work: Work) -> Characteristic | None:
    if desk.register.get(to, IdentifierKind.HEADING, IdentifierKind.INSTRUCTION) is None:
        return None
    for identifier in desk.register.lines_of(to):
        line = work.instruction(identifier)
        if line is not None and line.assertion.aggregate is Aggregate.NUMBER:
            return COUNT
        if line is not None and line.assertion.characteristic is not None:
            return work.vocabulary.characteristics[line.assertion.characteristic]
    return None
