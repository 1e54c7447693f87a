"""What is written at each part: its identifier, its channel's letter, and the word of its verdict."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby

from intent.drawings.captions import state_words
from intent.drawings.depicted import Depicted
from intent.drawings.glyphs import Glyph
from intent.drawings.ground import person_at
from intent.drawings.labels import Ground, PlacedLabel, Spot, asked, place
from intent.drawings.lettering import LABEL, LEADING
from intent.drawings.occupied import Occupied
from intent.drawings.plane import Box, around, outline
from intent.drawings.stage import Stand, View
from intent.drawings.svg import SANS, Element, line, shape, words

_EDGE = 0.3
STATE = "\N{ZERO WIDTH SPACE}"
"""Begins a line that is the word of a verdict; it is not printed."""


@dataclass(frozen=True, slots=True)
class Manner:
    """How much is written at a part, and how large."""

    size: float
    has_states: bool = True
    """Whether the word of a verdict stands at the part, and not only in the list under the drawing."""
    has_letters: bool = True

    @property
    def written(self) -> tuple[bool, bool]:
        """What is written, at whatever size."""
        return self.has_states, self.has_letters


MANNERS = (
    Manner(LABEL),
    Manner(2.0),
    Manner(2.0, has_states=False),
    Manner(1.7, has_states=False),
    Manner(1.5, has_states=False),
    Manner(1.5, has_states=False, has_letters=False),
    Manner(1.25, has_states=False, has_letters=False),
)
"""Tried in this order, until there is room for all labels but a few, which are moved aside."""
FEW = 0.12
TOGETHER = 3
"""How many parts at one place are named in one line; more have a line each."""


@dataclass(frozen=True, slots=True)
class Lettered:
    """The labels of a drawing, all in one manner."""

    manner: Manner
    placed: tuple[PlacedLabel, ...]


def labels_of(
    subject: Depicted, glyphs: Sequence[Glyph], nearer: Mapping[str, tuple[Glyph, ...]]
) -> Lettered:
    """The labels of all parts in their places, those of displays first; parts at one place share a label."""
    alike: dict[object, list[Glyph]] = {}
    for glyph in sorted(glyphs, key=lambda glyph: not glyph.item.is_display):
        alike.setdefault(_together(glyph), []).append(glyph)
    groups = tuple(alike.values())
    spots = [_spot(group, nearer) for group in groups]
    ground = _ground(subject, glyphs)
    few = max(6, round(FEW * len(groups)))
    for _, manners in groupby(MANNERS, key=lambda manner: manner.written):
        first, *smaller = manners
        texts = [tuple(_lines(subject, group, first)) for group in groups]
        for manner in (first, *smaller):
            labels = [asked(*label, manner.size) for label in zip(spots, texts, strict=True)]
            placed = place(labels, ground, None if manner is MANNERS[-1] else few)
            if placed is not None:
                return Lettered(manner, placed)
    raise AssertionError("the last manner places every label")


def _together(glyph: Glyph) -> object:
    """What is seen edge on shares a label with all that is at its place; a face only with what covers it."""
    x, y = around(glyph.edge).centre
    if len(glyph.edge) == 2 and glyph.item.is_display:
        return round(x), round(y)
    return glyph.edge, glyph.item.is_display


def _spot(group: Sequence[Glyph], nearer: Mapping[str, tuple[Glyph, ...]]) -> Spot:
    """What the label of some parts names: the first of them, where it may stand in its picture."""
    glyph = group[0]
    parts = tuple(one.item.identifier for one in group)
    before = (other.extent for part in parts for other in nearer[part])
    has_seat = bool(glyph.face) and glyph.item.standing is not Stand.OMITTED
    return Spot(
        parts=parts,
        around=around(corner for one in group for corner in one.extent.corners),
        target=around(glyph.edge).centre,
        within=outline(glyph.face) if has_seat else (),
        avoid=(around(glyph.wedge), *before) if has_seat else (),
    )


def _ground(subject: Depicted, glyphs: Sequence[Glyph]) -> Ground:
    sheet = subject.sheet
    if sheet.view is View.ELEVATION:
        standing, bottom = person_at(sheet), sheet.drawn.bottom - 0.4
    else:
        x, y = sheet.at((0.0, 0.0, 0.0))
        standing, bottom = Box(x, y, x, y).grown(1), sheet.drawn.bottom
    bounds = Box(sheet.drawn.left - 2.5, sheet.drawn.top, sheet.width - 2, bottom)
    return Ground(bounds, Occupied((*_obstacles(glyphs), standing)))


def _lines(subject: Depicted, group: Sequence[Glyph], manner: Manner) -> Iterator[str]:
    """The parts that show one channel and stand alike together, with the letter, and the word below them."""
    alike: dict[tuple[str, str], list[str]] = {}
    for glyph in group:
        channel = subject.channel_of(glyph.item)
        letter = channel.letter if channel and manner.has_letters else ""
        state = subject.locale.say(state_words(glyph.item)) if manner.has_states else ""
        alike.setdefault((letter, state), []).append(glyph.item.identifier)
    for (letter, state), parts in alike.items():
        together = (", ".join(parts),) if len(parts) <= TOGETHER else parts
        yield from (f"{part} {letter}".rstrip() for part in together)
        if state:
            yield STATE + state


def _obstacles(glyphs: Sequence[Glyph]) -> Iterator[Box]:
    """Displays and marks whole; of other outlines only the lines, so that labels may stand in them."""
    for glyph in glyphs:
        box = glyph.extent
        if glyph.item.is_display or len(glyph.edge) < 3:
            yield box
            continue
        yield box._replace(bottom=box.top + 2 * _EDGE)
        yield box._replace(top=box.bottom - 2 * _EDGE)
        yield box._replace(right=box.left + 2 * _EDGE)
        yield box._replace(left=box.right - 2 * _EDGE)


def labelled(placed: Sequence[PlacedLabel]) -> Iterator[Element]:
    for label in placed:
        yield shape("g", _written(label), class_="label")


def _written(label: PlacedLabel) -> Iterator[Element]:
    if label.leader:
        yield line(*label.leader, 0.12, class_="leader")
    size, x = label.asked.size, label.box.centre[0]
    for row, text in enumerate(label.asked.lines):
        y = label.box.top + size * (LEADING * row + 0.85)
        style = {"font_style": "italic"} if text.startswith(STATE) else {}
        yield words(text, (x, y), size, font_family=SANS, text_anchor="middle", **style)
