"""What stays with whoever sends a package, as its papers say it: of what kind, and never which."""

from __future__ import annotations

from collections.abc import Iterable

from intent.language.message import listed, say
from intent.papers.document import PaperSection, Paragraph
from intent.redaction.withholding import WithheldKind


def left_out_section(withheld: Iterable[WithheldKind]) -> PaperSection:
    """That something stays with the sender, or that nothing does."""
    kinds = tuple(kind.value for kind in withheld)
    told = say("Nothing was left out of the documentation.")
    if kinds:
        told = say("The sender keeps to itself: {kinds}.", kinds=listed(kinds))
    return PaperSection(
        title=say("What is not in this package"), anchor="left-out", blocks=(Paragraph(told),)
    )
