"""A report as one page that stands by itself: no script, no network, no fonts; to read and to print."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from importlib.resources import files

from intent.language.message import Tongue, say
from intent.papers.cautions import DEFERENCE
from intent.papers.departure_page import departure_article
from intent.papers.drawn import Drawn, drawings_section
from intent.papers.elements import Element, bullets, digest, element, prose, table, unbroken
from intent.papers.headings import (
    CAUTIONS,
    CONTENTS,
    DEPARTURES,
    DRAWINGS,
    EFFECTS,
    EVIDENCE,
    FINDINGS,
    KEPT,
    OUTCOME,
    PROPOSED,
    SIGNATURES,
    SOURCES,
)
from intent.papers.prose import shown
from intent.papers.report_evidence import EvidenceFile, written_by
from intent.papers.requests import Asking, Request
from intent.papers.sources_page import sources_section
from intent.papers.standing_page import head, page_text, section
from intent.papers.story import LONG, Signature, Story
from intent.papers.wording import OUTCOMES, closed, day_in_words, opening, verdict_word

FIRST_PAGE = "@page :first { @top-left { content: none; } }"


def write_html(story: Story, drawn: Drawn | None = None) -> str:
    """The whole page as text."""
    sections = list(_sections(story, drawn))
    long = len(story.departures) > LONG
    body = element(
        "body",
        _masthead(story),
        [_contents(story, sections)] if long else [],
        element("main", sections),
        element(
            "footer",
            element("p", story.tongue.tell(written_by(story.evidence))),
        ),
    )
    return page_text(_head(story), body, story.tongue.language)


def _head(story: Story) -> Element:
    running = f"{story.title}: {story.installation}"
    sheets = ["report.css", "sources.css"] if story.passages else ["report.css"]
    style = "".join(files("intent.papers").joinpath(one).read_text(encoding="utf-8") for one in sheets)
    page = f"@page {{ @top-left {{ content: {_css_string(running)}; }} }}\n{FIRST_PAGE}\n"
    title = story.tongue.say("{running} – variance report", running=running)
    return head(title, f"{style}{page}", created=story.evidence.date.isoformat())


def _css_string(text: str) -> str:
    """A string of CSS in which nothing but letters, digits and spaces is left as it is."""
    safe = (sign if sign.isalnum() or sign == " " else f"\\{ord(sign):x} " for sign in shown(text))
    return f'"{"".join(safe)}"'


def _masthead(story: Story) -> Element:
    tongue = story.tongue
    title = tongue.say("Variance report: {installation}", installation=story.installation)
    reported = tongue.say("Reported on {date}.", date=day_in_words(story.evidence.date))
    return element(
        "header",
        element("h1", story.title),
        [element("p", story.byline, class_="byline")] if story.byline else [],
        element("p", element("strong", f"{title}."), f" {story.occasion}", class_="occasion"),
        element("p", reported, class_="occasion"),
        [element("div", prose(story.work_note), class_="prose")] if story.work_note.strip() else [],
    )


def _contents(story: Story, sections: Iterable[Element]) -> Element:
    """A list of the sections, with the outcome and every verdict said in it."""
    tongue = story.tongue
    verdicts = [
        _entry(
            f"departure-{one.number}", tongue.tell(one.title), tongue.tell(verdict_word(one.verdict)), tongue
        )
        for one in story.departures
    ]
    beside: dict[str, str | Element] = {
        "outcome": tongue.tell(OUTCOMES[story.outcome]),
        "departures": element("ol", verdicts),
    }
    names = [(section.get("id") or "", section[0].text or "") for section in sections]
    entries = [_entry(name, title, beside.get(name, ""), tongue) for name, title in names]
    heading = element("h2", tongue.tell(CONTENTS), id="contents")
    return element("nav", heading, element("ul", entries), aria_labelledby="contents")


def _entry(name: str, title: str, beside: str | Element, tongue: Tongue) -> Element:
    link = element("a", title, href=f"#{name}")
    if isinstance(beside, str) and beside:
        beside = tongue.say("{subject}: {text}", subject="", text=beside)
    return element("li", link, [beside] if beside != "" else [])


def _sections(story: Story, drawn: Drawn | None) -> Iterator[Element]:
    for name, heading, *content in _contained(story, drawn):
        yield section(name, story.tongue.tell(heading), *content)


def _contained(story: Story, drawn: Drawn | None) -> Iterator[tuple[str, str, Element | Iterable[Element]]]:
    """The anchor, heading and content of each section."""
    yield "proposal", PROPOSED, _proposal(story)
    yield "outcome", OUTCOME, _outcome(story)
    if drawn is not None and not drawn.is_empty:
        yield "drawings", DRAWINGS, drawings_section(drawn)
    if story.departures:
        yield "departures", DEPARTURES, _departures(story)
    if story.effects:
        yield "effects", EFFECTS, _effects(story)
    if story.findings:
        yield "findings", FINDINGS, bullets(story.tongue.tell(one.told) for one in story.findings)
    if story.cautions:
        yield "cautions", CAUTIONS, _cautions(story)
    if story.as_required or story.as_documented:
        yield "kept", KEPT, _kept(story)
    yield "evidence", EVIDENCE, _evidence(story)
    yield "signed", SIGNATURES, _signatures(story)
    if story.passages and story.passages.sources:
        yield "sources", SOURCES, sources_section(story.passages, story.tongue)


def _proposal(story: Story) -> Iterator[Element]:
    yield bullets(story.changes)
    yield from prose(story.installation_note)
    if story.answers:
        yield element("p", story.tongue.say("On record:"), class_="leadin")
        yield bullets(story.answers)


def _outcome(story: Story) -> Iterator[Element]:
    tongue = story.tongue
    told = tongue.tell(opening(OUTCOMES[story.outcome]))
    yield element("p", element("strong", told, class_=f"outcome {story.outcome}"), class_="outcome-word")
    yield element("p", story.outcome_sentence)
    if story.requests:
        yield element("h3", tongue.say("Who must be asked"))
        parts = (part for request in story.requests for part in _request(request, tongue))
        yield element("dl", parts, class_="requests")


def _request(request: Request, tongue: Tongue) -> Iterator[Element]:
    yield element("dt", request.name)
    yield from (element("dd", _question(question, tongue)) for question in request.questions)


def _question(question: Asking, tongue: Tongue) -> Iterator[Element | str]:
    """The question, with a link to each departure from which it arises."""
    yield question.text
    if not question.departures:
        return
    yield f" ({tongue.tell(question.label)} "
    for place, number in enumerate(question.departures):
        yield ", " if place else ""
        yield element("a", str(number), href=f"#departure-{number}")
    yield ")"


def _departures(story: Story) -> Iterator[Element]:
    yield from (departure_article(one, story.tongue, story.passages) for one in story.departures)
    terms = [
        element(*pair) for word, meaning in story.meanings for pair in (("dt", word), ("dd", closed(meaning)))
    ]
    yield element("h3", story.tongue.say("What the verdicts mean"))
    yield element("dl", terms, class_="facts")


def _effects(story: Story) -> Iterator[Element]:
    header = _header(story, say("quantity"), say("documented"), say("proposed"), say("what it means"))
    for topic in story.effects:
        yield element("h3", topic.title, id=f"effects-{topic.slug}")
        for affected in topic.affected:
            yield element("p", unbroken(opening(affected.subjects)), class_="leadin")
            rows = [(one.name, one.documented, one.proposed, one.meaning) for one in affected.quantities]
            yield table(header, rows, "effects")
        yield from (element("p", story.tongue.tell(text), class_="quiet") for text in topic.remarks)


def _header(story: Story, *titles: str) -> list[str]:
    return [story.tongue.tell(opening(title)) for title in titles]


def _cautions(story: Story) -> Iterator[Element]:
    for caution in story.cautions:
        label = element("strong", f"{story.tongue.tell(caution.title)}.")
        yield element("p", label, f" {caution.text}")
    yield element("p", story.tongue.tell(DEFERENCE), class_="quiet")


def _kept(story: Story) -> Iterator[Element]:
    lists = ((say("as required"), story.as_required), (say("as documented"), story.as_documented))
    for heading, kept in lists:
        if kept:
            rows = [(one.subjects, story.tongue.say("; ").join(one.facts)) for one in kept]
            yield table(_header(story, say("part"), heading), rows, "kept")


def _evidence(story: Story) -> Iterator[Element]:
    if story.evidence.files:
        rows = [[_file(file, story.tongue), digest(file.sha256)] for file in story.evidence.files]
        yield table([*_header(story, say("file")), "SHA-256"], rows, "files")
    if story.notes:
        yield element("p", story.tongue.say("Ignored or assumed:"), class_="leadin")
        yield bullets(story.notes)


def _file(file: EvidenceFile, tongue: Tongue) -> Element:
    role = element("span", tongue.tell(file.role.in_words), class_="quiet")
    return element("span", file.name, element("br"), role)


def _signatures(story: Story) -> Iterator[Element]:
    header = _header(story, say("name and role"), say("signature"), say("date"))
    yield table(header, (_signature(line, story.tongue) for line in story.signatures), "signatures")


def _signature(line: Signature, tongue: Tongue) -> tuple[Element | str, str, str]:
    if not line.capacity:
        return line.name, "", ""
    capacity = element("span", tongue.tell(line.who), class_="quiet")
    return element("span", line.name, element("br"), capacity), "", ""
