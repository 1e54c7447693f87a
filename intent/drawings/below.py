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
from intent.drawings.depicted import LEFT, RIGHT, Depicted
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
from intent.language.message import Words, joined
from intent.variance.result import VERDICT_WORDS


def drawn(
    subject: Depicted, glyphs: Sequence[Glyph], notes: Sequence[Words], top: float
) -> tuple[list[Element], float]:
    """The scale bar, what the marks mean, and some notes; and where they end."""
    sheet, locale = subject.sheet, subject.locale
    left, room = LEFT, sheet.width - LEFT - RIGHT
    made = [scale_bar(sheet, (left, top + 2), locale)]
    shown, y = entries_drawn(_entries(subject, glyphs), left, top + 9.5, room)
    made += shown
    y += 0.6
    for text in notes:
        written, y = paragraph(locale.say(text), left, y, room)
        made += written
    return made, y + 2


def _entries(subject: Depicted, glyphs: Sequence[Glyph]) -> Iterator[LegendEntry]:
    locale, prefix = subject.locale, subject.prefix
    shown = {glyph.item.channel for glyph in glyphs if glyph.item.is_display}
    ordered = sorted(subject.channels.values(), key=lambda channel: channel.letter)
    yield from (channel_entry(one, prefix, locale) for one in ordered if one.name in shown)
    if any(glyph.wedge for glyph in glyphs):
        yield wedge_entry(locale.say(TOP_OF_PICTURE), is_open=False)
    if any(glyph.looking for glyph in glyphs):
        yield wedge_entry(locale.say(LOOKS_THIS_WAY), is_open=True)
    present = {glyph.item.verdict for glyph in glyphs if glyph.item.standing is not Stand.OMITTED}
    yield from (verdict_entry(one, locale.say(word)) for one, word in VERDICT_WORDS.items() if one in present)
    if any(glyph.item.standing is Stand.OMITTED for glyph in glyphs):
        yield verdict_entry(None, locale.say(STANDINGS[Stand.OMITTED]))


def notes_of(subject: Depicted, manner: Manner) -> tuple[Words, ...]:
    """The sentences that belong to a drawing: how it is measured, names, and what is not drawn."""
    return tuple(_sentences(subject, manner))


def _sentences(subject: Depicted, manner: Manner) -> Iterator[Words]:
    stage = subject.stage
    if not stage.items:
        yield NOTHING_PLACED
    else:
        measured = METRES_ELEVATION if subject.sheet.view is View.ELEVATION else METRES_PLAN
        yield joined([measured, ASSUMED_LEVEL])
    if not manner.has_letters:
        yield from shown_by(stage.items, subject.channels)
    if not manner.has_states:
        yield from departing_of(stage.items)
    names = names_of(stage.items)
    if names:
        yield f"{names}."
    yield from marked_only(stage.items)
    yield from undrawn(stage.unplaced)
