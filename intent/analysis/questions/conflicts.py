"""Instructions that clash with each other or with what is documented, as questions to those who gave them."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable, Iterator, Mapping

from intent.analysis.questions.occasion import Occasion, givers
from intent.analysis.questions.question import Question
from intent.analysis.questions.weighing import factors_of_lines
from intent.diagnostics import Diagnostic, Severity
from intent.model.work import Instruction
from intent.papers.wording import listed, sentence
from intent.values.dates import LAST_DAY
from intent.variance.people import who_can_answer

QUESTIONS: Mapping[str, str] = {
    "cannot-be-met": "Instructions {lines} cannot be met together. Which gives way, and where?",
    "aggregate-can-break": "When {first} is made use of, {others} can be broken. Which gives way?",
    "never-used": "{first} allows what can never be done. Is it still meant, and what is to give way to it?",
    "documented-departs": "What is documented is not as {first} asks. Which of the two is right?",
    "no-effect": "{first} was meant to replace what it cannot. What is to hold?",
    "out-of-time": "{first} cannot have been said when it is dated. Who said it, and when?",
}
"""What is asked of each kind of finding; others are for those who keep the documentation, not for a conversation."""
_NAME = re.compile(r"[\w-]+(?:\.\d+)?")


def conflicts(occasion: Occasion, findings: Iterable[Diagnostic]) -> Iterator[Question]:
    """A question for each clash between instructions that are in force."""
    asked = [found for found in findings if found.slug in QUESTIONS and found.severity is not Severity.NOTE]
    clashing = {
        line.identifier
        for found in asked
        if found.slug == "cannot-be-met"
        for line in _lines_in(occasion, found)
    }
    for found in asked:
        lines = _lines_in(occasion, found)
        is_in_force = found.slug == "out-of-time" or _is_led_by(lines, found)
        if is_in_force and not _is_asked_otherwise(occasion, found, clashing):
            yield _question(occasion, found, lines)


def _is_asked_otherwise(occasion: Occasion, found: Diagnostic, clashing: Collection[str]) -> bool:
    """Whether another question asks the same: which of two gives way, or who consents once nobody is left."""
    if found.slug == "documented-departs":
        return found.subject in clashing
    line = occasion.work.instruction(found.subject)
    consents = line.consents if line and found.slug == "never-used" else ()
    return any(who_can_answer(occasion.work, person, LAST_DAY) is None for person in consents)


def _question(occasion: Occasion, found: Diagnostic, lines: tuple[Instruction, ...]) -> Question:
    first = found.subject or (lines[0].identifier if lines else "")
    others = [line.identifier for line in lines if first not in {line.identifier, line.heading}]
    named = [line.identifier for line in lines]
    text = QUESTIONS[found.slug].format(
        first=first, others=listed(others) or "others", lines=listed(named) or first
    )
    if found.slug == "cannot-be-met" and len(named) < 2:
        text = f"{first} can never be met. What is to hold in its place?"
    factors = factors_of_lines(occasion, lines, 3)
    why = sentence(found.message)
    return Question(text=text, why=why, factors=factors, whom=givers(occasion, lines), known=(), near=lines)


def _is_led_by(lines: Iterable[Instruction], found: Diagnostic) -> bool:
    """Whether what the finding is about is among the instructions in force."""
    return any(found.subject in {line.identifier, line.heading} for line in lines)


def _lines_in(occasion: Occasion, found: Diagnostic) -> tuple[Instruction, ...]:
    """The instructions in force that a finding names, or whose heading it is about."""
    named = set(_NAME.findall(found.message)) | {found.subject}
    headings = {found.subject} & {line.heading for line in occasion.lines}
    return tuple(line for line in occasion.lines if line.identifier in named or line.heading in headings)
