"""What a sheet changes in a dossier, cell by cell, and what was found there before the sheet came."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from intent.diagnostics import Diagnostic, Severity, Span
from intent.exports.grid import Grid, GridCell
from intent.exports.sheet_numbers import SheetRow
from intent.exports.sheet_rows import GROUP, KIND
from intent.language.message import Words, joined, say
from intent.vocabulary.phrases import normal


@dataclass(frozen=True, slots=True)
class DocumentedRow:
    """A row as the dossier has it."""

    identifier: str
    heading: str
    """The group whose table it stands in; blank where it stands in none."""
    cells: Mapping[str, str]
    """By the columns' names as `normal` gives them."""


def row_changes(
    row: SheetRow, documented: DocumentedRow | None, grid: Grid, identifying: str
) -> Iterator[Diagnostic]:
    """A note for each cell in which a row says something else than the dossier did, or that all of it is new."""
    if documented is None:
        own = next(cell for column, cell in row.items() if normal(column) == identifying)
        yield grid.fault("new-in-sheet", say("`{row}` is new", row=own.text), own, Severity.NOTE)
        return
    for column, cell in row.items():
        name = normal(column)
        if documented.heading and name == GROUP:
            yield from _elsewhere(cell, documented, grid)
        elif not (documented.heading and name == KIND and KIND not in documented.cells):
            before = documented.cells.get(name, "")
            if before != cell.text and name != identifying:
                message = _changed(documented.identifier, column, before, cell.text)
                yield grid.fault("changed-by-sheet", message, cell, Severity.NOTE)


def _changed(identifier: str, column: str, before: str, after: str) -> Words:
    if not before:
        return say("`{row}`: {column} is now `{new}`", row=identifier, column=column, new=after)
    if not after:
        return say(
            "`{row}`: {column} is now blank; it was `{old}`", row=identifier, column=column, old=before
        )
    return say(
        "`{row}`: {column} is now `{new}`; it was `{old}`",
        row=identifier,
        column=column,
        new=after,
        old=before,
    )


def _elsewhere(cell: GridCell, documented: DocumentedRow, grid: Grid) -> Iterator[Diagnostic]:
    if cell.text and normal(cell.text) != normal(documented.heading):
        message = say(
            "`{row}` stays under `{heading}`: a sheet moves nothing to another group; move its row in the dossier",
            row=documented.identifier,
            heading=documented.heading,
        )
        yield grid.fault("not-moved", message, cell, Severity.WARNING)


def unchanged(grid: Grid) -> Diagnostic:
    """A note that the sheet says what the dossier said."""
    message = say("the sheet changes nothing in the dossier")
    return Diagnostic(
        slug="changes-nothing", message=message, span=Span(file=grid.file), severity=Severity.NOTE
    )


def not_in_sheet(identifiers: Sequence[str], grid: Grid) -> Diagnostic:
    """A note of the dossier's rows that the sheet has not."""
    message = say(
        "the sheet has no row for {parts}; they stay in the dossier as they are",
        parts=joined(identifiers, ", "),
    )
    return Diagnostic(slug="not-in-sheet", message=message, span=Span(file=grid.file), severity=Severity.NOTE)


def old_ones_last(findings: Sequence[Diagnostic], before: Iterable[Diagnostic]) -> Iterator[Diagnostic]:
    """What came with the sheet, then what was found in the dossier before it too, each in its order."""
    known = Counter((found.slug, found.message) for found in before)
    old: list[Diagnostic] = []
    for found in findings:
        key = (found.slug, found.message)
        if known[key]:
            known[key] -= 1
            old.append(found)
        else:
            yield found
    yield from old
