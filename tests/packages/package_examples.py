"""A sound package of a small work with something to keep in the house."""

from __future__ import annotations

import datetime
from pathlib import Path

from redaction.work_with_secrets import written

from intent import verbs

PACKED_ON = datetime.date(2027, 1, 15)


def packed(folder: Path, name: str = "package") -> Path:
    """The package, made in a folder."""
    loan = written(folder / "house")
    return verbs.pack(loan, folder / name, date=PACKED_ON, pdf=False).path
