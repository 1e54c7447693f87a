"""The things on a card, each made as an element with its height."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from intent.drawings.stage import View
from intent.drawings.svg import Element as Drawn
from intent.drawings.svg import circle, number, path, shape, solid
from intent.language.message import Tongue, joined
from intent.papers.cards.card import CardRow, Placement, Prohibition, Words
from intent.papers.cards.fitting import (
    BODY,
    GAP,
    HEIGHTS,
    QUOTE,
    ROOM,
    SMALL,
    Block,
    drawing_height,
    text_height,
)
from intent.papers.cards.whereabouts import Whereabouts
from intent.papers.elements import Element, element, unbroken
from intent.papers.wording import opening, quoted

LABEL = 16.0
"""Millimetres of the labels at the left."""
_ARROW, _FRAME, _FRAME_HIGH, _FRAME_UNSETTLED = 14.0, 2.7, 1.9, 3.0
_TURN, _TURN_HIGH = 38.0, 15.0
"""Millimetres of the arrow with the words beside it."""
_BETWEEN, _BETWEEN_LINES = 5.0, 0.6
_TALL = 0.4
"""From this height on, as a share of its width, an elevation leaves room beside it for the plan."""


def blocks_of(card: Placement, where: Whereabouts, tongue: Tongue) -> tuple[Block, ...]:
    """Everything on a part's cards under the heading, in its order."""
    told = (
        *_placed(card, tongue),
        *(_row(row, tongue) for row in card.rows),
        *_forbidden(card, tongue),
        *_spoken(card.quotation, tongue),
        *_cautioned(card, tongue),
    )
    warned = tuple(_unsettled(card, tongue))
    if not where.holds(card.identifier):
        return (*warned, _undrawn(tongue), *told)

    def layout(high: float) -> Layout:
        return _layout(where.size(View.ELEVATION), where.size(View.PLAN), high)

    high = drawing_height(warned, told, lambda high: Block(element("div"), layout(high).height))
    return (*warned, _drawn(card, where, layout(high), tongue), *told)


def _unsettled(card: Placement, tongue: Tongue) -> Iterator[Block]:
    if card.unsettled:
        text = tongue.tell(card.unsettled) + "."
        height = text_height(text, BODY, ROOM - 2 * _FRAME) + 2 * _FRAME_UNSETTLED
        yield Block(element("p", text, class_="unsettled"), height)


@dataclass(frozen=True, slots=True, kw_only=True)
class Layout:
    """Which views are drawn, how large, and how."""

    views: tuple[View, ...]
    scale: float
    height: float
    is_beside: bool = False


def _undrawn(tongue: Tongue) -> Block:
    text = tongue.say("No position is given, so its place is not drawn.")
    return Block(element("p", text, class_="small"), text_height(text, SMALL, ROOM))


def _drawn(card: Placement, where: Whereabouts, layout: Layout, tongue: Tongue) -> Block:
    """From the front and from above, as large as the card allows."""
    sizes = [(view, where.size(view)) for view in layout.views]
    drawn = [_scaled(where.draw(card.identifier, view, tongue), size, layout.scale) for view, size in sizes]
    class_ = "drawings beside" if layout.is_beside else "drawings"
    return Block(element("div", drawn, class_=class_), layout.height)


def _layout(front: tuple[float, float], above: tuple[float, float], high: float) -> Layout:
    """Both views one above another where there is room, else side by side, else the elevation alone."""
    both = (View.ELEVATION, View.PLAN)
    full = min(ROOM / front[0], ROOM / above[0], HEIGHTS[0] / front[1])
    stacked = full * (front[1] + above[1]) + GAP
    if stacked <= high:
        return Layout(views=both, scale=full, height=stacked)
    tallest = max(front[1], above[1])
    if front[1] > _TALL * front[0]:
        half = min((ROOM - _BETWEEN) / (front[0] + above[0]), high / tallest)
        return Layout(views=both, scale=half, height=half * tallest, is_beside=True)
    alone = min(full, high / front[1])
    return Layout(views=(View.ELEVATION,), scale=alone, height=alone * front[1])


def _scaled(drawing: Drawn, size: tuple[float, float], scale: float) -> Drawn:
    drawing.set("width", f"{number(size[0] * scale)}mm")
    drawing.set("height", f"{number(size[1] * scale)}mm")
    return drawing


def _placed(card: Placement, tongue: Tongue) -> Iterator[Block]:
    """Which way up, with an arrow to the part's top and in words; and beside it how far from where."""
    turned = list(_turned(card, tongue))
    wide = ROOM - (_TURN if turned else 0)
    measured = [_row(card.position, tongue, wide)] if card.position else []
    heights = [*([_TURN_HIGH] if turned else []), *(block.height for block in measured)]
    if heights:
        class_ = "placed turned" if turned else "placed"
        inner = [block.element for block in measured]
        yield Block(element("div", turned, inner, class_=class_), max(heights))
    if card.position and card.position.note:
        note = tongue.tell(card.position.note)
        yield Block(element("p", note, class_="small note"), text_height(note, SMALL, ROOM))


def _turned(card: Placement, tongue: Tongue) -> Iterator[Element]:
    if card.turn_words:
        arrow = [turn_arrow(card.turn, _ARROW)] if card.turn is not None else []
        label = element("span", tongue.tell(opening(card.turn_label)), class_="label")
        yield element("p", arrow, label, element("strong", tongue.tell(card.turn_words)), class_="turn")


def turn_arrow(turn: float, size: float) -> Drawn:
    """An arrow in a ring, from the part's foot to its top as they lie, seen from the front."""
    turned = shape(
        "g",
        path("M0 6.4V-2.6", 2.0),
        solid("M-3.6 -1.6L0 -7.4L3.6 -1.6Z"),
        transform=f"rotate({number(turn)})",
    )
    return shape(
        "svg",
        circle((0.0, 0.0), 9.3, 0.6),
        turned,
        class_="arrow",
        viewBox="-10 -10 20 20",
        width=f"{number(size)}mm",
        height=f"{number(size)}mm",
        aria_hidden="true",
    )


def _row(row: CardRow, tongue: Tongue, wide: float = ROOM) -> Block:
    lines = [tongue.tell(line) for line in row.lines]
    room = wide - LABEL
    height = sum(text_height(line, BODY, room) for line in lines)
    told = [element("span", unbroken(line), class_="line") for line in lines]
    label = element("span", tongue.tell(opening(row.label)), class_="label")
    return Block(element("div", label, element("div", told, class_="value"), class_="row"), height)


def _forbidden(card: Placement, tongue: Tongue) -> Iterator[Block]:
    """One frame with all that must not be done; safety comes first in it."""
    if not card.prohibitions:
        return
    title = tongue.say("Not to be done")
    made = [_prohibition(one, tongue) for one in card.prohibitions]
    room = ROOM - 2 * _FRAME
    height = text_height(title, BODY, room) + 2 * _FRAME_HIGH
    height += sum(text_height(text, BODY, room) + _BETWEEN_LINES for _, texts in made for text in texts)
    yield Block(
        element("div", element("h3", title), element("ul", [item for item, _ in made]), class_="forbidden"),
        height,
    )


def _prohibition(one: Prohibition, tongue: Tongue) -> tuple[Element, list[str]]:
    """The item, and its texts line by line for the height."""
    what = tongue.tell(opening(one.what))
    source = tongue.tell(joined([one.line, one.because], ", "))
    under = f", {_typeset(one.conditions)}" if one.conditions else ""
    permitted = [tongue.tell(text) for text in one.permitted]
    item = element(
        "li",
        element("strong", what),
        f"{under} ({source})",
        [element("span", text, class_="small line") for text in permitted],
    )
    return item, [f"{what}{under} ({source})", *permitted]


def _typeset(text: str) -> str:
    """A condition with the quotation marks of print."""
    opened = False
    signs = []
    for sign in text:
        if sign == '"':
            opened = not opened
            sign = "“" if opened else "”"
        signs.append(sign)
    return "".join(signs)


def _cautioned(card: Placement, tongue: Tongue) -> Iterator[Block]:
    if card.cautions:
        text = tongue.say(
            "Cautions (in full in the report): {cautions}. Local codes and licensed practice come first.",
            cautions="; ".join(card.cautions),
        )
        yield Block(element("p", text, class_="small"), text_height(text, SMALL, ROOM))


def _spoken(quotation: Words | None, tongue: Tongue) -> Iterator[Block]:
    """The words, and who said them when and where."""
    if quotation is None:
        return
    words = tongue.tell(quoted(quotation.words))
    said = tongue.tell(quotation.source)
    height = text_height(words, QUOTE, ROOM) + text_height(said, SMALL, ROOM) + 1
    spoken = element("figure", element("blockquote", words), element("figcaption", said, class_="small"))
    yield Block(spoken, height)
