"""Instructions as a report tells them: what is said, in whose words, and why it held or fell."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from intent.model import Instruction, Modality, Work
from intent.phrasing import scope_words, sentence_words
from intent.reports.attribution import attribution, words_behind
from intent.reports.naming import person_in_words
from intent.reports.wording import date_in_words, quoted, sentence
from intent.variance.result import Because, SetAside

if TYPE_CHECKING:
    from intent.evidence.quoting import Quoted

VERBS = {Modality.REQUIRED: "requires", Modality.ALLOWED: "allows", Modality.FORBIDDEN: "forbids"}


@dataclass(frozen=True, slots=True)
class Quotation:
    """The words quoted under a heading, who said them and where they are to be found."""

    heading: str
    """`R1, The pictures come from tubes`."""
    words: str
    attribution: str
    reason: str = ""
    passages: tuple[Quoted, ...] = ()
    """What the words were looked for in, where the sources were read."""


def told(work: Work, instruction: Instruction) -> str:
    """`R1.2 allows: technology of Monitors is flat panel, with consent of Brandvold Estate (estate).`"""
    text = sentence_words(
        instruction.assertion,
        work.vocabulary,
        instruction.conditions,
        [person_in_words(work, person) for person in instruction.consents],
        date_in_words(instruction.until) or None,
        instruction.choice,
    )
    text = re.sub(r'"([^"]*)"', r"“\1”", text)
    return f"{instruction.identifier} {VERBS[instruction.modality]}: {text}."


def quotations(work: Work, instructions: Iterable[Instruction]) -> tuple[Quotation, ...]:
    """The words behind the instructions, each heading's once, in the order given."""
    found: dict[str, Quotation] = {}
    for instruction in instructions:
        heading = work.heading(instruction.heading)
        words = words_behind(work, instruction)
        if heading and words and heading.identifier not in found:
            title = f"{heading.identifier}, {heading.title}"
            said = attribution(work, instruction)
            found[heading.identifier] = Quotation(title, words, said, sentence(heading.reason))
    return tuple(found.values())


def told_with_source(work: Work, instruction: Instruction) -> str:
    """The instruction; and, where no words are quoted that would say it, who said so and where."""
    if words_behind(work, instruction):
        return told(work, instruction)
    heading = work.heading(instruction.heading)
    reason = f" Reason given: {sentence(heading.reason)}" if heading and heading.reason else ""
    return f"{told(work, instruction)} {attribution(work, instruction)}{reason}"


def set_aside_in_words(work: Work, fallen: SetAside, quoted_headings: Iterable[str]) -> str:
    """What is set aside, with its words where they are not quoted already, and the rule in plain words."""
    instruction = work.instruction(fallen.instruction)
    why = because_in_words(work, fallen)
    if instruction is None:
        return f"{fallen.instruction}: {why}"
    heading = work.heading(instruction.heading)
    if heading is None or heading.identifier in set(quoted_headings):
        return f"{told(work, instruction)} {why}"
    words = words_behind(work, instruction)
    said = [quoted(words)] if words else []
    return " ".join([told(work, instruction), *said, attribution(work, instruction), why])


def because_in_words(work: Work, fallen: SetAside) -> str:
    """The rule by which one instruction prevailed over another, as a sentence."""
    winner, loser = work.instruction(fallen.by), work.instruction(fallen.instruction)
    if fallen.because is Because.DISPENSATION:
        who = person_in_words(work, fallen.by)
        return f"It is set aside because {who} has dispensed with it for this installation."
    if winner is None or loser is None:
        return f"It is set aside because {fallen.by} prevails over it ({fallen.because})."
    return f"It is set aside because {_rule(work, winner, loser, fallen.because)}."


def _rule(work: Work, winner: Instruction, loser: Instruction, because: Because) -> str:
    name = winner.identifier
    match because:
        case Because.SUPERSEDES:
            return f"{name} was given to replace it"
        case Because.AUTHORITY:
            one, two = (person_in_words(work, line.by) for line in (winner, loser))
            return f"{name} was given by {one or 'somebody'}, whose word ranks above {_owner(two)}"
        case Because.SCOPE:
            one, two = (scope_words(line.assertion.scope, work.vocabulary) for line in (winner, loser))
            return f"{name} speaks of {one} in particular, and this one of {two} as a whole"
        case Because.DATE:
            one, two = (date_in_words(line.on) or "an unknown date" for line in (winner, loser))
            return f"{name}, of {one}, is later than this one, of {two}"
        case Because.EXCEPTION if winner.modality is Modality.FORBIDDEN:
            return f"{name} forbids a part of what this one allows in general"
        case _:
            return f"{name} makes an exception to what this one {VERBS[loser.modality]}"


def _owner(person: str) -> str:
    return f"that of {person}" if person else "an instruction for which nobody is named"
