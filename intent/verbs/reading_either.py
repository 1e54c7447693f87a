"""A work, or an installation of one, whichever a path leads to."""

from __future__ import annotations

from pathlib import Path

from intent.reading.documentation import Documentation, read_documentation
from intent.reading.heads import is_installation
from intent.reading.proposal import Proposal, read_proposal
from intent.vocabulary.loader import read_vocabulary


def read_either(path: str | Path, work: str | Path | None) -> tuple[Documentation, Proposal | None]:
    """A work, or an installation with its work, found to be usable. Raises `Unusable`."""
    found, shipped = Path(path), read_vocabulary()
    if work is not None or is_installation(found, shipped):
        proposal = read_proposal(found, Path(work) if work else None, shipped)
        proposal.validated()
        return proposal.documentation, proposal
    return read_usable(found), None


def read_usable(work: str | Path) -> Documentation:
    """A work, found to be usable. Raises `Unusable`."""
    documentation = read_documentation(Path(work), read_vocabulary())
    documentation.validated()
    return documentation
