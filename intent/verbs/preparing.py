"""The verb about the work of installing: prepare."""

from __future__ import annotations

import datetime
from pathlib import Path

from intent.effects.assess import assess
from intent.papers.installation_book import installation_book
from intent.papers.withheld import without_what_stays
from intent.reading.proposal import read_proposal
from intent.variance.result import Variance
from intent.verbs.replying import Reply
from intent.version import VERSION
from intent.vocabulary.loader import read_vocabulary


def prepare(
    installation: str | Path, work: str | Path | None = None, date: datetime.date | None = None
) -> Reply[Variance]:
    """The installation book of an installation, without what stays in the house.

    ``date`` is that of the book, today's if none. Raises `Unusable`.
    """
    proposal = read_proposal(Path(installation), Path(work) if work else None, read_vocabulary())
    findings = proposal.validated()
    judged = assess(proposal.documentation.work, proposal.installation)
    leaving = without_what_stays(proposal, judged)
    paper = installation_book(leaving, version=VERSION, day=date or datetime.date.today())
    faults = tuple(found for found in findings if found.severity != "note")
    return Reply(found=leaving, paper=paper, findings=faults)
