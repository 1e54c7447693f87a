"""Fields and tables of any section, read as the vocabulary says: into properties and statements."""

from __future__ import annotations

import contextlib
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from rdflib import URIRef
from rdflib.term import Node

from intent.diagnostics import Severity, Span, nearest, offered, where_listed
from intent.dossier.bearers import bearers_of, place_to_write
from intent.dossier.blocks import Field
from intent.dossier.expressions import read_with_tolerance
from intent.dossier.fields import Desk, read_field
from intent.dossier.forms import read_expression
from intent.dossier.inscribe import inscribe_statement
from intent.dossier.sentence import Ungrammatical, parse_values
from intent.dossier.tables import Cell, Table
from intent.dossier.trees import Misread, Sentence
from intent.dossier.unreadable import Unreadable
from intent.dossier.value_hints import thousands_note
from intent.dossier.words import Known, compared_in
from intent.language.message import Joint, Words, listed, say
from intent.model.assertions import Expression, Form, Text
from intent.model.work import Modality
from intent.vocabulary.form_terms import FormField, FormSection
from intent.vocabulary.grammar import Word
from intent.vocabulary.phrases import normal
from intent.vocabulary.terms import Characteristic, Vocabulary

Term = FormField | Characteristic
NamedAs = Literal["field", "column"]
_LINES = {"sentence", "duty"}
_NAMED_AS = {"field": say("field"), "column": say("column")}


@dataclass(frozen=True, slots=True)
class SectionForm:
    """What may stand in a section: its fields, and the characteristics that its bearers have."""

    section: FormSection
    fields: Mapping[str, FormField]
    vocabulary: Vocabulary

    def find(self, name: str) -> Term | None:
        return self.fields.get(normal(name)) or (
            self.vocabulary.find_characteristic(name, self.section.bearers) if self.section.bearers else None
        )

    def begins_line(self, name: str) -> bool:
        """Whether a line of its own begins with a name, an instruction or a duty, and no field of a heading."""
        term = self.fields.get(normal(name))
        return term is not None and term.reads in _LINES

    def modality(self, name: str) -> Modality | None:
        """The modality of the lines that begin with a name; none where no instruction begins so."""
        term = self.fields.get(normal(name))
        if term is None or term.reads != "sentence":
            return None
        return Modality(term.iri.rsplit("/field-", 1)[-1])

    def fault(self, name: str, what: NamedAs) -> tuple[str, Words]:
        """Slug and message for a name that is not known here."""
        elsewhere = self.vocabulary.find_characteristic(name)
        if elsewhere is not None:
            return "wrong-bearer", say(
                "`{name}` is said of a {bearers}; {place}",
                name=name,
                bearers=bearers_of(elsewhere),
                place=place_to_write(elsewhere, self.vocabulary, self.section.documents),
            )
        fields = dict.fromkeys(field.iri for field in self.fields.values())
        known, first = [*self.vocabulary.spelled(fields)], [field.label for field in self.fields.values()]
        if self.section.bearers:
            borne = [
                one for one in self.vocabulary.characteristics.values() if one.bearers & self.section.bearers
            ]
            known += self.vocabulary.spelled(one.iri for one in borne)
            first += [one.label for one in borne]
        message, near = (
            say("`{name}` is not a known {what} here", name=name, what=_NAMED_AS[what]),
            nearest(name, known, first),
        )
        if self.section.holds == "instructions" and (not near or self.modality(near)):
            told = say(
                "{message}; a line begins with `required`, `allowed`, `forbidden` or `duty`", message=message
            )
            return f"unknown-{what}", told
        if not near and self.section.bearers:
            return f"unknown-{what}", where_listed(message)
        return f"unknown-{what}", offered(message, near)


def form_of(section: FormSection, vocabulary: Vocabulary) -> SectionForm:
    fields: dict[str, FormField] = {}
    for form in vocabulary.fields.values():
        if section.iri in form.sections:
            fields.update(dict.fromkeys(form.names, form))
    return SectionForm(section, fields, vocabulary)


@dataclass(frozen=True, slots=True)
class TableRow:
    """A table's row, by term; cells left blank are not there."""

    cells: Sequence[tuple[Term, Cell]]
    span: Span

    def cell(self, reads: str) -> Cell | None:
        """The cell of the column that is read in this way."""
        return next(
            (cell for term, cell in self.cells if isinstance(term, FormField) and term.reads == reads), None
        )

    def named(self, key: str) -> Cell | None:
        """The cell of the column of this term."""
        return next((cell for term, cell in self.cells if term.iri.endswith(f"/field-{key}")), None)


def read_rows(desk: Desk, form: SectionForm, tables: Iterable[Table]) -> list[TableRow]:
    """Every row of the tables; unknown and repeated columns are found."""
    rows = []
    for table in tables:
        columns = _columns(desk, form, table.header)
        for cells in table.rows:
            known = [
                (term, cell)
                for term, cell in zip(columns, cells, strict=False)
                if term is not None and cell.text
            ]
            span = cells[0].span if cells else table.span
            if known:
                rows.append(TableRow(known, span))
    return rows


def _columns(desk: Desk, form: SectionForm, header: Sequence[Cell]) -> list[Term | None]:
    columns: list[Term | None] = []
    for cell in header:
        term = form.find(cell.text)
        if term is None:
            desk.draft.wrong(*form.fault(cell.text, "column"), cell.span)
        elif term in columns:
            desk.draft.wrong(
                "repeated-column", say("there is a second column `{name}`", name=cell.text), cell.span
            )
            term = None
        columns.append(term)
    return columns


def read_fields(desk: Desk, form: SectionForm, fields: Iterable[Field]) -> list[tuple[Term, Cell]]:
    """The fields of a section by term; unknown and repeated ones are found."""
    found: list[tuple[Term, Cell]] = []
    for field in fields:
        term = form.find(field.name)
        if term is None:
            desk.draft.wrong(*form.fault(field.name, "field"), field.span)
        elif any(term == earlier for earlier, _ in found) and not _may_repeat(term):
            desk.draft.wrong("repeated-field", say("there is a second `{name}`", name=field.name), field.span)
        elif field.value:
            found.append((term, Cell(field.value, field.value_span)))
    return found


def _may_repeat(term: Term) -> bool:
    return isinstance(term, FormField) and term.reads in {"citation", "lines", "instructions", "people"}


def inscribe_cells(
    desk: Desk,
    known: Known,
    node: URIRef,
    local: tuple[str, ...],
    cells: Iterable[tuple[Term, Cell]],
    kinds: Sequence[str] = (),
    elsewhere: frozenset[str] = frozenset(),
) -> None:
    """Put cells into the graph as properties and statements of a node.

    ``elsewhere`` names the sorts of field that the caller reads itself.
    """
    for term, cell in cells:
        if isinstance(term, Characteristic):
            _inscribe_characteristic(
                desk, known=known, node=node, local=local, characteristic=term, cell=cell, kinds=kinds
            )
            continue
        if term.reads in elsewhere or term.reads == "defines":
            continue
        for value in _read_property(desk, term, cell):
            desk.draft.add(node, URIRef(term.property), value)


def _read_property(desk: Desk, form: FormField, cell: Cell) -> Sequence[Node]:
    """The values of a cell; none, with a finding, where it cannot be read. One final full stop is no matter."""
    try:
        return read_field(desk, form, cell.text)
    except Unreadable as error:
        if cell.text.endswith("."):
            with contextlib.suppress(Unreadable):
                return read_field(desk, form, cell.text[:-1])
        desk.draft.wrong(error.slug, error.message, cell.span)
    return ()


def _inscribe_characteristic(
    desk: Desk,
    known: Known,
    node: URIRef,
    local: tuple[str, ...],
    characteristic: Characteristic,
    cell: Cell,
    kinds: Sequence[str],
) -> None:
    expression = read_cell(desk, known, characteristic, cell, kinds)
    if expression is None:
        return
    vocabulary = desk.draft.vocabulary
    if kinds and not any(vocabulary.applies(characteristic, kind) for kind in kinds):
        message = say(
            "{characteristic} is not usually said of a {kinds}",
            characteristic=characteristic,
            kinds=listed((vocabulary.named(kind) for kind in kinds), Joint.OR),
        )
        desk.draft.wrong("not-usual", message, cell.span, Severity.WARNING)
    stated = inscribe_statement(desk.draft, node, local, characteristic, expression)
    desk.draft.spans[str(stated)] = cell.span


def read_cell(
    desk: Desk, known: Known, characteristic: Characteristic, cell: Cell, kinds: Sequence[str] = ()
) -> Expression | None:
    """What a cell says of a characteristic; none, with a finding, where it cannot be read."""
    note = thousands_note(cell.text, characteristic)
    if note:
        desk.draft.wrong("thousands", note, cell.span, Severity.NOTE)
    try:
        return _expression(desk, known, characteristic, cell.text, kinds)
    except Unreadable as error:
        if cell.text.endswith("."):
            with contextlib.suppress(Unreadable):
                return _expression(desk, known, characteristic, cell.text[:-1], kinds)
        span = cell.span
        if isinstance(error, (Ungrammatical, Misread)):
            span = _within(span, error.offset, error.length)
        desk.draft.wrong(error.slug, error.message, span)
    return None


def _expression(
    desk: Desk, known: Known, characteristic: Characteristic, text: str, kinds: Sequence[str]
) -> Expression:
    vocabulary = desk.draft.vocabulary
    if characteristic.space == "text":
        is_any = any(normal(text) in grammar.labels(Word.ANY) for grammar in vocabulary.grammars)
        return Expression(
            form=Form.ANY if is_any else Form.ONE_OF, items=() if is_any else (Text(text),), written=text
        )
    spoken = compared_in(text, known, vocabulary.grammars)
    if spoken is not None:
        tree = parse_values(text, known, spoken)
        return read_expression(Sentence(text, desk.register, vocabulary), tree, characteristic, kinds)
    item = read_with_tolerance(text, characteristic, vocabulary, kinds)
    return Expression(form=Form.ONE_OF, items=(item,), written=text)


def _within(span: Span, offset: int, length: int) -> Span:
    return Span(file=span.file, line=span.line, column=span.column + offset, text=span.text, length=length)
