"""The agenda of a conversation, as a paper: a sheet for each person, with lines to write on under each question."""

from __future__ import annotations

from collections.abc import Iterator

from intent.analysis.questions.factor_words import factor_words
from intent.analysis.questions.measure import weight
from intent.analysis.questions.question import Agenda, PersonSheet, Question
from intent.language.calendar import day_words
from intent.language.message import Words, joined, quoted, say, say_of
from intent.model.naming import person_words
from intent.model.work import Instruction, Work
from intent.papers.document import (
    Block,
    Document,
    Items,
    PaperSection,
    Paragraph,
    ParagraphRole,
    Ruled,
    SectionRole,
)
from intent.papers.inline import Break, Content, quiet
from intent.papers.instructions_told import as_written, instruction_words, quotations
from intent.papers.prose import as_plain

LINES = 3
"""Lines to write on under each question."""
NOTHING = say("There is nothing to ask: whatever counts has been spoken of, and nothing is in doubt.")
MEASURE = say(
    "The questions stand in the order of what hangs on them: how soon the device must be replaced (1 to 5), times how "
    "hard a loss is to see and to undo (2 to 6), times one and the number of past showings in which it differed, "
    "times 3 where instructions clash, 2 where nobody has spoken or nobody can answer, 1 where it is uncertain."
)


def agenda_paper(agenda: Agenda) -> Document:
    """What to ask on a day, person by person."""
    day = day_words(agenda.day)
    occasion = say_of(
        agenda.count, "One question to ask, as of {day}.", "{number} questions to ask, as of {day}.",
        number=agenda.count, day=day,
    )  # fmt: skip
    return Document(
        title=say("{work}: what to ask", work=agenda.work.title),
        lead=(Paragraph(occasion if agenda.count else say("On {day}.", day=day), ParagraphRole.OCCASION),),
        sections=tuple(
            _sheet(agenda.work, number, sheet) for number, sheet in enumerate(agenda.sheets, start=1)
        ),
        foot=MEASURE if agenda.count else NOTHING,
        styles=("agenda.css",),
    )


def _sheet(work: Work, number: int, sheet: PersonSheet) -> PaperSection:
    quoted_at: dict[str, int] = {}
    title = person_words(work, sheet.person) if sheet.person else say("Nobody is left to ask")
    questions = tuple(
        PaperSection(
            title=question.text,
            anchor=f"question-{number}-{place}",
            number=place,
            role=SectionRole.QUESTION,
            blocks=tuple(_question(work, place, question, quoted_at)),
        )
        for place, question in enumerate(sheet.questions, start=1)
    )
    return PaperSection(title=title, anchor=f"sheet-{number}", blocks=questions)


def _question(work: Work, number: int, question: Question, quoted_at: dict[str, int]) -> Iterator[Block]:
    why = joined([question.why, factor_words(question.factors)])
    weighs = say("Urgency {number}.", number=round(weight(question.factors)))
    yield Paragraph((why, " ", quiet(weighs)))
    known = (*question.known, *(_near(work, line, number, quoted_at) for line in question.near))
    if known:
        yield Paragraph(say("Known so far:"), ParagraphRole.LEADIN)
        yield Items(known)
    yield Ruled(LINES)


def _near(work: Work, line: Instruction, number: int, quoted_at: dict[str, int]) -> Content:
    """An instruction that comes near, with the words behind it; on a sheet they are quoted once."""
    told = instruction_words(work, line), as_written(work, line)
    words = _words(work, line, number, quoted_at)
    return (*told, Break.LINE, quiet(words)) if words else told


def _words(work: Work, line: Instruction, number: int, quoted_at: dict[str, int]) -> Words:
    """The words behind an instruction, or the number of the question at which they are quoted."""
    said = next(iter(quotations(work, [line])), None)
    if said is None:
        return ""
    place = quoted_at.setdefault(said.under, number)
    if said.under in quoted_at and place != number:
        return say("Its words are at question {number}.", number=place)
    return joined([quoted(" ".join(as_plain(said.words).split())), said.attribution])
