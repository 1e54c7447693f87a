"""The agenda as Markdown, and what both forms of it say alike."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from intent.analysis.questions.factor_words import factor_words
from intent.analysis.questions.measure import weight
from intent.analysis.questions.question import Agenda, PersonSheet, Question
from intent.model.work import Instruction
from intent.papers.instructions_told import quotations, told
from intent.papers.naming import person_in_words
from intent.papers.prose import as_plain, escaped
from intent.papers.wording import day_in_words, quoted

NOBODY = "Nobody is left to ask"
NOTHING = "There is nothing to ask: whatever counts has been spoken of, and nothing is in doubt."
LINES = 3
"""Lines to write on under each question."""
RULE = "___"
"""A rule across the page, as Markdown writes it."""
MEASURE = (
    "The questions stand in the order of what hangs on them: how soon the device must be replaced (1 to 5), times how "
    "hard a loss is to see and to undo (2 to 6), times one and the number of past showings in which it differed, "
    "times 3 where instructions clash, 2 where nobody has spoken or nobody can answer, 1 where it is uncertain."
)


def occasion_words(agenda: Agenda) -> str:
    if not agenda.count:
        return f"On {day_in_words(agenda.day)}."
    questions = "One question" if agenda.count == 1 else f"{agenda.count} questions"
    return f"{questions} to ask, as of {day_in_words(agenda.day)}."


def sheet_title(agenda: Agenda, sheet: PersonSheet) -> str:
    return person_in_words(agenda.work, sheet.person) if sheet.person else NOBODY


def weight_words(question: Question) -> str:
    return f"Weight {round(weight(question.factors))}."


def why_words(question: Question) -> str:
    return f"{question.why} {factor_words(question.factors)}"


def near_words(agenda: Agenda, sheet: PersonSheet) -> tuple[tuple[tuple[str, str], ...], ...]:
    """For each question the instructions that come near it, with the words behind them, which are quoted once."""
    quoted_at: dict[str, int] = {}
    return tuple(
        tuple((told(agenda.work, line), _words(agenda, line, number, quoted_at)) for line in question.near)
        for number, question in enumerate(sheet.questions, 1)
    )


def _words(agenda: Agenda, line: Instruction, number: int, quoted_at: dict[str, int]) -> str:
    """The words behind an instruction, or the number of the question at which they are quoted."""
    said = next(iter(quotations(agenda.work, [line])), None)
    if said is None:
        return ""
    place = quoted_at.setdefault(said.heading, 0)
    if place:
        return f"Its words are at question {place}." if place != number else ""
    quoted_at[said.heading] = number
    return f"{quoted(' '.join(as_plain(said.words).split()))} {said.attribution}"


def write_markdown(agenda: Agenda) -> str:
    """The agenda as Markdown, with lines to write on."""
    blocks = [f"# {escaped(agenda.work.title)}: what to ask", escaped(occasion_words(agenda))]
    for sheet in agenda.sheets:
        blocks.append(f"## {escaped(sheet_title(agenda, sheet))}")
        near = near_words(agenda, sheet)
        for number, question in enumerate(sheet.questions, 1):
            blocks.extend(_question(number, question, near[number - 1]))
    blocks.append(MEASURE if agenda.count else NOTHING)
    return "\n\n".join(blocks) + "\n"


def _question(number: int, question: Question, near: Iterable[tuple[str, str]]) -> Iterator[str]:
    yield f"### {number}. {escaped(question.text)}"
    yield f"Why: {escaped(why_words(question))} {weight_words(question)}"
    known = [f"- {escaped(text)}" for text in question.known]
    for instruction, words in near:
        known.append(f"- {escaped(instruction)}" + (f" {escaped(words)}" if words else ""))
    if known:
        yield "Known so far:"
        yield "\n".join(known)
    yield "\n\n".join(RULE for _ in range(LINES))
