"""A language other than English: its catalogue, in gettext's format, and its decimal mark, lists and months from CLDR.

A catalogue is a `.po` file, which translators' tools read; it is compiled to `.mo` when the program is installed.
Where a `.po` file has been changed since, it is read itself, so that a translator sees at once what was written.
"""

from __future__ import annotations

import io
import re
from collections.abc import Sequence
from gettext import GNUTranslations
from importlib.resources import as_file, files
from pathlib import Path

import babel
from babel.lists import format_list
from babel.numbers import get_decimal_symbol

from intent.language.locale import Locale
from intent.language.message import Joint, Labelled, Message

_HELD = re.compile(r" (?=[:;?!»])|(?<=«) ")
"""In French, the spaces that hold a mark to its word (Imprimerie nationale, Lexique des règles typographiques)."""

_NUMBER = re.compile(r"(?P<quoted>[\"„«“][^\"“»”]*[\"“»”])|(?<![\w.])\d+\.\d+(?![\w.])")
"""A number with a decimal point, or quoted words, in which nothing is set otherwise; no identifier, date or version."""


class CataloguedLocale(Locale):
    """A language with a catalogue."""

    def __init__(self, tag: str, catalogue: GNUTranslations) -> None:
        self.tag = tag
        self._catalogue = catalogue
        self._cldr = babel.Locale.parse(tag)
        self.mark = get_decimal_symbol(self._cldr)

    def pattern(self, message: Message) -> str:
        if message.several:
            found = self._catalogue.ngettext(message.pattern, message.several, message.number)
        else:
            found = self._catalogue.gettext(message.pattern)
        return self._set(found)

    def label(self, term: Labelled) -> str:
        """Labels and sentences are written as on a keyboard, with a decimal point and straight apostrophes."""
        found = _NUMBER.sub(lambda match: match["quoted"] or self.written(match[0]), super().label(term))
        return self._set(found.replace("'", "’")) if self.tag == "fr" else found

    def _set(self, text: str) -> str:
        return _HELD.sub("\N{NARROW NO-BREAK SPACE}", text) if self.tag == "fr" else text

    def month(self, number: int) -> str:
        return str(self._cldr.months["format"]["wide"][number])

    def listing(self, items: Sequence[str], joint: Joint) -> str:
        return format_list(items, "standard" if joint is Joint.AND else "or", locale=self._cldr)

    def written(self, numbers: str) -> str:
        """Where the decimal mark is a comma, the numbers of a position part at semicolons."""
        if self.mark == ".":
            return numbers
        return re.sub(r"(?<=\d)\.(?=\d)", self.mark, numbers.replace(", ", "; "))


def catalogued_locale(language: str) -> Locale:
    """The locale of a language that has a catalogue."""
    with as_file(files("intent.language").joinpath("catalogues")) as folder:
        return CataloguedLocale(language, read_catalogue(folder, language))


def read_catalogue(folder: Path, language: str) -> GNUTranslations:
    """The catalogue of a language: compiled, or its source where that has changed since it was compiled."""
    source, compiled = folder / f"{language}.po", folder / f"{language}.mo"
    if compiled.exists() and not (source.exists() and source.stat().st_mtime > compiled.stat().st_mtime):
        with compiled.open("rb") as file:
            return GNUTranslations(file)
    from babel.messages.mofile import write_mo  # slower than what is compiled, and seldom needed
    from babel.messages.pofile import read_po

    written = io.BytesIO()
    with source.open("rb") as file:
        write_mo(written, read_po(file, locale=language))
    written.seek(0)
    return GNUTranslations(written)
