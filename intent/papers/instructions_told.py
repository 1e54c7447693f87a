"""Instructions as a report tells them: what is said, in whose words, and why it held or fell."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from intent.language.message import Saying, joined, say
from intent.model.phrasing import scope_words, sentence_words
from intent.model.work import Instruction, Modality, Work
from intent.papers.attribution import attribution, words_behind
from intent.papers.naming import person_in_words
from intent.papers.wording import date_in_words, quoted, sentence
from intent.variance.result import Because, SetAside

if TYPE_CHECKING:
    from intent.reading.evidence.quoting import Quoted


@dataclass(frozen=True, slots=True, kw_only=True)
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
    """`R1.2 allows: technology of Monitors is flat panel, with consent of Brandvold Estate (artist's estate).`

    The sentence itself is as the text form has it, in whatever language the report is.
    """
    text = sentence_words(
        instruction.assertion,
        vocabulary=work.vocabulary,
        conditions=instruction.conditions,
        consents=[str(person_in_words(work, person, "en")) for person in instruction.consents],
        until=date_in_words(instruction.until) or None,
        choice=instruction.choice,
    )
    name, text = instruction.identifier, re.sub(r'"([^"]*)"', r"“\1”", text)
    match instruction.modality:
        case Modality.REQUIRED:
            return say("{line} requires: {sentence}.", line=name, sentence=text)
        case Modality.ALLOWED:
            return say("{line} allows: {sentence}.", line=name, sentence=text)
        case Modality.FORBIDDEN:
            return say("{line} forbids: {sentence}.", line=name, sentence=text)


def quotations(work: Work, instructions: Iterable[Instruction]) -> tuple[Quotation, ...]:
    """The words behind the instructions, each heading's once, in the order given."""
    found: dict[str, Quotation] = {}
    for instruction in instructions:
        heading = work.heading(instruction.heading)
        words = words_behind(work, instruction)
        if heading and words and heading.identifier not in found:
            title = f"{heading.identifier}, {heading.title}"
            said = attribution(work, instruction)
            found[heading.identifier] = Quotation(
                heading=title, words=words, attribution=said, reason=sentence(heading.reason)
            )
    return tuple(found.values())


def told_with_source(work: Work, instruction: Instruction) -> str:
    """The instruction; and, where no words are quoted that would say it, who said so and where."""
    if words_behind(work, instruction):
        return told(work, instruction)
    heading = work.heading(instruction.heading)
    reason = reason_given(sentence(heading.reason)) if heading and heading.reason else ""
    return joined([told(work, instruction), attribution(work, instruction), reason])


def reason_given(reason: str) -> Saying:
    return say("Reason given: {reason}", reason=reason)


def set_aside_in_words(work: Work, fallen: SetAside, quoted_headings: Iterable[str]) -> str:
    """What is set aside, with its words where they are not quoted already, and the rule in plain words."""
    instruction = work.instruction(fallen.instruction)
    why = because_in_words(work, fallen)
    if instruction is None:
        return say("{subject}: {text}", subject=fallen.instruction, text=why)
    heading = work.heading(instruction.heading)
    if heading is None or heading.identifier in set(quoted_headings):
        return joined([told(work, instruction), why])
    words = words_behind(work, instruction)
    said = quoted(words) if words else ""
    return joined([told(work, instruction), said, attribution(work, instruction), why])


def because_in_words(work: Work, fallen: SetAside) -> str:
    """The rule by which one instruction prevailed over another, as a sentence."""
    winner, loser = work.instruction(fallen.by), work.instruction(fallen.instruction)
    if fallen.because is Because.DISPENSATION:
        return say(
            "It is set aside because {person} has dispensed with it for this installation.",
            person=person_in_words(work, fallen.by),
        )
    if winner is None or loser is None:
        return say(
            "It is set aside because {line} prevails over it ({rule}).",
            line=fallen.by,
            rule=_RULES[fallen.because],
        )
    return say("It is set aside because {rule}.", rule=_rule(work, winner, loser, fallen.because))


_RULES = {
    Because.SUPERSEDES: say("supersedes"),
    Because.AUTHORITY: say("authority"),
    Because.SCOPE: say("scope"),
    Because.DATE: say("date"),
    Because.EXCEPTION: say("exception"),
}


def _rule(work: Work, winner: Instruction, loser: Instruction, because: Because) -> str:
    name = winner.identifier
    match because:
        case Because.SUPERSEDES:
            return say("{line} was given to replace it", line=name)
        case Because.AUTHORITY:
            return _of_authority(work, winner, loser)
        case Because.SCOPE:
            one, two = (scope_words(line.assertion.scope, work.vocabulary) for line in (winner, loser))
            return say(
                "{line} speaks of {part} in particular, and this one of {whole} as a whole",
                line=name,
                part=one,
                whole=two,
            )
        case Because.DATE:
            one, two = (date_in_words(line.on) or say("an unknown date") for line in (winner, loser))
            return say(
                "{line}, of {date}, is later than this one, of {earlier}", line=name, date=one, earlier=two
            )
        case Because.EXCEPTION if winner.modality is Modality.FORBIDDEN:
            return say("{line} forbids a part of what this one allows in general", line=name)
        case _ if loser.modality is Modality.FORBIDDEN:
            return say("{line} makes an exception to what this one forbids", line=name)
        case _ if loser.modality is Modality.ALLOWED:
            return say("{line} makes an exception to what this one allows", line=name)
        case _:
            return say("{line} makes an exception to what this one requires", line=name)


def _of_authority(work: Work, winner: Instruction, loser: Instruction) -> str:
    one, two = (person_in_words(work, line.by) for line in (winner, loser))
    giver = one or say("somebody")
    if two:
        return say(
            "{line} was given by {person}, whose word ranks above that of {other}",
            line=winner.identifier,
            person=giver,
            other=two,
        )
    return say(
        "{line} was given by {person}, whose word ranks above an instruction for which nobody is named",
        line=winner.identifier,
        person=giver,
    )
