"""What an instruction says as the pieces of a sentence: words of the grammar, names and values, in their order."""

from __future__ import annotations

import re
from collections.abc import Sequence

from intent.language.figures import decimal
from intent.model.assertions import (
    Aggregate,
    Assertion,
    Condition,
    Dated,
    Expression,
    Form,
    Item,
    Measured,
    Named,
    Relative,
    Scope,
    ScopeKind,
    Text,
)
from intent.model.duty import Moment, Timing
from intent.model.phrasing import named_value, tolerance_of
from intent.vocabulary.grammar import Grammar, Word
from intent.vocabulary.phrases import normal, words_of
from intent.vocabulary.terms import Vocabulary

SentencePiece = Word | str
"""A word of the sentence, told in its language; or a name or value as it is."""

_APART = re.compile(r'[,"“”„«»±]|\+-|\+/-|^\(')
"""Marks that would end a text, or make something else of it."""
_FORMS = {
    Form.AT_LEAST: Word.AT_LEAST,
    Form.AT_MOST: Word.AT_MOST,
    Form.AS_DOCUMENTED: Word.AS_DOCUMENTED,
    Form.ANY: Word.ANY,
}
_SCOPES = {
    ScopeKind.ADDITIONS: Word.ADDITIONS,
    ScopeKind.WORK: Word.THE_WORK,
    ScopeKind.VENUE: Word.THE_VENUE,
}
_QUOTES = ('"…"', "“…”", "«…»")


def condition_pieces(condition: Condition, vocabulary: Vocabulary, language: str) -> Sequence[SentencePiece]:
    """`if` or `unless`, with the fact or the assertion after it."""
    if condition.assertion is None:
        fact = quoted_piece(condition.fact or "", vocabulary, language)
        return Word.UNLESS if condition.unless else Word.IF, fact
    has_own = bool(vocabulary.grammar_in(language).label(Word.IF_SO))
    word = Word.UNLESS if condition.unless else Word.IF_SO if has_own else Word.IF
    return word, *assertion_pieces(condition.assertion, vocabulary, language)


def timing_pieces(timing: Timing, spoken: Grammar) -> list[Sequence[SentencePiece]]:
    """When a duty falls, clause by clause."""
    clauses: list[Sequence[SentencePiece]] = []
    if timing.phase is not None:
        clauses.append((Word[timing.phase.name],))
    if timing.every is not None:
        often = spoken.label(Word.EVERY_DAYS).replace("…", str(timing.every))
        clauses.append((Word.EVERY_DAY,) if timing.every == 1 else (often,))
    if timing.within is not None:
        counted = Word.DAY if timing.within == 1 else Word.DAYS
        moment = Word.THE_START if timing.of is Moment.START else Word.THE_END
        clauses.append((Word.WITHIN, str(timing.within), counted, Word.OF, moment))
    return clauses


def assertion_pieces(assertion: Assertion, vocabulary: Vocabulary, language: str) -> Sequence[SentencePiece]:
    """The whole of an assertion; a total after the verb in a language that says it there."""
    scope = scope_pieces(assertion.scope, vocabulary, language)
    characteristic = vocabulary.named(assertion.characteristic or "").label_in(language)
    verb = _verb(assertion.expression)
    values = _values(assertion.expression, vocabulary, language)
    match assertion.aggregate:
        case Aggregate.RELATION if assertion.relation:
            return *scope, Word.IS, Word[assertion.relation.name], assertion.other or ""
        case Aggregate.NUMBER:
            return Word.NUMBER_OF, *scope, *verb, *values
        case Aggregate.DISTANCE:
            return Word.DISTANCE_BETWEEN, *scope, *verb, *values
        case Aggregate.DIFFERENCE:
            return Word.DIFFERENCE_IN, characteristic, Word.BETWEEN, *scope, *verb, *values
        case Aggregate.TOTAL if vocabulary.grammar_in(language).label(Word.IN_ALL):
            return characteristic, Word.OF, *scope, *verb, Word.IN_ALL, *values
        case Aggregate.TOTAL:
            return Word.TOTAL, characteristic, Word.OF, *scope, *verb, *values
        case Aggregate.SAME:
            return characteristic, Word.OF, *scope, Word.IS, Word.SAME
        case Aggregate.DIFFERENT:
            return characteristic, Word.OF, *scope, Word.IS, Word.DIFFERENT
    return characteristic, Word.OF, *scope, *verb, *values


def scope_pieces(scope: Scope, vocabulary: Vocabulary, language: str) -> Sequence[SentencePiece]:
    """Of what is spoken, with what is excepted."""
    pieces: Sequence[SentencePiece]
    if scope.kind is ScopeKind.EVERY:
        pieces = Word.EVERY, vocabulary.named(scope.part_kind or "").label_in(language)
    elif scope.kind is ScopeKind.NAMES:
        pieces = _listed(scope.names, Word.AND)
    else:
        pieces = (_SCOPES[scope.kind],)
    return (*pieces, Word.EXCEPT, *_listed(scope.excepted, Word.AND)) if scope.excepted else pieces


def _listed(items: Sequence[str], joint: Word) -> Sequence[SentencePiece]:
    """`a`, `a and b`, `a, b and c`."""
    if len(items) < 2:
        return tuple(items)
    *first, last = items
    return ", ".join(first), joint, last


def _verb(expression: Expression) -> Sequence[Word]:
    return (Word.IS, Word.NOT) if expression.negated else (Word.IS,)


def _values(expression: Expression, vocabulary: Vocabulary, language: str) -> Sequence[SentencePiece]:
    items = [_item(item, vocabulary, language) for item in expression.items]
    match expression.form:
        case Form.ONE_OF if len(items) == 1:
            return (items[0],)
        case Form.ONE_OF:
            return Word.ONE_OF, *_listed(items, Word.OR)
        case Form.BETWEEN:
            return Word.BETWEEN, items[0], Word.AND, items[1]
    return _FORMS[expression.form], *items


def _item(item: Item, vocabulary: Vocabulary, language: str) -> str:
    match item:
        case Named():
            return vocabulary.named(item.concept).label_in(language)
        case Text():
            return _quoted(item.text, vocabulary, language)
        case Dated():
            return str(item.span)
        case Relative():
            of_documented = vocabulary.grammar_in(language).label(Word.OF_DOCUMENTED)
            return f"{decimal(item.percent)} % {of_documented}{tolerance_of(item)}"
    return _measured(item, vocabulary, language)


def _measured(item: Measured, vocabulary: Vocabulary, language: str) -> str:
    """A number as it was written, in the language's own words where it was written in words (`upside down`)."""
    value, plus_minus, tolerance = item.written.partition(" ± ")
    term = named_value(item, vocabulary)
    if term is not None:
        value = term.label_in(language)
    elif "," in value and not value.startswith("("):
        value = f"({value})"
    return f"{value}{plus_minus}{tolerance}"


def quoted_piece(text: str, vocabulary: Vocabulary, language: str) -> str:
    """A text in the language's quotation marks, or in others where those stand in it."""
    own = vocabulary.grammar_in(language).label(Word.QUOTATION_MARKS)
    pairs = [pair.split("…") for pair in (own, *_QUOTES)]
    begin, end = next((pair for pair in pairs if not any(mark.strip() in text for mark in pair)), pairs[0])
    return f"{begin}{text}{end}"


def _quoted(text: str, vocabulary: Vocabulary, language: str) -> str:
    """A text, in quotation marks where it would not be read as one."""
    first = vocabulary.grammars[0]
    told = vocabulary.grammar_in(language)
    apart = bool(_APART.search(text)) or _holds_words(text, told, begins=True)
    # In another language any word of the first would have the sentence tried as one of that language.
    if apart or (told is not first and _holds_words(text, first, begins=False)):
        return quoted_piece(text, vocabulary, language)
    return text


def _holds_words(text: str, grammar: Grammar, *, begins: bool) -> bool:
    """Whether a text has `and` or `or`, or any word of the grammar; where it only ``begins`` with one, that counts."""
    pieces = words_of(normal(text))
    found = [grammar.match(pieces, place)[1] for place in range(len(pieces))]
    if begins:
        return bool(found and found[0]) or any({Word.AND, Word.OR} & set(words) for words in found)
    return any(found)
