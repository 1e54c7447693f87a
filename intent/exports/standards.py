"""What is written for readers of other standards, by a package and by whoever asks: one function for each.

An export takes a work, and an installation of it where there is one, as they may leave the house, and gives files by
their names. Adding one is adding a line to `STANDARDS`.
"""

from __future__ import annotations

import datetime
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from intent.exports.lido import export_lido
from intent.exports.linked_art import export_linked_art
from intent.exports.odrl import export_odrl
from intent.exports.premis import export_premis
from intent.exports.shacl import export_shacl
from intent.exports.work_shapes.checkable import checkable_files
from intent.model.installation import Installation
from intent.model.work import Work
from intent.variance.case import lay_out


@dataclass(frozen=True, slots=True, kw_only=True)
class Exported:
    """What is told to readers of other standards, as it may leave the house, and the day on which it is written."""

    work: Work
    installation: Installation | None
    shown: tuple[Installation, ...] = ()
    """The installations carried out that are known, the earliest first; only what their heads say is told."""
    day: datetime.date


Standard = Callable[[Exported], Mapping[str, bytes]]


def _shacl(told: Exported) -> Mapping[str, bytes]:
    """Instructions and installation in SHACL (W3C, 20 July 2017); a work alone has nothing to be validated.

    Twice: the report's rows as facts, and the work's instructions as shapes with the installation as data.
    """
    if told.installation is None:
        return {}
    case = lay_out(told.work, told.installation)
    graphs = export_shacl(case)
    replay = {"shapes.ttl": graphs.shapes, "data.ttl": graphs.data}
    return {name: text.encode() for name, text in {**replay, **checkable_files(case)}.items()}


def _odrl(told: Exported) -> Mapping[str, bytes]:
    """The instructions as a policy: ODRL Information Model 2.2 (W3C, 15 February 2018)."""
    return {"policy.ttl": export_odrl(told.work).encode()}


def _lido(told: Exported) -> Mapping[str, bytes]:
    """Records of the work and its components: LIDO 1.1 (ICOM-CIDOC, 2021)."""
    return {"lido.xml": export_lido(told.work, told.day, told.installation, told.shown)}


def _linked_art(told: Exported) -> Mapping[str, bytes]:
    """Documents of the work and all that belongs to it: Linked Art 1.0."""
    return export_linked_art(told.work)


def _premis(told: Exported) -> Mapping[str, bytes]:
    """Objects, agents and rights: PREMIS 3.0 (Library of Congress, 2015)."""
    return {"premis.xml": export_premis(told.work)}


STANDARDS: tuple[tuple[str, Standard], ...] = (
    ("shacl", _shacl),
    ("odrl", _odrl),
    ("lido", _lido),
    ("linked-art", _linked_art),
    ("premis", _premis),
)
"""Exports by the name of the folder in which a package holds their files."""
TELLING_OF_THE_PAST = frozenset({"lido"})
"""Those that tell of what was shown before."""
