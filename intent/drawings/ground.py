"""Where the room begins: the floor with a person on it, or the origin and the viewer's side."""

from __future__ import annotations

from collections.abc import Iterator

from intent.drawings.captions import PERSON, VIEWER, metres
from intent.drawings.lettering import LABEL, NOTE, prose_width
from intent.drawings.person import person
from intent.drawings.plane import Box
from intent.drawings.sheet import PERSON_HEIGHT, PERSON_ROOM, Sheet
from intent.drawings.stage import Room, View
from intent.drawings.svg import SANS, SERIF, Element, circle, line, path, words
from intent.language.locale import Locale
from intent.language.message import say

_THIN = 0.14
_ARM = 2.4
VIEWER_ROOM = 6.0
"""Millimetres below a plan for the viewer's side."""


def person_at(sheet: Sheet) -> Box:
    """The paper that the standing person takes up, with the height written above."""
    high, x = PERSON_HEIGHT * sheet.unit, sheet.drawn.right - PERSON_ROOM * sheet.unit * 0.42
    level, half = sheet.at((0.0, 0.0, 0.0))[1], max(0.16 * high, 3.0)
    return Box(x - half, level - high - 3.5, x + half, level)


def floor(sheet: Sheet, locale: Locale) -> Iterator[Element]:
    """The finished floor, and a standing person for the height."""
    drawn, level = sheet.drawn, sheet.at((0.0, 0.0, 0.0))[1]
    yield line((drawn.left - 2, level), (drawn.right, level), 0.4, class_="floor")
    if not sheet.has_person:
        return
    x, high = person_at(sheet).centre[0], PERSON_HEIGHT * sheet.unit
    yield person((x, level), high)
    at = (x, level - high - 1.2)
    yield words(locale.say(PERSON), at, LABEL, font_family=SANS, text_anchor="middle")


def ceiling(sheet: Sheet, room: Room, locale: Locale) -> Iterator[Element]:
    """The ceiling with its height, where it is not far above what is drawn."""
    for box, high in _ceiling(sheet, room):
        yield line((box.left, box.bottom), (box.right, box.bottom), 0.4, class_="ceiling")
        text = locale.say(say("ceiling {height} m", height=metres(high, locale)))
        yield words(text, (box.right, box.bottom - 1), LABEL, font_family=SANS, text_anchor="end")


def ceiling_at(sheet: Sheet, room: Room) -> Iterator[Box]:
    """The paper that it takes, with what is written on it."""
    for box, _ in _ceiling(sheet, room):
        yield box.grown(0.3)


def _ceiling(sheet: Sheet, room: Room) -> Iterator[tuple[Box, float]]:
    if room.ceiling is not None and sheet.has_person and -room.ceiling >= sheet.room.top - 1e-6:
        drawn, level = sheet.drawn, sheet.at((0.0, room.ceiling, 0.0))[1]
        yield Box(drawn.left - 2, level - LABEL - 1, drawn.right, level), room.ceiling


def origin(sheet: Sheet) -> Iterator[Element]:
    """A ringed cross at the zero of a plan."""
    x, y = sheet.at((0.0, 0.0, 0.0))
    yield line((x - _ARM, y), (x + _ARM, y), _THIN, class_="origin")
    yield line((x, y - _ARM), (x, y + _ARM), _THIN, class_="origin")
    yield circle((x, y), 0.9, _THIN)


def viewer(sheet: Sheet, locale: Locale) -> Iterator[Element]:
    """An arrow from the side from which the elevation is seen."""
    text = locale.say(VIEWER)
    x, y = sheet.drawn.centre[0] - prose_width(text, NOTE) / 2, sheet.drawn.bottom + 4
    yield path(f"M{x - 2:.2f} {y:.2f}v-3.2m-.9 1.3l.9 -1.3l.9 1.3", 0.2)
    yield words(text, (x, y), NOTE, font_family=SERIF, font_style="italic")


def grounds(sheet: Sheet, room: Room, locale: Locale) -> Iterator[Element]:
    if sheet.view is View.ELEVATION:
        yield from floor(sheet, locale)
        yield from ceiling(sheet, room, locale)
    else:
        yield from origin(sheet)
        yield from viewer(sheet, locale)
