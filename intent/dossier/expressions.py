"""One value as written, in a cell or a sentence, read as its characteristic says."""

from __future__ import annotations

import re
from collections.abc import Sequence
from fractions import Fraction

from intent.diagnostics import nearest, offered, with_known
from intent.dossier.value_hints import date_hint, plain_symbol, sample_of, value_hint
from intent.language.locale import ENGLISH
from intent.language.message import Words, joined, named, say
from intent.model.assertions import Dated, Item, Measured, Named, Relative, Text
from intent.values.dates import DaySpan, read_date
from intent.vocabulary.grammar import Word
from intent.vocabulary.phrases import normal
from intent.vocabulary.terms import Characteristic, Concept, Unit, Vocabulary

_NUMBER = r"[-+−]?(?:\d+ \d+/\d+|\d+/\d+|\d+(?:\.\d+)?|\.\d+)"
_QUANTITY = re.compile(rf"(?P<number>{_NUMBER})\s*(?P<unit>[^\d\s].*)?$")
_CLOCK = re.compile(r"(?:(?P<h>\d+):)?(?P<m>\d+):(?P<s>\d{2}(?:\.\d+)?)$")
_RATIO = re.compile(rf"(?P<width>{_NUMBER})(?:\s*[:/]\s*(?P<height>{_NUMBER}))?$")
_RASTER = re.compile(r"(?P<columns>\d+)\s*[×xX*]\s*(?P<rows>\d+)$")
_SHARE = re.compile(rf"(?P<number>{_NUMBER})\s*%\s+(?P<of>\D.*)$")
_PERCENT = re.compile(rf"(?P<number>{_NUMBER})\s*%$")
_FEW = 12
"""So many values can be listed in a message."""
_QUOTES = {'"': '"', "“": "”", "„": "“”", "«": "»"}


class Unreadable(Exception):
    """A value that cannot be read; says why in plain words."""

    def __init__(self, slug: str, message: Words) -> None:
        super().__init__(slug, message)
        self.slug = slug
        self.message = message

    def __str__(self) -> str:
        return ENGLISH.say(self.message)


def unquoted(text: str) -> str:
    """The text without a pair of quotation marks around it."""
    text = text.strip()
    if len(text) >= 2 and text[0] in _QUOTES and text[-1] in _QUOTES[text[0]]:
        return text[1:-1].strip()
    return text


def read_number(text: str) -> Fraction:
    """A decimal, a fraction (`30000/1001`) or a mixed number (`1 1/2`), exactly."""
    written = text.strip().replace("−", "-")
    whole, _, part = written.rpartition(" ")
    try:
        if not written.isascii():
            raise ValueError(written)
        return Fraction(whole or 0) + Fraction(part) * (-1 if whole.startswith("-") else 1)
    except (ValueError, ZeroDivisionError):
        raise Unreadable("bad-number", say("`{text}` is not a number", text=text)) from None


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
        numbers, unit = _numbers(text, characteristic, vocabulary, shared_unit)
    except Unreadable as error:
        raise _hinted(error, text, characteristic, vocabulary) from None
    absolute, percent = _tolerance(tolerance, characteristic, vocabulary, unit)
    written = text.strip() if tolerance is None else f"{text.strip()} ± {tolerance.strip()}"
    return Measured(
        numbers=numbers,
        written=written,
        unit=unit.iri if unit else None,
        tolerance=absolute,
        tolerance_percent=percent,
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


def unit_written(text: str) -> str | None:
    """The unit at the end of a value as written, if there is one."""
    match = _QUANTITY.match(text.strip())
    return match["unit"] if match else None


def _concept(
    text: str, characteristic: Characteristic, vocabulary: Vocabulary, of_kind: Sequence[str]
) -> Concept:
    wanted = normal(text)
    known = vocabulary.in_scheme(*characteristic.schemes)
    meant = [concept for concept in known if wanted in concept.names]
    fitting = [
        concept
        for concept in known
        if not of_kind or any(vocabulary.suits(concept, kind) for kind in of_kind)
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
    near = nearest(text, [name for concept in fitting for name in concept.names], labels)
    if near or len(fitting) > _FEW:
        raise Unreadable("unknown-value", offered(message, near))
    raise Unreadable("unknown-value", with_known(message, map(named, fitting)))


def _numbers(
    text: str, characteristic: Characteristic, vocabulary: Vocabulary, shared_unit: str | None
) -> tuple[tuple[Fraction, ...], Unit | None]:
    text = text.strip()
    space = characteristic.space
    if space == "count":
        match = re.fullmatch(r"[-+−]?\d+", text)
        if not match:
            raise Unreadable("bad-number", say("`{text}` is not a whole number", text=text))
        return (Fraction(text.replace("−", "-")),), None
    if space == "ratio":
        return (_ratio(text),), None
    if space == "raster":
        raster = _RASTER.match(text)
        if not raster:
            message = say("`{text}` is not a raster; write columns × rows, `720×576`", text=text)
            raise Unreadable("bad-raster", message)
        return (Fraction(raster["columns"]), Fraction(raster["rows"])), None
    if space == "position":
        return _position(text, characteristic, vocabulary)
    meant = vocabulary.find_value(characteristic.schemes, unquoted(text)) if characteristic.schemes else None
    if meant is not None and meant.magnitude is not None:
        return (meant.magnitude,), None
    clock = _CLOCK.match(text)
    if clock and vocabulary.find_unit("s", characteristic.quantity_kind):
        seconds = Fraction(clock["h"] or 0) * 3600 + Fraction(clock["m"]) * 60 + Fraction(clock["s"])
        return (seconds,), vocabulary.find_unit("s", characteristic.quantity_kind)
    number, unit = _quantity(text, characteristic, vocabulary, shared_unit)
    return ((number + unit.offset) * unit.factor,), unit


def _ratio(text: str) -> Fraction:
    match = _RATIO.match(text)
    if not match:
        raise Unreadable("bad-ratio", say("`{text}` is not a ratio; write `4:3` or `1.33`", text=text))
    height = read_number(match["height"] or "1")
    if not height:
        raise Unreadable("bad-ratio", say("`{text}` divides by nothing", text=text))
    return read_number(match["width"]) / height


def _quantity(
    text: str, characteristic: Characteristic, vocabulary: Vocabulary, shared_unit: str | None
) -> tuple[Fraction, Unit]:
    match = _QUANTITY.match(text)
    if not match:
        raise Unreadable("bad-quantity", _no_quantity(text, characteristic, vocabulary))
    written = match["unit"] or shared_unit
    if written is None:
        assumed = vocabulary.units.get(characteristic.assumed_unit or "")
        if assumed is None:
            message = say(
                "`{text}` has no unit; write a {characteristic} such as {sample}",
                text=text,
                characteristic=characteristic,
                sample=sample_of(characteristic, vocabulary),
            )
            raise Unreadable("no-unit", message)
        return read_number(match["number"]), assumed
    return read_number(match["number"]), _unit(written.strip(), characteristic, vocabulary)


def _no_quantity(text: str, characteristic: Characteristic, vocabulary: Vocabulary) -> Words:
    message = say("`{text}` is not a {characteristic}", text=text, characteristic=characteristic)
    known = vocabulary.in_scheme(*characteristic.schemes)
    near = nearest(text, [concept.label for concept in known])
    if near:
        return offered(message, near)
    sample = sample_of(characteristic, vocabulary)
    if not known:
        return say("{message}; write a number and a unit, such as {sample}", message=message, sample=sample)
    return say(
        "{message}; write a number and a unit, such as {sample}, or {names}",
        message=message,
        sample=sample,
        names=joined(map(named, known), ", "),
    )


def _unit(written: str, characteristic: Characteristic, vocabulary: Vocabulary) -> Unit:
    unit = vocabulary.find_unit(written, characteristic.quantity_kind)
    if unit is None:
        fitting = [
            unit for unit in vocabulary.units.values() if characteristic.quantity_kind in unit.quantity_kinds
        ]
        wrong = say("`{unit}` is not a unit of {characteristic}", unit=written, characteristic=characteristic)
        message = with_known(wrong, sorted(plain_symbol(unit) for unit in fitting))
        names = joined(map(named, vocabulary.in_scheme(*characteristic.schemes)), ", ")
        if names:
            message = say("{message}; or a name: {names}", message=message, names=names)
        raise Unreadable("bad-unit", message)
    return unit


def _position(
    text: str, characteristic: Characteristic, vocabulary: Vocabulary
) -> tuple[tuple[Fraction, ...], Unit | None]:
    inner = text[1:-1].strip() if text.startswith("(") and text.endswith(")") else text
    axes = [axis.strip() for axis in inner.split(",")]
    if len(axes) != 3:
        message = say("`{text}` is not a position; write `x, y, z m`, three numbers and a unit", text=text)
        raise Unreadable("bad-position", message)
    shared = unit_written(axes[2])
    numbers, last = [], None
    for axis in axes:
        number, last = _quantity(axis, characteristic, vocabulary, shared)
        numbers.append((number + last.offset) * last.factor)
    return tuple(numbers), last


def _tolerance(
    text: str | None, characteristic: Characteristic, vocabulary: Vocabulary, unit: Unit | None
) -> tuple[Fraction | None, Fraction | None]:
    if text is None:
        return None, None
    percent = _PERCENT.match(text.strip())
    if percent and unit is not None and unit.symbol == "%":
        return abs(read_number(percent["number"]) * unit.factor), None
    if percent:
        return None, abs(read_number(percent["number"]))
    if characteristic.space in {"ratio", "raster", "count"}:
        return abs(read_number(text)), None
    number, own = _quantity(text.strip(), characteristic, vocabulary, unit.symbol if unit else None)
    return abs(number * own.factor), None


def _is_of_documented(text: str, vocabulary: Vocabulary) -> bool:
    return any(normal(text) in grammar.labels(Word.OF_DOCUMENTED) for grammar in vocabulary.grammars)


def _relative(
    percent: str, characteristic: Characteristic, vocabulary: Vocabulary, tolerance: str | None
) -> Relative:
    if characteristic.space not in {"quantity", "ratio", "count"}:
        message = say(
            "{characteristic} has no per cent of the documented value", characteristic=characteristic
        )
        raise Unreadable("no-share", message)
    absolute, tolerance_percent = _tolerance(tolerance, characteristic, vocabulary, None)
    return Relative(read_number(percent), absolute, tolerance_percent)
