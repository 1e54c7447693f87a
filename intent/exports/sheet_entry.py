"""A sheet's rows in a dossier's tables.

A sheet that comes back is the truth for the rows and columns that it has: a cell left blank is blank. What it does
not have stays as it is in the dossier, and is said.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from intent.diagnostics import Diagnostic, Severity, Span, Unusable, has_errors, in_order
from intent.dossier.blocks import TextSection, read_blocks
from intent.dossier.tables import Table
from intent.dossier.work_text import read_work
from intent.dossier.writing import Cells, table_block
from intent.exports.grid import Grid, GridCell, at_cell
from intent.exports.sheet_rows import GROUP, KIND, SHEETS
from intent.language.message import joined, say
from intent.vocabulary.phrases import normal
from intent.vocabulary.terms import Vocabulary


@dataclass(frozen=True, slots=True)
class EnteredSheet:
    """A dossier with a sheet's rows in it, and what is to be said of that."""

    text: str
    findings: tuple[Diagnostic, ...]


@dataclass(frozen=True, slots=True)
class _TableLines:
    """A table as it will stand, and which cell of the sheet each of its cells comes from."""

    lines: tuple[str, ...]
    cells: Mapping[tuple[int, int], GridCell]
    """By line in the table and number of the column."""


def enter_sheet(text: str, file: str, grid: Grid, name: str, vocabulary: Vocabulary) -> EnteredSheet:
    """The dossier with the rows of a sheet. Raises `Unusable` with every cell that is at fault, by its name."""
    root, _ = read_blocks(text, file)
    if root is None:
        raise Unusable(
            [Diagnostic(slug="empty-file", message=say("the dossier is empty"), span=Span(file=file))]
        )
    rows = _by_identifier(grid, name)
    section = _section(root, name, vocabulary)
    lines, origin = (
        text.replace("\r\n", "\n").replace("\r", "\n").split("\n"),
        dict[int, tuple[_TableLines, int]](),
    )
    left = dict(rows)
    kept: list[str] = []
    edits: list[tuple[int, int, _TableLines]] = []
    for heading, table in _tables(section, name):
        mine = {key: row for key, row in left.items() if _belongs(row, heading, table, name)}
        for key in mine:
            del left[key]
        edits.append((*_extent(table), _merged(table, mine, heading, name, kept)))
    edits += _appended(left, section, lines, name)
    moved = 0
    for start, end, written in sorted(edits, key=lambda edit: edit[0]):
        lines[start + moved : end + moved] = written.lines
        for place in range(len(written.lines)):
            origin[start + moved + place + 1] = (written, place)
        moved += len(written.lines) - (end - start)
    result = "\n".join(lines)
    findings = [_at_cell(found, origin, grid) for found in read_work(result, file, vocabulary).findings]
    if has_errors(findings):
        raise Unusable(found for found in findings if found.is_error)
    return EnteredSheet(result, (*_told_kept(kept, grid), *in_order(findings)))


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
        raise Unusable([Diagnostic(slug="no-section", message=message, span=root.span)])
    return found


def _tables(section: TextSection, name: str) -> Iterator[tuple[str, Table]]:
    """The tables of a section, each with its group; of a group only the first, as the form has it."""
    yield from (("", table) for table in section.tables)
    if name == "parts":
        yield from ((group.title, table) for group in section.sections for table in group.tables)


def _identifiers(table: Table, name: str) -> dict[str, int]:
    place = next((place for place, cell in enumerate(table.header) if normal(cell.text) == SHEETS[name]), 0)
    return {normal(row[place].text): number for number, row in enumerate(table.rows)}


def _belongs(row: Mapping[str, GridCell], heading: str, table: Table, name: str) -> bool:
    """Whether a row is in a table already, or is new and of its group."""
    identifier = normal(_text(row, SHEETS[name]))
    return identifier in _identifiers(table, name) or (
        name == "parts" and bool(heading) and normal(_text(row, GROUP)) == normal(heading)
    )


def _text(row: Mapping[str, GridCell], column: str) -> str:
    return next((cell.text for name, cell in row.items() if normal(name) == column), "")


def _extent(table: Table) -> tuple[int, int]:
    start = table.span.line - 1
    return start, start + len(table.raw.split("\n"))


def _merged(
    table: Table, rows: Mapping[str, Mapping[str, GridCell]], heading: str, name: str, kept: list[str]
) -> _TableLines:
    """A table with the sheet's cells in its rows, and its new rows at the end."""
    names = {normal(cell.text): cell.text for cell in table.header}
    present = _identifiers(table, name)
    merged: list[dict[str, str]] = []
    from_sheet: list[dict[str, GridCell]] = []
    for identifier, number in present.items():
        old = {cell.text: found.text for cell, found in zip(table.header, table.rows[number], strict=True)}
        mine = _columns(rows.get(identifier, {}), names, heading)
        kept.extend([] if identifier in rows else [next(iter(old.values()))])
        merged.append({**old, **{column: cell.text for column, cell in mine.items()}})
        from_sheet.append(mine)
    for identifier, row in rows.items():
        if identifier not in present:
            mine = _columns(row, names, heading)
            merged.append({column: cell.text for column, cell in mine.items()})
            from_sheet.append(mine)
    return _laid_out(merged, from_sheet)


def _columns(row: Mapping[str, GridCell], names: Mapping[str, str], heading: str) -> dict[str, GridCell]:
    """A sheet's row under the names of the table's columns; in a group's table the group is the heading."""
    found = {names.get(normal(column), column): cell for column, cell in row.items()}
    dropped = {GROUP, *({KIND} if heading and KIND not in names else set())}
    return {column: cell for column, cell in found.items() if not heading or normal(column) not in dropped}


def _laid_out(rows: Sequence[Cells], from_sheet: Sequence[Mapping[str, GridCell]]) -> _TableLines:
    lines = tuple(table_block(rows).split("\n"))
    columns = [column.strip() for column in lines[0].strip("| ").split(" | ")] if lines[0] else []
    cells = {
        (number, place): row[column]
        for number, row in enumerate(from_sheet, start=2)
        for place, column in enumerate(columns)
        if column in row
    }
    return _TableLines(lines, cells)


def _appended(
    left: Mapping[str, Mapping[str, GridCell]], section: TextSection, lines: Sequence[str], name: str
) -> Iterator[tuple[int, int, _TableLines]]:
    """New rows that no table takes: in a table of their own below their heading, or under a new group."""
    if not left:
        return
    end = _end_of(section, lines)
    groups: dict[str, list[Mapping[str, GridCell]]] = {}
    for row in left.values():
        groups.setdefault(_text(row, GROUP) if name == "parts" else "", []).append(row)
    for group, rows in groups.items():
        kind = _text(rows[0], KIND) if group else ""
        head = [f"### {group}", "", *([f"- kind: {kind}", ""] if kind else [])] if group else []
        mine = [_columns(row, {KIND: KIND} if not kind else {}, group) for row in rows]
        written = _laid_out([{column: cell.text for column, cell in row.items()} for row in mine], mine)
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


def _at_cell(found: Diagnostic, origin: Mapping[int, tuple[_TableLines, int]], grid: Grid) -> Diagnostic:
    """A finding about a cell that came from the sheet, at its place in the sheet."""
    written, place = origin.get(found.span.line, (None, 0))
    if written is None:
        return found
    before = found.span.text[: max(0, found.span.column - 1)]
    cell = written.cells.get((place, before.replace("\\|", "").count("|") - 1))
    if cell is None:
        return found
    span = Span(file=grid.file, line=cell.row, column=cell.column)
    return replace(found, message=at_cell(cell, found.message), span=span)


def _told_kept(kept: Sequence[str], grid: Grid) -> Iterator[Diagnostic]:
    if kept:
        message = say(
            "the sheet has no row for {parts}; they stay in the dossier as they are", parts=joined(kept, ", ")
        )
        yield Diagnostic(
            slug="not-in-sheet", message=message, span=Span(file=grid.file), severity=Severity.NOTE
        )
