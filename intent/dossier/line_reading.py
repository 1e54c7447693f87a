"""A line under a heading into what it says, or into a finding with what to write instead."""

from __future__ import annotations

import contextlib
from collections.abc import Callable
from typing import TypeVar

from intent.diagnostics import Span
from intent.dossier.blocks import Field
from intent.dossier.duty_clauses import duty_trees
from intent.dossier.duty_hints import clause_fault, duty_language, unquoted_duty
from intent.dossier.duty_line import DutyLine, read_duty
from intent.dossier.fields import Desk
from intent.dossier.hints import comma_fault, sentence_hint
from intent.dossier.interpret import Line, read_line
from intent.dossier.sentence import Ungrammatical, parse
from intent.dossier.trees import Misread, Sentence
from intent.dossier.unreadable import Unreadable
from intent.dossier.words import Known, spoken_in
from intent.language.message import Words, say
from intent.model.work import Modality
from intent.vocabulary.phrases import begins_quoted

Read = TypeVar("Read")


def read_sentence(desk: Desk, known: Known, field: Field, modality: Modality) -> Line | None:
    """An instruction's sentence; none, with a finding, where it cannot be read."""

    def read(text: str) -> Line:
        tree = parse(text, known, desk.draft.vocabulary.grammars)
        return read_line(Sentence(text, desk.register, desk.draft.vocabulary), tree, modality)

    return _read(desk, known, field, read)


def read_duty_line(desk: Desk, known: Known, field: Field) -> DutyLine | None:
    """A duty's line; none, with a finding, where it cannot be read."""

    text, vocabulary = field.value.removesuffix("."), desk.draft.vocabulary
    spoken = duty_language(field, known, vocabulary)
    if not begins_quoted(text):
        desk.draft.wrong("no-duty", unquoted_duty(desk.register, spoken), field.value_span)
        return None
    if _has_decimal_comma(desk, field):
        return None
    trees, broken = duty_trees(text, known, vocabulary.grammars)
    line, misread = read_duty(Sentence(text, desk.register, vocabulary), trees, spoken)
    faults = [*(clause_fault(text, error, spoken) for error in broken), *misread]
    for fault in sorted(faults, key=lambda one: one.offset):
        _refuse(desk, known, field, fault)
    return None if faults else line


def _read(desk: Desk, known: Known, field: Field, read: Callable[[str], Read]) -> Read | None:
    """What a line says; none, with a finding, where it cannot be read. One final full stop is no matter."""
    if _has_decimal_comma(desk, field):
        return None
    try:
        return read(field.value)
    except (Ungrammatical, Misread) as error:
        if field.value.endswith("."):
            with contextlib.suppress(Unreadable):
                return read(field.value[:-1])
        _refuse(desk, known, field, error)
    return None


def _has_decimal_comma(desk: Desk, field: Field) -> bool:
    """Whether a number of the line has a comma for its point, which is then told."""
    comma = comma_fault(field.value, desk.draft.vocabulary.grammars)
    if comma is not None:
        message, offset, length = comma
        desk.draft.wrong("decimal-comma", message, _place(field, offset, length))
    return comma is not None


def _refuse(desk: Desk, known: Known, field: Field, error: Ungrammatical | Misread) -> None:
    explained = _explained(desk, known, field.value, error)
    desk.draft.wrong(error.slug, explained, _place(field, error.offset, error.length))


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
