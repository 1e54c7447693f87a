"""Instructions as sentences of the text form, as somebody would write them in a language."""

from __future__ import annotations

import re
from collections.abc import Collection, Sequence
from dataclasses import dataclass, field
from typing import Protocol

from intent.language.locale import ENGLISH
from intent.model.assertions import Assertion, Condition, Expression, Scope
from intent.model.duty import Duty, Timing
from intent.model.phrasing import expression_words
from intent.model.sentence_pieces import (
    SentencePiece,
    assertion_pieces,
    condition_pieces,
    quoted_piece,
    scope_pieces,
    timing_pieces,
)
from intent.model.work import Instruction, Modality
from intent.names import TERM
from intent.values.dates import DaySpan
from intent.vocabulary.form_terms import FormField
from intent.vocabulary.grammar import ORDINALS, Word
from intent.vocabulary.phrases import normal
from intent.vocabulary.terms import Vocabulary

_QUOTATION_MARKS = re.compile('["“”„«»]')


def expression_text(expression: Expression, vocabulary: Vocabulary) -> str:
    """A value as a cell of the text form has it."""
    return ENGLISH.say(expression_words(expression, vocabulary))


def scope_text(scope: Scope, vocabulary: Vocabulary, language: str = "en") -> str:
    """Of what an assertion speaks, as a sentence names it."""
    return _told(scope_pieces(scope, vocabulary, language), vocabulary, language)


def assertion_text(assertion: Assertion, vocabulary: Vocabulary, language: str = "en") -> str:
    """An assertion as a sentence without its clauses."""
    return _told(assertion_pieces(assertion, vocabulary, language), vocabulary, language)


def condition_text(condition: Condition, vocabulary: Vocabulary, language: str = "en") -> str:
    """A condition with its `if` or `unless`."""
    return _told(condition_pieces(condition, vocabulary, language), vocabulary, language)


class SaidLine(Protocol):
    """What an instruction says, whether it was just read or comes from the record."""

    @property
    def assertion(self) -> Assertion: ...
    @property
    def conditions(self) -> tuple[Condition, ...]: ...
    @property
    def consents(self) -> tuple[str, ...]: ...
    @property
    def until(self) -> DaySpan | None: ...
    @property
    def choice(self) -> int | None: ...


def sentence_text(said: SaidLine, vocabulary: Vocabulary, language: str = "en", *, until: str = "") -> str:
    """The whole sentence of an instruction, without its modality; its last day as ``until`` says it, or as written."""
    clauses: list[Sequence[SentencePiece]] = [assertion_pieces(said.assertion, vocabulary, language)]
    clauses += [condition_pieces(condition, vocabulary, language) for condition in said.conditions]
    clauses += [(Word.WITH_CONSENT_OF, person) for person in said.consents]
    if said.until is not None:
        clauses.append((Word.UNTIL, until or str(said.until)))
    if said.choice is not None:
        clauses.append((ORDINALS[said.choice - 1], Word.CHOICE))
    return ", ".join(_told(clause, vocabulary, language) for clause in clauses)


class SaidDuty(Protocol):
    """What a duty says, whether it was just read or comes from the record."""

    @property
    def what(self) -> str: ...
    @property
    def person(self) -> str | None: ...
    @property
    def role(self) -> str | None: ...
    @property
    def timing(self) -> Timing: ...
    @property
    def conditions(self) -> tuple[Condition, ...]: ...
    @property
    def until(self) -> DaySpan | None: ...


def duty_text(
    said: SaidDuty,
    vocabulary: Vocabulary,
    language: str = "en",
    people: Collection[str] = (),
    *,
    until: str = "",
) -> str:
    """The whole line of a duty; a role by a label that no person's identifier is, since that would be read first."""
    clauses: list[Sequence[SentencePiece]] = [(quoted_piece(said.what, vocabulary, language),)]
    if said.person is not None:
        clauses.append((Word.BY, said.person))
    if said.role is not None:
        clauses.append((Word.BY, _role_label(vocabulary, said.role, language, people)))
    clauses += timing_pieces(said.timing, vocabulary.grammar_in(language))
    clauses += [condition_pieces(condition, vocabulary, language) for condition in said.conditions]
    if said.until is not None:
        clauses.append((Word.UNTIL, until or str(said.until)))
    return ", ".join(_told(clause, vocabulary, language) for clause in clauses)


def _role_label(vocabulary: Vocabulary, iri: str, language: str, people: Collection[str]) -> str:
    role = vocabulary.concepts.get(iri)
    if role is None:
        return vocabulary.named(iri).label_in(language)
    taken = {normal(person) for person in people}
    return next((one for one in (role.label_in(language), *role.names) if normal(one) not in taken), "")


def _told(pieces: Sequence[SentencePiece], vocabulary: Vocabulary, language: str) -> str:
    return vocabulary.grammar_in(language).told(pieces)


def in_other_words(written: str, told: str) -> bool:
    """Whether two sentences differ in more than case, spacing and the form of quotation marks."""
    return _bare(written) != _bare(told)


def _bare(sentence: str) -> list[str]:
    return _QUOTATION_MARKS.sub(" ", normal(sentence)).split()


def modality_term(modality: Modality, vocabulary: Vocabulary) -> FormField:
    """The word that a line begins with, to be told by its label in the reader's language."""
    return vocabulary.fields[str(TERM[f"field-{modality}"])]


@dataclass(frozen=True, slots=True)
class AssertionSentence:
    """An assertion that stands in a place of a message: each reader gets it in their language."""

    assertion: Assertion
    vocabulary: Vocabulary = field(compare=False, repr=False)

    def label_in(self, language: str) -> str:
        """The assertion as a sentence of a language."""
        return assertion_text(self.assertion, self.vocabulary, language)


@dataclass(frozen=True, slots=True)
class ConditionSentence:
    """A condition that stands in a place of a message, with its `if` or `unless`."""

    condition: Condition
    vocabulary: Vocabulary = field(compare=False, repr=False)

    def label_in(self, language: str) -> str:
        """The condition in a language."""
        return condition_text(self.condition, self.vocabulary, language)


@dataclass(frozen=True, slots=True)
class InstructionSentence:
    """An instruction's whole sentence that stands in a place of a message, without its modality."""

    line: Instruction
    vocabulary: Vocabulary = field(compare=False, repr=False)

    def label_in(self, language: str) -> str:
        """The sentence in a language, from what was read of it."""
        return sentence_text(self.line, self.vocabulary, language)

    @property
    def written(self) -> str:
        """The sentence as its writer put it; where the record does not say, as it is told in English."""
        return self.line.written or self.label_in("en")

    def differs_in(self, language: str) -> bool:
        """Whether the writer's own line says it otherwise than it is told in a language."""
        return in_other_words(self.written, self.label_in(language))


@dataclass(frozen=True, slots=True)
class DutySentence:
    """A duty's whole line that stands in a place of a message, without its `duty`."""

    duty: Duty
    people: tuple[str, ...] = ()
    vocabulary: Vocabulary = field(kw_only=True, compare=False, repr=False)

    def label_in(self, language: str) -> str:
        """The line in a language, from what was read of it."""
        return duty_text(self.duty, self.vocabulary, language, self.people)

    @property
    def written(self) -> str:
        """The line as its writer put it; where the record does not say, as it is told in English."""
        return self.duty.written or self.label_in("en")

    def differs_in(self, language: str) -> bool:
        """Whether the writer's own line says it otherwise than it is told in a language."""
        return in_other_words(self.written, self.label_in(language))
