"""One departure on the page: its verdict in the margin, and the artist's words before all else."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from intent.language.message import Tongue, say
from intent.papers.departures import Departure
from intent.papers.elements import Element, element, unbroken
from intent.papers.instructions_told import Quotation, reason_given
from intent.papers.passages_told import whereabouts
from intent.papers.sources_page import is_shown, passage_name
from intent.papers.wording import opening, quoted, verdict_word
from intent.reading.evidence.passages import Passages


def departure_article(departure: Departure, tongue: Tongue, passages: Passages | None = None) -> Element:
    name = f"departure-{departure.number}"
    return element(
        "article",
        element("h3", f"{departure.number}. {tongue.tell(departure.title)}", id=f"{name}-title"),
        _verdict(departure, tongue),
        element("div", _body(departure, tongue, passages), class_="telling"),
        id=name,
        class_="departure",
        aria_labelledby=f"{name}-title",
    )


def _verdict(departure: Departure, tongue: Tongue) -> Element:
    """The word, with a rule below it whose style is the verdict's own, so that neither needs colour."""
    told = tongue.tell(opening(verdict_word(departure.verdict)))
    word = element("strong", told, class_=f"verdict {departure.verdict}")
    more = [element("span", text) for text in (departure.ground, departure.days) if text]
    return element("p", word, more, class_="margin")


def _body(departure: Departure, tongue: Tongue, passages: Passages | None) -> Iterator[Element]:
    values = [(say("documented"), [departure.documented]), (say("proposed"), [departure.proposed])]
    if departure.concerns:
        values.append((say("concerns"), [departure.concerns]))
    yield _facts(values, tongue, "facts values")
    yield from (_quotation(quotation, tongue, passages) for quotation in departure.quotations)
    if departure.told:
        yield _facts(departure.told, tongue, "facts")


def _facts(facts: Iterable[tuple[str, Iterable[str]]], tongue: Tongue, class_: str) -> Element:
    parts = [
        part
        for label, texts in facts
        for part in (
            element("dt", tongue.tell(opening(label))),
            *(element("dd", unbroken(tongue.tell(text))) for text in texts),
        )
    ]
    return element("dl", parts, class_=class_)


def _quotation(quotation: Quotation, tongue: Tongue, passages: Passages | None) -> Element:
    """The words with who said them and where; the mark that opens them hangs in the margin."""
    paragraphs = tongue.tell(quoted(quotation.words)).split("\n\n")
    caption = [element("span", quotation.attribution), *_whereabouts(quotation, tongue, passages)]
    if quotation.reason:
        caption.append(element("span", tongue.tell(reason_given(quotation.reason))))
    return element(
        "figure",
        element("blockquote", [element("p", paragraph) for paragraph in paragraphs]),
        element("figcaption", caption),
    )


def _whereabouts(quotation: Quotation, tongue: Tongue, passages: Passages | None) -> Iterator[Element]:
    """Where each passage was found, with a link to it where its source is on the page, else to the source's name."""
    for one, found in whereabouts(quotation.passages):
        told = tongue.tell(found)
        if passages is None or one.place is None or not one.is_there:
            yield element("span", f"{told}.")
            continue
        target = passage_name(one) if is_shown(passages, one) else f"source-{one.place.source}"
        yield element("span", element("a", told, href=f"#{target}"), ".")
