"""One drawing put together: what is drawn, its labels, its dimensions, and what stands below it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from intent.drawings import below
from intent.drawings.captions import description, title_of
from intent.drawings.depicted import Depicted
from intent.drawings.dimensions import LANE, Chain, chain_drawn, chains_of, ladder, lanes, levels_of
from intent.drawings.glyphs import Glyph, drawing_of, glyphs_of
from intent.drawings.ground import VIEWER_ROOM, grounds
from intent.drawings.heading import heading
from intent.drawings.hiding import clips, cut, hiding_of
from intent.drawings.labelling import labelled, labels_of
from intent.drawings.labels import PlacedLabel
from intent.drawings.patterns import definitions
from intent.drawings.stage import View
from intent.drawings.svg import Element, line, number, said_of, shape
from intent.drawings.thrown import beams
from intent.language.message import Words


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawing:
    """A drawing, and what belongs to it."""

    view: View
    element: Element
    notes: tuple[Words, ...]
    """How it is measured, names, and what is not drawn and why."""
    seen: tuple[Glyph, ...]
    """What is seen in it, if only partly: of this a legend has to tell the marks."""
    lacking: frozenset[str]
    """The parts that are hidden in it, if only partly, or that it does not label."""


def compose(subject: Depicted) -> Drawing:
    """The whole drawing."""
    sheet, locale, style = subject.sheet, subject.locale, subject.style
    glyphs = glyphs_of(subject.stage.seen(sheet.view), sheet)
    nearer = hiding_of(glyphs, sheet.view)
    lettered = labels_of(subject, glyphs, nearer)
    chains = chains_of(subject.stage.items, sheet)
    measured = sheet.drawn.bottom + (VIEWER_ROOM if sheet.view is View.PLAN else 0)
    notes = below.notes_of(subject)
    said = (*below.said_in(subject, lettered), *(notes if style.has_notes else ()))
    seen = [glyph for glyph in glyphs if glyph.item not in lettered.hidden]
    foot, bottom = below.drawn(subject, seen, said, measured + 4 + LANE * lanes(chains))
    hiding = dict.fromkeys(other for others in nearer.values() for other in others)
    headed, top = heading(subject)
    drawn = [
        *headed,
        *grounds(sheet, subject.stage.room, locale),
        *beams(subject.stage.seen(sheet.view), sheet),
        clips(tuple(hiding), sheet, subject.prefix),
        *(_links(subject) if style.has_lines else ()),
        *_parts(subject, glyphs, nearer, lettered.placed),
        *labelled(lettered.placed),
        *_dimensions(subject, chains, measured),
        *foot,
    ]
    lacking = {part for part, others in nearer.items() if others}
    lacking |= {item.identifier for item in lettered.unlabelled}
    element = _framed(subject, drawn, top, bottom)
    return Drawing(
        view=sheet.view, element=element, notes=notes, seen=tuple(seen), lacking=frozenset(lacking)
    )


def _framed(subject: Depicted, drawn: Sequence[Element], top: float, bottom: float) -> Element:
    stage, sheet, locale = subject.stage, subject.sheet, subject.locale
    told = description(sheet.view, subject.which, stage.items, stage.unplaced, sheet.scale)
    names = [f"{subject.prefix}-title", f"{subject.prefix}-description"]
    return shape(
        "svg",
        said_of("title", locale.say(title_of(sheet.view, subject.which, subject.detail)), names[0]),
        said_of("desc", locale.say(told), names[1]),
        definitions(subject.channels.values(), subject.prefix),
        drawn,
        role="img",
        aria_labelledby=" ".join(names),
        class_="drawing",
        id=subject.prefix,
        viewBox=f"0 {number(top)} {number(sheet.width)} {number(bottom - top)}",
        width=f"{number(sheet.width)}mm",
        height=f"{number(bottom - top)}mm",
        style="max-width:100%;height:auto",
    )


def _parts(
    subject: Depicted,
    glyphs: Sequence[Glyph],
    nearer: dict[str, tuple[Glyph, ...]],
    placed: Sequence[PlacedLabel],
) -> Iterator[Element]:
    hidden = {part: label.box.grown(0.25) for label in placed if label.is_inside for part in label.spot.parts}
    for glyph in glyphs:
        part = glyph.item.identifier
        drawn = drawing_of(glyph, subject, hidden.get(part))
        yield cut(drawn, nearer[part], subject.prefix)


def _links(subject: Depicted) -> Iterator[Element]:
    """A thin line from each player to what it feeds, where both have a position."""
    where = {item.identifier: subject.sheet.at(item.centre) for item in subject.stage.items}
    for player, fed in subject.stage.links:
        if player in where and fed in where:
            yield line(where[player], where[fed], 0.16, stroke_dasharray="1.6 0.5 0.3 0.5", class_="feeds")


def _dimensions(subject: Depicted, chains: Sequence[Chain], top: float) -> Iterator[Element]:
    sheet = subject.sheet
    for chain in chains:
        yield chain_drawn(chain, sheet, top, subject.locale)
    levels = levels_of(subject.stage.items, sheet.view)
    yield ladder(levels, sheet, sheet.drawn.left - 3, subject.locale)
