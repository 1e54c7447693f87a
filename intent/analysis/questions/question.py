"""A question, and the sheets of questions that are taken along to a conversation."""

from __future__ import annotations

import datetime
from collections.abc import Iterable
from dataclasses import dataclass

from intent.analysis.questions.measure import Factors, weight
from intent.language.locale import ENGLISH
from intent.language.message import Words
from intent.model.work import Instruction, Work


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """One thing to ask, with why, what is known of it, and whom."""

    text: Words
    """The question itself, as one sentence or two."""
    why: Words
    """What kind of gap it closes, as one sentence; what hangs on it is told by `factor_words`."""
    factors: Factors
    whom: tuple[str, ...]
    """Identifiers of people; none where nobody is left who could answer."""
    known: tuple[Words, ...] = ()
    """What is documented and was shown, each as a line of a list."""
    near: tuple[Instruction, ...] = ()
    """Instructions that come near it."""


@dataclass(frozen=True, slots=True)
class PersonSheet:
    """The questions to one person, those on which most hangs first; to nobody, where nobody is left."""

    person: str | None
    questions: tuple[Question, ...]


@dataclass(frozen=True, slots=True)
class Agenda:
    """What to ask on a day, person by person."""

    work: Work
    day: datetime.date
    sheets: tuple[PersonSheet, ...]

    @property
    def count(self) -> int:
        """How many questions there are; one that is put to two people is one."""
        return len({question.text for sheet in self.sheets for question in sheet.questions})


def ranked(questions: Iterable[Question]) -> tuple[Question, ...]:
    """The questions with the weightiest first; of equal weight, in the order of their English words."""
    return tuple(sorted(questions, key=lambda one: (-weight(one.factors), ENGLISH.say(one.text))))


def sheets_of(work: Work, questions: Iterable[Question]) -> tuple[PersonSheet, ...]:
    """A sheet for each person asked, in the order of the people of the work; last what nobody can answer."""
    order = ranked(questions)
    people = [*(person.identifier for person in work.people), None]
    sheets = (
        PersonSheet(name, tuple(one for one in order if (name in one.whom if name else not one.whom)))
        for name in people
    )
    return tuple(sheet for sheet in sheets if sheet.questions)
