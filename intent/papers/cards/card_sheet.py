"""The cards as one page to print and cut: four to a sheet of A4, or a sheet of small labels."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from importlib.resources import files
from itertools import islice

from intent.drawings.lettering import prose_width
from intent.language.message import Tongue, joined
from intent.papers.cards.blocks import blocks_of, turn_arrow
from intent.papers.cards.card import Deck, Placement
from intent.papers.cards.fitting import Block, cards_of
from intent.papers.cards.square_code import square_code
from intent.papers.cards.whereabouts import Whereabouts
from intent.papers.elements import Element, element
from intent.papers.standing_page import head, page_text

SHEETS = ("four", "labels")
_FOUR, _LABELS = 4, 24
_CUTS = ("top", "right", "bottom", "left", "middle")
_LABEL_ARROW = 9.0
_NAME, _NAME_ROOM = 4.0, 58.0


def write_cards(deck: Deck, where: Whereabouts, sheet: str, tongue: Tongue) -> str:
    """The whole page as text; ``sheet`` is one of `SHEETS`."""
    if sheet == "labels":
        made: list[Element] = [_label(card, deck, tongue) for card in deck.cards]
        sheets = list(_sheets(made, _LABELS, "labels"))
    else:
        made = [one for card in deck.cards for one in _cards(card, deck, where, tongue)]
        sheets = list(_sheets(made, _FOUR, "four"))
    title = tongue.say(
        "{work}: placement cards for {installation}", work=deck.work, installation=deck.installation
    )
    style = files("intent.papers.cards").joinpath("cards.css").read_text(encoding="utf-8")
    body = element("body", element("main", element("h1", title, class_="unseen"), sheets))
    return page_text(head(title, style, is_dark_too=False), body, tongue.language, is_indented=False)


def _sheets(made: Sequence[Element], on_each: int, class_: str) -> Iterator[Element]:
    waiting = iter(made)
    while one := list(islice(waiting, on_each)):
        yield element(
            "div",
            one,
            [_cut(side) for side in ("top", "right", "bottom", "left", "middle")],
            class_=f"sheet {class_}",
        )


def _cut(side: str) -> Element:
    """A mark by which to cut."""
    return element("i", class_=f"cut {side}", aria_hidden="true")


def _cards(card: Placement, deck: Deck, where: Whereabouts, tongue: Tongue) -> Iterator[Element]:
    """One card; where it cannot hold everything, those that go on."""
    every = cards_of(blocks_of(card, where, tongue))
    for place, blocks in enumerate(every, start=1):
        yield _card(card, deck, blocks, (place, len(every)), tongue)


def _card(
    card: Placement, deck: Deck, blocks: Iterable[Block], place: tuple[int, int], tongue: Tongue
) -> Element:
    name = f"card-{card.identifier}" + (f"-{place[0]}" if place[0] > 1 else "")
    known = tongue.tell(joined([card.kind, card.standing], ", "))
    number = tongue.say("card {place} of {all}", place=place[0], all=place[1]) if place[1] > 1 else ""
    heading = element(
        "header",
        element(
            "h2",
            element("span", card.identifier, class_="identifier"),
            " ",
            element("span", card.name or card.kind, class_=_name_class(card)),
            id=name,
        ),
        element("p", " · ".join(filter(None, (known, number))), class_="small"),
    )
    title = tongue.say("The identifier of {part} in the record: {iri}", part=card.identifier, iri=card.iri)
    code = square_code(card.iri, f"code-{name}", title)
    body = element("div", [block.element for block in blocks], class_="told")
    return element("article", heading, code, body, _foot(deck, tongue), class_="card", aria_labelledby=name)


def _name_class(card: Placement) -> str:
    """A long name in smaller type, so that it stays on its line."""
    return "name" if prose_width(card.name or card.kind, _NAME) <= _NAME_ROOM else "name long"


def _foot(deck: Deck, tongue: Tongue) -> Element:
    """Of which work and which showing the card is."""
    return element(
        "footer",
        element("p", element("em", deck.work), f" · {deck.byline}" if deck.byline else ""),
        element("p", f"{deck.installation}. {tongue.tell(deck.occasion)}", class_="small"),
    )


def _label(card: Placement, deck: Deck, tongue: Tongue) -> Element:
    """A small label: what it is, which way up, and the code."""
    name = f"label-{card.identifier}"
    title = tongue.say("The identifier of {part} in the record: {iri}", part=card.identifier, iri=card.iri)
    arrow = [turn_arrow(card.turn, _LABEL_ARROW)] if card.turn is not None else []
    turn = (
        [element("p", arrow, element("span", tongue.tell(card.turn_words)), class_="turned")]
        if card.turn_words
        else []
    )
    told = element(
        "div",
        element("h2", card.identifier, id=name),
        element("p", card.name or card.kind, class_="name"),
        turn,
        element("p", deck.work, class_="small work"),
    )
    return element(
        "article", told, square_code(card.iri, f"code-{name}", title), class_="tag", aria_labelledby=name
    )
