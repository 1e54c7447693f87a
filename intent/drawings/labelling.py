"""What is written at each part: its identifier, its channel's letter, and the word of its verdict."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from intent.drawings.glyphs import Glyph
from intent.drawings.ground import person_at
from intent.drawings.labels import Asked, Ground, Placed, place
from intent.drawings.lettering import LABEL, LEADING
from intent.drawings.plane import Box, around, outline
from intent.drawings.stage import Standing, View
from intent.drawings.subject import Subject
from intent.drawings.svg import SANS, Element, line, shape, words
from intent.drawings.wording import state_words

_EDGE = 0.3


def labels_of(
    subject: Subject, glyphs: Sequence[Glyph], nearer: Mapping[str, tuple[Glyph, ...]]
) -> tuple[Placed, ...]:
    """The labels of all parts in their places, those of displays first.

    Parts at one place that say the same have one label.
    """
    alike: dict[tuple[object, ...], list[Glyph]] = {}
    for glyph in sorted(glyphs, key=lambda glyph: not glyph.item.is_display):
        alike.setdefault((glyph.edge, *_told(subject, glyph)), []).append(glyph)
    asked = (_asked(subject, group, nearer) for group in alike.values())
    sheet = subject.sheet
    bottom = sheet.drawn.bottom + (-0.4 if sheet.view is View.ELEVATION else 0.0)
    standing = (person_at(sheet),) if sheet.view is View.ELEVATION else ()
    bounds = Box(2, sheet.drawn.top, sheet.width - 2, bottom)
    return place(asked, Ground(bounds, (*_obstacles(glyphs), *standing)))


def _asked(subject: Subject, group: Sequence[Glyph], nearer: Mapping[str, tuple[Glyph, ...]]) -> Asked:
    glyph = group[0]
    letter, state = _told(subject, glyph)
    parts = tuple(one.item.identifier for one in group)
    first = " ".join(filter(None, (", ".join(parts), letter)))
    before = tuple(other.extent for part in parts for other in nearer[part])
    has_seat = bool(glyph.picture) and glyph.item.standing is not Standing.OMITTED
    return Asked(
        parts,
        (first, state) if state else (first,),
        LABEL,
        glyph.extent,
        around(glyph.edge).centre,
        outline(glyph.picture) if has_seat else (),
        (around(glyph.wedge), *before) if has_seat else (),
    )


def _told(subject: Subject, glyph: Glyph) -> tuple[str, str]:
    channel = subject.channel_of(glyph.item)
    return channel.letter if channel else "", state_words(glyph.item, subject.tongue)


def _obstacles(glyphs: Sequence[Glyph]) -> Iterator[Box]:
    """Displays and marks whole; of other outlines only the lines, so that labels may stand in them."""
    for glyph in glyphs:
        box = glyph.extent
        if glyph.item.is_display or len(glyph.edge) < 3:
            yield box
            continue
        yield replace(box, bottom=box.top + 2 * _EDGE)
        yield replace(box, top=box.bottom - 2 * _EDGE)
        yield replace(box, right=box.left + 2 * _EDGE)
        yield replace(box, left=box.right - 2 * _EDGE)


def labelled(placed: Sequence[Placed]) -> Iterator[Element]:
    for label in placed:
        yield shape("g", _written(label), class_="label")


def _written(label: Placed) -> Iterator[Element]:
    if label.leader:
        yield line(*label.leader, 0.12, class_="leader")
    size, x = label.asked.size, label.box.centre[0]
    for row, text in enumerate(label.asked.lines):
        y = label.box.top + size * (LEADING * row + 0.95)
        style = {"font_style": "italic"} if row else {}
        yield words(text, (x, y), size, font_family=SANS, text_anchor="middle", **style)
