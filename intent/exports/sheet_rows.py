"""Parts, devices and boxes as the rows of a sheet."""

from __future__ import annotations

from collections.abc import Iterator

from intent.dossier.own_labels import OwnLabels
from intent.dossier.write_work import box_cells, device_cells, part_cells
from intent.dossier.writing import Cells
from intent.model.work import Work

SHEETS = {"parts": "part", "devices": "device", "boxes": "box"}
"""The tables that may be sheets, each with the column of its identifiers."""
GROUP, KIND = "group", "kind"


def sheet_rows(work: Work, name: str) -> list[list[str]]:
    """The header and the rows of a sheet; a part's row begins with its group and kind."""
    rows = list(_rows(work, name))
    columns = list(
        dict.fromkeys([*_leading(name), *(column for row in rows for column, text in row.items() if text)])
    )
    return [columns, *([row.get(column, "") for column in columns] for row in rows)]


def _leading(name: str) -> list[str]:
    return ["part", GROUP, KIND] if name == "parts" else [SHEETS[name]]


def _rows(work: Work, name: str) -> Iterator[Cells]:
    if name == "parts":
        for part in work.parts:
            yield {**part_cells(part, OwnLabels(work.vocabulary), None), GROUP: part.group or ""}
    elif name == "devices":
        yield from (
            device_cells(device, OwnLabels(work.vocabulary)) for device in work.devices if device.listed
        )
    else:
        yield from (box_cells(box, OwnLabels(work.vocabulary)) for box in work.boxes)
