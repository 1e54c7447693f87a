"""A spreadsheet as a grid of texts, from and to CSV (RFC 4180) and XLSX (ECMA-376, Office Open XML).

No formula is ever run or written: in a file that is read a formula is an error at its cell, and in a file that is
written every cell is text. A CSV cell that a spreadsheet would take for a formula gets an apostrophe before it, which
is taken off again on the way in; so is a tab that another program put there.
"""

from __future__ import annotations

import csv
import datetime
import io
import zipfile
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from intent.diagnostics import Diagnostic, Severity, Span, Unusable, refusal_of_file
from intent.exports.guarding import guarded, is_guarded, unguarded
from intent.exports.sheet_bytes import sheet_text
from intent.language.message import Words, say
from intent.reading.atomic_write import write_whole
from intent.reading.files import read_bytes

MOST_CELLS = 1_000_000
MOST_EXPANDED = 200_000_000
"""Far beyond any list of parts: more is refused before it is read."""
_MISSING = say(
    "an .xlsx needs the package openpyxl (pip install 'intent-record[sheets]'); a .csv needs nothing"
)
_Value = object


@dataclass(frozen=True, slots=True, kw_only=True)
class GridCell:
    text: str
    row: int
    column: int
    """Both counted from 1."""
    is_number: bool = False
    """Whether the spreadsheet itself holds a number here, which has no comma and no point to be misread."""

    @property
    def name(self) -> str:
        """As a spreadsheet names it: `B7`."""
        letters, rest = "", self.column
        while rest:
            rest, place = divmod(rest - 1, 26)
            letters = chr(ord("A") + place) + letters
        return f"{letters}{self.row}"


@dataclass(frozen=True, slots=True)
class Grid:
    """The filled rows of a sheet, the header first; every row as long as the header."""

    file: str
    rows: tuple[tuple[GridCell, ...], ...]
    notes: tuple[Diagnostic, ...] = ()
    """How the file was read, where that is not plain."""

    def fault(
        self, slug: str, message: Words, cell: GridCell, severity: Severity = Severity.ERROR
    ) -> Diagnostic:
        return replace(_at(self.file, cell, slug, message), severity=severity)


def at_cell(cell: GridCell, message: Words) -> Words:
    """A message with the name of the cell that it is about."""
    return say("cell {cell}: {message}", cell=cell.name, message=message)


def _at(file: str, cell: GridCell, slug: str, message: Words) -> Diagnostic:
    span = Span(file=file, line=cell.row, column=cell.column)
    return Diagnostic(slug=slug, message=at_cell(cell, message), span=span)


def read_grid(path: Path) -> Grid:
    """The first sheet of a file. Raises `Unusable` with every cell that is at fault."""
    content = read_bytes(path)
    if path.suffix.casefold() == ".xlsx":
        return _grid(_xlsx_values(content, path), str(path))
    text, notes = sheet_text(content, str(path))
    return replace(_grid(_csv_values(text, path), str(path)), notes=notes)


def _grid(values: Sequence[Sequence[_Value]], file: str) -> Grid:
    faults: list[Diagnostic] = []
    rows: list[tuple[GridCell, ...]] = []
    for number, line in enumerate(values, start=1):
        cells = tuple(_cell(value, number, place, file, faults) for place, value in enumerate(line, start=1))
        if any(cell.text for cell in cells):
            rows.append(cells)
    if not rows:
        message = say("the sheet is empty; its first row must name the columns")
        faults.append(Diagnostic(slug="empty-file", message=message, span=Span(file=file)))
    if faults:
        raise Unusable(faults)
    width = max((cell.column for cell in rows[0] if cell.text), default=0)
    for line in rows[1:]:
        beyond = next((cell for cell in line[width:] if cell.text), None)
        if beyond is not None:
            faults.append(_at(file, beyond, "ragged-row", say("the column has no name in the first row")))
    if faults:
        raise Unusable(faults)
    padded = (_padded(line, width) for line in rows)
    return Grid(file, tuple(padded))


def _padded(line: tuple[GridCell, ...], width: int) -> tuple[GridCell, ...]:
    row = line[0].row
    return (
        *line[:width],
        *(GridCell(text="", row=row, column=place) for place in range(len(line[:width]) + 1, width + 1)),
    )


def _cell(value: _Value, row: int, column: int, file: str, faults: list[Diagnostic]) -> GridCell:
    is_number = isinstance(value, int | float) and not isinstance(value, bool)
    text = "" if value is None else _text(value)
    cell = GridCell(text=text, row=row, column=column, is_number=is_number)
    if isinstance(value, _Formula):
        message = say("a formula; formulas are not run, write the value itself")
        faults.append(_at(file, cell, "formula", message))
    elif isinstance(value, _ShownError):
        message = say("the spreadsheet has an error here, {shown}; write the value itself", shown=str(value))
        faults.append(_at(file, cell, "cell-error", message))
    return cell


class _Formula(str):
    """The text of a formula."""


class _ShownError(str):
    """What a spreadsheet shows where a formula failed."""


def _text(value: _Value) -> str:
    match value:
        case bool():
            return "yes" if value else "no"
        case float() if value.is_integer():
            return str(int(value))
        case datetime.datetime():
            return value.date().isoformat()
        case datetime.date():
            return value.isoformat()
        case _:
            return " ".join(str(value).split())


def _csv_values(text: str, path: Path) -> list[list[str]]:
    first = text.partition("\n")[0]
    mark = max(",;\t", key=first.count)
    try:
        rows = list(csv.reader(io.StringIO(text, newline=""), delimiter=mark, strict=True))
    except csv.Error as error:
        raise refusal_of_file(
            "not-csv", say("the file is not CSV: {fault}", fault=str(error)), path
        ) from None
    return [[unguarded(text) if is_guarded(text) else _as_found(text) for text in row] for row in rows]


def _as_found(text: str) -> str:
    """A CSV cell that nobody guarded, which may be a formula."""
    return _Formula(text) if text.lstrip().startswith("=") else text


def _xlsx_values(content: bytes, path: Path) -> list[list[_Value]]:
    _refuse_bomb(content, path)
    try:
        from openpyxl import load_workbook  # not everybody has it, and it is slow to load: for .xlsx alone
    except ImportError:
        raise refusal_of_file("needs-openpyxl", _MISSING, path) from None
    try:
        book = load_workbook(io.BytesIO(content), read_only=True, data_only=False, keep_links=False)
        sheet = book.worksheets[0]
        values: list[list[_Value]] = []
        count = 0
        for line in sheet.iter_rows():
            values.append([_marked(cell.value, cell.data_type) for cell in line])
            count += len(line)
            if count > MOST_CELLS:
                raise refusal_of_file(
                    "too-large", say("no sheet over {most} cells is read", most=MOST_CELLS), path
                )
    except Unusable:
        raise
    except Exception as error:
        message = say(
            "the file cannot be read as a spreadsheet ({fault}); save it again as .xlsx or .csv",
            fault=type(error).__name__,
        )
        raise refusal_of_file("not-xlsx", message, path) from None
    return values


def _marked(value: _Value, kind: str) -> _Value:
    return _Formula(value) if kind == "f" else _ShownError(value) if kind == "e" else value


def _refuse_bomb(content: bytes, path: Path) -> None:
    """An .xlsx is a zip: what it would unpack to is known before anything is unpacked."""
    try:
        with zipfile.ZipFile(io.BytesIO(content)) as packed:
            expanded = sum(entry.file_size for entry in packed.infolist())
    except zipfile.BadZipFile:
        message = say("the file is not an .xlsx spreadsheet; save it again as .xlsx or .csv")
        raise refusal_of_file("not-xlsx", message, path) from None
    if expanded > MOST_EXPANDED:
        message = say(
            "the spreadsheet would unpack to {size} bytes; no more than {most} are read",
            size=expanded,
            most=MOST_EXPANDED,
        )
        raise refusal_of_file("too-large", message, path)


def write_grid(path: Path, title: str, rows: Iterable[Sequence[str]], *, replace: bool = False) -> None:
    """A sheet of texts, whole or not at all.

    Raises `Unusable` where .xlsx is wanted and openpyxl is not there, and where the file is there already, unless
    ``replace`` says that it may be written over.
    """
    if path.suffix.casefold() == ".xlsx":
        write_whole(path, _xlsx(path, title, rows), replace=replace)
        return
    written = io.StringIO()
    csv.writer(written, lineterminator="\r\n").writerows([guarded(text) for text in row] for row in rows)
    write_whole(path, "\ufeff" + written.getvalue(), replace=replace)


def _xlsx(path: Path, title: str, rows: Iterable[Sequence[str]]) -> bytes:
    try:
        from openpyxl import Workbook  # as above
    except ImportError:
        raise refusal_of_file("needs-openpyxl", _MISSING, path) from None
    book = Workbook()
    book.remove(book.worksheets[0])
    sheet = book.create_sheet(title)
    for number, row in enumerate(rows, start=1):
        for place, text in enumerate(row, start=1):
            cell = sheet.cell(number, place)
            cell.value = text
            cell.data_type = "s"
            cell.number_format = "@"
    sheet.freeze_panes = "B2"
    book.properties.created = book.properties.modified = datetime.datetime(2000, 1, 1)
    packed = io.BytesIO()
    book.save(packed)
    return packed.getvalue()
