"""The cards of a page, and what stands on those of one part."""

from __future__ import annotations

from lxml import html


def cards_in(page: str) -> list[html.HtmlElement]:
    return [card for card in html.fromstring(page).iter("article") if isinstance(card, html.HtmlElement)]


def part_of(card: html.HtmlElement) -> str:
    """The part; nothing where a card is about none."""
    return "".join(str(one.text_content()) for one in card.find_class("identifier")[:1])


def cards_by_part(page: str) -> dict[str, html.HtmlElement]:
    """The first card of each part, by identifier."""
    return {part_of(card): card for card in reversed(cards_in(page)) if part_of(card)}


def text_of(page: str, part: str) -> str:
    """All that stands on a part's cards, on one line."""
    return " ".join(" ".join(card.text_content().split()) for card in cards_in(page) if part_of(card) == part)
