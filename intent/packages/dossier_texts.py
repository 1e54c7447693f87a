"""The texts of a dossier as it leaves, written from what may leave of the graph: no prose of a file slips through."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path, PurePosixPath

from intent.dossier.blocks import read_blocks
from intent.dossier.write_installation import write_installation, write_pool
from intent.dossier.write_work import write_work
from intent.model.installation import Installation
from intent.names import INTENT
from intent.packages.contents import INSTALLATIONS, POOL_TEXT, WORK_TEXT
from intent.reading.proposal import Proposal
from intent.redaction.leaving import Leaving

POOL_TITLE = "Devices of the pool"
"""The title of a pool that came without one."""


def dossier_texts(leaving: Leaving, proposal: Proposal | None) -> dict[str, str]:
    """The texts of a work, and of an installation with its pool, by their paths in the package."""
    texts = {WORK_TEXT: write_work(leaving.work)}
    if proposal is None or leaving.installation is None:
        return texts
    pool = tuple(device for device in leaving.installation.devices if device.listed)
    installation = _within_package(leaving.installation, bool(pool))
    texts[installation_path(proposal)] = write_installation(installation, leaving.work)
    if pool:
        texts[POOL_TEXT] = write_pool(_pool_title(proposal), pool, leaving.work.vocabulary)
    return texts


def installation_path(proposal: Proposal) -> str:
    """Where an installation lies in the package: under its own name."""
    name = next(file.name for file in proposal.files if file.role == "installation")
    return f"{INSTALLATIONS}/{PurePosixPath(name).stem}.md"


def _within_package(installation: Installation, has_pool: bool) -> Installation:
    """The installation with the paths that hold in the package."""
    fields = {**installation.fields, str(INTENT.workFile): "../work.md"}
    fields.pop(str(INTENT.poolFile), None)
    if has_pool:
        fields[str(INTENT.poolFile)] = "../pool.md"
    return replace(installation, fields=fields)


def _pool_title(proposal: Proposal) -> str:
    """The title of the pool, from which the names of its devices in the graph are made."""
    for file in proposal.files:
        if file.role == "pool":
            root, _ = read_blocks(Path(file.name).read_text(encoding="utf-8-sig"), file.name)
            if root is not None:
                return root.title
    return POOL_TITLE
