"""Instructions that clash with each other or with what is documented, as questions to those who gave them."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence

from intent.analysis.examination.examine import findings_about
from intent.analysis.examination.findings import Finding, identifiers
from intent.analysis.questions.line_factors import factors_of_lines
from intent.analysis.questions.occasion import Occasion, givers
from intent.analysis.questions.question import Question
from intent.diagnostics import Severity
from intent.language.message import Message, listed, say, sentence
from intent.model.work import Instruction
from intent.values.dates import LAST_DAY
from intent.variance.people import who_can_answer

QUESTIONS: Mapping[str, Message] = {
    "cannot-be-met": say("Instructions {lines} cannot be met together. Which gives way, and where?"),
    "dilemma": say(
        "Instructions {lines} are of different grounds and cannot be met together. Who settles it, and which gives way?"
    ),
    "aggregate-can-break": say("When {first} is made use of, {others} can be broken. Which gives way?"),
    "never-used": say(
        "{first} allows what can never be done. Is it still meant, and what is to give way to it?"
    ),
    "documented-departs": say("What is documented is not as {first} asks. Which of the two is right?"),
    "no-effect": say("{first} was meant to replace what it cannot. What is to hold?"),
    "left-silent": say("{first} took something back, and nothing speaks of it now. What is to hold?"),
    "out-of-time": say("{first} cannot have been said when it is dated. Who said it, and when?"),
}
"""What is asked of each kind of finding; others are for those who keep the documentation, not for a conversation."""
_WHATEVER_HOLDS = frozenset({"out-of-time", "left-silent"})
"""What is asked also where what the finding is about is no longer in force."""
_NEVER_MET = say("{first} can never be met. What is to hold in its place?")


def conflicts(occasion: Occasion) -> Iterator[Question]:
    """A question for each clash between instructions that are in force."""
    asked = [
        found
        for found in findings_about(occasion.case)
        if found.slug in QUESTIONS and found.severity is not Severity.NOTE
    ]
    clashing = {
        line.identifier
        for found in asked
        if found.slug in {"cannot-be-met", "dilemma"}
        for line in _in_force(occasion, found)
    }
    for found in asked:
        lines = _in_force(occasion, found)
        is_led = any(found.subject in {line.identifier, line.heading} for line in lines)
        if (found.slug in _WHATEVER_HOLDS or is_led) and not _is_asked_otherwise(occasion, found, clashing):
            yield _question(occasion, found, lines)


def _in_force(occasion: Occasion, found: Finding) -> tuple[Instruction, ...]:
    """The instructions in force that a finding names, or whose heading it is about."""
    return tuple(
        line for line in occasion.lines if line.identifier in found.lines or line.heading == found.subject
    )


def _is_asked_otherwise(occasion: Occasion, found: Finding, clashing: Collection[str]) -> bool:
    """Whether another question asks the same: which of two gives way, or who consents once nobody is left."""
    if found.slug == "documented-departs":
        return found.subject in clashing
    line = occasion.work.instruction(found.subject)
    consents = line.consents if line and found.slug == "never-used" else ()
    return any(who_can_answer(occasion.work, person, LAST_DAY) is None for person in consents)


def _question(occasion: Occasion, found: Finding, lines: Sequence[Instruction]) -> Question:
    named = identifiers(lines)
    others = identifiers(line for line in lines if found.subject not in {line.identifier, line.heading})
    is_alone = found.slug == "cannot-be-met" and len(named) < 2
    return Question(
        text=(_NEVER_MET if is_alone else QUESTIONS[found.slug]).filled(
            first=found.subject, others=listed(others) or say("others"), lines=listed(named) or found.subject
        ),
        why=sentence(found.message),
        factors=factors_of_lines(occasion, lines, 3),
        whom=givers(occasion, lines),
        near=tuple(lines),
    )
