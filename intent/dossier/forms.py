"""What stands after `is`, or in a cell: the forms of values, from their tree to an expression."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial

from lark import Token, Tree

from intent.dossier.expressions import read_day, read_item
from intent.dossier.measured_text import unit_written
from intent.dossier.trees import Sentence, subtrees
from intent.dossier.unreadable import Unreadable
from intent.language.message import say
from intent.model.assertions import Expression, Form, Item, Measured
from intent.values.dates import DaySpan
from intent.vocabulary.terms import Characteristic

_FORMS = {
    "one_of": Form.ONE_OF,
    "between": Form.BETWEEN,
    "at_least": Form.AT_LEAST,
    "at_most": Form.AT_MOST,
    "as_documented": Form.AS_DOCUMENTED,
    "any": Form.ANY,
}


def read_expression(
    sentence: Sentence, tree: Tree[Token], characteristic: Characteristic, kinds: Sequence[str] = ()
) -> Expression:
    """The values of a characteristic; ``kinds`` are those of the parts they are said of. Raises `Misread`."""
    form = _FORMS[str(tree.data)]
    written = sentence.words(tree)
    if form in {Form.AS_DOCUMENTED, Form.ANY}:
        return Expression(form=form, written=written)
    read = partial(_value, sentence, characteristic=characteristic, kinds=kinds)
    if form is Form.ONE_OF:
        items = [_item(sentence, item, read) for item in subtrees(tree)]
    else:
        _refuse_unordered(sentence, tree, characteristic)
        values = subtrees(tree)
        shared = unit_written(sentence.words(values[-1]))
        items = [read(value, shared_unit=shared) for value in values]
        if characteristic.space != "angle":
            _refuse_empty(sentence, tree, form, items, shared)
    return Expression(form=form, items=tuple(items), written=written)


def _refuse_empty(
    sentence: Sentence, tree: Tree[Token], form: Form, items: Sequence[Item], shared: str | None
) -> None:
    """A range from more to less holds nothing; between angles it goes round."""
    if form is not Form.BETWEEN:
        return
    low, high = items
    if isinstance(low, Measured) and isinstance(high, Measured) and low.numbers > high.numbers:
        first, last = low.written, high.written
        if shared and not unit_written(first):
            first = f"{first} {shared}"
        message = say("{first} is more than {last}; write the lower end first", first=first, last=last)
        raise sentence.fault("empty-range", message, tree)


def _refuse_unordered(sentence: Sentence, tree: Tree[Token], characteristic: Characteristic) -> None:
    if characteristic.space in {"concept", "yes-no", "text", "position"}:
        message = say(
            "{characteristic} has no more and less; write `one of …`", characteristic=characteristic
        )
        raise sentence.fault("no-order", message, tree)
    if characteristic.space == "angle" and tree.data != "between":
        message = say("angles go round; write `between … and …`, clockwise")
        raise sentence.fault("no-order", message, tree)


def _item(sentence: Sentence, tree: Tree[Token], read: Callable[..., Item]) -> Item:
    value, *tolerance = subtrees(tree)
    bare = read(value)
    if not tolerance:
        return bare
    try:
        return read(value, tolerance=sentence.words(tolerance[0]))
    except Unreadable as error:
        raise sentence.located(error, tolerance[0]) from None


def _value(
    sentence: Sentence,
    tree: Tree[Token],
    *,
    characteristic: Characteristic,
    kinds: Sequence[str],
    tolerance: str | None = None,
    shared_unit: str | None = None,
) -> Item:
    words = sentence.words(tree)
    try:
        return read_item(
            words,
            characteristic=characteristic,
            vocabulary=sentence.vocabulary,
            kinds=kinds,
            tolerance=tolerance,
            shared_unit=shared_unit,
        )
    except Unreadable as error:
        raise sentence.located(error, tree) from None


def read_day_of(sentence: Sentence, tree: Tree[Token]) -> DaySpan:
    try:
        return read_day(sentence.words(tree))
    except Unreadable as error:
        raise sentence.located(error, tree) from None
