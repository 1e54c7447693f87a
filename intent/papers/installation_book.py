"""The installation book: what whoever installs a work, runs it and takes it down has to have in hand."""

from __future__ import annotations

import datetime

from intent.effects.scene import sides_of
from intent.language.calendar import day_words
from intent.language.message import named, say
from intent.model.naming import role_of
from intent.model.work import Work
from intent.papers.annex import FORM_STYLE, SIGNED
from intent.papers.cautions import caution_blocks
from intent.papers.condition_tables import condition_section
from intent.papers.daily_check import daily_section
from intent.papers.document import (
    Column,
    Document,
    PaperSection,
    PaperTable,
    Paragraph,
    ParagraphRole,
    TableRole,
)
from intent.papers.duties_told import duty_checklist, told_duties
from intent.papers.inline import Content
from intent.papers.masthead import byline, occasion_words, outcome_told
from intent.papers.placing_tables import placing_section
from intent.papers.running_tables import settings_section, switching_sections
from intent.papers.wiring_tables import cables_section, plan_section
from intent.papers.work_tables import work_section
from intent.planning.channel_plan import channel_plan_of
from intent.planning.tasks import work_plan_of
from intent.variance.case import lay_out
from intent.variance.people import is_over
from intent.variance.result import Variance


def installation_book(variance: Variance, *, version: str, day: datetime.date) -> Document:
    """The book of one showing, of what may leave the house."""
    work, installation = variance.work, variance.installation
    sides = sides_of(lay_out(work, installation))
    scene, plan = sides.proposed, channel_plan_of(sides)
    duties = told_duties(variance)
    recurring = tuple(one for one in duties if one.recurs)
    once = (one for one in duties if not one.recurs)
    sections = (
        PaperSection(title=say("Cautions"), anchor="cautions", blocks=caution_blocks(variance)),
        work_section(work, work_plan_of(work, installation)),
        placing_section(scene),
        plan_section(plan),
        cables_section(scene),
        settings_section(scene),
        *switching_sections(scene),
        daily_section(plan, recurring, SIGNED),
        condition_section(scene),
        PaperSection(title=say("To be done"), anchor="duties", blocks=duty_checklist(once, SIGNED)),
        _people(work, installation.dates.first),
    )
    return Document(
        title=work.title,
        name=say("{work}: installation book", work=work.title),
        lead=(
            Paragraph(byline(work), ParagraphRole.BYLINE),
            Paragraph(say("Installation book."), ParagraphRole.OCCASION),
            Paragraph(installation.title, ParagraphRole.OCCASION),
            Paragraph(occasion_words(variance), ParagraphRole.OCCASION),
            Paragraph(outcome_told(variance)),
        ),
        sections=tuple(section for section in sections if section.blocks),
        foot=say("Written by intent {version} on {date}.", version=version, date=day_words(day)),
        created=day,
        running=say("{work}: installation book", work=work.title),
        has_contents=True,
        styles=(FORM_STYLE,),
    )


def _people(work: Work, day: datetime.date) -> PaperSection:
    """Those of the work who are there on the first day, with their contacts, where they may be told."""
    columns = (
        Column(say("who"), 30),
        Column(say("role"), 24),
        Column(say("telephone or address")),
    )
    rows: list[tuple[Content, ...]] = [
        (
            one.name or one.identifier,
            named(role_of(work, one)),
            one.contact if one.contact_leaves else "",
        )
        for one in work.people
        if not is_over(one, day)
    ]
    remark = Paragraph(
        say("A contact that is blank is not told here: whoever needs it writes it in."),
        ParagraphRole.QUIET,
    )
    table = PaperTable(columns=columns, rows=tuple(rows), role=TableRole.CHECKLIST)
    return PaperSection(title=say("Whom to call"), anchor="contacts", blocks=(remark, table) if rows else ())
