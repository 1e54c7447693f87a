"""What to write instead, where a duty's line cannot be read: in the words of the line's own language."""

from __future__ import annotations

import re

from intent.dossier.blocks import Field
from intent.dossier.register import IdentifierKind, Register
from intent.dossier.sentence import Ungrammatical
from intent.dossier.trees import Misread
from intent.dossier.words import Known, spoken_in
from intent.language.message import Message, say
from intent.names import TERM
from intent.vocabulary.grammar import Grammar, Word
from intent.vocabulary.phrases import normal
from intent.vocabulary.terms import Vocabulary

_DUTY = str(TERM["field-duty"])
_CLAUSES = (
    Word.BY,
    Word.BEFORE,
    Word.DURING,
    Word.AFTER,
    Word.WITHIN,
    Word.EVERY_DAY,
    Word.EVERY_WEEK,
    Word.EVERY,
    Word.IF,
    Word.UNLESS,
    Word.UNTIL,
)
"""The words that a clause of a duty begins with."""


def duty_language(field: Field, known: Known, vocabulary: Vocabulary) -> Grammar:
    """The language of a line; where its words do not tell, that of the field's name."""
    labels = vocabulary.fields[_DUTY].labels
    of_name = [one for one in vocabulary.grammars if normal(labels[one.language]) == normal(field.name)]
    return spoken_in(field.value, known, [*of_name, *vocabulary.grammars])


def unquoted_duty(register: Register, spoken: Grammar) -> Message:
    """That what is to be done goes in double quotes."""
    people = [person.identifier for person in register.of_sort(IdentifierKind.PERSON)]
    clause = spoken.told([Word.BY, people[0]]) if people else spoken.told([Word.AFTER])
    return say('put what is to be done in double quotes: `"…", {clause}`', clause=clause)


def clause_fault(text: str, error: Ungrammatical, spoken: Grammar) -> Ungrammatical | Misread:
    """The same fault with what may be said of a duty, where a comma is missing or a clause begins with none of it."""
    before, rest = text[: error.offset].rstrip(), text[error.offset :]
    if not rest:
        return error
    if not before.endswith(","):
        word = _begins_with(rest, [label for word in _CLAUSES for label in spoken.labels(word)])
        message = say("put a comma before `{word}`", word=word)
        return Misread("no-comma", message, error.offset, error.length) if word else error
    mistaken = _begins_with(rest, spoken.mistaken(Word.BY))
    if mistaken:
        person = rest[len(mistaken) :].partition(",")[0].strip()
        message = say("say who has to do it with `{clause}`", clause=spoken.told([Word.BY, person or "…"]))
        return Misread("who-or-when", message, error.offset, len(mistaken))
    return Misread("who-or-when", _who_or_when(rest[: error.length], spoken), error.offset, error.length)


def _begins_with(text: str, labels: list[str] | tuple[str, ...]) -> str:
    """The word that a text begins with, as it stands there, if it is one of some labels; the longest of them."""
    pattern = "|".join(re.escape(label) for label in sorted(labels, key=len, reverse=True))
    match = re.match(rf"(?:{pattern})\b", text, re.IGNORECASE) if pattern else None
    return match.group() if match else ""


def _who_or_when(word: str, spoken: Grammar) -> Message:
    return say(
        "`{word}` says neither who nor when; write `{by} …`, `{before}`, `{during}` or `{after}`, `{often}`,"
        " `{within}`, `{if_so} …` or `{until} …`",
        word=word,
        by=spoken.label(Word.BY),
        before=spoken.label(Word.BEFORE),
        during=spoken.label(Word.DURING),
        after=spoken.label(Word.AFTER),
        often=spoken.label(Word.EVERY_DAYS).replace("…", "3"),
        within=spoken.told([Word.WITHIN, "14", Word.DAYS, Word.OF, Word.THE_END]),
        if_so=spoken.label(Word.IF),
        until=spoken.label(Word.UNTIL),
    )
