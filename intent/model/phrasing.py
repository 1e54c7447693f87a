"""Values, scopes and sentences in words: as the text form writes them, in any of the vocabulary's languages."""

from __future__ import annotations

import re
from collections.abc import Iterable
from fractions import Fraction

from intent.language.message import Written, joined, listed, say
from intent.model.assertions import (
    Aggregate,
    Assertion,
    Condition,
    Dated,
    Expression,
    Form,
    Item,
    Named,
    Relation,
    Relative,
    Scope,
    ScopeKind,
    Text,
)
from intent.values.regions import Region
from intent.vocabulary.phrases import normal
from intent.vocabulary.terms import Characteristic, Concept, Vocabulary

NOT_GIVEN = say("not given")
_NEEDS_QUOTES = re.compile(
    r'[,"“”„«»±]|\+-|\+/-|\b(and|or)\b|^(of|is|not|one of|between|at least|at most|as documented|any|the same|different'
    r"|number of|total|difference in|distance between|every|additions|the work|the venue|except|above|below|left of"
    r"|right of|in front of|behind|if|unless|until|with consent of|choice"
    r"|first|second|third|fourth|fifth|sixth|seventh|eighth|ninth|tenth)\b|^\(",
    re.IGNORECASE,
)
_FORMS = {
    Form.AT_LEAST: say("at least"),
    Form.AT_MOST: say("at most"),
    Form.AS_DOCUMENTED: say("as documented"),
    Form.ANY: say("any"),
}
_SCOPES = {
    ScopeKind.WORK: say("the work"),
    ScopeKind.VENUE: say("the venue"),
    ScopeKind.ADDITIONS: say("additions"),
}
_RELATIONS = {
    Relation.ABOVE: say("above"),
    Relation.BELOW: say("below"),
    Relation.LEFT_OF: say("left of"),
    Relation.RIGHT_OF: say("right of"),
    Relation.IN_FRONT_OF: say("in front of"),
    Relation.BEHIND: say("behind"),
}
_SHORT = 8
_ORDINALS = ["first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth"]


def decimal(number: Fraction) -> str:
    """An exact number as people write it; a fraction where no decimal is exact."""
    places = 0
    while number * 10**places % 1 and places < 12:
        places += 1
    if number * 10**places % 1:
        return f"{number.numerator}/{number.denominator}"
    scaled = abs(number.numerator * 10**places // number.denominator)
    digits = str(scaled).rjust(places + 1, "0")
    sign = "-" if number < 0 else ""
    return sign + (f"{digits[:-places]}.{digits[-places:]}" if places else digits)


def expression_words(expression: Expression | None, vocabulary: Vocabulary) -> str:
    """A value as a cell gives it, for people to read; named as the vocabulary names it."""
    if expression is None:
        return NOT_GIVEN
    return _expression(expression, vocabulary, vocabulary.language, quoted=False)


def comparison_words(expression: Expression, vocabulary: Vocabulary) -> str:
    """What follows `is` or `is not` in a sentence."""
    words = _expression(expression, vocabulary, "en", quoted=True)
    return f"is not {words}" if expression.negated else f"is {words}"


def _expression(expression: Expression, vocabulary: Vocabulary, language: str, *, quoted: bool) -> str:
    items = [_item(item, vocabulary, language, quoted=quoted) for item in expression.items]
    if expression.form is Form.BETWEEN:
        return say("between {low} and {high}", low=items[0], high=items[1])
    if expression.form is Form.ONE_OF:
        return items[0] if len(items) == 1 else say("one of {values}", values=listed(items, "or"))
    return joined([_FORMS[expression.form], *items])


def _item(item: Item, vocabulary: Vocabulary, language: str, *, quoted: bool) -> str:
    if isinstance(item, Named):
        concept = vocabulary.concepts.get(item.concept)
        return concept.label_in(language) if concept else item.concept
    if isinstance(item, Text):
        return _quoted(item.text) if quoted else item.text
    if isinstance(item, Dated):
        return str(item.span)
    if isinstance(item, Relative):
        share = Written(f"{decimal(item.percent)} %")
        return say("{share} of documented{tolerance}", share=share, tolerance=Written(_tolerance(item)))
    if quoted and "," in item.written and not item.written.startswith("("):
        value, plus_minus, tolerance = item.written.partition(" ± ")
        return f"({value}){plus_minus}{tolerance}"
    return _measured(item.written, vocabulary, language)


def _measured(written: str, vocabulary: Vocabulary, language: str) -> str:
    """A number as it was written; one that was written as a name (`upside down ± 3 deg`) by its name in a language."""
    name, plus_minus, tolerance = written.partition(" ± ")
    if language == "en" or any(sign.isdigit() for sign in name):
        return say("{number}", number=Written(written))
    wanted = normal(name)
    known = (one for one in vocabulary.concepts.values() if one.magnitude is not None and wanted in one.names)
    named = next((one.label_in(language) for one in known), name)
    return joined([named, say("{number}", number=Written(plus_minus.lstrip() + tolerance))])


def _quoted(text: str) -> str:
    if not _NEEDS_QUOTES.search(text):
        return text
    return f"“{text}”" if '"' in text else f'"{text}"'


def _tolerance(item: Relative) -> str:
    if item.tolerance_percent is not None:
        return f" ± {decimal(item.tolerance_percent)} %"
    return f" ± {decimal(item.tolerance)}" if item.tolerance is not None else ""


def region_words(values: Region, characteristic: Characteristic, vocabulary: Vocabulary) -> str:
    """A computed set of numbers: one, a range, or a bound, in the reference unit of the quantity kind."""
    unit = vocabulary.reference_unit(characteristic.quantity_kind)
    symbol = f" {unit.symbol}" if unit else ":1" if characteristic.space == "ratio" else ""
    if values.is_empty:
        return say("nothing")
    low, high = values.bounds.low, values.bounds.high
    lowest, highest = ("" if end is None else _readable(end) for end in (low, high))
    if lowest == highest:
        return say("{number}", number=Written(lowest + symbol)) if lowest else NOT_GIVEN
    if not highest:
        return say("at least {least}", least=Written(lowest + symbol))
    if not lowest:
        return say("at most {most}", most=Written(highest + symbol))
    return say("between {low} and {high}", low=Written(lowest), high=Written(highest + symbol))


def _readable(number: Fraction) -> str:
    """A number as it is where that is short, else rounded to four digits."""
    exact = decimal(number)
    if len(exact) <= _SHORT and "/" not in exact:
        return exact
    return decimal(Fraction(f"{float(number):.4g}"))


def scope_words(scope: Scope, vocabulary: Vocabulary, language: str | None = None) -> str:
    """A scope as a sentence names it."""
    words: str
    if scope.kind is ScopeKind.EVERY:
        kind = vocabulary.concepts.get(scope.part_kind or "")
        words = say("every {kind}", kind=_label(kind, language) or scope.part_kind)
    elif scope.kind is ScopeKind.NAMES:
        words = listed(scope.names)
    else:
        words = _SCOPES[scope.kind]
    if not scope.excepted:
        return words
    return say("{scope} except {excepted}", scope=words, excepted=tuple(scope.excepted))


def _label(term: Concept | Characteristic | None, language: str | None) -> str:
    """The label of a term, in a language if one is named; nothing of an unknown term."""
    if term is None:
        return ""
    return term.label_in(language) if language else term.label


def subject_words(assertion: Assertion, vocabulary: Vocabulary, language: str | None = None) -> str:
    """What an assertion speaks of, as the characteristic of a row: `number`, `total power`, `below M1`."""
    label = _label(vocabulary.characteristics.get(assertion.characteristic or ""), language)
    match assertion.aggregate:
        case Aggregate.NUMBER:
            return say("number")
        case Aggregate.DISTANCE:
            return say("distance")
        case Aggregate.RELATION if assertion.relation:
            return joined([_RELATIONS[assertion.relation], assertion.other or ""])
        case Aggregate.TOTAL:
            return say("total {characteristic}", characteristic=label)
        case Aggregate.DIFFERENCE:
            return say("difference in {characteristic}", characteristic=label)
        case Aggregate.SAME:
            return say("same {characteristic}", characteristic=label)
        case Aggregate.DIFFERENT:
            return say("different {characteristic}", characteristic=label)
        case _:
            return label


def assertion_words(assertion: Assertion, vocabulary: Vocabulary) -> str:
    """An assertion as a sentence without its clauses, in English as the text form has it."""
    scope = scope_words(assertion.scope, vocabulary, "en")
    comparison = comparison_words(assertion.expression, vocabulary)
    subject = subject_words(assertion, vocabulary, "en")
    match assertion.aggregate:
        case Aggregate.RELATION:
            return f"{scope} is {subject}"
        case Aggregate.DIFFERENCE | Aggregate.DISTANCE:
            return f"{subject} between {scope} {comparison}"
        case Aggregate.SAME | Aggregate.DIFFERENT:
            compared = "the same for all" if assertion.aggregate is Aggregate.SAME else "different for all"
            characteristic = vocabulary.characteristics.get(assertion.characteristic or "")
            return f"{_label(characteristic, 'en')} of {scope} is {compared}"
        case _:
            return f"{subject} of {scope} {comparison}"


def condition_words(condition: Condition, vocabulary: Vocabulary) -> str:
    """A condition with its `if` or `unless`."""
    word = "unless" if condition.unless else "if"
    if condition.assertion is not None:
        return f"{word} {assertion_words(condition.assertion, vocabulary)}"
    return f'{word} "{condition.fact}"'


def sentence_words(
    assertion: Assertion,
    vocabulary: Vocabulary,
    conditions: Iterable[Condition] = (),
    consents: Iterable[str] = (),
    until: object | None = None,
    choice: int | None = None,
) -> str:
    """The whole sentence of an instruction, without its modality."""
    clauses = [condition_words(condition, vocabulary) for condition in conditions]
    clauses += [f"with consent of {person}" for person in consents]
    if until is not None:
        clauses.append(f"until {until}")
    if choice is not None:
        clauses.append(f"{_ORDINALS[choice - 1]} choice")
    return ", ".join([assertion_words(assertion, vocabulary), *clauses])
