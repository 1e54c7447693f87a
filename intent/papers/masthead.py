"""What a paper about a proposal is about: the work and who made it, the installation, where, when, and who proposes."""

from __future__ import annotations

from intent.language.calendar import span_words
from intent.language.message import Words, joined, named, say, sentence
from intent.model.naming import person_words
from intent.model.work import Work
from intent.names import TERM
from intent.papers.inline import Inline, strong
from intent.papers.statements_told import labelled_fields
from intent.papers.verdict_words import OUTCOME_WORDS
from intent.variance.result import Variance

WORK_HEAD = str(TERM["work-head"])
"""The section of the text form whose fields say what the work is."""


def byline(work: Work) -> Words:
    """`Ilka Brandvold, 1993. Hollins Street Museum, 2009.31`, of what is given."""
    fields = labelled_fields(work.vocabulary, work.fields, WORK_HEAD)
    made = joined((fields.get(name, "") for name in ("artist", "year")), ", ")
    held = joined((fields.get(name, "") for name in ("owner", "number")), ", ")
    return joined([made, held], ". ")


def occasion_words(variance: Variance) -> Words:
    """`Kunsthalle Halmsee, 1 March 2027 to 30 June 2027. Proposed by Odile Varga-Finn (conservator).`"""
    installation = variance.installation
    proposer = person_words(variance.work, installation.by)
    status: Words = named(installation.status) if installation.status else ""
    if status and proposer:
        status = say("{status} by {person}", status=status, person=proposer)
    where = joined([installation.venue, span_words(installation.dates)], ", ")
    return joined([sentence(where), sentence(status)])


def outcome_sentence(variance: Variance) -> Words:
    """The outcome in one sentence."""
    told = variance.sentence or say("The proposal is {outcome}", outcome=OUTCOME_WORDS[variance.outcome])
    return sentence(told)


def outcome_told(variance: Variance) -> tuple[Inline, ...]:
    """The same, after what was refused or attested against it, which nobody may overlook."""
    denied: tuple[Inline, ...] = (strong(variance.denied), " ") if variance.denied else ()
    return (*denied, outcome_sentence(variance))
