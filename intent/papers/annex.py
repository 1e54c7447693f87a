"""The annex to a loan agreement: the outcome, each condition as a line to tick and to sign, and the cautions."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from intent.language.message import listed, say
from intent.papers.cautions import DEFERENCE
from intent.papers.elements import Element, bullets, element, unbroken
from intent.papers.form_page import Column, sheet, to_fill
from intent.papers.standing_page import section
from intent.papers.story import Story
from intent.papers.wording import OUTCOMES, day_in_words, opening, verdict_word
from intent.redaction.withholding import WithheldKind

NO_CONDITIONS = "No conditions are open."
SIGNED = Column("Signature and date", 28)
UNDER_SIGNED = "Those who sign have read the variance report that lies beside this annex."


def write_annex(story: Story, sorts: Sequence[WithheldKind]) -> bytes:
    """The annex as one page, from the story of the variance report."""
    lead = [str(say("Annex to the installation: {title}.", title=story.installation)), story.occasion]
    foot = str(
        say(
            "Written by intent {version} on {day}.",
            version=story.evidence.version,
            day=day_in_words(story.evidence.date),
        )
    )
    return sheet(story.title, filter(None, lead), _sections(story, sorts), foot)


def _sections(story: Story, sorts: Sequence[WithheldKind]) -> Iterator[Element]:
    word = element("strong", opening(OUTCOMES[story.outcome]), class_=f"outcome {story.outcome}")
    yield section(
        "outcome",
        "Outcome",
        [element("p", word, class_="outcome-word"), element("p", story.outcome_sentence)],
    )
    yield section("conditions", "Conditions", _conditions(story))
    if story.departures:
        yield section("departures", "What departs from the documentation", [_departures(story)])
    if story.findings:
        found = [f"{one.subject}: {one.text}" if one.subject else one.text for one in story.findings]
        yield section("findings", "Venue and devices", [bullets(found)])
    if story.cautions:
        yield section("cautions", "Cautions", _cautions(story))
    yield section("left-out", "What is not in this package", [element("p", left_out_words(sorts))])
    yield section("signed", "Signatures", _signatures(story))


def _conditions(story: Story) -> Iterator[Element]:
    """What is to be done or answered before the installation, by whom, and from which departure it comes."""
    rows = [
        (request.name, unbroken_cell(question.text), question.whence)
        for request in story.requests
        for question in request.questions
    ]
    if rows:
        yield to_fill(["Met"], [Column("Who", 20), Column("What"), Column("From", 14), SIGNED], rows)
    else:
        yield element("p", NO_CONDITIONS)


def unbroken_cell(text: str) -> Element:
    """A text in which no identifier is broken at the end of a line."""
    return element("span", unbroken(text))


def _departures(story: Story) -> Element:
    rows = [(f"{one.number}. {one.title}", verdict_word(one.verdict)) for one in story.departures]
    return to_fill(["Seen"], [Column("Departure"), Column("Verdict", 14), SIGNED], rows)


def _cautions(story: Story) -> Iterator[Element]:
    for caution in story.cautions:
        label = element("strong", f"{opening(caution.label)} ({caution.concerns}).")
        yield element("p", label, f" {caution.text}")
    yield element("p", DEFERENCE, class_="quiet")


def left_out_words(sorts: Sequence[WithheldKind]) -> str:
    """That something stays with the sender, and of what sort it is."""
    if not sorts:
        return "Nothing was left out of the documentation."
    return str(say("The sender keeps to itself: {sorts}.", sorts=listed(sorts)))


def _signatures(story: Story) -> Iterator[Element]:
    yield element("p", UNDER_SIGNED)
    names = [(one.name or " ", f"who {one.capacity}" if one.capacity else "") for one in story.signatures]
    rows = [*names, ("for the lender", ""), ("for the borrower", "")]
    yield to_fill([], [Column("Name"), Column("Capacity", 22), SIGNED], rows)
