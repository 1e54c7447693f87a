"""What stands below a drawing, from the scale bar to the list of parts that are not drawn."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from intent.drawings.captions import (
    ASSUMED_LEVEL,
    LOOKS_THIS_WAY,
    METRES_ELEVATION,
    METRES_PLAN,
    NOTHING_PLACED,
    PROJECTORS,
    STANDINGS,
    TOP_OF_PICTURE,
    metres,
)
from intent.drawings.depicted import LEFT, RIGHT, Depicted
from intent.drawings.glyphs import Glyph
from intent.drawings.labelling import Lettered
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
from intent.drawings.patterns import Channel
from intent.drawings.sheet import flat
from intent.drawings.stage import Item, Stand, View
from intent.drawings.svg import Element
from intent.language.locale import Locale
from intent.language.message import Words, joined, say
from intent.variance.result import VERDICT_WORDS


def drawn(
    subject: Depicted, glyphs: Sequence[Glyph], notes: Sequence[Words], top: float
) -> tuple[list[Element], float]:
    """The scale bar, what the marks mean, and some notes; and where they end."""
    sheet, locale = subject.sheet, subject.locale
    left, room = LEFT, sheet.width - LEFT - RIGHT
    made = [scale_bar(sheet, (left, top + 2), locale)]
    y = top + 9.5
    if subject.style.has_legend:
        entries = entries_of(glyphs, subject.channels.values(), locale)
        shown, y = entries_drawn(entries, (left, y, room), subject.prefix)
        made += shown
    y += 0.6
    for text in notes:
        written, y = paragraph(locale.say(text), left, y, room)
        made += written
    return made, y + 2


def entries_of(glyphs: Sequence[Glyph], channels: Iterable[Channel], locale: Locale) -> Iterator[LegendEntry]:
    """What the marks of some parts mean: none of what none of them has."""
    there = [glyph for glyph in glyphs if glyph.item.standing is not Stand.OMITTED]
    shown = {glyph.item.channel for glyph in there if glyph.item.is_display and glyph.picture}
    yield from (channel_entry(one, locale) for one in channels if one.name in shown)
    if any(glyph.wedge for glyph in there):
        yield wedge_entry(locale.say(TOP_OF_PICTURE), is_open=False)
    if any(glyph.looking for glyph in glyphs):
        yield wedge_entry(locale.say(LOOKS_THIS_WAY), is_open=True)
    present = {glyph.item.verdict for glyph in there}
    yield from (verdict_entry(one, locale.say(word)) for one, word in VERDICT_WORDS.items() if one in present)
    if len(there) < len(glyphs):
        yield verdict_entry(None, locale.say(STANDINGS[Stand.OMITTED]))


def said_in(subject: Depicted, lettered: Lettered) -> Iterator[Words]:
    """What a drawing leaves out of what it shows: it stands in the drawing, since the next one may have it."""
    if subject.detail and subject.detail.without:
        yield say("Without {parts}, so that these are seen.", parts=subject.detail.without)
    if lettered.hidden:
        yield _hidden(subject.sheet.view, tuple(item.identifier for item in lettered.hidden))
    if lettered.unlabelled:
        yield _unlabelled(subject, lettered.unlabelled)
    departing = tuple(departing_of(lettered.unsaid))
    if departing:
        yield joined(departing)


def _hidden(view: View, parts: tuple[str, ...]) -> Words:
    if view is View.PLAN:
        return say("Under others, and drawn in elevation: {parts}.", parts=parts)
    return say("Behind others, and drawn with their group: {parts}.", parts=parts)


def _unlabelled(subject: Depicted, items: Sequence[Item]) -> Words:
    """`Not labelled …: L1 (−0.30; 0.40)`, those at one place together; in the whole only what they are."""
    if subject.detail is None and subject.sheet.view is View.ELEVATION:
        return say(
            "Labelled with their group alone: {parts}.", parts=tuple(item.identifier for item in items)
        )
    by_place: dict[str, list[str]] = {}
    for item in items:
        across, down = flat(item.centre, subject.sheet.view)
        up = -down if subject.sheet.view is View.ELEVATION else down
        place = "; ".join(metres(value, subject.locale) for value in (across, up))
        by_place.setdefault(place, []).append(item.called)
    parts = tuple(f"{', '.join(names)} ({place})" for place, names in by_place.items())
    if subject.sheet.view is View.ELEVATION:
        return say("Not labelled, with metres across and above the floor: {parts}.", parts=parts)
    return say("Not labelled, with metres across and towards the viewer: {parts}.", parts=parts)


def notes_of(subject: Depicted) -> tuple[Words, ...]:
    """The sentences that belong to a state: how it is measured, what shows what, names, and what is not drawn."""
    return tuple(_sentences(subject))


def _sentences(subject: Depicted) -> Iterator[Words]:
    stage = subject.stage
    if not stage.items:
        yield NOTHING_PLACED
    else:
        measured = METRES_ELEVATION if subject.sheet.view is View.ELEVATION else METRES_PLAN
        yield measured
        yield ASSUMED_LEVEL
    yield from shown_by(stage.items, subject.channels)
    names = names_of(stage.items)
    if names:
        yield f"{names}."
    yield from marked_only(stage.items)
    yield from undrawn(stage.unplaced)
    if stage.projectors:
        yield PROJECTORS
    if stage.room.told:
        yield say(
            "Of the room is known, but not where in it the work stands: {facts}.", facts=stage.room.told
        )
    for circuit, parts in stage.room.circuits:
        yield say("Circuit {circuit}: {parts}.", circuit=circuit, parts=parts)
