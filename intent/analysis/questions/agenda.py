"""The agenda of the next conversation: every kind of question, gathered and laid on a sheet for each person."""

from __future__ import annotations

import datetime
from collections.abc import Sequence

from intent.analysis.questions.conflicts import conflicts
from intent.analysis.questions.occasion import occasion_of
from intent.analysis.questions.question import Agenda, sheets_of
from intent.analysis.questions.unanswerable import unanswerable
from intent.analysis.questions.uncertain import uncertain
from intent.analysis.questions.unspoken import unspoken
from intent.model.installation import Installation
from intent.model.work import Work


def draw_up(work: Work, past: Sequence[Installation], day: datetime.date) -> Agenda:
    """What to ask on a day, and whom; ``past`` are the installations carried out."""
    occasion = occasion_of(work, past, day)
    every = [
        *unspoken(occasion),
        *conflicts(occasion),
        *unanswerable(occasion),
        *uncertain(occasion),
    ]
    return Agenda(work, day, sheets_of(work, every))
