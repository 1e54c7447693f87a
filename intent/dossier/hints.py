"""What to write instead of a sentence that cannot be read, where the sentence shows what was meant."""

from __future__ import annotations

import re

from intent.dossier.expressions import Unreadable
from intent.dossier.register import IdentifierKind, Register
from intent.dossier.value_hints import comma_hint
from intent.language.message import Words, say
from intent.vocabulary.phrases import normal
from intent.vocabulary.terms import Vocabulary

_APART = re.compile(r'"[^"]*"|“[^”]*”|„[^“”]*[“”]|«[^»]*»|\([^()]*\)')
_COMMA = re.compile(r"(?<![\d,.])[-+−]?\d+,\d+(?![\d,])(?:\s*(?!and\b|or\b|±)[^\s\d,;)]+)?")
_CLAUSE = r",?\s+(?:if|unless|until|with\s|first|second|third)\b"
_ALTERNATIVES = re.compile(rf"\bis\s+(?:not\s+)?(?!one of\b)(?P<values>[^\"]*?\bor\b.*?)(?:{_CLAUSE}|\.?$)")
_VERB = re.compile(r"\s+(?P<verb>are|must be|should be|shall be|has to be|have to be|was|were|must|=)\s")
_CONDITION = re.compile(
    r"(?:^|[\s,])(?P<word>if|unless|wenn|falls|si)\s+(?P<fact>[^\"“„«,]+)$", re.IGNORECASE
)
_CONSENT = re.compile(r"\b(?:consent|permission|agreement|approval)\b", re.IGNORECASE)
_LATE_CLAUSE = re.compile(r"[^,]\s+(?P<word>if|unless|until|with consent of|with the consent of)\s")


def comma_fault(text: str) -> tuple[Words, int, int] | None:
    """A decimal comma in a sentence, outside quotation marks and positions: message, offset, length."""
    match = _COMMA.search(_APART.sub(lambda apart: " " * len(apart.group()), text))
    hint = comma_hint(match.group()) if match else ""
    return (hint, match.start(), len(match.group())) if match and hint else None


def sentence_hint(
    text: str, offset: int, error: Unreadable, register: Register, vocabulary: Vocabulary
) -> Words:
    """What to write instead, or nothing where that cannot be told; ``offset`` is where reading stopped."""
    if error.slug in {"sentence", "unknown-name", "wrong-reference"} and _is_about_consent(text, offset):
        return _consent_hint(text, register)
    if error.slug == "sentence":
        return (
            _verb_hint(text, offset)
            or _of_hint(text, vocabulary)
            or _fact_hint(text, offset)
            or _or_hint(text)
        )
    if error.slug == "unknown-characteristic":
        return _fact_hint(text, offset)
    late = _LATE_CLAUSE.search(text, offset)
    if late and error.slug != "unknown-name":
        return say("put a comma before `{word}`", word=late["word"])
    return ""


def _is_about_consent(text: str, offset: int) -> bool:
    """Whether reading stopped in a clause that speaks of consent."""
    start = text.rfind(",", 0, offset)
    clause = text[max(start, 0) :]
    return bool(_CONSENT.search(clause)) and "with" in clause.casefold()


def _consent_hint(text: str, register: Register) -> Words:
    people = [person.identifier for person in register.of_sort(IdentifierKind.PERSON)]
    words = set(re.findall(r"[\w-]+", text.casefold()))
    named = next(
        (person for person in people if person.casefold() in words), people[0] if people else "estate"
    )
    return say("write `with consent of {name}`: the identifier under People, one clause a person", name=named)


def _verb_hint(text: str, offset: int) -> Words:
    match = _VERB.search(text)
    if match is None or match.start() > offset or re.search(r"\bis\b", text[: match.start()]):
        return ""
    return say("after `{name}` comes `is`", name=text[: match.start()].rpartition(" of ")[2].strip())


def _of_hint(text: str, vocabulary: Vocabulary) -> Words:
    before = re.split(r"\s+is\b", text, maxsplit=1)[0]
    words = before.split()
    if "of" in map(normal, words):
        return ""
    for size in range(len(words) - 1, 0, -1):
        name = " ".join(words[:size])
        if vocabulary.find_characteristic(name) is not None:
            return say("expected `of` after `{name}`", name=name)
    return ""


def _fact_hint(text: str, offset: int) -> Words:
    match = _CONDITION.search(text)
    if match is None or match.start() > offset:
        return ""
    fact = match["fact"].strip().rstrip(".")
    return say('put a fact in double quotes: `{word} "{fact}"`', word=match["word"], fact=fact)


def _or_hint(text: str) -> Words:
    match = _ALTERNATIVES.search(text)
    if match is None:
        return ""
    return say("write `one of {values}`", values=match["values"].strip().rstrip("."))
