"""The cards as one page to print and cut: four to a sheet of A4, or a sheet of small labels."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from importlib.resources import files
from itertools import islice

from intent.drawings.lettering import prose_width
from intent.drawings.svg import Element as Drawn
from intent.language.calendar import day_words
from intent.language.locale import Locale
from intent.language.message import Words, closed, joined, say
from intent.papers.cards.card import Deck, Placement
from intent.papers.cards.card_blocks import blocks_of, rows_to_do
from intent.papers.cards.fitting import cards_of
from intent.papers.cards.set_drawing import way_up
from intent.papers.cards.square_code import square_code
from intent.papers.cards.whereabouts import Whereabouts
from intent.papers.elements import Element, element
from intent.papers.standing_page import head, page_text

_FOUR, _LABELS = 4, 24
"""How many cards, and how many labels, are on a sheet of A4."""
_CUTS = ("top", "right", "bottom", "left", "middle")
_SET_WIDE, _SET_HIGH = 14.0, 10.5
"""Millimetres of the drawing on a label of a set as it lies."""
_NAME, _NAME_ROOM = 4.0, 58.0
"""Millimetres: the size of a name's type, and the room that a name has in it."""


def write_cards(deck: Deck, where: Whereabouts, sheet: str, locale: Locale) -> str:
    """The whole page as text; ``sheet`` is `four` or `labels`."""
    if sheet == "labels":
        labels = [_label(card, deck, locale) for card in deck.cards]
        sheets = _sheets(labels, _LABELS, "labels")
    else:
        cards = [one for card in deck.cards for one in _cards(card, deck, where, locale)]
        sheets = _sheets([*cards, *_duty_cards(deck, locale)], _FOUR, "four")
    title = locale.say(
        say("{work}: placement cards for {installation}", work=deck.work, installation=deck.installation)
    )
    style = files("intent.papers.cards").joinpath("cards.css").read_text(encoding="utf-8")
    body = element("body", element("main", element("h1", title, class_="unseen"), sheets))
    return page_text(head(title, style, is_dark_too=False), body, locale.tag, is_indented=False)


def _sheets(made: Sequence[Element], on_each: int, class_: str) -> Iterator[Element]:
    """The cards or labels sheet by sheet, with the marks by which to cut."""
    waiting = iter(made)
    while on_sheet := list(islice(waiting, on_each)):
        cuts = [element("i", class_=f"cut {side}", aria_hidden="true") for side in _CUTS]
        yield element("div", on_sheet, cuts, class_=f"sheet {class_}")


def _cards(card: Placement, deck: Deck, where: Whereabouts, locale: Locale) -> Iterator[Element]:
    """One card; where it cannot hold everything, those that go on."""
    every = cards_of(blocks_of(card, where, locale))
    for number, blocks in enumerate(every, start=1):
        name = f"card-{card.identifier}" + (f"-{number}" if number > 1 else "")
        counted = say("card {place} of {all}", place=number, all=len(every)) if len(every) > 1 else ""
        yield element(
            "article",
            _heading(card, name, counted, locale),
            _code(card, name, locale),
            element("div", [block.element for block in blocks], class_="told"),
            _foot(deck, locale),
            class_="card",
            aria_labelledby=name,
        )


def _duty_cards(deck: Deck, locale: Locale) -> Iterator[Element]:
    """What is to be done for the showing, on as many cards as it takes; none where there is nothing to do."""
    rows = rows_to_do(deck, locale)
    every = cards_of(rows) if rows else ()
    for number, blocks in enumerate(every, start=1):
        name = "card-to-be-done" + (f"-{number}" if number > 1 else "")
        counted = say("card {place} of {all}", place=number, all=len(every)) if len(every) > 1 else ""
        title = element("h2", element("span", locale.say(say("To be done")), class_="name"), id=name)
        beneath = [element("p", locale.say(counted), class_="small")] if counted else []
        yield element(
            "article",
            element("header", title, beneath),
            element("div", [block.element for block in blocks], class_="told"),
            _foot(deck, locale),
            class_="card",
            aria_labelledby=name,
        )


def _heading(card: Placement, name: str, counted: Words, locale: Locale) -> Element:
    """The part, and what it is; a long name in smaller type, so that it stays on its line."""
    called = locale.say(card.name)
    class_ = "name" if prose_width(called, _NAME) <= _NAME_ROOM else "name long"
    identifier = element("span", card.identifier, class_="identifier")
    known = joined([joined([card.kind, card.standing], ", "), counted], " · ")
    return element(
        "header",
        element("h2", identifier, " ", element("span", called, class_=class_), id=name),
        element("p", locale.say(known), class_="small"),
    )


def _code(card: Placement, name: str, locale: Locale) -> Drawn:
    """The code that leads from the card to the record."""
    title = say("The identifier of {part} in the record: {iri}", part=card.identifier, iri=card.iri)
    return square_code(card.iri, f"code-{name}", locale.say(title))


def _foot(deck: Deck, locale: Locale) -> Element:
    """Of which work and which showing the card is."""
    byline = locale.say(deck.byline)
    made = say("Made on {date}.", date=day_words(deck.made))
    showing = locale.say(joined([closed(deck.installation), closed(deck.occasion), made]))
    return element(
        "footer",
        element("p", element("em", deck.work), f" · {byline}" if byline else ""),
        element("p", showing, class_="small"),
    )


def _label(card: Placement, deck: Deck, locale: Locale) -> Element:
    """A small label: what it is, which way up, and the code."""
    name = f"label-{card.identifier}"
    lying = card.lying
    drawn = list(way_up(lying, _SET_WIDE, _SET_HIGH)) if lying else []
    words = [element("strong", locale.say(one), class_="line") for one in (lying.words if lying else ())]
    turn = element("div", drawn, element("div", words), class_="turned")
    told = element(
        "div",
        element("h2", card.identifier, id=name),
        element("p", locale.say(card.name), class_="name"),
        [turn] if lying else [],
        element("p", deck.work, class_="small work"),
    )
    return element("article", told, _code(card, name, locale), class_="tag", aria_labelledby=name)
