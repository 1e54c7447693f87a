"""What to write instead of a value that cannot be read, where the value shows what was meant."""

from __future__ import annotations

import re
from collections.abc import Iterable

from intent.language.message import Words, say
from intent.values.dates import read_date
from intent.vocabulary.grammar import Grammar, Word
from intent.vocabulary.phrases import normal
from intent.vocabulary.terms import Characteristic, Vocabulary
from intent.vocabulary.unit_of_measure import Unit

_DECIMAL_COMMA = r"(?<![\d,.])([-+−]?\d+),(\d+)(?=[^\d,]|$)"
_DIVIDED = re.compile(r"[-+−]?\d{1,3}(?:[ '’\u00a0\u202f]\d{3})+(?!\d)")
_THREE_PLACES = re.compile(r"\s*[-+−]?([1-9]\d{0,2})\.(\d{3})(?!\d)")
_UNKNOWN = {
    "—",
    "–",
    "-",
    "?",
    "unknown",
    "not known",
    "n/a",
    "n.a.",
    "unbekannt",
    "k. a.",
    "inconnu",
    "inconnue",
}
_AMOUNT = r"([-+−]?\d.*)$"
_LIMITS = (
    (
        re.compile(
            rf"(?:<=?|≤|no more than|not more than|up to|max(?:imum|\.)?|less than|under)\s*{_AMOUNT}",
            re.IGNORECASE,
        ),
        "at most {0}",
    ),
    (
        re.compile(
            rf"(?:>=?|≥|no less than|not less than|min(?:imum|\.)?|more than|over)\s*{_AMOUNT}", re.IGNORECASE
        ),
        "at least {0}",
    ),
    (re.compile(r"([\d.]+)\s*(?:-|–|—|\.\.|to)\s*(\d.*)$"), "between {0} and {1}"),
    (re.compile(r"from\s+(\d.*?)\s+to\s+(\d.*)$", re.IGNORECASE), "between {0} and {1}"),
)
_MONTHS = (
    ("january", "januar", "janvier"),
    ("february", "februar", "février"),
    ("march", "märz", "mars"),
    ("april", "april", "avril"),
    ("may", "mai", "mai"),
    ("june", "juni", "juin"),
    ("july", "juli", "juillet"),
    ("august", "august", "août"),
    ("september", "september", "septembre"),
    ("october", "oktober", "octobre"),
    ("november", "november", "novembre"),
    ("december", "dezember", "décembre"),
)
_ABOUT = re.compile(r"(?:c|ca|circa|about|around|um|vers)\.?\s+(\d{4}s?)$", re.IGNORECASE)
_YEARS = re.compile(r"(\d{4})\s*[-–—]\s*(\d{2}|\d{4})$")
_DOTTED = re.compile(r"(\d{1,2})[./](\d{1,2})[./](\d{4})$")


def value_hint(text: str, characteristic: Characteristic, grammars: Iterable[Grammar]) -> Words:
    """What to write instead of a value, or nothing where that cannot be told."""
    text = text.strip()
    if normal(text) in _UNKNOWN:
        return say("leave the cell blank where it is not known")
    if characteristic.space == "position":
        return _position_hint(text)
    divided = _DIVIDED.search(text)
    if divided:
        return _write(_replaced(text, divided, re.sub(r"[^-+−0-9]", "", divided.group())))
    return comma_hint(text, grammars) or _limit_hint(text)


def _write(text: str) -> Words:
    return say("write `{text}`", text=text)


def _limit_hint(text: str) -> Words:
    """For a limit or a range in other words or signs, those of the text form."""
    for pattern, words in _LIMITS:
        match = pattern.match(text)
        if match:
            return _write(words.format(*match.groups()))
    return ""


def unit_after(grammars: Iterable[Grammar]) -> str:
    """A pattern of the unit after a number, where there is one; no `and` or `or` is taken for it."""
    words = [*(label for one in grammars for word in (Word.AND, Word.OR) for label in one.labels(word))]
    return rf"(?:\s*(?!(?:{'|'.join(words)})\b|±)[^\s\d,;)]+)?"


def comma_hint(text: str, grammars: Iterable[Grammar]) -> Words:
    """For a number with a decimal comma, the same with a point."""
    match = re.search(_DECIMAL_COMMA + unit_after(grammars), text)
    if match is None:
        return ""
    written = match.group()
    hint = say("write decimals with a point: `{number}`", number=written.replace(",", ".", 1))
    if len(match[2]) != 3:
        return hint
    whole = written.replace(",", "", 1)
    return say("{hint}; without anything between thousands: `{number}`", hint=hint, number=whole)


def _position_hint(text: str) -> Words:
    inner = text.strip("() ")
    unit = re.search(r"[^\W\d_]+\s*$", inner)
    numbers = inner.split(",") if inner.count(",") == 2 else re.findall(r"[-+−]?\d+(?:[.,]\d+)?", inner)
    if len(numbers) != 3 or (inner.count(",") == 2 and unit):
        return ""
    axes = ", ".join(number.strip().replace(",", ".") for number in numbers)
    written = f"{axes} {unit.group().strip() if unit else 'm'}"
    return _write(f"({written})" if text.startswith("(") else written)


def _replaced(text: str, match: re.Match[str], number: str) -> str:
    return text[: match.start()] + number + text[match.end() :]


def thousands_note(text: str, characteristic: Characteristic) -> Words:
    """For a number with just three decimals, how it is read; `1.200` is often meant as more than a thousand."""
    match = _THREE_PLACES.match(text) if characteristic.space == "quantity" else None
    if match is None:
        return ""
    read = f"{match[1]}.{match[2]}".rstrip("0").rstrip(".")
    return say("read as {read}; for thousands write `{number}`", read=read, number=match[1] + match[2])


def plain_symbol(unit: Unit) -> str:
    """The unit's symbol if any keyboard has it, else its shortest name that one has."""
    plain = [name for name in unit.names if name.isascii() and len(name) > 1]
    return unit.symbol if unit.symbol.isascii() or not plain else min(plain, key=len)


def sample_of(characteristic: Characteristic, vocabulary: Vocabulary) -> str:
    """A value as one would write it: the vocabulary's own, or with the first unit that fits."""
    if characteristic.sample:
        return f"`{characteristic.sample}`"
    kind = characteristic.quantity_kind
    fitting = [unit for unit in vocabulary.units.values() if kind in unit.quantity_kinds]
    return f"`20 {plain_symbol(fitting[0])}`" if fitting else "`20`"


def date_hint(text: str) -> str:
    """For a date in words or in another order, the right form."""
    written = text.strip()
    about, years, dotted = _ABOUT.match(written), _YEARS.match(written), _DOTTED.match(written)
    if about:
        found = about[1][:3] + "X" if about[1].endswith("s") else about[1] + "~"
    elif years:
        found = f"{years[1]}/{years[1][: 4 - len(years[2])]}{years[2]}"
    elif dotted:
        found = _of_day(dotted[3], int(dotted[2]), dotted[1])
    else:
        found = _in_words(written)
    try:
        return read_date(found).written if found else ""
    except ValueError:
        return ""


def _of_day(year: str, month: int, day: str) -> str:
    return f"{year}-{month:02}-{int(day):02}" if day else f"{year}-{month:02}"


def _in_words(text: str) -> str:
    words = re.findall(r"[^\W\d_]+|\d+", text.casefold())
    months = [number for number, names in enumerate(_MONTHS, 1) for word in words if _names(word, names)]
    years = [word for word in words if re.fullmatch(r"\d{4}", word)]
    days = [word for word in words if re.fullmatch(r"\d{1,2}", word)]
    if len(years) != 1 or len(set(months)) != 1 or len(days) > 1:
        return ""
    return _of_day(years[0], months[0], days[0] if days else "")


def _names(word: str, names: tuple[str, ...]) -> bool:
    return len(word) >= 3 and any(name.startswith(word) for name in names)
