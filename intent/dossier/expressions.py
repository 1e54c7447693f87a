"""One value as written, in a cell or a sentence, read as its characteristic says."""

from __future__ import annotations

import re
from collections.abc import Sequence

from intent.diagnostics import nearest, offered, where_listed, with_known
from intent.dossier.measured_text import NUMBER, read_number, read_numbers, read_tolerance
from intent.dossier.unreadable import Unreadable
from intent.dossier.value_hints import date_hint, value_hint
from intent.language.message import joined, named, say
from intent.model.assertions import Dated, Item, Measured, Named, Relative, Text
from intent.values.dates import DaySpan, read_date
from intent.vocabulary.grammar import Word
from intent.vocabulary.phrases import normal, unquoted
from intent.vocabulary.terms import Characteristic, Concept, Vocabulary

_SHARE = re.compile(rf"(?P<number>{NUMBER})\s*%\s+(?P<of>\D.*)$")
_PLUS_MINUS = re.compile(r"\s*(?:±|\+/-|\+-)\s*")
_FEW = 12
"""So many values can be listed in a message."""


def read_item(
    text: str,
    characteristic: Characteristic,
    vocabulary: Vocabulary,
    kinds: Sequence[str] = (),
    tolerance: str | None = None,
    shared_unit: str | None = None,
) -> Item:
    """A single value of a characteristic; ``kinds`` are those of the parts that it is said of.

    ``shared_unit`` is the unit of the other end of a range, where this end has none.
    Raises `Unreadable`.
    """
    share = _SHARE.match(text)
    if share and _is_of_documented(share["of"], vocabulary):
        return _relative(share["number"], characteristic, vocabulary, tolerance)
    if characteristic.space in {"text", "concept", "yes-no", "date"} and tolerance is not None:
        message = say("{characteristic} is not measured, so it takes no ±", characteristic=characteristic)
        raise Unreadable("no-tolerance", message)
    if characteristic.space == "text":
        return Text(unquoted(text))
    if characteristic.space in {"concept", "yes-no"}:
        return Named(_concept(unquoted(text), characteristic, vocabulary, kinds).iri)
    if characteristic.space == "date":
        return Dated(read_day(text))
    try:
        numbers, unit = read_numbers(text, characteristic, vocabulary, shared_unit)
    except Unreadable as error:
        raise _hinted(error, text, characteristic, vocabulary) from None
    absolute, percent = read_tolerance(tolerance, characteristic, vocabulary, unit)
    written = text.strip() if tolerance is None else f"{text.strip()} ± {tolerance.strip()}"
    return Measured(
        numbers=numbers,
        written=written,
        unit=unit.iri if unit else None,
        tolerance=absolute,
        tolerance_percent=percent,
    )


def read_with_tolerance(
    text: str,
    characteristic: Characteristic,
    vocabulary: Vocabulary,
    kinds: Sequence[str] = (),
    shared_unit: str | None = None,
) -> Item:
    """A single value with what stands after its ±, if anything does: `20 in ± 1 in`. Raises `Unreadable`."""
    value, *tolerance = _PLUS_MINUS.split(text, maxsplit=1)
    return read_item(
        value,
        characteristic,
        vocabulary,
        kinds=kinds,
        tolerance=tolerance[0] if tolerance else None,
        shared_unit=shared_unit,
    )


def read_day(text: str) -> DaySpan:
    """A date. Raises `Unreadable`, with the right form where it can be told."""
    try:
        return read_date(text)
    except ValueError as error:
        hint = date_hint(text)
        if not hint:
            raise Unreadable("bad-date", str(error)) from None
        message = say("`{text}` is not a date as it is read; write `{hint}`", text=text.strip(), hint=hint)
        raise Unreadable("bad-date", message) from None


def _hinted(
    error: Unreadable, text: str, characteristic: Characteristic, vocabulary: Vocabulary
) -> Unreadable:
    hint = value_hint(text, characteristic, vocabulary.grammars)
    if not hint:
        return error
    message = say(
        "`{text}` cannot be read as {characteristic}; {hint}",
        text=text.strip(),
        characteristic=characteristic,
        hint=hint,
    )
    return Unreadable(error.slug, message)


def _concept(
    text: str, characteristic: Characteristic, vocabulary: Vocabulary, of_kind: Sequence[str]
) -> Concept:
    wanted = normal(text)
    known = vocabulary.in_scheme(*characteristic.schemes)
    meant = [concept for concept in known if wanted in concept.names]
    fitting = [
        concept
        for concept in known
        if not of_kind or any(vocabulary.applies(concept, kind) for kind in of_kind)
    ]
    found = [concept for concept in meant if concept in fitting]
    if found:
        return found[0]
    if meant:
        message = say(
            "`{text}` is not a {characteristic} of a {kinds}",
            text=text,
            characteristic=characteristic,
            kinds=joined((named(vocabulary.named(kind)) for kind in of_kind), " and "),
        )
        raise Unreadable("unknown-value", message)
    message = say("`{text}` is not a known {characteristic}", text=text, characteristic=characteristic)
    labels = [concept.label for concept in fitting]
    near = nearest(text, vocabulary.spelled(concept.iri for concept in fitting), labels)
    if near:
        raise Unreadable("unknown-value", offered(message, near))
    if len(fitting) > _FEW:
        raise Unreadable("unknown-value", where_listed(message, characteristic.label))
    raise Unreadable("unknown-value", with_known(message, map(named, fitting)))


def _is_of_documented(text: str, vocabulary: Vocabulary) -> bool:
    return any(normal(text) in grammar.labels(Word.OF_DOCUMENTED) for grammar in vocabulary.grammars)


def _relative(
    percent: str, characteristic: Characteristic, vocabulary: Vocabulary, tolerance: str | None
) -> Relative:
    is_of_scale = any(
        unit.offset
        for unit in vocabulary.units.values()
        if characteristic.quantity_kind in unit.quantity_kinds
    )
    # twice as warm as 20 °C means nothing: the zero of such units is only agreed on
    if is_of_scale or characteristic.space not in {"quantity", "ratio", "count"}:
        message = say(
            "{characteristic} has no per cent of the documented value", characteristic=characteristic
        )
        raise Unreadable("no-share", message)
    absolute, tolerance_percent = read_tolerance(tolerance, characteristic, vocabulary, None)
    return Relative(read_number(percent), absolute, tolerance_percent)
