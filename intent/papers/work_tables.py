"""The work of installing, task by task, and how many hours and people it takes."""

from __future__ import annotations

from collections.abc import Iterator

from intent.language.figures import figure
from intent.language.message import Words, named, say, say_of, sentence
from intent.model.naming import person_words, runs
from intent.model.work import Work
from intent.names import TERM
from intent.papers.document import (
    Block,
    Column,
    FactLine,
    Facts,
    FactsRole,
    PaperSection,
    PaperTable,
    Paragraph,
    ParagraphRole,
    TableRole,
)
from intent.papers.inline import Content, with_below
from intent.planning.tasks import PlannedTask, WorkPlan

_COLUMNS = (
    Column(say("task"), 8),
    Column(say("what")),
    Column(say("parts"), 14),
    Column(say("after"), 8),
    Column(say("people"), 9),
    Column(say("time"), 10),
    Column(say("by"), 15),
)
_ROLES = str(TERM.roles)


def work_section(work: Work, plan: WorkPlan) -> PaperSection:
    """The tasks in order; that there are none is said too, so that nobody takes it for little work."""
    title = say("What installing takes")
    if not plan.tasks:
        told = say("The documentation does not say what installing takes.")
        return PaperSection(title=title, anchor="work", blocks=(Paragraph(told),))
    table = PaperTable(
        columns=_COLUMNS,
        rows=tuple(tuple(_cells(work, one)) for one in plan.tasks),
        role=TableRole.CHECKLIST,
        ticks=(say("done"),),
    )
    return PaperSection(title=title, anchor="work", blocks=(_totals(plan), table, *_remarks(plan)))


def _cells(work: Work, planned: PlannedTask) -> Iterator[Content]:
    task = planned.task
    yield task.identifier
    yield with_below(sentence(task.what), task.note)
    left_out = say("without {parts}", parts=runs(planned.left_out)) if planned.left_out else ""
    yield with_below(runs(planned.parts), left_out)
    yield runs(task.after)
    yield "" if task.people is None else str(task.people)
    yield task.time
    yield who_words(work, task.by)


def who_words(work: Work, who: str) -> Words:
    """A person by name, a role in the reader's language, anything else as it is written."""
    if work.person(who) is not None:
        return person_words(work, who)
    role = work.vocabulary.find_value([_ROLES], who)
    return named(role) if role else who


def _totals(plan: WorkPlan) -> Facts:
    facts: dict[Words, Words] = {
        say("all together"): say("{labour} of work, each person counted", labour=figure(plan.labour, "h")),
        say("by the clock"): say(
            "{clock} for the longest row of tasks that wait for each other, if others do the rest meanwhile",
            clock=figure(plan.clock, "h"),
        ),
    }
    if plan.most_people:
        facts[say("per task")] = say_of(
            plan.most_people, "1 person", "up to {number} people", number=plan.most_people
        )
    return Facts(tuple(FactLine(label, (text,)) for label, text in facts.items()), FactsRole.VALUES)


def _remarks(plan: WorkPlan) -> Iterator[Block]:
    if plan.uncounted:
        told = say(
            "Not counted, since time or people are not given in hours: {tasks}.", tasks=runs(plan.uncounted)
        )
        yield Paragraph(told, ParagraphRole.QUIET)
    if plan.untold:
        yield Paragraph(
            say("No task names {parts}: how long they take is not said.", parts=runs(plan.untold)),
            ParagraphRole.QUIET,
        )
