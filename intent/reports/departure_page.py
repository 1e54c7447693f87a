"""One departure on the page: its verdict in the margin, and the artist's words before all else."""

from __future__ import annotations

from collections.abc import Iterator

from intent.evidence.passages import Passages
from intent.reports.departures import Departure
from intent.reports.elements import Element, element, unbroken
from intent.reports.instructions import Quotation
from intent.reports.passages import whereabouts
from intent.reports.sources_page import is_shown, passage_name
from intent.reports.wording import opening, quoted, verdict_word


def departure_article(departure: Departure, passages: Passages | None = None) -> Element:
    name = f"departure-{departure.number}"
    return element(
        "article",
        element("h3", f"{departure.number}. {departure.title}", id=f"{name}-title"),
        _verdict(departure),
        element("div", _body(departure, passages), class_="telling"),
        id=name,
        class_="departure",
        aria_labelledby=f"{name}-title",
    )


def _verdict(departure: Departure) -> Element:
    """The word, with a rule below it whose style is the verdict's own, so that neither needs colour."""
    word = element("strong", opening(verdict_word(departure.verdict)), class_=f"verdict {departure.verdict}")
    more = [element("span", text) for text in (departure.ground, departure.days) if text]
    return element("p", word, more, class_="margin")


def _body(departure: Departure, passages: Passages | None) -> Iterator[Element]:
    values = [("Documented", [departure.documented]), ("Proposed", [departure.proposed])]
    if departure.concerns:
        values.append(("Concerns", [departure.concerns]))
    yield _facts(values, "facts values")
    yield from (_quotation(quotation, passages) for quotation in departure.quotations)
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


def _quotation(quotation: Quotation, passages: Passages | None) -> Element:
    """The words with who said them and where; the mark that opens them hangs in the margin."""
    paragraphs = quoted(quotation.words).split("\n\n")
    caption = [element("span", quotation.attribution), *_whereabouts(quotation, passages)]
    if quotation.reason:
        caption.append(element("span", f"Reason given: {quotation.reason}"))
    return element(
        "figure",
        element("blockquote", [element("p", paragraph) for paragraph in paragraphs]),
        element("figcaption", caption),
    )


def _whereabouts(quotation: Quotation, passages: Passages | None) -> Iterator[Element]:
    """Where each passage was found, with a link to it where its source is on the page, else to the source's name."""
    for one, told in whereabouts(quotation.passages):
        if passages is None or one.place is None or not one.is_there:
            yield element("span", f"{told}.")
            continue
        target = passage_name(one) if is_shown(passages, one) else f"source-{one.place.source}"
        yield element("span", element("a", told, href=f"#{target}"), ".")
