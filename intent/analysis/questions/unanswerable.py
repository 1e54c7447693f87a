"""What nobody can settle any more: facts with no one left to attest them, consents with no one left to give them."""

from __future__ import annotations

from collections.abc import Iterator

from intent.analysis.examination.findings import identifiers
from intent.analysis.questions.line_factors import factors_of_lines
from intent.analysis.questions.occasion import Occasion, highest
from intent.analysis.questions.question import Question
from intent.language.message import Words, say, say_of
from intent.model.naming import person_words
from intent.model.work import Instruction
from intent.variance.people import staff, who_can_answer


def unanswerable(occasion: Occasion) -> Iterator[Question]:
    """A question for each fact that nobody in the house can check, and for each consent that nobody can give."""
    if not staff(occasion.work, occasion.day):
        yield from _facts(occasion)
    yield from _consents(occasion)


def _facts(occasion: Occasion) -> Iterator[Question]:
    resting: dict[str, list[Instruction]] = {}
    for line in occasion.lines:
        for condition in line.conditions:
            if condition.fact:
                resting.setdefault(condition.fact, []).append(line)
    for fact, lines in resting.items():
        text = say("Who is to say whether “{fact}”, and how would they know?", fact=fact)
        why = say_of(
            len(lines),
            "{lines} rests on it, and nobody is left in the house who could attest it.",
            "{lines} rest on it, and nobody is left in the house who could attest it.",
            lines=identifiers(lines),
        )
        yield _question(occasion, text, why, lines)


def _consents(occasion: Occasion) -> Iterator[Question]:
    resting: dict[str, list[Instruction]] = {}
    for line in occasion.lines:
        for person in line.consents:
            if who_can_answer(occasion.work, person, occasion.day) is None:
                resting.setdefault(person, []).append(line)
    for person, lines in resting.items():
        name = person_words(occasion.work, person)
        text = say("Who decides in the place of {person} on {lines}?", person=name, lines=identifiers(lines))
        why = say(
            "It takes the consent of {person}, whose time is over and whom nobody succeeds.", person=name
        )
        yield _question(occasion, text, why, lines)


def _question(occasion: Occasion, text: Words, why: Words, lines: list[Instruction]) -> Question:
    factors = factors_of_lines(occasion, lines, 2)
    return Question(text=text, why=why, factors=factors, whom=highest(occasion), near=tuple(lines))
