"""The headings under Instructions: each line an instruction or a duty, the rest of the list shared by all lines."""

from __future__ import annotations

from dataclasses import dataclass

from rdflib import DCTERMS, RDF, Literal, URIRef

from intent.diagnostics import Severity, Span
from intent.dossier.blocks import Field, TextSection
from intent.dossier.citations import read_citations
from intent.dossier.entering import doubt_identifier
from intent.dossier.fields import Desk
from intent.dossier.inscribe import inscribe_duty, inscribe_line
from intent.dossier.interpret import Line
from intent.dossier.line_reading import read_duty_line, read_sentence
from intent.dossier.quoted_lines import find_misplaced_words
from intent.dossier.register import IdentifierKind, RegisterEntry, identifier_fault, taken_message
from intent.dossier.rows import SectionForm, inscribe_cells, read_fields
from intent.dossier.value_hints import thousands_note
from intent.dossier.words import Known
from intent.language.figures import Written
from intent.language.message import say
from intent.model.assertions import Assertion, Form, Measured
from intent.model.instruction_text import duty_text, in_other_words, sentence_text
from intent.model.work import Modality
from intent.names import INTENT, TERM

_SAYS_NOTHING = say(
    '`{heading}` says nothing yet; write `- required: …`, `- allowed: …`, `- forbidden: …` or `- duty: "…"`'
)
_SUPERSEDES_NOTHING = say(
    "`{heading}` says nothing, and so it supersedes nothing; where nothing takes the place of what it names, "
    "write `- withdrawn: 2009-02` under that instead"
)


def enter_headings(desk: Desk, form: SectionForm, section: TextSection) -> None:
    """The identifiers of headings, and of their lines by their place in the list."""
    for heading in section.sections:
        identifier = heading.title.partition(" ")[0]
        node = desk.draft.node(identifier, span=heading.span)
        lines = _lines(form, heading)
        fault = identifier_fault(identifier, desk.draft.vocabulary)
        entry = RegisterEntry(
            identifier=identifier,
            sort=IdentifierKind.HEADING,
            iri=str(node),
            span=heading.span,
            members=tuple(line.identifier for line in lines if line.modality is not None),
        )
        taken = None if fault else desk.register.enter(entry)
        if fault:
            message = say("{fault}; write `### R1 Title`", fault=fault)
            desk.draft.wrong("bad-identifier", message, heading.span)
        elif taken is not None:
            desk.draft.wrong("repeated-identifier", taken_message(identifier, taken), heading.span)
        else:
            for line in lines:
                iri = str(desk.draft.node(line.identifier, span=line.field.span))
                sort = IdentifierKind.INSTRUCTION if line.modality else IdentifierKind.DUTY
                entry = RegisterEntry(identifier=line.identifier, sort=sort, iri=iri, span=line.field.span)
                desk.register.enter(entry)


@dataclass(frozen=True, slots=True)
class _LineText:
    """A line under a heading, as it stands there."""

    identifier: str
    modality: Modality | None
    """None is that of a duty."""
    field: Field


def _lines(form: SectionForm, heading: TextSection) -> list[_LineText]:
    """The instructions and duties under a heading, numbered in their order."""
    own = [field for field in heading.fields if form.begins_line(field.name)]
    name = heading.title.partition(" ")[0]
    return [
        _LineText(f"{name}.{number}", form.modality(field.name), field)
        for number, field in enumerate(own, start=1)
    ]


def read_instructions(desk: Desk, known: Known, form: SectionForm, section: TextSection) -> None:
    for heading in section.sections:
        identifier, _, title = heading.title.partition(" ")
        entry = desk.register.get(identifier, IdentifierKind.HEADING)
        if entry is not None and entry.span == heading.span:
            _read_heading(
                desk, known=known, form=form, heading=heading, identifier=identifier, title=title.strip()
            )


def _read_heading(
    desk: Desk, known: Known, form: SectionForm, heading: TextSection, identifier: str, title: str
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
    shared = [field for field in heading.fields if not form.begins_line(field.name)]
    cells = read_fields(desk, form, shared)
    inscribe_cells(desk, known, node, (identifier,), cells, elsewhere=frozenset({"citation"}))
    grounds = draft.vocabulary.in_scheme(str(TERM.grounds))
    if not any((node, INTENT.ground, URIRef(ground.iri)) in draft.triples for ground in grounds):
        # said in every graph, so that a rule of safety whose ground was lost cannot pass for one of intent
        draft.add(node, INTENT.ground, TERM.intent)
    cited = [cell for term, cell in cells if getattr(term, "reads", "") == "citation"]
    read_citations(desk, identifier, cited, heading.words)
    doubt_identifier(desk, heading, "R2")
    lines = _lines(form, heading)
    find_misplaced_words(draft, form, heading)
    if not lines:
        supersedes = any(node == one and INTENT.supersedes == link for one, link, _ in draft.triples)
        message = _SUPERSEDES_NOTHING if supersedes else _SAYS_NOTHING
        draft.wrong("no-lines", message.filled(heading=identifier), heading.span, Severity.WARNING)
    for line in lines:
        _read_line(desk, known, node, line)


def _read_line(desk: Desk, known: Known, heading: URIRef, line: _LineText) -> None:
    draft, field = desk.draft, line.field
    node = draft.node(line.identifier, span=field.span)
    draft.add(node, RDF.type, INTENT.Instruction if line.modality else INTENT.Duty)
    draft.add(node, DCTERMS.identifier, Literal(line.identifier))
    draft.add(node, INTENT.inHeading, heading)
    draft.add(node, INTENT.order, Literal(draft.next_order("instruction")))
    draft.say(node, INTENT.words, field.words)
    if line.modality is None:
        duty = read_duty_line(desk, known, field)
        if duty is not None:
            inscribe_duty(draft, node, duty, desk.register)
            _inscribe_own_words(desk, node, duty.written, duty_text(duty, draft.vocabulary))
        return
    draft.add(node, INTENT.modality, INTENT[line.modality])
    read = read_sentence(desk, known, field, line.modality)
    if read is not None:
        inscribe_line(draft, node, read, desk.register)
        _inscribe_own_words(desk, node, read.written, sentence_text(read, draft.vocabulary))
        _note_tolerance(desk, read, field.value_span)


def _inscribe_own_words(desk: Desk, node: URIRef, written: str, told: str) -> None:
    """The line as its writer put it, where nobody could tell it so from what was read of it."""
    if in_other_words(written, told):
        desk.draft.say(node, INTENT.written, written)


def _note_tolerance(desk: Desk, line: Line, span: Span) -> None:
    """Say where the vocabulary's tolerance is used, since the sentence states none."""
    characteristic = desk.draft.vocabulary.characteristics.get(line.assertion.characteristic or "")
    if characteristic is None or not characteristic.is_measured:
        return
    for item in line.assertion.expression.items:
        note = thousands_note(item.written, characteristic) if isinstance(item, Measured) else ""
        if note:
            desk.draft.wrong("thousands", note, span, Severity.NOTE)
    if not _is_bare(line.assertion) or not (characteristic.tolerance or characteristic.tolerance_percent):
        return
    message = say(
        "no ± is stated for {characteristic}; the vocabulary's tolerance is used ({tolerance})",
        characteristic=characteristic,
        tolerance=Written(characteristic.tolerance_written),
    )
    desk.draft.wrong("no-tolerance-stated", message, span, Severity.NOTE)


def _is_bare(assertion: Assertion) -> bool:
    expression = assertion.expression
    return expression.form is Form.ONE_OF and any(
        isinstance(item, Measured) and item.tolerance is None and item.tolerance_percent is None
        for item in expression.items
    )
