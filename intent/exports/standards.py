"""What is written for readers of other standards, by a package and by whoever asks: one function for each.

An export takes a work, and a proposal where there is one, as they may leave the house, and gives files by their names.
Adding one is adding a line to `STANDARDS`.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping

from intent.exports.lido import export_lido
from intent.exports.linked_art import export_linked_art
from intent.exports.odrl import export_odrl
from intent.exports.premis import export_premis
from intent.exports.shacl import export_shacl
from intent.reading.documentation import Documentation
from intent.reading.proposal import Proposal
from intent.variance.case import lay_out

Export = Callable[[Documentation, Proposal | None], Mapping[str, bytes]]


def _shacl(documentation: Documentation, proposal: Proposal | None) -> Mapping[str, bytes]:
    """Instructions and installation as SHACL Core (W3C, 20 July 2017); a work alone has nothing to be validated."""
    if proposal is None:
        return {}
    exported = export_shacl(lay_out(documentation.work, proposal.installation))
    return {"shapes.ttl": exported.shapes.encode(), "data.ttl": exported.data.encode()}


def _odrl(documentation: Documentation, proposal: Proposal | None) -> Mapping[str, bytes]:
    """The instructions as a policy: ODRL Information Model 2.2 (W3C, 15 February 2018)."""
    return {"policy.ttl": export_odrl(documentation.work).encode()}


def _lido(documentation: Documentation, proposal: Proposal | None) -> Mapping[str, bytes]:
    """Records of the work and its components: LIDO 1.1 (ICOM-CIDOC, 2021)."""
    return {"lido.xml": export_lido(documentation.work, proposal.installation if proposal else None)}


def _linked_art(documentation: Documentation, proposal: Proposal | None) -> Mapping[str, bytes]:
    """Documents of the work and all that belongs to it: Linked Art 1.0."""
    return export_linked_art(documentation.work)


def _premis(documentation: Documentation, proposal: Proposal | None) -> Mapping[str, bytes]:
    """Objects, agents and rights: PREMIS 3.0 (Library of Congress, 2015)."""
    return {"premis.xml": export_premis(documentation.work)}


STANDARDS: tuple[tuple[str, Export], ...] = (
    ("shacl", _shacl),
    ("odrl", _odrl),
    ("lido", _lido),
    ("linked-art", _linked_art),
    ("premis", _premis),
)
"""Exports by the name of the folder in which a package holds their files."""
