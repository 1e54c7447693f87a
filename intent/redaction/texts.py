"""The texts that leave the house, written from what may leave of the graph: no prose of a file slips through."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import Path, PurePosixPath

from intent.dossier.blocks import read_blocks
from intent.dossier.write_installation import write_installation, write_pool
from intent.dossier.write_work import write_work
from intent.model.installation import Installation
from intent.model.work import Work
from intent.names import INTENT
from intent.packages.contents import INSTALLATIONS, POOL_TEXT, WORK_TEXT
from intent.reading.documentation import Documentation
from intent.reading.proposal import Proposal
from intent.record.load_installation import load_installation
from intent.record.load_work import load_work
from intent.redaction.withholding import Leaving, Triple, WithheldKind, without_internal

POOL_TITLE = "Devices of the pool"
"""The title of a pool that came without one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Texts:
    """The dossier as it leaves, by path in the package; and what was left out of it."""

    files: Mapping[str, str]
    sorts: tuple[WithheldKind, ...]
    kept_texts: frozenset[str]
    work: Work
    triples: frozenset[Triple]
    """What may leave of the work's graph."""


def texts_leaving(documentation: Documentation, proposal: Proposal | None) -> Texts:
    """The texts of a work, and of an installation with its pool, without what stays in the house."""
    own, other = documentation.reading.triples, proposal.reading.triples if proposal else ()
    leaving = without_internal(own, other)
    work = load_work(leaving.triples, documentation.work.iri, documentation.work.vocabulary)
    files, left = {WORK_TEXT: write_work(work)}, [leaving]
    if proposal is not None:
        more = without_internal(other, own)
        left.append(more)
        files.update(_installation_texts(proposal, more, work, leaving))
    sorts = {sort for one in left for sort in one.sorts}
    return Texts(
        files=files,
        sorts=tuple(sort for sort in WithheldKind if sort in sorts),
        kept_texts=frozenset(text for one in left for text in one.texts),
        work=work,
        triples=frozenset(leaving.triples),
    )


def _installation_texts(proposal: Proposal, more: Leaving, work: Work, leaving: Leaving) -> dict[str, str]:
    installation = load_installation(more.triples, proposal.installation.iri, work, leaving.triples)
    pool = tuple(device for device in installation.devices if device.listed)
    files = {installation_path(proposal): write_installation(_within_package(installation, bool(pool)), work)}
    if pool:
        files[POOL_TEXT] = write_pool(_pool_title(proposal), pool, work.vocabulary)
    return files


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
