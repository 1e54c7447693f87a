"""Numbers in a sheet as the sheet's language writes them, told as the text form does: with a decimal point.

German and French have a decimal comma, and part the numbers of a position with semicolons. What the dossier already
says in the same cell stays as it stands there, so that a sheet that we wrote and nobody changed comes back the same.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from intent.diagnostics import Diagnostic, Severity, Span
from intent.exports.grid import Grid, GridCell
from intent.language.locale import Locale
from intent.language.message import Words, say
from intent.vocabulary.phrases import normal
from intent.vocabulary.terms import Vocabulary

SheetRow = Mapping[str, GridCell]
"""The cells of a row by the names of their columns."""

_NUMBER = re.compile(r"(?<![\w.,])[-+−]?\d+(?:[.,]\d+)+(?![\w.,]*\d)")
_THOUSANDS = re.compile(r"\.\d{3}$")
_COMMA = re.compile(r"\d,\d")
_NUMERIC = frozenset({"quantity", "ratio", "angle", "position", "count", "raster"})


@dataclass(frozen=True, slots=True)
class SheetNumbers:
    """How the numbers of a sheet are written."""

    grid: Grid
    locale: Locale
    vocabulary: Vocabulary

    def pointed(self, row: SheetRow, before: Mapping[str, str]) -> tuple[SheetRow, list[Diagnostic]]:
        """A row with decimal points in its numbers, and the cells in which a number may be one or another.

        ``before`` are the cells of the dossier's row, by the same columns.
        """
        if self.locale.mark != ",":
            return row, []
        told, faults = dict(row), list[Diagnostic]()
        for column, cell in row.items():
            if (
                cell.is_number
                or before.get(normal(column)) == cell.text
                or not _is_numeric(column, self.vocabulary)
            ):
                continue
            doubts = [doubt for match in _NUMBER.finditer(cell.text) if (doubt := _doubt(match.group()))]
            faults += [self.grid.fault("doubtful-number", doubt, cell) for doubt in doubts[:1]]
            pointed = _NUMBER.sub(lambda match: match.group().replace(",", "."), cell.text)
            told[column] = replace(cell, text=pointed.replace(";", ","))
        return told, faults


def comma_noted(grid: Grid, locale: Locale, vocabulary: Vocabulary) -> Iterator[Diagnostic]:
    """How a sheet with decimal commas is read whole, where one is read as if it had none."""
    columns = [cell.column for cell in grid.rows[0] if _is_numeric(cell.text, vocabulary)]
    if locale.mark == "." and any(_COMMA.search(row[at - 1].text) for row in grid.rows[1:] for at in columns):
        message = say(
            "where the sheet has decimal commas, say its language: `--language de` or `--language fr`"
        )
        yield Diagnostic(
            slug="decimal-commas", message=message, span=Span(file=grid.file), severity=Severity.NOTE
        )


def _is_numeric(column: str, vocabulary: Vocabulary) -> bool:
    return any(one.space in _NUMERIC for one in vocabulary.by_name.get(normal(column), ()))


def _doubt(number: str) -> Words:
    """What to write instead of a number that may be one or another; nothing where it is plain."""
    if number.count(",") + number.count(".") > 1:
        return say(
            "`{number}` has several marks; write nothing between thousands, one comma before decimals, and a semicolon "
            "between the numbers of a position",
            number=number,
        )
    if _THOUSANDS.search(number):
        return say(
            "`{number}` can be read in two ways; write `{whole}`, or `{decimal}` with a decimal comma",
            number=number,
            whole=number.replace(".", ""),
            decimal=number.replace(".", ","),
        )
    return ""
