"""The rows of a log, each with the value that its event tells of."""

from __future__ import annotations

from collections.abc import Sequence

from intent.dossier.entities import inscribe_numbered
from intent.dossier.fields import Desk
from intent.dossier.inscribe import inscribe_statement
from intent.dossier.rows import TableRow, inscribe_cells, read_cell
from intent.dossier.tables import Cell
from intent.dossier.words import Known
from intent.language.message import named, say
from intent.names import INTENT, TERM
from intent.vocabulary.terms import Concept

_EVENTS = (str(TERM["log-events"]),)


def inscribe_log(desk: Desk, known: Known, rows: Sequence[TableRow]) -> None:
    """The entries of a log; a value is read as the vocabulary says of its event."""
    for number, row in enumerate(rows, start=1):
        local = f"log-{number}"
        node = inscribe_numbered(desk, row, local, INTENT.LogEntry, number)
        inscribe_cells(desk, known, node, (local,), row.cells, elsewhere=frozenset({"told-value"}))
        event, value = row.named("event"), row.named("logged-value")
        concept = desk.draft.vocabulary.find_value(_EVENTS, event.text) if event else None
        if value is not None and concept is not None:
            _inscribe_value(desk, known, local, concept, value)


def _inscribe_value(desk: Desk, known: Known, local: str, event: Concept, cell: Cell) -> None:
    characteristic = desk.draft.vocabulary.characteristics.get(event.tells or "")
    if characteristic is None:
        message = say("`{event}` has no value; write it under `remark`", event=named(event))
        desk.draft.wrong("no-value-here", message, cell.span)
        return
    expression = read_cell(desk, known, characteristic, cell)
    if expression is not None:
        stated = inscribe_statement(desk.draft, desk.draft.node(local), (local,), characteristic, expression)
        desk.draft.spans[str(stated)] = cell.span
