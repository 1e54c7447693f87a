"""The headings under Instructions: each line a sentence, the rest of the list shared by all lines."""

from __future__ import annotations

from rdflib import DCTERMS, RDF, Literal, URIRef

from intent.assertions import Assertion, Form, Measured
from intent.diagnostics import Severity, Span
from intent.dossier.blocks import Field, Section
from intent.dossier.citations import read_citations
from intent.dossier.fields import Desk
from intent.dossier.inscribe import inscribe_line
from intent.dossier.interpret import Line, read_line
from intent.dossier.register import Entry, Known, Sort, identifier_fault
from intent.dossier.rows import SectionForm, inscribe_cells, read_fields
from intent.dossier.sentence import Ungrammatical, parse
from intent.dossier.trees import Misread, Sentence
from intent.model import Modality
from intent.names import INTENT
from intent.vocabulary.phrases import normal

MODALITIES = frozenset(Modality)


def enter_headings(desk: Desk, section: Section) -> None:
    """The identifiers of headings, and of their lines by their place in the list."""
    for heading in section.sections:
        identifier = heading.title.partition(" ")[0]
        node = desk.draft.node(identifier, span=heading.span)
        lines = _lines(heading)
        numbered = tuple(f"{identifier}.{number}" for number in range(1, len(lines) + 1))
        fault = identifier_fault(identifier)
        entry = Entry(identifier, Sort.HEADING, str(node), heading.span, members=numbered)
        taken = None if fault else desk.register.enter(entry)
        if fault:
            desk.draft.wrong("bad-identifier", f"{fault}; write `### R1 Title`", heading.span)
        elif taken is not None:
            message = f"`{identifier}` is already the name of a {taken.sort} at line {taken.span.line}"
            desk.draft.wrong("repeated-identifier", message, heading.span)
        else:
            for name, line in zip(numbered, lines, strict=True):
                iri = str(desk.draft.node(name, span=line.span))
                desk.register.enter(Entry(name, Sort.INSTRUCTION, iri, line.span))


def _lines(heading: Section) -> list[Field]:
    return [field for field in heading.fields if normal(field.name) in MODALITIES]


def read_instructions(desk: Desk, known: Known, form: SectionForm, section: Section) -> None:
    for heading in section.sections:
        identifier, _, title = heading.title.partition(" ")
        entry = desk.register.get(identifier, Sort.HEADING)
        if entry is not None and entry.span == heading.span:
            _read_heading(desk, known, form, heading, identifier, title.strip())


def _read_heading(
    desk: Desk, known: Known, form: SectionForm, heading: Section, identifier: str, title: str
) -> None:
    draft = desk.draft
    node = draft.node(identifier)
    draft.add(node, RDF.type, INTENT.Heading)
    draft.add(node, DCTERMS.identifier, Literal(identifier))
    draft.add(node, DCTERMS.isPartOf, URIRef(draft.base))
    draft.add(node, INTENT.order, Literal(draft.next_order("heading")))
    draft.say(node, DCTERMS.title, title)
    draft.say(node, INTENT.words, heading.words)
    draft.say(node, INTENT.note, heading.remarks)
    shared = [field for field in heading.fields if normal(field.name) not in MODALITIES]
    cells = read_fields(desk, form, shared)
    inscribe_cells(desk, known, node, (identifier,), cells, elsewhere=frozenset({"citation"}))
    cited = [cell for term, cell in cells if getattr(term, "reads", "") == "citation"]
    read_citations(desk, identifier, cited, heading.words)
    lines = _lines(heading)
    if not lines:
        message = (
            f"`{identifier}` says nothing yet; write `- required: …`, `- allowed: …` or `- forbidden: …`"
        )
        draft.wrong("no-lines", message, heading.span, Severity.WARNING)
    for number, line in enumerate(lines, start=1):
        _read_line(desk, known, node, f"{identifier}.{number}", line)


def _read_line(desk: Desk, known: Known, heading: URIRef, identifier: str, field: Field) -> None:
    draft = desk.draft
    modality = Modality(normal(field.name))
    node = draft.node(identifier, span=field.span)
    draft.add(node, RDF.type, INTENT.Instruction)
    draft.add(node, DCTERMS.identifier, Literal(identifier))
    draft.add(node, INTENT.inHeading, heading)
    draft.add(node, INTENT.order, Literal(draft.next_order("instruction")))
    draft.add(node, INTENT.modality, INTENT[modality])
    line = read_sentence(desk, known, field, modality)
    if line is not None:
        inscribe_line(draft, node, line, desk.register)
        _note_tolerance(desk, line, field.value_span)


def read_sentence(desk: Desk, known: Known, field: Field, modality: str) -> Line | None:
    """An instruction's sentence; none, with a finding, where it cannot be read."""
    try:
        tree = parse(field.value, known)
        return read_line(Sentence(field.value, desk.register, desk.draft.vocabulary), tree, modality)
    except (Ungrammatical, Misread) as error:
        span = field.value_span
        column = min(span.column + error.offset, len(span.text) + 1)
        place = Span(
            span.file, span.line, column, span.text, max(1, min(error.length, len(span.text) - column + 1))
        )
        desk.draft.wrong(error.slug, str(error), place)
    return None


def _note_tolerance(desk: Desk, line: Line, span: Span) -> None:
    """Say where the vocabulary's tolerance is used, since the sentence states none."""
    characteristic = desk.draft.vocabulary.characteristics.get(line.assertion.characteristic or "")
    if characteristic is None or not characteristic.is_measured or not _is_bare(line.assertion):
        return
    used = f"the vocabulary's tolerance is used ({characteristic.tolerance_written})"
    message = f"no ± is stated for {characteristic.label}; {used}"
    desk.draft.wrong("no-tolerance-stated", message, span, Severity.NOTE)


def _is_bare(assertion: Assertion) -> bool:
    expression = assertion.expression
    return expression.form is Form.ONE_OF and any(
        isinstance(item, Measured) and item.tolerance is None and item.tolerance_percent is None
        for item in expression.items
    )
