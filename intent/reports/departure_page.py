"""One departure on the page: its verdict in the margin, and the artist's words before all else."""

from __future__ import annotations

from collections.abc import Iterator

from intent.reports.departures import Departure
from intent.reports.elements import Element, element, unbroken
from intent.reports.instructions import Quotation
from intent.reports.wording import opening, quoted, verdict_word


def departure_article(departure: Departure) -> Element:
    name = f"departure-{departure.number}"
    return element(
        "article",
        element("h3", f"{departure.number}. {departure.title}", id=f"{name}-title"),
        _verdict(departure),
        element("div", _body(departure), class_="telling"),
        id=name,
        class_="departure",
        aria_labelledby=f"{name}-title",
    )


def _verdict(departure: Departure) -> Element:
    """The word, with a rule below it whose style is the verdict's own, so that neither needs colour."""
    word = element("strong", opening(verdict_word(departure.verdict)), class_=f"verdict {departure.verdict}")
    more = [element("span", text) for text in (departure.ground, departure.days) if text]
    return element("p", word, more, class_="margin")


def _body(departure: Departure) -> Iterator[Element]:
    values = [("Documented", [departure.documented]), ("Proposed", [departure.proposed])]
    if departure.concerns:
        values.append(("Concerns", [departure.concerns]))
    yield _facts(values, "facts values")
    yield from (_quotation(quotation) for quotation in departure.quotations)
    told = [
        ("Why", departure.reasons),
        (departure.speaking_label, departure.speaking),
        ("Also against", departure.also_against),
        ("Set aside", departure.set_aside),
        ("Open", departure.open),
        ("Shown before", departure.shown_before),
    ]
    facts = [(label, list(texts)) for label, texts in told if texts]
    if facts:
        yield _facts(facts, "facts")


def _facts(facts: list[tuple[str, list[str]]], class_: str) -> Element:
    parts = [
        part
        for label, texts in facts
        for part in (element("dt", label), *(element("dd", unbroken(text)) for text in texts))
    ]
    return element("dl", parts, class_=class_)


def _quotation(quotation: Quotation) -> Element:
    """The words with who said them and where; the mark that opens them hangs in the margin."""
    paragraphs = quoted(quotation.words).split("\n\n")
    caption = [element("span", quotation.attribution)]
    if quotation.reason:
        caption.append(element("span", f"Reason given: {quotation.reason}"))
    return element(
        "figure",
        element("blockquote", [element("p", paragraph) for paragraph in paragraphs]),
        element("figcaption", caption),
    )
