"""What is written at each part: its identifier, and the word of its verdict where there is room for it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from intent.drawings.captions import state_words
from intent.drawings.depicted import Depicted
from intent.drawings.glyphs import Glyph
from intent.drawings.ground import ceiling_at, person_at
from intent.drawings.labels import Asked, Ground, Laid, Lettering, PlacedLabel, Spot, placed_at, placed_in
from intent.drawings.leaders import placed_aside
from intent.drawings.lettering import LABEL, LEADING
from intent.drawings.occupied import Occupied
from intent.drawings.plane import Box, around, outline
from intent.drawings.sheet import ABOVE
from intent.drawings.silhouette import Silhouette, hidden_of, silhouette_of
from intent.drawings.stage import Item, View
from intent.drawings.svg import SANS, Element, circle, line, printable, shape, words
from intent.drawings.thrown import thrown_over
from intent.language.message import say

STATE = "\N{ZERO WIDTH SPACE}"
"""Begins a line that is the word of a verdict; it is not printed."""
TOGETHER = 3
"""How many parts at one place are named in one line; more have a line each."""
PASSES = ((placed_in,), 1), ((placed_at, placed_in), 2), ((placed_aside,), 2)
"""The ways in which labels are tried, one after another, and how many wordings of each."""
_END = 0.32
"""Half the dot in which a line from a label ends, in millimetres."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Lettered:
    """The labels of a drawing, and what they leave out."""

    placed: tuple[PlacedLabel, ...]
    hidden: tuple[Item, ...] = ()
    """Parts that cannot be seen for what stands in front of them."""
    unlabelled: tuple[Item, ...] = ()
    """Parts that are seen, and of which no label would be told for theirs alone."""
    unsaid: tuple[Item, ...] = ()
    """Parts at which there is no room for the word of their verdict."""


def labels_of(
    subject: Depicted, glyphs: Sequence[Glyph], nearer: Mapping[str, tuple[Glyph, ...]]
) -> Lettered:
    """The labels of all parts that can be seen, those of displays first; parts at one place share a label."""
    silhouettes = {one.item.identifier: silhouette_of(one, nearer[one.item.identifier]) for one in glyphs}
    hidden = hidden_of(tuple(silhouettes.values()))
    groups = list(_by_place(glyphs, hidden, subject.sheet.view))
    behind = _behind(nearer)
    seen = {part: one for part, one in silhouettes.items() if part not in hidden}
    labels = [Asked(_spot(group, seen, behind), _wordings(subject, group)) for group in groups]
    laid = _placed(labels, _ground(subject, seen))
    items = [[glyph.item for glyph in group] for group in groups]
    full = {number for number, label in laid.placed.items() if label.lettering == labels[number].wordings[0]}
    return Lettered(
        placed=tuple(laid.placed[number] for number in sorted(laid.placed)),
        hidden=tuple(glyph.item for glyph in glyphs if glyph.item.identifier in hidden - _named(groups)),
        unlabelled=tuple(
            one for number, group in enumerate(items) if number not in laid.placed for one in group
        ),
        unsaid=tuple(one for number, group in enumerate(items) if number not in full for one in group),
    )


def _placed(labels: Sequence[Asked], ground: Ground) -> Laid:
    """Every label in the first way that serves it: all those that fit go before any that must be moved aside."""
    laid = Laid(ground)
    for ways, most in PASSES:
        for number, label in enumerate(labels):
            if number in laid.placed:
                continue
            found = (way(label, wording, laid) for wording in label.wordings[:most] for way in ways)
            first = next((one for one in found if one), None)
            if first:
                laid.put(number, first)
    return laid


def _by_place(glyphs: Sequence[Glyph], hidden: frozenset[str], view: View) -> Iterator[list[Glyph]]:
    """The parts that can be seen; from above, with them those that stand exactly under them."""
    alike: dict[object, list[Glyph]] = {}
    for glyph in sorted(glyphs, key=lambda glyph: not glyph.item.is_display):
        if view is View.PLAN or glyph.item.identifier not in hidden:
            alike.setdefault(_together(glyph), []).append(glyph)
    yield from (group for group in alike.values() if not _named([group]) <= hidden)


def _named(groups: Iterable[Iterable[Glyph]]) -> frozenset[str]:
    return frozenset(glyph.item.identifier for group in groups for glyph in group)


def _together(glyph: Glyph) -> object:
    """What is seen edge on shares a label with all that is at its place; a face only with what covers it."""
    x, y = around(glyph.edge).centre
    if len(glyph.edge) == 2 and glyph.item.is_display:
        return round(x), round(y)
    return glyph.edge, glyph.item.is_display


def _behind(nearer: Mapping[str, tuple[Glyph, ...]]) -> dict[str, frozenset[str]]:
    """What each part hides."""
    found: dict[str, set[str]] = {}
    for part, others in nearer.items():
        for other in others:
            found.setdefault(other.item.identifier, set()).add(part)
    return {part: frozenset(hidden) for part, hidden in found.items()}


def _spot(
    group: Sequence[Glyph], silhouettes: Mapping[str, Silhouette], behind: Mapping[str, frozenset[str]]
) -> Spot:
    """What the label of some parts names: the foremost or largest of them, where it may stand in its picture."""
    glyph = max(
        group, key=lambda one: (one.item.identifier in silhouettes, one.extent.width, one.extent.height)
    )
    part = glyph.item.identifier
    face = glyph.face or glyph.edge
    has_seat = silhouettes[part].is_filled and len(face) > 2
    return Spot(
        parts=tuple(one.item.identifier for one in group),
        silhouette=silhouettes[part],
        within=outline(face) if has_seat else (),
        avoid=(around(glyph.wedge),) if has_seat and glyph.wedge else (),
        behind=behind.get(part, frozenset()),
    )


def _ground(subject: Depicted, silhouettes: Mapping[str, Silhouette]) -> Ground:
    sheet = subject.sheet
    if sheet.view is View.ELEVATION:
        standing, bottom = [*ceiling_at(sheet, subject.stage.room)], sheet.drawn.bottom - 0.4
        standing += [person_at(sheet)] if sheet.has_person else []
    else:
        x, y = sheet.at((0.0, 0.0, 0.0))
        standing, bottom = [Box(x, y, x, y).grown(1)], sheet.drawn.bottom
    bounds = Box(sheet.drawn.left - 2.5, sheet.drawn.top - ABOVE, sheet.width - 2, bottom)
    obstacles = Occupied((*standing, *thrown_over(subject.stage.seen(sheet.view), sheet)))
    for part, silhouette in silhouettes.items():
        for piece in silhouette.pieces:
            obstacles.add(piece, part)
    return Ground(bounds=bounds, obstacles=obstacles, silhouettes=silhouettes)


def _wordings(subject: Depicted, group: Sequence[Glyph]) -> tuple[Lettering, ...]:
    """With the word of the verdict; and without it."""
    written = (tuple(_lines(subject, group, has_states)) for has_states in (True, False))
    return tuple(Lettering(lines=lines, size=LABEL) for lines in dict.fromkeys(written))


def _lines(subject: Depicted, group: Sequence[Glyph], has_states: bool) -> Iterator[str]:
    """The parts that stand alike together, with the word below them."""
    alike: dict[tuple[str, bool], list[str]] = {}
    for glyph in group:
        state = subject.locale.say(state_words(glyph.item)) if has_states else ""
        alike.setdefault((state, glyph.item.is_picture), []).append(glyph.item.called)
    for (state, is_picture), parts in alike.items():
        for text in (", ".join(parts),) if len(parts) <= TOGETHER else parts:
            yield subject.locale.say(say("picture of {part}", part=text)) if is_picture else text
        if state:
            yield STATE + state


def labelled(placed: Sequence[PlacedLabel]) -> Iterator[Element]:
    for label in placed:
        names = printable(" ".join(label.spot.parts))
        yield shape("g", _written(label), class_="label", data_names=names)


def _written(label: PlacedLabel) -> Iterator[Element]:
    if label.leader:
        yield line(*label.leader, 0.14, class_="leader")
        yield circle(label.leader[1], _END, 0, fill="currentColor", stroke="none")
    size, x = label.lettering.size, label.box.centre[0]
    for row, text in enumerate(label.lettering.lines):
        y = label.box.top + size * (LEADING * row + 0.85)
        style = {"font_style": "italic"} if text.startswith(STATE) else {}
        yield words(text, (x, y), size, font_family=SANS, text_anchor="middle", **style)
