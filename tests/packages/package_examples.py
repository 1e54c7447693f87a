"""A sound package of a small work with something to keep in the house."""

from __future__ import annotations

from pathlib import Path

from redaction.work_with_secrets import written

from intent import verbs


def packed(folder: Path, name: str = "package") -> Path:
    """The package, made in a folder."""
    loan = written(folder / "house")
    return verbs.pack(loan, folder / name, pdf=False).path
