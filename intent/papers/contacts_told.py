"""Whom to call about a showing: those whose contact may be told to others."""

from __future__ import annotations

from intent.language.message import say
from intent.model.naming import person_words
from intent.model.work import Work
from intent.papers.document import Block, FactLine, Facts, FactsRole, PaperSection, Paragraph
from intent.papers.masthead import WORK_HEAD
from intent.papers.statements_told import labelled_fields
from intent.values.dates import DaySpan
from intent.variance.people import is_over


def contacts_section(work: Work, dates: DaySpan | None) -> PaperSection:
    """People who can be called while it lasts, with their contacts; where there is none, who is to be asked."""
    lines = tuple(
        FactLine(person_words(work, one.identifier), (one.contact,))
        for one in work.people
        if one.contact and one.contact_leaves and not (dates and is_over(one, dates.first))
    )
    block: Block = Facts(lines, FactsRole.REQUESTS)
    if not lines:
        owner = labelled_fields(work.vocabulary, work.fields, WORK_HEAD).get("owner", "")
        block = Paragraph(
            say("No contact is given that may be told. Ask {owner}.", owner=owner)
            if owner
            else say("No contact is given that may be told. Ask whoever sent this.")
        )
    return PaperSection(title=say("Whom to call"), anchor="contacts", blocks=(block,))
