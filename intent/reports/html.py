"""A report as one page that stands by itself: no script, no network, no fonts; to read and to print."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from importlib.resources import files

from lxml import html

from intent.reports.cautions import DEFERENCE
from intent.reports.departure_page import departure_article
from intent.reports.elements import Element, bullets, digest, element, prose, table, unbroken
from intent.reports.prose import shown
from intent.reports.requests import Question, Request
from intent.reports.sources_page import sources_section
from intent.reports.story import LONG, Signature, Story
from intent.reports.wording import OUTCOMES, day_in_words, opening, verdict_word

FIRST_PAGE = "@page :first { @top-left { content: none; } }"
POLICY = "default-src 'none'; style-src 'unsafe-inline'"
"""W3C Content Security Policy: the page can fetch nothing and run nothing, whatever is in it."""


def write_html(story: Story) -> str:
    """The whole page as text."""
    sections = list(_sections(story))
    long = len(story.departures) > LONG
    body = element(
        "body",
        _masthead(story),
        [_contents(story, sections)] if long else [],
        element("main", sections),
        element(
            "footer",
            element(
                "p", f"Written by intent {story.evidence.version} on {day_in_words(story.evidence.date)}."
            ),
        ),
    )
    page = element("html", _head(story), body, lang="en")
    text: str = html.tostring(page, encoding="unicode", doctype="<!DOCTYPE html>", pretty_print=True)
    return text


def _head(story: Story) -> Element:
    running = f"{story.title}: {story.installation}"
    sheets = ["report.css", "sources.css"] if story.passages else ["report.css"]
    style = "".join(files("intent.reports").joinpath(one).read_text(encoding="utf-8") for one in sheets)
    page = f"@page {{ @top-left {{ content: {_css_string(running)}; }} }}\n{FIRST_PAGE}\n"
    return element(
        "head",
        element("meta", charset="utf-8"),
        element("meta", http_equiv="Content-Security-Policy", content=POLICY),
        element("meta", name="viewport", content="width=device-width, initial-scale=1"),
        element("meta", name="color-scheme", content="light dark"),
        element("title", f"{running} – variance report"),
        element("style", f"\n{style}{page}"),
    )


def _css_string(text: str) -> str:
    """A string of CSS in which nothing but letters, digits and spaces is left as it is."""
    safe = (sign if sign.isalnum() or sign == " " else f"\\{ord(sign):x} " for sign in shown(text))
    return f'"{"".join(safe)}"'


def _masthead(story: Story) -> Element:
    return element(
        "header",
        element("h1", story.title),
        [element("p", story.byline, class_="byline")] if story.byline else [],
        element(
            "p",
            element("strong", f"Variance report: {story.installation}."),
            f" {story.occasion}",
            class_="occasion",
        ),
        element("p", f"Reported on {day_in_words(story.evidence.date)}.", class_="occasion"),
        [element("div", prose(story.work_note), class_="prose")] if story.work_note.strip() else [],
    )


def _contents(story: Story, sections: Iterable[Element]) -> Element:
    """A list of the sections, with the outcome and every verdict said in it."""
    verdicts = [
        _entry(f"departure-{one.number}", one.title, f": {verdict_word(one.verdict)}")
        for one in story.departures
    ]
    beside: dict[str, str | Element] = {
        "outcome": f": {OUTCOMES[story.outcome]}",
        "departures": element("ol", verdicts),
    }
    names = [(section.get("id") or "", section[0].text or "") for section in sections]
    entries = [_entry(name, title, beside.get(name, "")) for name, title in names]
    heading = element("h2", "Contents", id="contents")
    return element("nav", heading, element("ul", entries), aria_labelledby="contents")


def _entry(name: str, title: str, beside: str | Element) -> Element:
    return element("li", element("a", title, href=f"#{name}"), [beside] if beside != "" else [])


def _section(name: str, title: str, *content: Element | Iterable[Element]) -> Element:
    """A section with its heading; the name is its anchor."""
    body = element("div", *content, class_="body")
    return element(
        "section", element("h2", title, id=f"{name}-title"), body, id=name, aria_labelledby=f"{name}-title"
    )


def _sections(story: Story) -> Iterator[Element]:
    yield _section("proposal", "What is proposed", _proposal(story))
    yield _section("outcome", "Outcome", _outcome(story))
    if story.departures:
        yield _section("departures", "Departures, worst first", _departures(story))
    if story.effects:
        yield _section("effects", "What the change does", _effects(story))
    if story.findings:
        texts = [f"{one.subject}: {one.text}" if one.subject else one.text for one in story.findings]
        yield _section("findings", "Venue and devices", bullets(texts))
    if story.cautions:
        yield _section("cautions", "Cautions", _cautions(story))
    if story.as_required or story.as_documented:
        yield _section("kept", "As required and as documented", _kept(story))
    yield _section("evidence", "What this report rests on", _evidence(story))
    yield _section("signed", "Signatures", _signatures(story))
    if story.passages and story.passages.sources:
        yield _section("sources", "Sources", sources_section(story.passages))


def _proposal(story: Story) -> Iterator[Element]:
    yield bullets(story.changes)
    yield from prose(story.installation_note)
    if story.answers:
        yield element("p", "On record:", class_="leadin")
        yield bullets(story.answers)


def _outcome(story: Story) -> Iterator[Element]:
    word = element("strong", opening(OUTCOMES[story.outcome]), class_=f"outcome {story.outcome}")
    yield element("p", word, class_="outcome-word")
    yield element("p", story.outcome_sentence)
    if story.requests:
        yield element("h3", "Who must be asked")
        yield element(
            "dl", (part for request in story.requests for part in _request(request)), class_="requests"
        )


def _request(request: Request) -> Iterator[Element]:
    yield element("dt", request.name)
    yield from (element("dd", _question(question)) for question in request.questions)


def _question(question: Question) -> Iterator[Element | str]:
    """The question, with a link to each departure from which it arises."""
    yield question.text
    for place, number in enumerate(question.departures):
        yield ", " if place else f" ({question.whence.partition(' ')[0]} "
        yield element("a", str(number), href=f"#departure-{number}")
    if question.departures:
        yield ")"


def _departures(story: Story) -> Iterator[Element]:
    yield from (departure_article(departure, story.passages) for departure in story.departures)
    terms = [
        element(*pair) for word, meaning in story.meanings for pair in (("dt", word), ("dd", f"{meaning}."))
    ]
    yield element("h3", "What the verdicts mean")
    yield element("dl", terms, class_="facts")


def _effects(story: Story) -> Iterator[Element]:
    for topic in story.effects:
        yield element("h3", topic.title, id=f"effects-{topic.slug}")
        for affected in topic.affected:
            yield element("p", unbroken(opening(affected.subjects)), class_="leadin")
            rows = [(one.name, one.documented, one.proposed, one.meaning) for one in affected.quantities]
            yield table(["Quantity", "Documented", "Proposed", "What it means"], rows, "effects")
        if topic.missing:
            yield element("p", f"Not given, and needed to say more: {'; '.join(topic.missing)}.", class_="quiet")
        if topic.sources:
            yield element("p", f"Computed from: {'; '.join(topic.sources)}.", class_="quiet")


def _cautions(story: Story) -> Iterator[Element]:
    for caution in story.cautions:
        label = element("strong", f"{opening(caution.label)} ({caution.concerns}).")
        yield element("p", label, f" {caution.text}")
    yield element("p", DEFERENCE, class_="quiet")


def _kept(story: Story) -> Iterator[Element]:
    if story.as_required:
        rows = [(one.subjects, "; ".join(one.facts)) for one in story.as_required]
        yield table(["Part", "As required"], rows, "kept")
    if story.as_documented:
        rows = [(one.subjects, "; ".join(one.facts)) for one in story.as_documented]
        yield table(["Part", "As documented"], rows, "kept")


def _evidence(story: Story) -> Iterator[Element]:
    if story.evidence.files:
        rows = [
            [
                element(
                    "span", f"{file.name}", element("br"), element("span", file.role.in_words, class_="quiet")
                ),
                digest(file.sha256),
            ]
            for file in story.evidence.files
        ]
        yield table(["File", "SHA-256"], rows, "files")
    if story.notes:
        yield element("p", "Ignored or assumed:", class_="leadin")
        yield bullets(story.notes)


def _signatures(story: Story) -> Iterator[Element]:
    yield table(["Name and role", "Signature", "Date"], map(_signature, story.signatures), "signatures")


def _signature(line: Signature) -> tuple[Element | str, str, str]:
    if not line.capacity:
        return line.name, "", ""
    capacity = element("span", f"who {line.capacity}", class_="quiet")
    return element("span", line.name, element("br"), capacity), "", ""
