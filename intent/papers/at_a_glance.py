"""The first screen and the first printed page of a report: what somebody with one minute needs in order to decide."""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Iterator, Sequence

from intent.language.message import Words, listed, opened, say, say_of
from intent.model.subject import SubjectKind
from intent.papers.departures import Departure
from intent.papers.document import (
    Block,
    Column,
    FactLine,
    Facts,
    FactsRole,
    Items,
    PaperSection,
    PaperTable,
    Paragraph,
    ParagraphRole,
    SectionRole,
    TableRole,
)
from intent.papers.inline import Content, Inline, Phrase, Stamp, quiet
from intent.papers.masthead import outcome_told
from intent.papers.obstacles_told import not_checked, obstacles_in_short
from intent.papers.proposed import answers_ahead
from intent.papers.requests import Asking, AskingKind, Request, departures_words, each_once
from intent.papers.verdict_words import OUTCOME_WORDS
from intent.variance.result import Variance, Verdict

NAMED = 2
"""Up to so many questions of a kind are told by what they are about; more by their departures alone."""


def at_a_glance(
    variance: Variance,
    departures: Sequence[Departure],
    requests: Sequence[Request],
    *,
    remedy: Words,
    day: datetime.date,
) -> PaperSection:
    """The outcome in one sentence, who must be asked what, what stands in the way, and a line for each departure.

    ``remedy`` is what would take obstacles out of the way; ``day`` is that of the paper.
    """
    outcome = variance.outcome
    return PaperSection(
        title=say("Outcome"),
        anchor="outcome",
        gist=OUTCOME_WORDS[outcome],
        blocks=(
            Paragraph(Stamp(outcome), ParagraphRole.OUTCOME),
            Paragraph((*outcome_told(variance), *_ahead(variance, day)), ParagraphRole.VERDICT),
            *_asked(requests),
            *_in_the_way(variance, remedy),
            *_each(departures),
        ),
    )


def _ahead(variance: Variance, day: datetime.date) -> Iterator[Inline]:
    """How many answers are dated after the report; which they are is said with all that is on record."""
    number = len(answers_ahead(variance, day))
    if number:
        told = say_of(
            number,
            "Counted with it is {number} answer that is dated after this report.",
            "Counted with it are {number} answers that are dated after this report.",
            number=number,
        )
        yield " "
        yield quiet(told)


def _brief(title: Words, name: str, *blocks: Block) -> PaperSection:
    return PaperSection(title=title, anchor=name, role=SectionRole.BRIEF, blocks=blocks)


def _asked(requests: Sequence[Request]) -> Iterator[Block]:
    if requests:
        lines = tuple(FactLine(one.name, tuple(_questions(one.questions))) for one in requests)
        yield _brief(say("Who must be asked"), "asked", Facts(lines, FactsRole.REQUESTS))


def _questions(questions: Iterable[Asking]) -> Iterator[Content]:
    """The questions to one person: those of a kind on one line."""
    kinds: dict[AskingKind, list[Asking]] = {}
    for one in questions:
        kinds.setdefault(one.kind, []).append(one)
    for same in kinds.values():
        yield _told(same)


def _told(same: Sequence[Asking]) -> Content:
    """`To consent, or refuse: technology LCD for left window (M1) (departure 1)`."""
    words = opened(same[0].in_short)
    about = [one.gist for one in same if one.gist]
    if about and len(same) <= NAMED:
        words = say("{subject}: {text}", subject=words, text=listed(about))
    whence = departures_words(each_once(found for one in same for found in one.departures))
    return (words, " (", *whence, ")") if isinstance(whence, tuple) else words


def _in_the_way(variance: Variance, remedy: Words) -> Iterator[Block]:
    found, unchecked = obstacles_in_short(variance.obstacles), not_checked(variance.unchecked)
    if not found and not unchecked:
        return
    items: tuple[Block, ...] = (Items(found),) if found else ()
    items += (Paragraph(remedy),) if remedy else ()
    left: tuple[Block, ...] = (Paragraph(unchecked, ParagraphRole.QUIET),) if unchecked else ()
    title = say_of(len(found), "Obstacle", "Obstacles") if found else say("Limits")
    yield _brief(title, "in-the-way", *items, *left)


def _each(departures: Sequence[Departure]) -> Iterator[Block]:
    """A line for each departure: what, from what to what, and the verdict, which leads to all that is told of it."""
    if not departures:
        return
    rows: tuple[tuple[Content, ...], ...] = tuple(
        (_named(one), _change(one), Stamp(one.verdict)) for one in departures
    )
    columns = (Column(say("point"), 50), Column(say("documented, proposed")), Column(say("verdict"), 14))
    yield _brief(
        _counted(departures),
        "each",
        PaperTable(columns=columns, rows=rows, role=TableRole.BRIEF),
    )


def _counted(found: Sequence[Departure]) -> Words:
    """`8 departures`; or how many points there are, where some cannot be judged or are about the venue alone."""
    unjudged = [one for one in found if one.verdict is Verdict.UNKNOWN]
    of_the_venue = [one for one in found if one not in unjudged and _is_of_the_venue(one)]
    if len(unjudged) == len(found):
        return say_of(
            len(found),
            "{number} point that cannot be judged yet",
            "{number} points that cannot be judged yet",
            number=len(found),
        )
    departing = len(found) - len(unjudged) - len(of_the_venue)
    told = []
    if departing:
        told.append(say_of(departing, "{number} departure", "{number} departures", number=departing))
    if number := len(of_the_venue):
        told.append(
            say_of(
                number, "{number} condition of the venue", "{number} conditions of the venue", number=number
            )
        )
    if number := len(unjudged):
        told.append(
            say_of(
                number,
                "{number} that cannot be judged yet",
                "{number} that cannot be judged yet",
                number=number,
            )
        )
    if len(told) == 1:
        return told[0]
    all_of_them = say_of(len(found), "{number} point", "{number} points", number=len(found))
    return say("{subject}: {text}", subject=all_of_them, text=listed(told))


def _is_of_the_venue(one: Departure) -> bool:
    """Whether it is about the venue, of which nothing is documented that it could depart from."""
    return one.rows[0].subject.kind is SubjectKind.VENUE


def _named(one: Departure) -> Content:
    return say("{number}.", number=one.number), " ", Phrase(one.title, link=one.anchor)


def _change(one: Departure) -> Words:
    if _is_of_the_venue(one) or one.documented == one.proposed:
        return one.proposed
    return say("{before} → {after}", before=one.documented, after=one.proposed)
