"""What stands under a drawing: scale bar, what the marks mean, names, and the parts that are not drawn."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from intent.drawings.captions import bare, state_words
from intent.drawings.lettering import FIGURES, LEADING, NOTE, broken, prose_width
from intent.drawings.patterns import Channel
from intent.drawings.plane import Point
from intent.drawings.sheet import Sheet
from intent.drawings.stage import Item, Unplaced
from intent.drawings.strokes import GHOST, drawn, stroke_of
from intent.drawings.svg import SERIF, Element, closed, line, path, shape, solid, words
from intent.language.locale import Locale
from intent.language.message import Words, joined, named, say
from intent.variance.result import Verdict

ROW = 5.4
_SWATCH, _HIGH, _BESIDE = 6.4, 3.6, 1.6
_APART = 9.0
"""Millimetres that the figures under a scale bar need between them."""
_BARS = (20.0, 10.0, 5.0, 2.0, 1.0, 0.5, 0.2, 0.1)
"""Metres that a scale bar may have; it takes at most a third of the width."""


@dataclass(frozen=True, slots=True)
class LegendEntry:
    """A sample and what it means."""

    text: str
    sample: Callable[[Point, str], Sequence[Element]]
    """Drawn with its top left at a point of the paper, with the patterns of the drawing of some name."""


def scale_bar(sheet: Sheet, at: Point, locale: Locale) -> Element:
    """Blocks of black and white with 0, the middle and the whole length written under them."""
    whole = next((one for one in _BARS if one * sheet.unit <= sheet.width / 3), _BARS[-1])
    step = whole * sheet.unit / 4
    x, y = at
    blocks = [
        solid(
            closed(
                (
                    (x + k * step, y),
                    (x + (k + 1) * step, y),
                    (x + (k + 1) * step, y + 1),
                    (x + k * step, y + 1),
                )
            )
        )
        for k in (0, 2)
    ]
    frame = path(closed(((x, y), (x + 4 * step, y), (x + 4 * step, y + 1), (x, y + 1))), 0.18)
    figures = [("0", 0.0), (bare(whole / 2, locale), 2.0), (f"{bare(whole, locale)} m", 4.0)]
    if 2 * step < _APART:
        del figures[1]
    texts = [
        words(text, (x + place * step, y + 4.1), FIGURES, font_family="sans-serif", text_anchor="middle")
        for text, place in figures
    ]
    return shape("g", blocks, frame, texts, class_="scale-bar")


def entries_drawn(
    entries: Iterable[LegendEntry], box: tuple[float, float, float], prefix: str
) -> tuple[list[Element], float]:
    """Samples with their meanings, in rows from a left and a top, as wide as the room; and where they end."""
    left, top, room = box
    x, y, deep, made = left, top, ROW, list[Element]()
    for entry in entries:
        lines = list(broken(entry.text, NOTE, room - _SWATCH - _BESIDE))
        wide = _SWATCH + _BESIDE + max(prose_width(one, NOTE) for one in lines)
        if x > left and x + wide > left + room:
            x, y, deep = left, y + deep, ROW
        made += entry.sample((x, y), prefix)
        for row, one in enumerate(lines):
            at = (x + _SWATCH + _BESIDE, y + _HIGH - 0.9 + row * NOTE * LEADING)
            made.append(words(one, at, NOTE, font_family=SERIF))
        deep = max(deep, ROW + (len(lines) - 1) * NOTE * LEADING)
        x += wide + 5
    return made, y + deep if made else top


def channel_entry(channel: Channel, locale: Locale) -> LegendEntry:
    def sample(at: Point, prefix: str) -> Sequence[Element]:
        corners = _swatch(at)
        return [
            shape("path", d=closed(corners), fill=channel.fill(prefix), stroke="none"),
            path(closed(corners), 0.14),
        ]

    return LegendEntry(locale.say(_channel(channel)), sample)


def _channel(channel: Channel) -> Words:
    return say("channel {name}", name=channel.name)


def verdict_entry(verdict: Verdict | None, text: str) -> LegendEntry:
    """The outline of a verdict; of no verdict, that of what is left out."""
    stroke = stroke_of(verdict) if verdict else GHOST

    def sample(at: Point, _prefix: str) -> Sequence[Element]:
        return list(drawn(_swatch((at[0] + 0.5, at[1] + 0.4), -1.0, -0.8), stroke))

    return LegendEntry(text, sample)


def wedge_entry(text: str, is_open: bool) -> LegendEntry:
    def sample(at: Point, _prefix: str) -> Sequence[Element]:
        x, y = at[0] + _SWATCH / 2, at[1] + 0.3
        triangle = closed(((x, y), (x + 1.2, y + 2.4), (x - 1.2, y + 2.4)))
        if is_open:
            return [path(triangle, 0.22, stroke_linejoin="round")]
        return [line((x - 2.6, y), (x + 2.6, y), 0.55), solid(triangle)]

    return LegendEntry(text, sample)


def _swatch(at: Point, wider: float = 0.0, higher: float = 0.0) -> tuple[Point, ...]:
    x, y = at
    wide, high = _SWATCH + wider, _HIGH + higher
    return (x, y), (x + wide, y), (x + wide, y + high), (x, y + high)


def paragraph(text: str, left: float, top: float, room: float, **look: str) -> tuple[list[Element], float]:
    """A text in lines; and where the next one may stand."""
    y, made = top, list[Element]()
    for one in broken(text, NOTE, room):
        y += NOTE * LEADING
        made.append(words(one, (left, y), NOTE, font_family=SERIF, **look))
    return made, y + 1.3 if made else top


def names_of(items: Iterable[Item]) -> str:
    """`T1 long table; T2 dresser`: the names of what is drawn, but for displays."""
    return "; ".join(f"{item.identifier} {item.name}" for item in items if item.name and not item.is_display)


def departing_of(items: Iterable[Item]) -> Iterator[Words]:
    """`unknown: M1, M4 and M7`, where there is no room for the word at each part."""
    alike: dict[Words, list[str]] = {}
    for item in items:
        alike.setdefault(state_words(item), []).append(item.identifier)
    yield from (_of(state, parts) for state, parts in alike.items() if state)


def shown_by(items: Sequence[Item], channels: Mapping[Words, Channel]) -> Iterator[Words]:
    """`channel A: M1 and M4`."""
    for channel in channels.values():
        parts = [item.identifier for item in items if item.is_display and item.channel == channel.name]
        if parts:
            yield _of(_channel(channel), parts)


def _of(what: Words, parts: Sequence[str]) -> Words:
    return say("{what}: {parts}.", what=what, parts=tuple(parts))


def undrawn(unplaced: Iterable[Unplaced]) -> Iterator[Words]:
    """One sentence for all parts that lack the same: `Not drawn, for want of position: …`."""
    alike: dict[tuple[Words, ...], list[Unplaced]] = {}
    for part in unplaced:
        alike.setdefault(part.missing, []).append(part)
    for missing, parts in alike.items():
        listed = joined(map(_named, parts), "; ")
        yield say("Not drawn, for want of {missing}: {parts}.", missing=missing, parts=listed)


def _named(part: Unplaced) -> Words:
    state = state_words(part)
    name = joined([part.identifier, part.name or named(part.kind)])
    return say("{name} ({role})", name=name, role=state) if state else name


def marked_only(items: Iterable[Item]) -> Iterator[Words]:
    """What would have to be given for parts to be drawn with their outline, those that lack the same together."""
    alike: dict[tuple[Words, ...], list[str]] = {}
    for item in items:
        is_whole = item.outline or (item.screen and item.screen.picture and not item.is_picture)
        if item.missing and not is_whole:
            alike.setdefault(item.missing, []).append(item.identifier)
    for missing, parts in alike.items():
        yield say("Not given of {parts}: {missing}.", parts=tuple(parts), missing=missing)
