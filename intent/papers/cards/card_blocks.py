"""The things on a card, each made as an element with its height."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import partial

from intent.language.locale import Locale
from intent.language.message import closed, joined, opened, quoted, say
from intent.papers.cards.card import ArtistWords, CardRow, Placement, Prohibition
from intent.papers.cards.card_drawings import drawings, layout_of
from intent.papers.cards.fitting import BODY, QUOTE, ROOM, SMALL, CardBlock, drawing_height, text_height
from intent.papers.cards.posture import Lying
from intent.papers.cards.set_drawing import way_up
from intent.papers.cards.whereabouts import Whereabouts
from intent.papers.elements import Element, element, unbroken
from intent.papers.verdict_words import ground_words

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
        *(_row(row, locale) for row in card.rows),
        *_forbidden(card, locale),
        *_spoken(card.quotation, locale),
        *_cautioned(card, locale),
    )
    warned = tuple(_unsettled(card, locale))
    if not where.holds(card.identifier):
        undrawn = _small(locale.say(say("No position is given, so its place is not drawn.")))
        return (*warned, undrawn, *told)
    layout = partial(layout_of, where)
    high = drawing_height(warned, told, lambda most: layout(most).height)
    return (*warned, drawings(card.identifier, where, layout(high), locale), *told)


def _small(text: str, class_: str = "small") -> CardBlock:
    return CardBlock(element("p", text, class_=class_), text_height(text, SMALL, ROOM))


def _unsettled(card: Placement, locale: Locale) -> Iterator[CardBlock]:
    if card.unsettled:
        text = locale.say(closed(card.unsettled))
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
        yield _small(locale.say(card.position.note), "small note")


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


def _row(row: CardRow, locale: Locale, wide: float = ROOM) -> CardBlock:
    lines = [locale.say(line) for line in row.lines]
    room = wide - LABEL
    height = sum(text_height(line, BODY, room) for line in lines)
    told = [element("span", unbroken(line), class_="line") for line in lines]
    label = element("span", locale.say(opened(row.label)), class_="label")
    return CardBlock(element("div", label, element("div", told, class_="value"), class_="row"), height)


def _forbidden(card: Placement, locale: Locale) -> Iterator[CardBlock]:
    """One frame with all that must not be done; safety comes first in it."""
    if not card.prohibitions:
        return
    title = locale.say(say("Not to be done"))
    made = [_prohibition(one, locale) for one in card.prohibitions]
    room = ROOM - 2 * _FRAME
    height = text_height(title, BODY, room) + 2 * _FRAME_HIGH
    height += sum(text_height(text, BODY, room) + _BETWEEN_LINES for _, texts in made for text in texts)
    items = element("ul", [item for item, _ in made])
    yield CardBlock(element("div", element("h3", title), items, class_="forbidden"), height)


def _prohibition(one: Prohibition, locale: Locale) -> tuple[Element, list[str]]:
    """The item, and its texts line by line for the height."""
    what = locale.say(opened(closed(joined([one.what, one.conditions], ", "))))
    source = locale.say(joined([one.line, ground_words(one.ground)], ", "))
    permitted = [locale.say(text) for text in one.permitted]
    below = [element("span", text, class_="small line") for text in permitted]
    item = element("li", element("strong", what), f" ({source})", below)
    return item, [f"{what} ({source})", *permitted]


def _spoken(quotation: ArtistWords | None, locale: Locale) -> Iterator[CardBlock]:
    """The words, and who said them when and where."""
    if quotation is None:
        return
    words, source = locale.say(quoted(quotation.words)), locale.say(quotation.source)
    height = text_height(words, QUOTE, ROOM) + text_height(source, SMALL, ROOM) + 1
    spoken = element("figure", element("blockquote", words), element("figcaption", source, class_="small"))
    yield CardBlock(spoken, height)


def _cautioned(card: Placement, locale: Locale) -> Iterator[CardBlock]:
    if card.cautions:
        told = say(
            "Cautions (in full in the report): {cautions}. Local codes and licensed practice come first.",
            cautions=joined(card.cautions, "; "),
        )
        yield _small(locale.say(told))
