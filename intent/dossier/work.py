"""A work's dossier, from Markdown to graph."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from rdflib import DCTERMS, RDF, RDFS, Literal, URIRef

from intent.diagnostics import Severity, Span, nearest
from intent.dossier.blocks import Section, read_blocks
from intent.dossier.draft import Draft, Reading
from intent.dossier.fields import Desk
from intent.dossier.instructions import enter_headings, read_instructions
from intent.dossier.register import Entry, Known, Register, Sort, identifier_fault
from intent.dossier.rows import Row, SectionForm, form_of, inscribe_cells, read_fields, read_rows
from intent.names import INTENT, TERM, work_iri
from intent.vocabulary.phrases import normal
from intent.vocabulary.terms import Vocabulary

_CLASSES = {
    "people-section": (Sort.PERSON, INTENT.Person),
    "devices-section": (Sort.DEVICE, INTENT.Device),
    "material-section": (Sort.MATERIAL, INTENT.Material),
    "boxes-section": (Sort.BOX, INTENT.Box),
}
"""The tables whose rows have an identifier of their own."""


@dataclass(frozen=True, slots=True)
class Placed:
    """A section of the text with the term that it is."""

    form: SectionForm
    section: Section

    @property
    def key(self) -> str:
        return self.form.section.iri.rsplit("/", 1)[-1]


def read_work(text: str, file: str, vocabulary: Vocabulary) -> Reading:
    """The graph of a work's dossier, with the place of each node and every finding."""
    root, findings = read_blocks(text, file)
    draft = Draft("", vocabulary, file, findings=findings)
    if root is None:
        return draft.reading()
    desk = Desk(draft, Register())
    head = read_fields(desk, head_form(vocabulary, "work-head"), root.fields)
    written = {term.iri.rsplit("/field-", 1)[-1]: cell.text for term, cell in head}
    draft.base = work_iri(
        written.get("base"), written.get("owner", ""), written.get("number", ""), root.title
    )
    if not written.keys() & {"base", "owner", "number"}:
        message = "without `base`, or `owner` and `number`, the work is told from others by its title alone"
        draft.wrong("no-number", message, root.span, Severity.WARNING)
    work = URIRef(draft.base)
    draft.spans[draft.base] = root.span
    draft.add(work, RDF.type, INTENT.Work)
    draft.say(work, DCTERMS.title, root.title)
    draft.say(work, INTENT.note, root.everything)
    placed = place_sections(draft, root, "work")
    rows = {one.key: read_rows(desk, one.form, one.section.tables) for one in placed}
    _enter(desk, placed, rows)
    known = desk.register.known(vocabulary)
    inscribe_cells(desk, known, work, (), head)
    for one in placed:
        inscribe_section(draft, one)
        _read_section(desk, known, one, rows[one.key])
    return draft.reading()


def head_form(vocabulary: Vocabulary, key: str) -> SectionForm:
    return form_of(vocabulary.sections[str(TERM[key])], vocabulary)


def place_sections(draft: Draft, root: Section, document: str) -> list[Placed]:
    """The sections of a document by their terms; unknown and repeated ones are found."""
    known = [form for form in draft.vocabulary.sections.values() if document in form.documents and form.names]
    placed: list[Placed] = []
    for section in root.sections:
        form = next((form for form in known if normal(section.title) in form.names), None)
        if form is None:
            names = [name for form in known for name in form.names]
            message = f"`{section.title}` is not a section of this text{nearest(section.title, names)}"
            draft.wrong("unknown-section", message, section.span)
        elif any(form == earlier.form.section for earlier in placed):
            draft.wrong("repeated-section", f"there is a second section `{section.title}`", section.span)
        else:
            placed.append(Placed(form_of(form, draft.vocabulary), section))
    return placed


def inscribe_section(draft: Draft, one: Placed) -> None:
    """The section itself: its place in the writer's order, and its prose."""
    node = draft.node(one.key, span=one.section.span)
    draft.add(URIRef(draft.base), INTENT.section, node)
    draft.add(node, RDF.type, INTENT.Section)
    draft.add(node, INTENT.sectionTerm, URIRef(one.form.section.iri))
    draft.add(node, INTENT.order, Literal(draft.next_order("section")))
    if one.form.section.holds in {"table", "groups"}:
        draft.say(node, INTENT.note, one.section.note)
        draft.say(node, INTENT.afterword, one.section.afterword)
    elif one.form.section.holds != "list":
        draft.say(node, INTENT.note, one.section.everything)
    if one.section.sections and one.form.section.holds in {"fields", "table", "list"}:
        for inner in one.section.sections:
            draft.wrong("unknown-section", f"`{one.section.title}` has no sections of its own", inner.span)


def _enter(desk: Desk, placed: list[Placed], rows: dict[str, list[Row]]) -> None:
    """Every identifier into the register, wherever in the text it is defined."""
    for one in placed:
        if one.key in _CLASSES:
            for row in rows[one.key]:
                enter_row(desk, row, _CLASSES[one.key][0])
        elif one.key == "parts-section":
            _enter_groups(desk, one, rows[one.key])
        elif one.key == "sources-section":
            for section in one.section.sections:
                enter_heading(desk, section, Sort.SOURCE)
        elif one.key == "instructions-section":
            enter_headings(desk, one.section)
    for one in placed:
        if one.key == "parts-section":
            for row in _every_part(desk, one, rows[one.key]):
                enter_device(desk, row)


def _enter_groups(desk: Desk, one: Placed, rows: list[Row]) -> None:
    for row in rows:
        enter_part(desk, row, None, None)
    for section in one.section.sections:
        group = Entry(section.title, Sort.GROUP, str(desk.draft.node(section.title)), section.span)
        enter(desk, group, section.span)
        kind = _group_kind(desk, one, section)
        for row in _group_rows(desk, one, section):
            enter_part(desk, row, section.title, kind)


def _group_kind(desk: Desk, one: Placed, section: Section) -> str | None:
    quiet = Desk(Draft(desk.draft.base, desk.draft.vocabulary, desk.draft.file), desk.register)
    fields = read_fields(quiet, one.form, section.fields)
    cell = next((cell for term, cell in fields if term.iri == str(TERM["field-kind-of-part"])), None)
    return kind_of(desk, cell.text if cell else None)


def _group_rows(desk: Desk, one: Placed, section: Section) -> list[Row]:
    quiet = Desk(Draft(desk.draft.base, desk.draft.vocabulary, desk.draft.file), desk.register)
    return read_rows(quiet, one.form, section.tables)


def _every_part(desk: Desk, one: Placed, rows: list[Row]) -> Iterator[Row]:
    yield from rows
    for section in one.section.sections:
        yield from _group_rows(desk, one, section)


def kind_of(desk: Desk, text: str | None) -> str | None:
    found = desk.draft.vocabulary.find_value([str(TERM.kinds)], text) if text else None
    return found.iri if found else None


def enter(desk: Desk, entry: Entry, span: Span) -> bool:
    """Enter an identifier; a fault in it, or an earlier one of the same name, is found."""
    fault = "" if entry.sort is Sort.GROUP else identifier_fault(entry.identifier)
    if fault:
        desk.draft.wrong("bad-identifier", fault, span)
        return False
    taken = desk.register.enter(entry)
    if taken is not None:
        where = f" at line {taken.span.line}" if taken.span.line else ""
        message = f"`{entry.identifier}` is already the name of a {taken.sort}{where}"
        desk.draft.wrong("repeated-identifier", message, span)
    return taken is None


def enter_row(desk: Desk, row: Row, sort: Sort, kind: str | None = None) -> bool:
    cell = row.cell("defines")
    if cell is None:
        desk.draft.wrong("no-identifier", f"this row has no identifier for its {sort}", row.span)
        return False
    entry = Entry(cell.text, sort, str(desk.draft.node(cell.text, span=row.span)), cell.span, kind)
    return enter(desk, entry, cell.span)


def enter_part(desk: Desk, row: Row, group: str | None, group_kind: str | None) -> None:
    own = row.named("kind-of-part")
    entered = enter_row(desk, row, Sort.PART, kind_of(desk, own.text) if own else group_kind)
    cell = row.cell("defines")
    if entered and cell is not None and group is not None and desk.register.get(group, Sort.GROUP):
        desk.register.join(group, cell.text)


def enter_device(desk: Desk, row: Row) -> None:
    """A device that only a part's row names is known by that."""
    cell = row.named("device-of-part")
    if cell is not None and desk.register.get(cell.text, Sort.DEVICE) is None:
        entry = Entry(cell.text, Sort.DEVICE, str(desk.draft.node(cell.text, span=cell.span)), cell.span)
        if enter(desk, entry, cell.span):
            node = URIRef(entry.iri)
            desk.draft.add(node, RDF.type, INTENT.Device)
            desk.draft.add(node, DCTERMS.identifier, Literal(cell.text))
            desk.draft.add(node, DCTERMS.isPartOf, URIRef(desk.draft.base))


def enter_heading(desk: Desk, section: Section, sort: Sort) -> bool:
    identifier = section.title.partition(" ")[0]
    iri = str(desk.draft.node(identifier, span=section.span))
    return enter(desk, Entry(identifier, sort, iri, section.span), section.span)


def inscribe_entity(desk: Desk, identifier: str, kind: URIRef, sort: str) -> URIRef:
    """A thing with an identifier, as a part of the work or installation."""
    draft = desk.draft
    node = draft.node(identifier)
    draft.add(node, RDF.type, kind)
    draft.add(node, DCTERMS.identifier, Literal(identifier))
    draft.add(node, DCTERMS.isPartOf, URIRef(draft.base))
    draft.add(node, INTENT.order, Literal(draft.next_order(sort)))
    return node


def _read_section(desk: Desk, known: Known, one: Placed, rows: list[Row]) -> None:
    if one.key in _CLASSES:
        sort, kind = _CLASSES[one.key]
        for row in rows:
            _inscribe_row(desk, known, row, sort, kind)
    elif one.key == "parts-section":
        _read_parts(desk, known, one, rows)
    elif one.key == "sources-section":
        for section in one.section.sections:
            _read_source(desk, known, one.form, section)
    elif one.key == "instructions-section":
        read_instructions(desk, known, one.form, one.section)
    elif one.key == "connections-section":
        for number, row in enumerate(rows, start=1):
            _inscribe_connection(desk, known, row, number)
    else:
        cells = read_fields(desk, one.form, one.section.fields)
        inscribe_cells(desk, known, URIRef(desk.draft.base), ("whole",), cells)
        return
    if one.key == "parts-section":
        return
    _read_keep(desk, known, one)


def _read_keep(desk: Desk, known: Known, one: Placed) -> None:
    cells = read_fields(desk, one.form, one.section.fields)
    inscribe_cells(desk, known, desk.draft.node(one.key), (one.key,), cells)


def _inscribe_row(desk: Desk, known: Known, row: Row, sort: Sort, kind: URIRef) -> None:
    cell = row.cell("defines")
    entry = desk.register.get(cell.text, sort) if cell else None
    if cell is None or entry is None or entry.span != cell.span:
        return
    node = inscribe_entity(desk, cell.text, kind, sort)
    inscribe_cells(desk, known, node, (cell.text,), row.cells)


def _inscribe_connection(desk: Desk, known: Known, row: Row, number: int) -> None:
    draft = desk.draft
    local = f"connection-{number}"
    node = draft.node(local, span=row.span)
    draft.add(node, RDF.type, INTENT.Connection)
    draft.add(node, DCTERMS.isPartOf, URIRef(draft.base))
    draft.add(node, INTENT.order, Literal(number))
    inscribe_cells(desk, known, node, (local,), row.cells)


def _read_parts(desk: Desk, known: Known, one: Placed, rows: list[Row]) -> None:
    draft = desk.draft
    _read_keep(desk, known, one)
    for row in rows:
        inscribe_part(desk, known, row, None)
    for section in one.section.sections:
        group = desk.register.get(section.title, Sort.GROUP)
        if group is None or group.span != section.span:
            continue
        node = URIRef(group.iri)
        draft.spans[group.iri] = section.span
        draft.add(node, RDF.type, INTENT.Group)
        draft.add(node, DCTERMS.isPartOf, URIRef(draft.base))
        draft.add(node, RDFS.label, Literal(section.title))
        draft.add(node, INTENT.order, Literal(draft.next_order("group")))
        draft.say(node, INTENT.note, section.note)
        draft.say(node, INTENT.afterword, section.afterword)
        inscribe_cells(desk, known, node, (section.title,), read_fields(desk, one.form, section.fields))
        for row in read_rows(desk, one.form, section.tables):
            inscribe_part(desk, known, row, node)


def inscribe_part(desk: Desk, known: Known, row: Row, group: URIRef | None) -> None:
    """A part's row, with the kind of its group where it has none of its own."""
    draft = desk.draft
    cell = row.cell("defines")
    entry = desk.register.get(cell.text, Sort.PART) if cell else None
    if cell is None or entry is None or entry.span != cell.span:
        return
    node = inscribe_entity(desk, cell.text, INTENT.Part, "part")
    if group is not None:
        draft.add(node, INTENT.inGroup, group)
    if entry.kind is not None:
        draft.add(node, INTENT.kind, URIRef(entry.kind))
    elif row.named("kind-of-part") is None:
        message = (
            f"`{cell.text}` has no kind; write `- kind: display` (or another kind) under its group's heading"
        )
        draft.wrong("no-kind", message, cell.span)
    inscribe_cells(desk, known, node, (cell.text,), row.cells, (entry.kind,) if entry.kind else ())


def _read_source(desk: Desk, known: Known, form: SectionForm, section: Section) -> None:
    identifier, _, title = section.title.partition(" ")
    entry = desk.register.get(identifier, Sort.SOURCE)
    if entry is None or entry.span != section.span:
        return
    node = inscribe_entity(desk, identifier, INTENT.Source, "source")
    desk.draft.say(node, DCTERMS.title, title.strip())
    desk.draft.say(node, INTENT.note, section.remarks)
    desk.draft.say(node, INTENT.words, section.words)
    inscribe_cells(desk, known, node, (identifier,), read_fields(desk, form, section.fields))
