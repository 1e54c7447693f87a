"""A table's cells, each with its place; rows that do not fit the header are found, never mended silently."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from intent.diagnostics import Diagnostic, Span
from intent.language.message import say

_EDGE = re.compile(r"(?<!\\)\|")


@dataclass(frozen=True, slots=True)
class Cell:
    text: str
    span: Span


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    header: tuple[Cell, ...]
    rows: tuple[tuple[Cell, ...], ...]
    span: Span
    raw: str
    """As written, for the places where a table is only prose."""


def read_table(
    lines: Sequence[str], first: int, end: int, file: str, raw: str
) -> tuple[Table, list[Diagnostic]]:
    """The table in ``lines[first:end]``; its second line only rules off the header."""
    header = _cells(lines[first], first, file)
    rows, findings = [], []
    for number in range(first + 2, end):
        cells = _cells(lines[number], number, file)
        if len(cells) != len(header):
            findings.append(_ragged(lines[number], number, file, len(cells), len(header)))
        else:
            rows.append(cells)
    return Table(
        header=header,
        rows=tuple(rows),
        span=Span(file=file, line=first + 1, column=1, text=lines[first]),
        raw=raw,
    ), findings


def _ragged(line: str, number: int, file: str, found: int, wanted: int) -> Diagnostic:
    message = say(
        "this row has {found} cells where the header has {wanted}; put a `|` for each empty cell",
        found=found,
        wanted=wanted,
    )
    return Diagnostic(
        slug="ragged-row",
        message=message,
        span=Span(file=file, line=number + 1, column=1, text=line, length=len(line)),
    )


def _cells(line: str, number: int, file: str) -> tuple[Cell, ...]:
    inner_start = len(line) - len(line.lstrip())
    inner_end = len(line.rstrip())
    if line[inner_start:].startswith("|"):
        inner_start += 1
    if inner_end > inner_start and line[inner_end - 1] == "|" and line[inner_end - 2] != "\\":
        inner_end -= 1
    edges = [
        inner_start - 1,
        *(match.start() for match in _EDGE.finditer(line, inner_start, inner_end)),
        inner_end,
    ]
    cells = []
    for left, right in pairwise(edges):
        raw = line[left + 1 : right]
        text = raw.strip()
        column = left + 2 + (len(raw) - len(raw.lstrip()) if text else 0)
        cells.append(
            Cell(
                text.replace("\\|", "|"),
                Span(file=file, line=number + 1, column=column, text=line, length=max(1, len(text))),
            )
        )
    return tuple(cells)
