"""A work's dossier, from Markdown to graph."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from rdflib import DCTERMS, RDF, URIRef

from intent.diagnostics import Severity
from intent.dossier.blocks import TextSection, read_blocks
from intent.dossier.comments import find_comments
from intent.dossier.draft import Draft, Reading, forget_what_follows
from intent.dossier.entering import (
    GroupText,
    doubt_identifier,
    enter_device,
    enter_groups,
    enter_heading,
    enter_part,
    enter_row,
    read_groups,
)
from intent.dossier.entities import (
    inscribe_connection,
    inscribe_entity,
    inscribe_group,
    inscribe_parts,
    inscribe_row,
)
from intent.dossier.expectation_rows import inscribe_expectations
from intent.dossier.fields import Desk
from intent.dossier.instructions import enter_headings, read_instructions
from intent.dossier.log_rows import inscribe_log
from intent.dossier.lost_lines import find_lost_lines
from intent.dossier.register import IdentifierKind, Register
from intent.dossier.rows import SectionForm, TableRow, inscribe_cells, read_fields, read_rows
from intent.dossier.sections import (
    PlacedSection,
    head_form,
    inscribe_fields,
    inscribe_section,
    place_sections,
)
from intent.dossier.template_text import find_template_text
from intent.dossier.words import Known
from intent.language.message import say
from intent.names import ARTIST, INTENT, is_iri, work_iri
from intent.vocabulary.terms import Vocabulary

_CLASSES = {
    "people-section": (IdentifierKind.PERSON, INTENT.Person),
    "devices-section": (IdentifierKind.DEVICE, INTENT.Device),
    "material-section": (IdentifierKind.MATERIAL, INTENT.Material),
    "boxes-section": (IdentifierKind.BOX, INTENT.Box),
    "tasks-section": (IdentifierKind.TASK, INTENT.Task),
}
"""The tables whose rows have an identifier of their own."""


def read_work(text: str, file: str, vocabulary: Vocabulary) -> Reading:
    """The graph of a work's dossier, with the place of each node and every finding."""
    root, findings = read_blocks(text, file)
    draft = Draft(base="", vocabulary=vocabulary, file=file, findings=findings)
    if root is None:
        return draft.reading()
    desk = Desk(draft, Register())
    find_comments(draft, root)
    find_template_text(draft, text, "work")
    form = head_form(vocabulary, "work-head")
    head = read_fields(desk, form, root.fields)
    draft.base = _base(draft, root, {term.iri.rsplit("/field-", 1)[-1]: cell.text for term, cell in head})
    placed = place_sections(draft, root, "work")
    find_lost_lines(draft, root, form, placed, lambda name: False)
    rows = {one.key: read_rows(desk, one.form, one.tables) for one in placed}
    groups = [
        group
        for one in placed
        if one.key == "parts-section"
        for group in read_groups(desk, one.form, one.section)
    ]
    _enter(desk, placed, rows, groups)
    if not desk.register.of_sort(IdentifierKind.PART):
        message = say(
            "there are no parts; write `## Parts`, with a `### ` heading and a table for each group"
        )
        draft.wrong("no-parts", message, root.span, Severity.WARNING)
    known = desk.register.known(vocabulary)
    work = URIRef(draft.base)
    draft.spans[draft.base] = root.span
    draft.add(work, RDF.type, INTENT.Work)
    draft.say(work, DCTERMS.title, root.title)
    draft.say(work, INTENT.note, root.everything)
    inscribe_cells(desk, known, work, (), head)
    for one in placed:
        inscribe_section(draft, one)
        _inscribe(desk, known, one, rows[one.key], groups)
    forget_what_follows(draft)
    return draft.reading()


def _base(draft: Draft, root: TextSection, written: Mapping[str, str]) -> str:
    """The work's IRI, from what its head says."""
    if not written.keys() & {"base", "owner", "number"}:
        message = say(
            "without `base`, or `owner` and `number`, the work is told from others by its title alone"
        )
        draft.wrong("no-number", message, root.span, Severity.WARNING)
    base = written.get("base", "")
    return work_iri(
        base if is_iri(base.strip("<>")) else None,
        written.get("owner", ""),
        written.get("number", ""),
        root.title,
    )


def _enter(
    desk: Desk,
    placed: Sequence[PlacedSection],
    rows: Mapping[str, Sequence[TableRow]],
    groups: Sequence[GroupText],
) -> None:
    """Every identifier into the register; last the devices that only a part's row names."""
    for one in placed:
        if one.key in _CLASSES:
            for row in rows[one.key]:
                enter_row(desk, row, _CLASSES[one.key][0])
        elif one.key == "sources-section":
            for section in one.section.sections:
                enter_heading(desk, section, IdentifierKind.SOURCE)
        elif one.key == "instructions-section":
            enter_headings(desk, one.form, one.section)
        elif one.key == "parts-section":
            for row in rows[one.key]:
                enter_part(desk, row, None, None)
    enter_groups(desk, groups)
    for row in (*rows.get("parts-section", ()), *(row for group in groups for row in group.rows)):
        enter_device(desk, row)


def _inscribe(
    desk: Desk, known: Known, one: PlacedSection, rows: Sequence[TableRow], groups: Sequence[GroupText]
) -> None:
    """What a section holds."""
    if one.form.section.holds == "prose":
        return
    if one.key == "whole-section":
        cells = read_fields(desk, one.form, one.section.fields)
        inscribe_cells(desk, known, URIRef(desk.draft.base), ("whole",), cells)
        return
    inscribe_fields(desk, known, one)
    if one.key in _CLASSES:
        for row in rows:
            inscribe_row(desk, known, row, *_CLASSES[one.key])
        if one.key == "people-section":
            _inscribe_creators(desk.draft)
    elif one.key == "parts-section":
        inscribe_parts(desk, known, rows)
        for group in groups:
            inscribe_group(desk, known, group)
    elif one.key == "sources-section":
        for section in one.section.sections:
            _inscribe_source(desk, known, one.form, section)
    elif one.key == "instructions-section":
        read_instructions(desk, known, one.form, one.section)
    elif one.key == "connections-section":
        for number, row in enumerate(rows, start=1):
            inscribe_connection(desk, known, row, number)
    elif one.key == "log-section":
        inscribe_log(desk, known, rows)
    elif one.key == "expectations-section":
        inscribe_expectations(desk, known, rows)


def _inscribe_creators(draft: Draft) -> None:
    """The people who are the work's artists made it; the name in its head may be another, and stays as written."""
    for person in [one for one, said, value in draft.triples if said == INTENT.role and str(value) == ARTIST]:
        draft.add(URIRef(draft.base), DCTERMS.creator, person)


def _inscribe_source(desk: Desk, known: Known, form: SectionForm, section: TextSection) -> None:
    identifier, _, title = section.title.partition(" ")
    doubt_identifier(desk, section, "S2")
    entry = desk.register.get(identifier, IdentifierKind.SOURCE)
    if entry is None or entry.span != section.span:
        return
    node = inscribe_entity(desk, identifier, INTENT.Source, "source")
    desk.draft.say(node, DCTERMS.title, title.strip())
    desk.draft.say(node, INTENT.note, section.remarks)
    desk.draft.say(node, INTENT.words, section.words)
    inscribe_cells(desk, known, node, (identifier,), read_fields(desk, form, section.fields))
