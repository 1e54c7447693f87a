"""The outcome of a proposal, in one sentence, and who must be asked."""

from __future__ import annotations

from dataclasses import replace

from intent.model.work import Work
from intent.variance.answer_notes import answer_notes
from intent.variance.case import Case
from intent.variance.denied_words import denied_words
from intent.variance.obstacle import in_the_way
from intent.variance.outcome_sentence import outcome_sentence
from intent.variance.result import BROKEN, Outcome, Variance, Verdict
from intent.variance.venue_asked import who_is_asked

_REFERRED = BROKEN | {Verdict.CONTRADICTION, Verdict.UNKNOWN, Verdict.UNCOVERED}
"""What has to be referred; of what is broken, where it rests on observed practice alone."""


def concluded(variance: Variance, case: Case) -> Variance:
    """The variance with its outcome, sentence, people and notes."""
    outcome = outcome_of(variance)
    people = _people(variance, case.work)
    found = replace(variance, outcome=outcome, refer_to=people, notes=tuple(answer_notes(case)))
    return replace(found, sentence=outcome_sentence(found), denied=denied_words(found))


def outcome_of(variance: Variance) -> Outcome:
    if any(row.verdict in BROKEN and not row.rests_on_practice for row in variance.rows):
        return Outcome.NOT_ACCEPTABLE
    verdicts, obstacles = {row.verdict for row in variance.rows}, in_the_way(variance.obstacles)
    if verdicts & _REFERRED or any(obstacle.is_sure for obstacle in obstacles):
        return Outcome.REFER
    is_conditional = Verdict.CONDITIONAL in verdicts or bool(obstacles)
    return Outcome.ON_CONDITIONS if is_conditional else Outcome.ACCEPTABLE


def _people(variance: Variance, work: Work) -> tuple[str, ...]:
    named = {person for row in variance.rows for person in row.ask}
    named |= {
        person
        for obstacle in in_the_way(variance.obstacles)
        for person in who_is_asked(work, variance.installation, obstacle)
    }
    ranked = sorted(work.people, key=lambda person: person.authority)
    return tuple(person.identifier for person in ranked if person.identifier in named)
