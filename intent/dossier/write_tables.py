"""Tables that tell one kind of thing: connections and the log, of a work or an installation, and tasks."""

from __future__ import annotations

from collections.abc import Iterable

from intent.dossier.own_labels import OwnLabels
from intent.dossier.writing import kept, statement_cells, table_block
from intent.model.log_entry import LogEntry
from intent.model.task import Task
from intent.model.work import Connection


def connections_table(connections: Iterable[Connection], labels: OwnLabels) -> str:
    """Connections, of a work or of an installation."""
    rows = [
        {
            "from": found.start,
            "to": found.end,
            **statement_cells(found.statements, labels),
            "remark": found.note,
            "keep": kept(found.internal),
        }
        for found in connections
    ]
    return table_block(rows)


def log_table(log: Iterable[LogEntry], labels: OwnLabels) -> str:
    """The entries of a log, of a work or of an installation."""
    rows = [
        {
            "date": str(entry.date or ""),
            "device": entry.about,
            "event": labels.of(entry.event),
            "value": ", ".join(statement_cells(entry.value, labels).values()),
            "by": entry.by or "",
            "source": entry.source,
            "remark": entry.note,
            "keep": kept(entry.internal),
        }
        for entry in log
    ]
    return table_block(rows)


def tasks_table(tasks: Iterable[Task]) -> str:
    """What installing takes."""
    rows = [
        {
            "task": task.identifier,
            "what": task.what,
            "parts": ", ".join(task.parts),
            "after": ", ".join(task.after),
            "people": str(task.people or ""),
            "time": task.time,
            "by": task.by,
            "remark": task.note,
            "keep": kept(task.internal),
        }
        for task in tasks
    ]
    return table_block(rows)
