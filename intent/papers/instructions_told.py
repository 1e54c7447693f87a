"""Instructions as a report tells them: what is said, in whose words, and why it held or fell."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable
from dataclasses import dataclass, field, replace

from intent.language.calendar import span_words
from intent.language.languages import locale_of
from intent.language.locale import Locale
from intent.language.message import Words, joined, quoted, say, sentence
from intent.model.assertions import Condition
from intent.model.citing import words_behind
from intent.model.duty import Duty
from intent.model.instruction_text import (
    DutySentence,
    InstructionSentence,
    condition_text,
    duty_text,
    sentence_text,
)
from intent.model.naming import person_words
from intent.model.phrasing import scope_words
from intent.model.work import Instruction, Modality, Work
from intent.papers.attribution import attribution
from intent.papers.inline import AsWritten, Content
from intent.variance.result import Because, SetAside
from intent.vocabulary.terms import Vocabulary


@dataclass(frozen=True, slots=True)
class TypesetSentence:
    """An instruction's sentence for people to read: with their names, days in words, and quotation marks."""

    work: Work
    line: Instruction

    def label_in(self, language: str) -> str:
        """The sentence in a language, from what was read of it."""
        locale = locale_of(language)
        people = tuple(locale.say(person_words(self.work, person)) for person in self.line.consents)
        last_day = locale.say(span_words(self.line.until))
        named = replace(self.line, consents=people)
        return _typeset(sentence_text(named, self.work.vocabulary, language, until=last_day), locale)


@dataclass(frozen=True, slots=True)
class TypesetDuty:
    """A duty's line for people to read, likewise."""

    work: Work
    duty: Duty

    def label_in(self, language: str) -> str:
        """The line in a language, from what was read of it."""
        locale = locale_of(language)
        person = locale.say(person_words(self.work, self.duty.person)) if self.duty.person else None
        told = replace(self.duty, person=person)
        last_day = locale.say(span_words(self.duty.until))
        return _typeset(duty_text(told, self.work.vocabulary, language, until=last_day), locale)


@dataclass(frozen=True, slots=True)
class TypesetCondition:
    """A condition for people to read, with its `if` or `unless`, and quotation marks."""

    condition: Condition
    vocabulary: Vocabulary = field(compare=False, repr=False)

    def label_in(self, language: str) -> str:
        """The condition in a language."""
        return _typeset(condition_text(self.condition, self.vocabulary, language), locale_of(language))


def _typeset(sentence: str, locale: Locale) -> str:
    """A sentence of the text form with the quotation marks of a language for its straight ones."""
    return re.sub(r'"([^"]*)"', lambda found: locale.say(quoted(found[1])), sentence)


@dataclass(frozen=True, slots=True, kw_only=True)
class QuotedWords:
    """The words quoted under a heading or a line, who said them, and the reason given."""

    under: str
    """The identifier of the heading, or of the line."""
    words: str
    attribution: Words
    reason: Words = ""


def instruction_words(work: Work, instruction: Instruction) -> Words:
    """`R1.2 allows: technology of Monitors is flat panel, with consent of Brandvold Estate (artist's estate).`"""
    name, text = instruction.identifier, TypesetSentence(work, instruction)
    match instruction.modality:
        case Modality.REQUIRED:
            return say("{line} requires: {sentence}.", line=name, sentence=text)
        case Modality.ALLOWED:
            return say("{line} allows: {sentence}.", line=name, sentence=text)
        case Modality.FORBIDDEN:
            return say("{line} forbids: {sentence}.", line=name, sentence=text)


def as_written(work: Work, line: Instruction | Duty) -> AsWritten:
    """The line as its writer put it, to stand below where a language tells it otherwise."""
    original = (
        DutySentence(line, vocabulary=work.vocabulary)
        if isinstance(line, Duty)
        else InstructionSentence(line, work.vocabulary)
    )
    return AsWritten(original, say("As written: {sentence}", sentence=original.written))


def quotations(work: Work, instructions: Iterable[Instruction]) -> tuple[QuotedWords, ...]:
    """The words behind the instructions, each heading's and each line's own once, in the order given."""
    found: dict[str, QuotedWords] = {}
    for instruction in instructions:
        heading = work.heading(instruction.heading)
        words = words_behind(work, instruction)
        if heading and words and heading.identifier not in found:
            found[heading.identifier] = QuotedWords(
                under=heading.identifier,
                words=words,
                attribution=attribution(work, instruction),
                reason=reason_given(heading.reason),
            )
        if instruction.words:
            found[instruction.identifier] = QuotedWords(
                under=instruction.identifier,
                words=instruction.words,
                attribution=attribution(work, instruction),
            )
    return tuple(found.values())


def reason_given(reason: str) -> Words:
    """`Reason given: One for each track.`; nothing where there is none."""
    return say("Reason given: {reason}", reason=sentence(reason)) if reason.strip() else ""


def with_source(work: Work, instruction: Instruction) -> Content:
    """The instruction; and, where no words are quoted that would say it, who said so and where."""
    told = instruction_words(work, instruction)
    if not words_behind(work, instruction):
        heading = work.heading(instruction.heading)
        reason = reason_given(heading.reason) if heading else ""
        told = joined([told, attribution(work, instruction), reason])
    return told, as_written(work, instruction)


def set_aside_words(work: Work, fallen: SetAside, quoted_headings: Collection[str]) -> Content:
    """What is set aside, with its words where they are not quoted already, and the rule in plain words."""
    instruction = work.instruction(fallen.instruction)
    why = because_sentence(work, fallen)
    if instruction is None:
        return say("{subject}: {text}", subject=fallen.instruction, text=why)
    told = [instruction_words(work, instruction)]
    if work.heading(instruction.heading) and instruction.heading not in quoted_headings:
        words = words_behind(work, instruction)
        told += [quoted(words) if words else "", attribution(work, instruction)]
    return joined([*told, why]), as_written(work, instruction)


def because_sentence(work: Work, fallen: SetAside) -> Words:
    """Why one instruction did not prevail, as a sentence."""
    return say("It is set aside because {rule}.", rule=because_words(work, fallen))


def because_words(work: Work, fallen: SetAside) -> Words:
    """The rule by which one instruction prevailed over another: `R1.2 makes an exception to what this one forbids`."""
    winner, loser = work.instruction(fallen.by), work.instruction(fallen.instruction)
    if fallen.because is Because.DISPENSATION:
        return say(
            "{person} has dispensed with it for this installation", person=person_words(work, fallen.by)
        )
    if winner is None or loser is None:
        return say("{line} prevails over it ({rule})", line=fallen.by, rule=_RULES[fallen.because])
    return _rule(work, winner, loser, fallen.because)


_RULES = {
    Because.AUTHORITY: say("authority"),
    Because.SCOPE: say("scope"),
    Because.DATE: say("date"),
    Because.EXCEPTION: say("exception"),
}


def _rule(work: Work, winner: Instruction, loser: Instruction, because: Because) -> Words:
    name = winner.identifier
    match because:
        case Because.AUTHORITY:
            return _of_authority(work, winner, loser)
        case Because.SCOPE:
            return say(
                "{line} speaks of {part} in particular, and this one of {whole} as a whole",
                line=name,
                part=scope_words(winner.assertion.scope, work.vocabulary),
                whole=scope_words(loser.assertion.scope, work.vocabulary),
            )
        case Because.DATE:
            one, two = (span_words(line.on) or say("an unknown date") for line in (winner, loser))
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


def _of_authority(work: Work, winner: Instruction, loser: Instruction) -> Words:
    one, two = (person_words(work, line.by) for line in (winner, loser))
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
