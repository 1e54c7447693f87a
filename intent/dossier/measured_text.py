"""A measured value as written: numbers, ratios, rasters, quantities with their units, positions, tolerances."""

from __future__ import annotations

import re
from fractions import Fraction

from intent.diagnostics import nearest, offered, with_known
from intent.dossier.unreadable import Unreadable
from intent.dossier.value_hints import plain_symbol, sample_of
from intent.language.message import Words, joined, named, say
from intent.vocabulary.phrases import unquoted
from intent.vocabulary.terms import Characteristic, Vocabulary
from intent.vocabulary.unit_of_measure import Unit

NUMBER = r"[-+−]?(?:\d+ \d+/\d+|\d+/\d+|\d+(?:\.\d+)?|\.\d+)"
_QUANTITY = re.compile(rf"(?P<number>{NUMBER})\s*(?P<unit>[^\d\s].*)?$")
_CLOCK = re.compile(r"(?:(?P<h>\d+):)?(?P<m>\d+):(?P<s>\d{2}(?:\.\d+)?)$")
_RATIO = re.compile(rf"(?P<width>{NUMBER})(?:\s*[:/]\s*(?P<height>{NUMBER}))?$")
_RASTER = re.compile(r"(?P<columns>\d+)\s*[×xX*]\s*(?P<rows>\d+)$")
_PERCENT = re.compile(rf"(?P<number>{NUMBER})\s*%$")


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


def unit_written(text: str) -> str | None:
    """The unit at the end of a value as written, if there is one."""
    match = _QUANTITY.match(text.strip())
    return match["unit"] if match else None


def read_numbers(
    text: str, characteristic: Characteristic, vocabulary: Vocabulary, shared_unit: str | None
) -> tuple[tuple[Fraction, ...], Unit | None]:
    """One number, or one for each axis, in reference units, and the unit as written. Raises `Unreadable`."""
    text = text.strip()
    space = characteristic.space
    if space == "count":
        match = re.fullmatch(r"[-+−]?\d+", text)
        if not match:
            raise Unreadable(
                "bad-number",
                say(
                    "`{text}` is not a whole number; write it without decimals and without a unit", text=text
                ),
            )
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
    return (unit.in_reference(number),), unit


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
        numbers.append(last.in_reference(number))
    return tuple(numbers), last


def _refuse_share_of_a_scale(text: str, unit: Unit | None, vocabulary: Vocabulary) -> None:
    """Nothing is a share of a number whose zero is only agreed on, as that of °C is. Raises `Unreadable`."""
    if unit is not None and unit.offset:
        message = say(
            "`± {share}` of a number in {unit} means nothing, for its zero is only agreed on; write how many {unit} "
            "either way",
            share=text,
            unit=unit.symbol,
        )
        raise Unreadable("no-share", message)


def read_tolerance(
    text: str | None, characteristic: Characteristic, vocabulary: Vocabulary, unit: Unit | None
) -> tuple[Fraction | None, Fraction | None]:
    """What stands after ±, in reference units or as a percentage. Raises `Unreadable`."""
    if text is None:
        return None, None
    percent = _PERCENT.match(text.strip())
    if percent and unit is not None and unit.symbol == "%":
        return abs(unit.length_in_reference(read_number(percent["number"]))), None
    if percent:
        _refuse_share_of_a_scale(text.strip(), unit, vocabulary)
        return None, abs(read_number(percent["number"]))
    if characteristic.space in {"ratio", "raster", "count"}:
        return abs(read_number(text)), None
    number, own = _quantity(text.strip(), characteristic, vocabulary, unit.symbol if unit else None)
    return abs(own.length_in_reference(number)), None
