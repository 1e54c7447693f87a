"""Tables written anew in a text, and which cell of a sheet each of their cells comes from."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from intent.diagnostics import Diagnostic, Span
from intent.dossier.writing import Cells, table_block
from intent.exports.grid import Grid, GridCell, at_cell
from intent.exports.sheet_numbers import SheetRow


@dataclass(frozen=True, slots=True)
class TableLines:
    """A table as it will stand, and which cell of the sheet each of its cells comes from."""

    lines: tuple[str, ...]
    cells: Mapping[tuple[int, int], GridCell]
    """By line in the table and number of the column."""


def edited_text(
    lines: Sequence[str], edits: Sequence[tuple[int, int, TableLines]]
) -> tuple[str, dict[int, tuple[TableLines, int]]]:
    """The text with tables in the place of lines, and for each line of it that is a table's, which and where."""
    edited, origin, moved = list(lines), dict[int, tuple[TableLines, int]](), 0
    for start, end, written in sorted(edits, key=lambda edit: edit[0]):
        edited[start + moved : end + moved] = written.lines
        for place in range(len(written.lines)):
            origin[start + moved + place + 1] = (written, place)
        moved += len(written.lines) - (end - start)
    return "\n".join(edited), origin


def laid_out(rows: Sequence[Cells], from_sheet: Sequence[SheetRow]) -> TableLines:
    lines = tuple(table_block(rows).split("\n"))
    columns = [column.strip() for column in lines[0].strip("| ").split(" | ")] if lines[0] else []
    cells = {
        (number, place): row[column]
        for number, row in enumerate(from_sheet, start=2)
        for place, column in enumerate(columns)
        if column in row
    }
    return TableLines(lines, cells)


def found_at_cell(found: Diagnostic, origin: Mapping[int, tuple[TableLines, int]], grid: Grid) -> Diagnostic:
    """A finding about a cell that came from the sheet, at its place in the sheet."""
    written, place = origin.get(found.span.line, (None, 0))
    if written is None:
        return found
    before = found.span.text[: max(0, found.span.column - 1)]
    column = before.replace("\\|", "").count("|") - 1
    cell = written.cells.get((place, column)) if place else _heading_of(column, written, grid)
    if cell is None:
        return found
    span = Span(file=grid.file, line=cell.row, column=cell.column)
    return replace(found, message=at_cell(cell, found.message), span=span)


def _heading_of(column: int, written: TableLines, grid: Grid) -> GridCell | None:
    """The cell of the sheet's first row from which a column of a table has its name; none where it is the dossier's."""
    below = next((cell for (_, place), cell in written.cells.items() if place == column), None)
    return grid.rows[0][below.column - 1] if below is not None else None
