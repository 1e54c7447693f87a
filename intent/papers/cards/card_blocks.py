"""The things on a card, each made as an element with its height."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from intent.language.locale import Locale
from intent.language.message import closed, joined, opened, quoted, say
from intent.papers.cards.card import ArtistWords, CardRow, Placement, Prohibition
from intent.papers.cards.card_drawings import drawings, layout_of, turn_arrow
from intent.papers.cards.fitting import BODY, QUOTE, ROOM, SMALL, CardBlock, drawing_height, text_height
from intent.papers.cards.whereabouts import Whereabouts
from intent.papers.elements import Element, element, unbroken
from intent.papers.verdict_words import ground_words

LABEL = 16.0
"""Millimetres of the labels at the left."""
_ARROW, _FRAME, _FRAME_HIGH, _FRAME_UNSETTLED = 14.0, 2.7, 1.9, 3.0
_TURN, _TURN_HIGH = 38.0, 15.0
"""Millimetres of the arrow with the words beside it."""
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
    """Which way up, with an arrow to the part's top and in words; and beside it how far from where."""
    turned = list(_turned(card, locale))
    wide = ROOM - (_TURN if turned else 0)
    measured = [_row(card.position, locale, wide)] if card.position else []
    heights = [*([_TURN_HIGH] if turned else []), *(block.height for block in measured)]
    if heights:
        class_ = "placed turned" if turned else "placed"
        inner = [block.element for block in measured]
        yield CardBlock(element("div", turned, inner, class_=class_), max(heights))
    if card.position and card.position.note:
        yield _small(locale.say(card.position.note), "small note")


def _turned(card: Placement, locale: Locale) -> Iterator[Element]:
    if card.turn_words:
        arrow = [turn_arrow(card.turn, _ARROW)] if card.turn is not None else []
        label = element("span", locale.say(opened(card.turn_label)), class_="label")
        yield element("p", arrow, label, element("strong", locale.say(card.turn_words)), class_="turn")


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
    what = locale.say(opened(one.what))
    source = locale.say(joined([one.line, ground_words(one.ground)], ", "))
    under = f", {locale.say(one.conditions)}" if one.conditions else ""
    permitted = [locale.say(text) for text in one.permitted]
    below = [element("span", text, class_="small line") for text in permitted]
    item = element("li", element("strong", what), f"{under} ({source})", below)
    return item, [f"{what}{under} ({source})", *permitted]


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
