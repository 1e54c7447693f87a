"""A sheet's rows in a dossier's tables.

A sheet that comes back is the truth for the rows and columns that it has: a cell left blank is blank. What it does
not have stays as it is in the dossier, and is said.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from intent.diagnostics import Diagnostic, Span, Unusable, has_errors, in_order, refusal
from intent.dossier.blocks import TextSection, read_blocks
from intent.dossier.tables import Table
from intent.dossier.work_text import read_work
from intent.exports.grid import Grid, GridCell
from intent.exports.sheet_changes import DocumentedRow, not_in_sheet, old_ones_last, row_changes, unchanged
from intent.exports.sheet_numbers import SheetNumbers, SheetRow, comma_noted
from intent.exports.sheet_rows import GROUP, KIND, SHEETS
from intent.exports.sheet_tables import TableLines, edited_text, found_at_cell, laid_out
from intent.language.locale import ENGLISH, Locale
from intent.language.message import say
from intent.vocabulary.phrases import normal
from intent.vocabulary.terms import Vocabulary


@dataclass(frozen=True, slots=True)
class EnteredSheet:
    """A dossier with a sheet's rows in it, and what is to be said of that."""

    text: str
    findings: tuple[Diagnostic, ...]


def enter_sheet(
    text: str, file: str, grid: Grid, name: str, vocabulary: Vocabulary, *, locale: Locale = ENGLISH
) -> EnteredSheet:
    """The dossier with the rows of a sheet. Raises `Unusable` with every cell that is at fault, by its name.

    ``locale`` is the language in which the sheet writes its numbers. What the sheet changed is told first, and last
    what was found in the dossier before.
    """
    root, _ = read_blocks(text, file)
    if root is None:
        raise Unusable(
            [Diagnostic(slug="empty-file", message=say("the dossier is empty"), span=Span(file=file))]
        )
    section = _section(root, name, vocabulary)
    tables = tuple(_tables(section, name))
    documented = _documented(tables, name)
    rows = _told_with_points(_by_identifier(grid, name), documented, SheetNumbers(grid, locale, vocabulary))
    lines = text.replace("\r\n", "\n").replace("\r", "\n").split("\n")
    left = dict(rows)
    edits: list[tuple[int, int, TableLines]] = []
    for heading, table in tables:
        takes_new = table is next(other for at, other in reversed(tables) if normal(at) == normal(heading))
        mine = {
            key: row
            for key, row in left.items()
            if key in _identifiers(table, name)
            or (key not in documented and takes_new and _is_of_group(row, heading, name))
        }
        for key in mine:
            del left[key]
        edits.append((*_extent(table), _merged(table, mine, heading, name)))
    edits += _appended(left, section, lines, name)
    result, origin = edited_text(lines, edits)
    findings = [found_at_cell(found, origin, grid) for found in read_work(result, file, vocabulary).findings]
    if has_errors(findings):
        errors = (found for found in findings if found.is_error)
        raise Unusable((*errors, *comma_noted(grid, locale, vocabulary)))
    before = read_work(text, file, vocabulary).findings
    told = (*grid.notes, *_told(rows, documented, grid, name), *old_ones_last(in_order(findings), before))
    return EnteredSheet(result, told)


def _told_with_points(
    rows: Mapping[str, SheetRow], documented: Mapping[str, DocumentedRow], numbers: SheetNumbers
) -> dict[str, SheetRow]:
    told, faults = dict[str, SheetRow](), list[Diagnostic]()
    for key, row in rows.items():
        before = documented[key].cells if key in documented else {}
        told[key], doubtful = numbers.pointed(row, before)
        faults += doubtful
    if faults:
        raise Unusable(faults)
    return told


def _documented(tables: Sequence[tuple[str, Table]], name: str) -> dict[str, DocumentedRow]:
    """The rows of the dossier by identifier."""
    found: dict[str, DocumentedRow] = {}
    for heading, table in tables:
        for key, number in _identifiers(table, name).items():
            cells = {
                normal(cell.text): one.text
                for cell, one in zip(table.header, table.rows[number], strict=True)
            }
            found[key] = DocumentedRow(cells[_identifying(table, name)], heading, cells)
    return found


def _told(
    rows: Mapping[str, SheetRow], documented: Mapping[str, DocumentedRow], grid: Grid, name: str
) -> Iterator[Diagnostic]:
    """What the sheet changes, row by row, and which rows it has not."""
    told = [
        note
        for key, row in rows.items()
        for note in row_changes(row, documented.get(key), grid, SHEETS[name])
    ]
    yield from told or [unchanged(grid)]
    kept = [row.identifier for key, row in documented.items() if key not in rows]
    if kept:
        yield not_in_sheet(kept, grid)


def _by_identifier(grid: Grid, name: str) -> dict[str, dict[str, GridCell]]:
    """The rows by identifier; a column that repeats, a row without one, and one that repeats are faults."""
    wanted, faults = SHEETS[name], list[Diagnostic]()
    header = [normal(cell.text) for cell in grid.rows[0]]
    for place, cell in enumerate(grid.rows[0]):
        if header[place] in header[:place]:
            message = say("there is a second column `{column}`", column=cell.text)
            faults.append(grid.fault("repeated-column", message, cell))
    if wanted not in header:
        message = say("no column is called `{column}`", column=wanted)
        faults.append(grid.fault("no-identifiers", message, grid.rows[0][0]))
        raise Unusable(faults)
    found: dict[str, dict[str, GridCell]] = {}
    for line in grid.rows[1:]:
        cells = {cell.text: line[place] for place, cell in enumerate(grid.rows[0])}
        own = line[header.index(wanted)]
        if not own.text:
            faults.append(grid.fault("no-identifier", say("the row has no {column}", column=wanted), own))
        elif normal(own.text) in found:
            message = say("`{identifier}` has a row already", identifier=own.text)
            faults.append(grid.fault("repeated-identifier", message, own))
        found[normal(own.text)] = cells
    if faults:
        raise Unusable(faults)
    return found


def _section(root: TextSection, name: str, vocabulary: Vocabulary) -> TextSection:
    form = next(one for iri, one in vocabulary.sections.items() if iri.endswith(f"/{name}-section"))
    found = next((one for one in root.sections if normal(one.title) in form.names), None)
    if found is None:
        message = say(
            "the dossier has no section `## {title}` to put the rows in; write its heading first",
            title=form.label,
        )
        raise refusal("no-section", message, root.span)
    return found


def _tables(section: TextSection, name: str) -> Iterator[tuple[str, Table]]:
    """The tables of a section, each with its group; of a group only the first, as the form has it."""
    yield from (("", table) for table in section.tables)
    if name == "parts":
        yield from ((group.title, table) for group in section.sections for table in group.tables)


def _identifying(table: Table, name: str) -> str:
    """The column of a table's identifiers."""
    columns = [normal(cell.text) for cell in table.header]
    return SHEETS[name] if SHEETS[name] in columns else columns[0]


def _identifiers(table: Table, name: str) -> dict[str, int]:
    place = [normal(cell.text) for cell in table.header].index(_identifying(table, name))
    return {normal(row[place].text): number for number, row in enumerate(table.rows)}


def _is_of_group(row: SheetRow, heading: str, name: str) -> bool:
    """Whether a new row belongs under a heading: a part's its group, or none; of boxes and devices any."""
    return name != "parts" or normal(_text(row, GROUP)) == normal(heading)


def _text(row: SheetRow, column: str) -> str:
    return next((cell.text for name, cell in row.items() if normal(name) == column), "")


def _extent(table: Table) -> tuple[int, int]:
    start = table.span.line - 1
    return start, start + len(table.raw.split("\n"))


def _merged(table: Table, rows: Mapping[str, SheetRow], heading: str, name: str) -> TableLines:
    """A table with the sheet's cells in its rows, and its new rows at the end."""
    names = {normal(cell.text): cell.text for cell in table.header}
    present = _identifiers(table, name)
    merged: list[dict[str, str]] = []
    from_sheet: list[dict[str, GridCell]] = []
    for identifier, number in present.items():
        old = {cell.text: found.text for cell, found in zip(table.header, table.rows[number], strict=True)}
        mine = _columns(rows.get(identifier, {}), names, heading)
        merged.append({**old, **{column: cell.text for column, cell in mine.items()}})
        from_sheet.append(mine)
    for identifier, row in rows.items():
        if identifier not in present:
            mine = _columns(row, names, heading)
            merged.append({column: cell.text for column, cell in mine.items()})
            from_sheet.append(mine)
    return laid_out(merged, from_sheet)


def _columns(row: SheetRow, names: Mapping[str, str], heading: str) -> dict[str, GridCell]:
    """A sheet's row under the names of the table's columns; in a group's table the group is the heading."""
    found = {names.get(normal(column), column): cell for column, cell in row.items()}
    dropped = {GROUP, *({KIND} if heading and KIND not in names else set())}
    return {column: cell for column, cell in found.items() if not heading or normal(column) not in dropped}


def _appended(
    left: Mapping[str, SheetRow], section: TextSection, lines: Sequence[str], name: str
) -> Iterator[tuple[int, int, TableLines]]:
    """New rows that no table takes: in a table of their own below their heading, or under a new group."""
    if not left:
        return
    end = _end_of(section, lines)
    groups: dict[str, list[SheetRow]] = {}
    for row in left.values():
        groups.setdefault(_text(row, GROUP) if name == "parts" else "", []).append(row)
    for group, rows in groups.items():
        kind = _text(rows[0], KIND) if group else ""
        head = [f"### {group}", "", *([f"- kind: {kind}", ""] if kind else [])] if group else []
        mine = [_columns(row, {KIND: KIND} if not kind else {}, group) for row in rows]
        written = laid_out([{column: cell.text for column, cell in row.items()} for row in mine], mine)
        shifted = {(line + len(head) + 1, place): cell for (line, place), cell in written.cells.items()}
        yield end, end, replace(written, lines=("", *head, *written.lines), cells=shifted)


def _end_of(section: TextSection, lines: Sequence[str]) -> int:
    """The line after the last that a section fills."""
    end = next(
        (
            number
            for number in range(section.span.line, len(lines))
            if lines[number].startswith(("# ", "## "))
        ),
        len(lines),
    )
    while end > section.span.line and not lines[end - 1].strip():
        end -= 1
    return end
