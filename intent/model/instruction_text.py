"""Instructions as sentences of the text form, as somebody would write them."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, field

from intent.language.locale import ENGLISH
from intent.model.assertions import (
    Aggregate,
    Assertion,
    Condition,
    Expression,
    Form,
    Item,
    Measured,
    Scope,
    Text,
)
from intent.model.phrasing import characteristic_words, expression_words, scope_words
from intent.model.work import Instruction
from intent.vocabulary.phrases import normal
from intent.vocabulary.terms import Vocabulary

_NEEDS_QUOTES = re.compile(
    r'[,"“”„«»±]|\+-|\+/-|\b(and|or)\b|^(of|is|not|one of|between|at least|at most|as documented|any|the same|different'
    r"|number of|total|difference in|distance between|every|additions|the work|the venue|except|above|below|left of"
    r"|right of|in front of|behind|if|unless|until|with consent of|choice"
    r"|first|second|third|fourth|fifth|sixth|seventh|eighth|ninth|tenth)\b|^\(",
    re.IGNORECASE,
)
_ORDINALS = ["first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth"]


def expression_text(expression: Expression, vocabulary: Vocabulary) -> str:
    """A value as a cell of the text form has it."""
    return ENGLISH.say(expression_words(expression, vocabulary))


def scope_text(scope: Scope, vocabulary: Vocabulary) -> str:
    """Of what an assertion speaks, as a sentence names it."""
    return ENGLISH.say(scope_words(scope, vocabulary))


def comparison_text(expression: Expression, vocabulary: Vocabulary, language: str = "en") -> str:
    """What follows `is` or `is not` in a sentence, with that word."""
    items = [_item_text(item, vocabulary) for item in expression.items]
    if expression.form is Form.ONE_OF and len(items) == 1:
        words = items[0]
    elif expression.form is Form.ONE_OF:
        words = f"one of {', '.join(items[:-1])} or {items[-1]}"
    elif expression.form is Form.BETWEEN:
        words = f"between {items[0]} and {items[1]}"
    else:
        words = " ".join([expression.form.value.replace("-", " "), *items])
    return f"is not {words}" if expression.negated else f"is {words}"


def _item_text(item: Item, vocabulary: Vocabulary) -> str:
    match item:
        case Text():
            return _quoted(item.text)
        case Measured() if "," in item.written and not item.written.startswith("("):
            value, plus_minus, tolerance = item.written.partition(" ± ")
            return f"({value}){plus_minus}{tolerance}"
        case Measured():
            return item.written
    return ENGLISH.say(expression_words(Expression(form=Form.ONE_OF, items=(item,)), vocabulary))


def _quoted(text: str) -> str:
    if not _NEEDS_QUOTES.search(text):
        return text
    return f"“{text}”" if '"' in text else f'"{text}"'


def assertion_text(assertion: Assertion, vocabulary: Vocabulary, language: str = "en") -> str:
    """An assertion as a sentence without its clauses."""
    scope = scope_text(assertion.scope, vocabulary)
    comparison = comparison_text(assertion.expression, vocabulary)
    subject = ENGLISH.say(characteristic_words(assertion, vocabulary))
    match assertion.aggregate:
        case Aggregate.RELATION:
            return f"{scope} is {subject}"
        case Aggregate.DIFFERENCE | Aggregate.DISTANCE:
            return f"{subject} between {scope} {comparison}"
        case Aggregate.SAME | Aggregate.DIFFERENT:
            compared = "the same for all" if assertion.aggregate is Aggregate.SAME else "different for all"
            characteristic = vocabulary.characteristics.get(assertion.characteristic or "")
            return f"{characteristic.label if characteristic else ''} of {scope} is {compared}"
    return f"{subject} of {scope} {comparison}"


def condition_text(condition: Condition, vocabulary: Vocabulary, language: str = "en") -> str:
    """A condition with its `if` or `unless`."""
    word = "unless" if condition.unless else "if"
    if condition.assertion is not None:
        return f"{word} {assertion_text(condition.assertion, vocabulary)}"
    return f'{word} "{condition.fact}"'


def sentence_text(
    assertion: Assertion,
    vocabulary: Vocabulary,
    *,
    conditions: Iterable[Condition] = (),
    consents: Iterable[str] = (),
    until: object | None = None,
    choice: int | None = None,
    language: str = "en",
) -> str:
    """The whole sentence of an instruction, without its modality."""
    clauses = [condition_text(condition, vocabulary) for condition in conditions]
    clauses += [f"with consent of {person}" for person in consents]
    if until is not None:
        clauses.append(f"until {until}")
    if choice is not None:
        clauses.append(f"{_ORDINALS[choice - 1]} choice")
    return ", ".join([assertion_text(assertion, vocabulary), *clauses])


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
        line = self.line
        return sentence_text(
            line.assertion,
            self.vocabulary,
            conditions=line.conditions,
            consents=line.consents,
            until=line.until,
            choice=line.choice,
            language=language,
        )

    @property
    def written(self) -> str:
        """The sentence as its writer put it; where the record does not say, as it is told in English."""
        return self.line.written or self.label_in("en")

    def differs_in(self, language: str) -> bool:
        """Whether the writer's own line says it otherwise than it is told in a language."""
        return normal(self.written) != normal(self.label_in(language))
