"""Values, scopes and characteristics as messages: what a row gives, what a subject is called."""

from __future__ import annotations

from fractions import Fraction

from intent.language.figures import Written, decimal
from intent.language.message import Joint, Message, Words, joined, listed, named, say
from intent.model.assertions import (
    Aggregate,
    Assertion,
    Dated,
    Expression,
    Form,
    Item,
    Measured,
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


def expression_words(expression: Expression | None, vocabulary: Vocabulary) -> Words:
    """A value as a cell gives it, for people to read; named as the vocabulary names it."""
    if expression is None:
        return NOT_GIVEN
    items = [_item(item, vocabulary) for item in expression.items]
    if expression.form is Form.BETWEEN:
        return say("between {low} and {high}", low=items[0], high=items[1])
    if expression.form is Form.ONE_OF:
        return items[0] if len(items) == 1 else say("one of {values}", values=listed(items, Joint.OR))
    return joined([_FORMS[expression.form], *items])


def compared_words(expression: Expression, vocabulary: Vocabulary) -> Words:
    """What follows `is` in a sentence: a value, or `not` and a value."""
    words = expression_words(expression, vocabulary)
    return say("not {value}", value=words) if expression.negated else words


def _item(item: Item, vocabulary: Vocabulary) -> Words:
    match item:
        case Named():
            return named(vocabulary.named(item.concept))
        case Text():
            return item.text
        case Dated():
            return str(item.span)
        case Relative():
            share, tolerance = Written(f"{decimal(item.percent)} %"), Written(tolerance_of(item))
            return say("{share} of documented{tolerance}", share=share, tolerance=tolerance)
    return _measured(item, vocabulary)


def _measured(item: Measured, vocabulary: Vocabulary) -> Message:
    """A number as it was written; one that was written as a name (`upside down ± 3 deg`) by that name."""
    name, plus_minus, tolerance = item.written.partition(" ± ")
    if any(sign.isdigit() for sign in name):
        return say("{number}", number=Written(item.written))
    told = say("{term}", term=named_value(item, vocabulary) or name)
    if not plus_minus:
        return told
    return say("{value} ± {tolerance}", value=told, tolerance=Written(tolerance))


def named_value(item: Measured, vocabulary: Vocabulary) -> Concept | None:
    """The term that a number was written as, where it was written as one: `upside down`, `upside down ± 3 deg`."""
    name, *_ = item.written.partition(" ± ")
    if any(sign.isdigit() for sign in name):
        return None
    wanted = normal(name)
    known = (one for one in vocabulary.concepts.values() if one.magnitude is not None and wanted in one.names)
    return next(known, None)


def tolerance_of(item: Relative) -> str:
    """The tolerance of a share of the documented value, as it is written after it; nothing where it has none."""
    if item.tolerance_percent is not None:
        return f" ± {decimal(item.tolerance_percent)} %"
    return f" ± {decimal(item.tolerance)}" if item.tolerance is not None else ""


def region_words(values: Region, characteristic: Characteristic, vocabulary: Vocabulary) -> Words:
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


def scope_words(scope: Scope, vocabulary: Vocabulary) -> Words:
    """Of what an assertion speaks, as a sentence names it."""
    words: Words
    if scope.kind is ScopeKind.EVERY:
        words = say("every {kind}", kind=vocabulary.named(scope.part_kind or ""))
    elif scope.kind is ScopeKind.NAMES:
        words = listed(scope.names)
    else:
        words = _SCOPES[scope.kind]
    if not scope.excepted:
        return words
    return say("{scope} except {excepted}", scope=words, excepted=tuple(scope.excepted))


def characteristic_words(assertion: Assertion, vocabulary: Vocabulary) -> Words:
    """What an assertion speaks of, as the characteristic of a row: `number`, `total power`, `below M1`."""
    term = vocabulary.named(assertion.characteristic or "")
    match assertion.aggregate:
        case Aggregate.NUMBER:
            return say("number")
        case Aggregate.DISTANCE:
            return say("distance")
        case Aggregate.RELATION if assertion.relation:
            return joined([_RELATIONS[assertion.relation], assertion.other or ""])
        case Aggregate.TOTAL:
            return say("total {characteristic}", characteristic=term)
        case Aggregate.DIFFERENCE:
            return say("difference in {characteristic}", characteristic=term)
        case Aggregate.SAME:
            return say("same {characteristic}", characteristic=term)
        case Aggregate.DIFFERENT:
            return say("different {characteristic}", characteristic=term)
    return named(term) if assertion.characteristic else ""
