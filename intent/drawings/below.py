"""What stands below a drawing, from the scale bar to the list of parts that are not drawn."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from intent.drawings.captions import (
    ASSUMED_LEVEL,
    LOOKS_THIS_WAY,
    METRES_ELEVATION,
    METRES_PLAN,
    NOTHING_PLACED,
    STANDINGS,
    TOP_OF_PICTURE,
)
from intent.drawings.depicted import LEFT, RIGHT, Subject
from intent.drawings.glyphs import Glyph
from intent.drawings.labelling import Manner
from intent.drawings.legend import (
    LegendEntry,
    channel_entry,
    departing_of,
    entries_drawn,
    marked_only,
    names_of,
    paragraph,
    scale_bar,
    shown_by,
    undrawn,
    verdict_entry,
    wedge_entry,
)
from intent.drawings.stage import Stand, View
from intent.drawings.svg import Element
from intent.language.message import said
from intent.variance.result import VERDICT_WORDS


def drawn(
    subject: Subject, glyphs: Sequence[Glyph], notes: Sequence[str], top: float
) -> tuple[list[Element], float]:
    """The scale bar, what the marks mean, and some notes; and where they end."""
    sheet, tongue = subject.sheet, subject.tongue
    left, room = LEFT, sheet.width - LEFT - RIGHT
    made = [scale_bar(sheet, (left, top + 2), tongue)]
    shown, y = entries_drawn(_entries(subject, glyphs), left, top + 9.5, room)
    made += shown
    y += 0.6
    for text in notes:
        written, y = paragraph(text, left, y, room)
        made += written
    return made, y + 2


def _entries(subject: Subject, glyphs: Sequence[Glyph]) -> Iterator[LegendEntry]:
    tongue, prefix = subject.tongue, subject.prefix
    shown = {glyph.item.channel for glyph in glyphs if glyph.item.is_display}
    ordered = sorted(subject.channels.values(), key=lambda channel: channel.letter)
    yield from (channel_entry(one, prefix, tongue) for one in ordered if one.name in shown)
    if any(glyph.wedge for glyph in glyphs):
        yield wedge_entry(said(TOP_OF_PICTURE, tongue), is_open=False)
    if any(glyph.looking for glyph in glyphs):
        yield wedge_entry(said(LOOKS_THIS_WAY, tongue), is_open=True)
    present = {glyph.item.verdict for glyph in glyphs if glyph.item.standing is not Stand.OMITTED}
    yield from (
        verdict_entry(one, said(word, tongue)) for one, word in VERDICT_WORDS.items() if one in present
    )
    if any(glyph.item.standing is Stand.OMITTED for glyph in glyphs):
        yield verdict_entry(None, said(STANDINGS[Stand.OMITTED], tongue))


def notes_of(subject: Subject, manner: Manner) -> tuple[str, ...]:
    """The sentences that belong to a drawing: how it is measured, names, and what is not drawn."""
    return tuple(_sentences(subject, manner))


def _sentences(subject: Subject, manner: Manner) -> Iterator[str]:
    tongue, stage = subject.tongue, subject.stage
    if not stage.items:
        yield said(NOTHING_PLACED, tongue)
    else:
        measured = METRES_ELEVATION if subject.sheet.view is View.ELEVATION else METRES_PLAN
        yield f"{said(measured, tongue)} {said(ASSUMED_LEVEL, tongue)}"
    if not manner.has_letters:
        yield from shown_by(stage.items, subject.channels, tongue)
    if not manner.has_states:
        yield from departing_of(stage.items, tongue)
    names = names_of(stage.items, tongue)
    if names:
        yield f"{names}."
    yield from marked_only(stage.items, tongue)
    yield from undrawn(stage.unplaced, tongue)
