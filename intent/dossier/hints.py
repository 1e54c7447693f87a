"""What to write instead of a sentence that cannot be read, where the sentence shows what was meant."""

from __future__ import annotations

import re
from collections.abc import Iterable

from intent.dossier.register import IdentifierKind, Register
from intent.dossier.unreadable import Unreadable
from intent.dossier.value_hints import comma_hint, unit_after
from intent.language.message import Words, say
from intent.vocabulary.grammar import ORDINALS, Grammar, Word
from intent.vocabulary.phrases import normal
from intent.vocabulary.terms import Vocabulary

_APART = re.compile(r'"[^"]*"|“[^”]*”|„[^“”]*[“”]|«[^»]*»|\([^()]*\)')
_FACT = r'(?:"[^"]*"|“[^”]*”|„[^“”]*[“”]|«[^»]*»)'
_COMMA = r"(?<![\d,.])[-+−]?\d+,\d+(?![\d,])"
_CONDITIONS = (Word.IF, Word.UNLESS)
_CLAUSES = (*_CONDITIONS, Word.UNTIL, *ORDINALS[:3])


def comma_fault(text: str, grammars: Iterable[Grammar]) -> tuple[Words, int, int] | None:
    """A decimal comma in a sentence, outside quotation marks and positions: message, offset, length."""
    match = re.search(_COMMA + unit_after(grammars), without_quoted(text))
    hint = comma_hint(match.group(), grammars) if match else ""
    return (hint, match.start(), len(match.group())) if match and hint else None


def without_quoted(text: str) -> str:
    """The text with blanks in place of what is quoted and of positions."""
    return _APART.sub(lambda apart: " " * len(apart.group()), text)


def sentence_hint(
    text: str, offset: int, error: Unreadable, register: Register, vocabulary: Vocabulary, spoken: Grammar
) -> Words:
    """What to write instead, or nothing where that cannot be told; ``offset`` is where reading stopped.

    ``spoken`` is the language of the sentence.
    """
    if error.slug in {"sentence", "unknown-name", "wrong-reference"} and _is_about_consent(
        text, offset, spoken
    ):
        return _consent_hint(text, register, spoken)
    if error.slug == "sentence":
        return (
            _verb_hint(text, offset, spoken)
            or _of_hint(text, vocabulary, spoken)
            or _fact_hint(text, offset, vocabulary.grammars)
            or _facts_hint(text, offset, spoken)
            or _or_hint(text, spoken)
        )
    if error.slug == "unknown-characteristic":
        return _fact_hint(text, offset, vocabulary.grammars)
    late = re.compile(rf"[^,]\s+(?P<word>{_any_of(_late_words(spoken))})\s", re.IGNORECASE).search(
        text, offset
    )
    if late and error.slug != "unknown-name":
        return say("put a comma before `{word}`", word=late["word"])
    return ""


def _any_of(labels: Iterable[str]) -> str:
    """A pattern of any of these labels, the longest first; of none of them, one that never matches."""
    return "|".join(re.escape(label) for label in sorted(labels, key=len, reverse=True)) or "(?!)"


def _labels(spoken: Grammar, words: Iterable[Word]) -> list[str]:
    return [label for word in words for label in spoken.labels(word)]


def _with(spoken: Grammar) -> str:
    """The word that a clause of consent begins with."""
    return spoken.label(Word.WITH_CONSENT_OF).split()[0]


def _late_words(spoken: Grammar) -> list[str]:
    """How a clause begins, read or mistaken."""
    mistaken = spoken.mistaken(Word.WITH_CONSENT_OF)
    beginning = [label for label in mistaken if label.split()[0] == _with(spoken)]
    return [*_labels(spoken, (*_CONDITIONS, Word.UNTIL, Word.WITH_CONSENT_OF)), *beginning]


def _is_about_consent(text: str, offset: int, spoken: Grammar) -> bool:
    """Whether reading stopped in a clause that speaks of consent."""
    clause = text[max(text.rfind(",", 0, offset), 0) :]
    consent = rf"\b(?:{_any_of(spoken.mistaken(Word.WITH_CONSENT_OF))})\b"
    return bool(re.search(consent, clause, re.IGNORECASE)) and _with(spoken) in clause.casefold()


def _consent_hint(text: str, register: Register, spoken: Grammar) -> Words:
    people = [person.identifier for person in register.of_sort(IdentifierKind.PERSON)]
    words = set(re.findall(r"[\w-]+", text.casefold()))
    named = next(
        (person for person in people if person.casefold() in words), people[0] if people else "estate"
    )
    return say(
        "write `{clause}`: the identifier under People, one clause a person",
        clause=spoken.told([Word.WITH_CONSENT_OF, named]),
    )


def _verb_hint(text: str, offset: int, spoken: Grammar) -> Words:
    match = re.search(rf"\s+(?:{_any_of(spoken.mistaken(Word.IS))})\s", text, re.IGNORECASE)
    is_there = rf"\b(?:{_any_of(spoken.labels(Word.IS))})\b"
    if match is None or match.start() > offset or re.search(is_there, text[: match.start()], re.IGNORECASE):
        return ""
    name = re.split(rf"\s(?:{_any_of(spoken.labels(Word.OF))})\s", text[: match.start()])[-1].strip()
    return say("after `{name}` comes `{word}`", name=name, word=spoken.label(Word.IS))


def _of_hint(text: str, vocabulary: Vocabulary, spoken: Grammar) -> Words:
    before = re.split(rf"\s+(?:{_any_of(spoken.labels(Word.IS))})\b", text, maxsplit=1)[0]
    words = before.split()
    if set(spoken.labels(Word.OF)) & set(map(normal, words)):
        return ""
    for size in range(len(words) - 1, 0, -1):
        name = " ".join(words[:size])
        if vocabulary.find_characteristic(name) is not None:
            return say("expected `{word}` after `{name}`", word=spoken.label(Word.OF), name=name)
    return ""


def _fact_hint(text: str, offset: int, grammars: Iterable[Grammar]) -> Words:
    words = _any_of(label for grammar in grammars for label in _labels(grammar, _CONDITIONS))
    match = re.search(rf"(?:^|[\s,])(?P<word>{words})\s+(?P<fact>[^\"“„«,]+)$", text, re.IGNORECASE)
    if match is None or match.start() > offset:
        return ""
    fact = match["fact"].strip().rstrip(".")
    return say('put a fact in double quotes: `{word} "{fact}"`', word=match["word"], fact=fact)


def _facts_hint(text: str, offset: int, spoken: Grammar) -> Words:
    """For facts joined within a clause, a clause for each, or all as one fact where clauses would say less or more.

    Every clause of an instruction has to hold: `if "a", if "b"` is `a and b`, and `unless "a", unless "b"` is `unless
    "a" or "b"`; the other two have no clauses of their own.
    """
    joints = {
        Word.IF: (spoken.labels(Word.AND), spoken.labels(Word.OR)),
        Word.UNLESS: (spoken.labels(Word.OR), spoken.labels(Word.AND)),
    }
    for word, (apart, together) in joints.items():
        label = _any_of(spoken.labels(word))
        joint = rf"\s*(?:,|\b(?:{_any_of([*apart, *together])})\b)[\s,]*(?:(?:{label})\s+)?"
        match = re.search(
            rf"(?:^|[\s,])(?P<word>{label})\s+(?P<facts>{_FACT}(?:{joint}{_FACT})+)", text, re.IGNORECASE
        )
        if match is None or match.start() > offset or offset > match.end():
            continue
        facts = [fact.strip('"“”„«» ') for fact in re.findall(_FACT, match["facts"])]
        between = re.sub(_FACT, " ", match["facts"])
        if re.search(rf"\b(?:{_any_of(together)})\b", between, re.IGNORECASE):
            fact = re.sub(
                rf"\s+(?:{label})\s+", " ", re.sub(r"[\"“”„«»]", "", match["facts"]), flags=re.IGNORECASE
            )
            return say('write it as one fact: `{word} "{fact}"`', word=match["word"], fact=fact)
        clauses = ", ".join(f'{match["word"]} "{fact}"' for fact in facts)
        return say("write a clause for each fact: `{clauses}`", clauses=clauses)
    return ""


def _or_hint(text: str, spoken: Grammar) -> Words:
    """For alternatives without `one of`, the same with it."""
    one_of, clauses = spoken.labels(Word.ONE_OF), _any_of([*_labels(spoken, _CLAUSES), _with(spoken)])
    is_or_is_not = (
        rf"\b(?:{_any_of(spoken.labels(Word.IS))})\s+(?:(?:{_any_of(spoken.labels(Word.NOT))})\s+)?"
    )
    alternatives = (
        rf"(?!(?:{_any_of(one_of)})\b)(?P<values>[^\"]*?\b(?:{_any_of(spoken.labels(Word.OR))})\b.*?)"
    )
    match = re.search(rf"{is_or_is_not}{alternatives}(?:,?\s+(?:{clauses})\b|\.?$)", text, re.IGNORECASE)
    if match is None:
        return ""
    values = match["values"].strip().rstrip(".")
    return say("write `{words} {values}`", words=spoken.label(Word.ONE_OF), values=values)
