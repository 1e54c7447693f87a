"""What is to be done for a showing, as papers tell it: who, what, when, and what is attested of it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from intent.language.calendar import day_words, span_words
from intent.language.message import Words, joined, listed, named, say, say_of, words
from intent.model.duty import Moment, Phase, Timing
from intent.model.naming import person_name, person_words
from intent.model.work import Work
from intent.papers.document import Block, Column, PaperTable, TableRole
from intent.papers.inline import Break, Content, quiet
from intent.papers.instructions_told import TypesetCondition
from intent.planning.due_days import DueDays
from intent.planning.duties_due import DueDuty, duties_due
from intent.variance.people import is_over
from intent.variance.result import Variance

_COLUMNS = (Column(say("who"), 20), Column(say("what")), Column(say("when"), 22))
_FROM = Column(say("from"), 8)


@dataclass(frozen=True, slots=True, kw_only=True)
class ToldDuty:
    """A duty of a showing in words."""

    identifier: str
    who: Words
    what: str
    conditions: Words
    """On what it depends, as far as that is not known."""
    when: Words
    done: Words
    """Nothing where nobody has said so."""
    is_done: bool
    recurs: bool
    """Whether it is to be done again and again."""

    @property
    def task(self) -> Content:
        """What is to be done, and beneath it on what that depends."""
        return (self.what, Break.LINE, quiet(self.conditions)) if self.conditions else self.what


def duty_blocks(variance: Variance) -> tuple[Block, ...]:
    """What is to be done, with what is attested of it; nothing where there is nothing to do."""
    rows: tuple[tuple[Content, ...], ...] = tuple(
        (one.who, one.task, one.when, one.done, one.identifier) for one in told_duties(variance)
    )
    columns = (*_COLUMNS, Column(say("done")), _FROM)
    return (PaperTable(columns=columns, rows=rows),) if rows else ()


def duty_checklist(told: Iterable[ToldDuty], signed: Column) -> tuple[Block, ...]:
    """Duties to be ticked, and signed by who has done them; what is attested as done already is left out."""
    rows: tuple[tuple[Content, ...], ...] = tuple(
        (one.who, one.task, one.when, one.identifier) for one in told if not one.is_done
    )
    columns = (*_COLUMNS, _FROM, signed)
    return (
        (PaperTable(columns=columns, rows=rows, role=TableRole.CHECKLIST, ticks=words("done")),)
        if rows
        else ()
    )


def told_duties(variance: Variance) -> tuple[ToldDuty, ...]:
    """The duties of a showing, those of one who has to do them together, in the order of the work."""
    work, due = variance.work, duties_due(variance.work, variance.installation)
    told = [
        ToldDuty(
            identifier=one.duty.identifier,
            who=_who(variance, one),
            what=one.duty.what,
            conditions=joined((named(TypesetCondition(of, work.vocabulary)) for of in one.open), ", "),
            when=when_words(one.duty.timing, one.days),
            done=done_words(work, one),
            is_done=one.is_done,
            recurs=one.duty.timing.every is not None,
        )
        for one in due
    ]
    order = list(dict.fromkeys(one.who for one in told))
    return tuple(sorted(told, key=lambda one: order.index(one.who)))


def _who(variance: Variance, due: DueDuty) -> Words:
    """A person, a role with those of the work who have it, or whoever installs."""
    work = variance.work
    if due.person is not None:
        return person_words(work, due.person)
    if due.duty.role is None:
        return say("whoever installs")
    day = variance.installation.dates.first
    having = [one for one in work.people if one.role.iri == due.duty.role and not is_over(one, day)]
    role = work.vocabulary.named(due.duty.role)
    if not having:
        return named(role)
    return say("{role}: {people}", role=role, people=listed(one.name or one.identifier for one in having))


def when_words(timing: Timing, days: DueDays) -> Words:
    """`by 14 July 2027`, `every 3 days from 1 March 2027 to 30 June 2027`."""
    often = _often(timing.every)
    if often:
        return say("{often} {span}", often=often, span=_span(days))
    if days.last is not None and _is_deadline(timing, days):
        return say("by {day}", day=day_words(days.last))
    return _span(days)


def _often(every: int | None) -> Words:
    if every is None:
        return ""
    return say_of(every, "every day", "every {number} days", number=every)


def _is_deadline(timing: Timing, days: DueDays) -> bool:
    """Whether its last day alone says when: nothing is gained by waiting for the first."""
    is_late = timing.of is Moment.END and timing.phase is Phase.DURING
    is_early = timing.phase is Phase.BEFORE and timing.within is not None
    return days.first is None or (timing.within is not None and not is_late and not is_early)


def _span(days: DueDays) -> Words:
    if days.first is None:
        return say("until {last_day}", last_day=day_words(days.last)) if days.last else ""
    if days.last is None:
        return say("from {first_day}", first_day=day_words(days.first))
    if days.first == days.last:
        return say("on {day}", day=day_words(days.first))
    return say(
        "from {first_day} to {last_day}", first_day=day_words(days.first), last_day=day_words(days.last)
    )


def done_words(work: Work, due: DueDuty) -> Words:
    """Whether it is attested as done: by whom and when; of what recurs, how often."""
    if due.duty.timing.every is not None:
        if due.is_done:
            return say("done each time")
        if not due.times_done:
            return ""
        if due.times is None:
            return say_of(due.times_done, "done once", "done {number} times", number=due.times_done)
        return say("done {number} of {all} times", number=due.times_done, all=due.times)
    if due.said is None:
        return ""
    state = say("done") if due.said.holds else say("not done")
    return joined(filter(None, [state, *_attested(work, due)]), ", ")


def _attested(work: Work, due: DueDuty) -> Iterator[Words]:
    if due.said is not None:
        yield person_name(work, due.said.by) if due.said.by else ""
        yield span_words(due.said.date)
