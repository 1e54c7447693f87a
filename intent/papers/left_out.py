"""What stays with whoever sends a package, as its papers say it: of what kind, and never which."""

from __future__ import annotations

from collections.abc import Iterable

from intent.language.message import listed, say
from intent.papers.document import PaperSection, Paragraph
from intent.redaction.withholding import WithheldKind

WITHHELD_WORDS = {
    WithheldKind.PEOPLE: say("names of people"),
    WithheldKind.CONTACTS: say("contacts"),
    WithheldKind.SOURCES: say("sources"),
    WithheldKind.QUOTATIONS: say("words quoted from sources"),
    WithheldKind.PARTS: say("what is known of parts"),
    WithheldKind.DEVICES: say("devices"),
    WithheldKind.MATERIAL: say("material"),
    WithheldKind.CONNECTIONS: say("connections"),
    WithheldKind.BOXES: say("boxes"),
    WithheldKind.VALUES: say("insurance values"),
    WithheldKind.PLACES: say("places where things are kept"),
    WithheldKind.PROSE: say("sections of prose"),
    WithheldKind.COMMENTS: say("comments in the text"),
    WithheldKind.WHOLE: say("what is known of the work as a whole"),
}


def left_out_section(withheld: Iterable[WithheldKind]) -> PaperSection:
    """That something stays with the sender, or that nothing does."""
    kinds = tuple(WITHHELD_WORDS[kind] for kind in withheld)
    told = say("Nothing was left out of the documentation.")
    if kinds:
        told = say("The sender keeps to itself: {kinds}.", kinds=listed(kinds))
    return PaperSection(
        title=say("What is not in this package"), anchor="left-out", blocks=(Paragraph(told),)
    )
