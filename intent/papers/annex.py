"""The annex to a loan agreement: the outcome, each condition as a line to tick and to sign, and the cautions."""

from __future__ import annotations

from collections.abc import Sequence

from intent.language.message import Words, joined, listed, say, say_of, words
from intent.papers.cautions import caution_blocks
from intent.papers.contacts_told import contacts_section
from intent.papers.departures import Departure, departures
from intent.papers.document import (
    Block,
    Column,
    Document,
    PaperSection,
    PaperTable,
    Paragraph,
    ParagraphRole,
    TableRole,
)
from intent.papers.duties_told import duty_checklist, told_duties
from intent.papers.inline import Content, Stamp
from intent.papers.left_out import left_out_section
from intent.papers.limits_told import limit_blocks
from intent.papers.masthead import occasion_words, outcome_told
from intent.papers.obstacles_told import obstacle_blocks, remedy_words
from intent.papers.report_evidence import Evidence, written_by
from intent.papers.requests import Asking, Request, requests
from intent.papers.signing import signers
from intent.redaction.withholding import WithheldKind
from intent.variance.result import VERDICT_WORDS, Variance

SIGNED = Column(say("signature and date"), 28)
FORM_STYLE = "form.css"


def annex_paper(variance: Variance, evidence: Evidence, withheld: Sequence[WithheldKind]) -> Document:
    """The annex of an installation."""
    found = departures(variance)
    asked = requests(variance, found)
    outcome: tuple[Block, ...] = (
        Paragraph(Stamp(variance.outcome), ParagraphRole.OUTCOME),
        Paragraph(outcome_told(variance)),
    )
    sections = (
        PaperSection(title=say("Outcome"), anchor="outcome", blocks=outcome),
        PaperSection(title=say("Conditions"), anchor="conditions", blocks=(_conditions(asked),)),
        PaperSection(
            title=say("Point by point, worst first"), anchor="departures", blocks=_departures(found)
        ),
        PaperSection(
            title=say("Obstacles"),
            anchor="obstacles",
            blocks=obstacle_blocks(variance, remedy_words(variance)),
        ),
        PaperSection(
            title=say("To be done"), anchor="duties", blocks=duty_checklist(told_duties(variance), SIGNED)
        ),
        PaperSection(
            title=say("Limits that hold while it is shown"), anchor="limits", blocks=limit_blocks(variance)
        ),
        PaperSection(title=say("Cautions"), anchor="cautions", blocks=caution_blocks(variance)),
        contacts_section(variance.work, variance.installation.dates),
        left_out_section(withheld),
        PaperSection(title=say("Signatures"), anchor="signed", blocks=_signatures(variance, asked)),
    )
    title = say("Annex to the installation: {title}.", title=variance.installation.title)
    return Document(
        title=variance.work.title,
        name=say("{work}: {title}", work=variance.work.title, title=title),
        lead=(
            Paragraph(title, ParagraphRole.OCCASION),
            Paragraph(occasion_words(variance), ParagraphRole.OCCASION),
        ),
        sections=tuple(section for section in sections if section.blocks),
        foot=written_by(evidence),
        created=evidence.date,
        styles=(FORM_STYLE,),
    )


def _conditions(asked: Sequence[Request]) -> Block:
    """What is to be done or answered before the installation, by whom, and from which departure it comes."""
    rows: tuple[tuple[Content, ...], ...] = tuple(
        (request.name, asking.text, _whence(asking)) for request in asked for asking in request.questions
    )
    if not rows:
        return Paragraph(say("No conditions are open."))
    columns = (Column(say("who"), 20), Column(say("what")), Column(say("from"), 14), SIGNED)
    return PaperTable(columns=columns, rows=rows, role=TableRole.CHECKLIST, ticks=words("met"))


def _whence(asking: Asking) -> Words:
    """`Points 2 and 3`, which stand in the table below."""
    numbers = [str(one.number) for one in asking.departures]
    return joined([say_of(len(numbers), "Point", "Points"), listed(numbers)]) if numbers else ""


def _departures(found: Sequence[Departure]) -> tuple[Block, ...]:
    if not found:
        return ()
    rows: tuple[tuple[Content, ...], ...] = tuple(
        (joined([f"{one.number}.", one.title]), one.documented, one.proposed, VERDICT_WORDS[one.verdict])
        for one in found
    )
    columns = (
        Column(say("point")),
        Column(say("documented"), 17),
        Column(say("proposed"), 17),
        Column(say("verdict"), 12),
        Column(say("signature and date"), 18),
    )
    return (PaperTable(columns=columns, rows=rows, role=TableRole.CHECKLIST, ticks=words("seen")),)


def _signatures(variance: Variance, asked: Sequence[Request]) -> tuple[Block, ...]:
    rows: list[tuple[Content, ...]] = [
        (one.name, say("who {capacity}", capacity=one.capacity)) for one in signers(variance, asked)
    ]
    rows += [("", ""), (say("for the lender"), ""), (say("for the borrower"), "")]
    columns = (Column(say("name")), Column(say("capacity"), 22), SIGNED)
    read = say("Those who sign have read the variance report that lies beside this annex.")
    return Paragraph(read), PaperTable(columns=columns, rows=tuple(rows), role=TableRole.CHECKLIST)
