"""What is written for readers of other standards, by a package and by whoever asks: one function for each.

An export takes a work, and a proposal where there is one, as they may leave the house, and gives files by their names.
Adding one is adding a line to `STANDARDS`.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping

from intent.documentation import Documentation
from intent.exchange.shacl import export_shacl
from intent.proposal import Proposal
from intent.variance.case import lay_out

Export = Callable[[Documentation, Proposal | None], Mapping[str, bytes]]


def _shacl(documentation: Documentation, proposal: Proposal | None) -> Mapping[str, bytes]:
    """Instructions and installation as SHACL Core (W3C, 20 July 2017); a work alone has nothing to be validated."""
    if proposal is None:
        return {}
    exported = export_shacl(lay_out(documentation.work, proposal.installation))
    return {"shapes.ttl": exported.shapes.encode(), "data.ttl": exported.data.encode()}


STANDARDS: tuple[tuple[str, Export], ...] = (("shacl", _shacl),)
"""Exports by the name of the folder in which a package holds their files."""
