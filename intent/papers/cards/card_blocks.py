"""The things on a card, each made as an element with its height."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import partial

from intent.drawings.lettering import prose_width
from intent.language.locale import Locale
from intent.language.message import closed, joined, opened, quoted, say
from intent.papers.cards.card import ArtistWords, CardRow, Deck, Placement, Prohibition
from intent.papers.cards.card_drawings import drawings, layout_of
from intent.papers.cards.fitting import (
    BODY,
    LONGEST,
    QUOTE,
    ROOM,
    SMALL,
    CardBlock,
    drawing_height,
    pieces,
    text_height,
)
from intent.papers.cards.posture import Lying
from intent.papers.cards.set_drawing import way_up
from intent.papers.cards.whereabouts import Whereabouts
from intent.papers.elements import Element, element, unbroken
from intent.papers.verdict_words import ground_words

_LEAST_NAME, _NAME_ROOM = 2.8, 52.0
"""Millimetres: the smallest type that a name has in the heading, and the room for it beside an identifier."""
LABEL = 16.0
"""Millimetres of the labels at the left."""
_ARROW, _FRAME, _FRAME_HIGH, _FRAME_UNSETTLED = 14.0, 2.7, 1.9, 3.0
_SET_WIDE, _SET_HIGH = 27.0, 20.0
"""Millimetres of the drawing of a set as it lies."""
_LARGE, _LESS, _LARGE_ROOM = 6.0, 4.0, 62.0
"""Millimetres: the type that says which way up, that of all but the first words, and the room beside the drawing."""
_BETWEEN_LINES = 0.6


def blocks_of(card: Placement, where: Whereabouts, locale: Locale) -> tuple[CardBlock, ...]:
    """Everything on a part's cards under the heading, in its order."""
    told = (
        *_placed(card, locale),
        *_forbidden(card, locale),
        *(block for row in card.rows for block in _rows(row, locale)),
        *_spoken(card.quotation, locale),
        *_cautioned(card, locale),
    )
    warned = (*_name_in_full(card, locale), *_unsettled(card, locale))
    if not where.holds(card.identifier):
        undrawn = _small(locale.say(say("No position is given, so its place is not drawn.")))
        return (*warned, *undrawn, *told)
    layout = partial(layout_of, where)
    high = drawing_height(warned, told, lambda most: layout(most).height)
    return (*warned, drawings(card.identifier, where, layout(high), locale), *told)


def rows_to_do(deck: Deck, locale: Locale) -> tuple[CardBlock, ...]:
    """What is to be done for the showing, a row each."""
    return tuple(block for row in deck.duties for block in _rows(row, locale))


def _small(text: str, class_: str = "small") -> Iterator[CardBlock]:
    for piece in pieces(text, SMALL, ROOM):
        yield CardBlock(element("p", piece, class_=class_), text_height(piece, SMALL, ROOM))


def _name_in_full(card: Placement, locale: Locale) -> Iterator[CardBlock]:
    """A name that the heading has no room for, which there ends in dots."""
    called = locale.say(card.name)
    if prose_width(called, _LEAST_NAME) > _NAME_ROOM:
        yield from _small(called)


def _unsettled(card: Placement, locale: Locale) -> Iterator[CardBlock]:
    if card.unsettled:
        for text in pieces(locale.say(closed(card.unsettled)), BODY, ROOM - 2 * _FRAME):
            height = text_height(text, BODY, ROOM - 2 * _FRAME) + 2 * _FRAME_UNSETTLED
            yield CardBlock(element("p", text, class_="unsettled"), height)


def _placed(card: Placement, locale: Locale) -> Iterator[CardBlock]:
    """Which way up, drawn and in large words; with it, how far from where."""
    wide = _LARGE_ROOM if card.lying and card.lying.pose else ROOM
    measured = [_row(card.position, locale, wide)] if card.position else []
    if card.lying:
        yield _lying(card.lying, measured, locale)
    else:
        yield from measured
    if card.position and card.position.note:
        yield from _small(locale.say(card.position.note), "small note")


def _lying(lying: Lying, measured: Sequence[CardBlock], locale: Locale) -> CardBlock:
    """The drawing of the way up; beside it the words, the first of them the largest, and what is measured."""
    told = [locale.say(one) for one in lying.words]
    lines = [element("strong", text, class_="line") for text in told]
    sizes = [_LARGE, *[_LESS] * len(told)]
    room = _LARGE_ROOM if lying.pose else ROOM
    height = sum(text_height(text, size, room) for text, size in zip(told, sizes, strict=False))
    height += sum(block.height + _BETWEEN_LINES for block in measured)
    drawn = list(way_up(lying, _SET_WIDE, _SET_HIGH))
    class_ = "lying drawn" if drawn else "lying"
    inner = [block.element for block in measured]
    return CardBlock(
        element("div", drawn, lines, inner, class_=class_), max(height, _SET_HIGH if drawn else 0.0)
    )


def _rows(row: CardRow, locale: Locale) -> Iterator[CardBlock]:
    """A row; what is long goes on in another with the same label."""
    lines = [piece for line in row.lines for piece in pieces(locale.say(line), BODY, ROOM - LABEL)]
    held: list[str] = []
    for line in lines:
        if held and sum(text_height(one, BODY, ROOM - LABEL) for one in (*held, line)) > LONGEST:
            yield _row(CardRow(row.label, tuple(held)), locale)
            held = []
        held.append(line)
    yield _row(CardRow(row.label, tuple(held)), locale)


def _row(row: CardRow, locale: Locale, wide: float = ROOM) -> CardBlock:
    lines = [locale.say(line) for line in row.lines]
    room = wide - LABEL
    height = sum(text_height(line, BODY, room) for line in lines)
    told = [element("span", unbroken(line), class_="line") for line in lines]
    label = element("span", locale.say(opened(row.label)), class_="label")
    return CardBlock(element("div", label, element("div", told, class_="value"), class_="row"), height)


def _forbidden(card: Placement, locale: Locale) -> Iterator[CardBlock]:
    """What must not be done, in a frame; safety comes first in it, and what is long goes on in another frame."""
    room, title = ROOM - 2 * _FRAME, locale.say(say("Not to be done"))
    held: list[Element] = []
    height = least = text_height(title, BODY, room) + 2 * _FRAME_HIGH
    for item, high in (made for one in card.prohibitions for made in _prohibited(one, room, locale)):
        if held and height + high > LONGEST:
            yield _frame(title, held, height)
            held, height = [], least
        held.append(item)
        height += high
    if held:
        yield _frame(title, held, height)


def _frame(title: str, items: Sequence[Element], height: float) -> CardBlock:
    return CardBlock(element("div", element("h3", title), element("ul", items), class_="forbidden"), height)


def _prohibited(one: Prohibition, room: float, locale: Locale) -> Iterator[tuple[Element, float]]:
    """The sentence with its line and ground, and below it what is permitted all the same, each with its height."""
    what = locale.say(opened(closed(joined([one.what, one.conditions], ", "))))
    source = f" ({locale.say(joined([one.line, ground_words(one.ground)], ', '))})"
    *first, last = pieces(what, BODY, room)
    for piece in first:
        yield element("li", element("strong", piece)), text_height(piece, BODY, room) + _BETWEEN_LINES
    yield (
        element("li", element("strong", last), source),
        text_height(last + source, BODY, room) + _BETWEEN_LINES,
    )
    for text in one.permitted:
        for piece in pieces(locale.say(text), SMALL, room):
            yield element("li", piece, class_="small"), text_height(piece, BODY, room) + _BETWEEN_LINES


def _spoken(quotation: ArtistWords | None, locale: Locale) -> Iterator[CardBlock]:
    """The words, and who said them when and where; a long quotation goes on."""
    if quotation is None:
        return
    words, source = locale.say(quoted(quotation.words)), locale.say(quotation.source)
    *first, last = pieces(words, QUOTE, ROOM)
    for piece in first:
        yield CardBlock(element("blockquote", piece), text_height(piece, QUOTE, ROOM))
    height = text_height(last, QUOTE, ROOM) + text_height(source, SMALL, ROOM) + 1
    spoken = element("figure", element("blockquote", last), element("figcaption", source, class_="small"))
    yield CardBlock(spoken, height)


def _cautioned(card: Placement, locale: Locale) -> Iterator[CardBlock]:
    if card.cautions:
        told = say(
            "Cautions (in full in the report): {cautions}. Local codes and licensed practice come first.",
            cautions=joined(card.cautions, "; "),
        )
        yield from _small(locale.say(told))
