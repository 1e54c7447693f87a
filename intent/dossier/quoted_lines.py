"""Quotations of single lines: what stands beneath a line of instruction, and what only seems to."""

from __future__ import annotations

from intent.dossier.blocks import Field, Quote, TextSection
from intent.dossier.draft import Draft
from intent.dossier.rows import SectionForm
from intent.language.message import say


def find_misplaced_words(draft: Draft, form: SectionForm, heading: TextSection) -> None:
    """Find quotations between two lines that are indented to neither, and lines that run on without `>`."""
    blocks = heading.blocks
    places = [
        place
        for place, block in enumerate(blocks)
        if isinstance(block, Field) and form.begins_line(block.name)
    ]
    for place in places:
        line = blocks[place]
        if isinstance(line, Field) and line.runs_on is not None:
            message = say(
                "the line above does not run on; keep it on one line, or begin its quotation with `>`"
            )
            draft.wrong("runs-on", message, line.runs_on)
    for place, block in enumerate(blocks):
        if isinstance(block, Quote) and places and places[0] < place < places[-1]:
            message = say(
                "nobody can tell which lines this quotation is for; indent it by two spaces to be of the line above,"
                " or put it before the first line to be of all"
            )
            draft.wrong("quotation-between", message, block.span)
