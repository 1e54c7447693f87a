"""The headings under Instructions: each line a sentence, the rest of the list shared by all lines."""

from __future__ import annotations

import contextlib

from rdflib import DCTERMS, RDF, Literal, URIRef

from intent.diagnostics import Severity, Span
from intent.dossier.blocks import Field, TextSection
from intent.dossier.citations import read_citations
from intent.dossier.entering import doubt_identifier
from intent.dossier.fields import Desk
from intent.dossier.hints import comma_fault, sentence_hint
from intent.dossier.inscribe import inscribe_line
from intent.dossier.interpret import Line, read_line
from intent.dossier.quoted_lines import find_misplaced_words
from intent.dossier.register import IdentifierKind, RegisterEntry, identifier_fault, taken_message
from intent.dossier.rows import SectionForm, inscribe_cells, read_fields
from intent.dossier.sentence import Ungrammatical, parse
from intent.dossier.trees import Misread, Sentence
from intent.dossier.unreadable import Unreadable
from intent.dossier.value_hints import thousands_note
from intent.dossier.words import Known, spoken_in
from intent.language.figures import Written
from intent.language.message import Words, say
from intent.model.assertions import Assertion, Form, Measured
from intent.model.instruction_text import in_other_words, sentence_text
from intent.model.work import Modality
from intent.names import INTENT, TERM


def enter_headings(desk: Desk, form: SectionForm, section: TextSection) -> None:
    """The identifiers of headings, and of their lines by their place in the list."""
    for heading in section.sections:
        identifier = heading.title.partition(" ")[0]
        node = desk.draft.node(identifier, span=heading.span)
        lines = _lines(form, heading)
        numbered = tuple(f"{identifier}.{number}" for number in range(1, len(lines) + 1))
        fault = identifier_fault(identifier, desk.draft.vocabulary)
        entry = RegisterEntry(
            identifier=identifier,
            sort=IdentifierKind.HEADING,
            iri=str(node),
            span=heading.span,
            members=numbered,
        )
        taken = None if fault else desk.register.enter(entry)
        if fault:
            message = say("{fault}; write `### R1 Title`", fault=fault)
            desk.draft.wrong("bad-identifier", message, heading.span)
        elif taken is not None:
            desk.draft.wrong("repeated-identifier", taken_message(identifier, taken), heading.span)
        else:
            for name, (_, line) in zip(numbered, lines, strict=True):
                iri = str(desk.draft.node(name, span=line.span))
                desk.register.enter(
                    RegisterEntry(identifier=name, sort=IdentifierKind.INSTRUCTION, iri=iri, span=line.span)
                )


def _lines(form: SectionForm, heading: TextSection) -> list[tuple[Modality, Field]]:
    """The instructions under a heading, each with its modality."""
    found = [(form.modality(field.name), field) for field in heading.fields]
    return [(modality, field) for modality, field in found if modality is not None]


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
    shared = [field for field in heading.fields if form.modality(field.name) is None]
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
        message = say(
            "`{heading}` says nothing yet; write `- required: …`, `- allowed: …` or `- forbidden: …`",
            heading=identifier,
        )
        draft.wrong("no-lines", message, heading.span, Severity.WARNING)
    for number, (modality, line) in enumerate(lines, start=1):
        _read_line(
            desk, known, heading=node, identifier=f"{identifier}.{number}", modality=modality, field=line
        )


def _read_line(
    desk: Desk, known: Known, heading: URIRef, identifier: str, modality: Modality, field: Field
) -> None:
    draft = desk.draft
    node = draft.node(identifier, span=field.span)
    draft.add(node, RDF.type, INTENT.Instruction)
    draft.add(node, DCTERMS.identifier, Literal(identifier))
    draft.add(node, INTENT.inHeading, heading)
    draft.add(node, INTENT.order, Literal(draft.next_order("instruction")))
    draft.add(node, INTENT.modality, INTENT[modality])
    draft.say(node, INTENT.words, field.words)
    line = read_sentence(desk, known, field, modality)
    if line is not None:
        inscribe_line(draft, node, line, desk.register)
        _inscribe_own_words(desk, node, line)
        _note_tolerance(desk, line, field.value_span)


def _inscribe_own_words(desk: Desk, node: URIRef, line: Line) -> None:
    """The sentence as its writer put it, where nobody could tell it so from what was read of it."""
    if in_other_words(line.written, sentence_text(line, desk.draft.vocabulary)):
        desk.draft.say(node, INTENT.written, line.written)


def read_sentence(desk: Desk, known: Known, field: Field, modality: Modality) -> Line | None:
    """An instruction's sentence; none, with a finding, where it cannot be read."""
    comma = comma_fault(field.value, desk.draft.vocabulary.grammars)
    if comma is not None:
        message, offset, length = comma
        desk.draft.wrong("decimal-comma", message, _place(field, offset, length))
        return None
    try:
        return _parsed(desk, known, field.value, modality)
    except (Ungrammatical, Misread) as error:
        if field.value.endswith("."):
            with contextlib.suppress(Unreadable):
                return _parsed(desk, known, field.value[:-1], modality)
        explained = _explained(desk, known, field.value, error)
        desk.draft.wrong(error.slug, explained, _place(field, error.offset, error.length))
    return None


def _parsed(desk: Desk, known: Known, text: str, modality: Modality) -> Line:
    tree = parse(text, known, desk.draft.vocabulary.grammars)
    return read_line(Sentence(text, desk.register, desk.draft.vocabulary), tree, modality)


def _explained(desk: Desk, known: Known, text: str, error: Ungrammatical | Misread) -> Words:
    """What is wrong with a sentence; what to write instead comes beside it, or in place of the grammar's words."""
    if isinstance(error, Misread) and error.slug == "sentence":
        return error.message
    vocabulary = desk.draft.vocabulary
    hint = sentence_hint(
        text,
        offset=error.offset,
        error=error,
        register=desk.register,
        vocabulary=vocabulary,
        spoken=spoken_in(text, known, vocabulary.grammars),
    )
    if isinstance(error, Ungrammatical):
        return hint or error.message
    return say("{fault}; {hint}", fault=error.message, hint=hint) if hint else error.message


def _place(field: Field, offset: int, length: int) -> Span:
    """A place in a field's value, as far as it stands in the field's first line."""
    span = field.value_span
    column = min(span.column + offset, len(span.text) + 1)
    return Span(
        file=span.file,
        line=span.line,
        column=column,
        text=span.text,
        length=max(1, min(length, len(span.text) - column + 1)),
    )


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
