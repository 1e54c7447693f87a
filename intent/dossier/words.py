"""A sentence into words: known names matched whole and longest first, then the words of the grammar."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from lark.lexer import Token

from intent.vocabulary.terms import normal

GRAMMAR_WORDS: Mapping[str, str] = {
    "of": "OF",
    "is": "IS",
    "not": "NOT",
    "and": "AND",
    "or": "OR",
    "one of": "ONE_OF",
    "between": "BETWEEN",
    "at least": "AT_LEAST",
    "at most": "AT_MOST",
    "as documented": "AS_DOCUMENTED",
    "any": "ANY",
    "the same for all": "SAME",
    "different for all": "DIFFERENT",
    "number of": "NUMBER_OF",
    "total": "TOTAL",
    "difference in": "DIFFERENCE_IN",
    "distance between": "DISTANCE_BETWEEN",
    "every": "EVERY",
    "additions": "ADDITIONS",
    "the work": "THE_WORK",
    "the venue": "THE_VENUE",
    "except": "EXCEPT",
    "above": "RELATION",
    "below": "RELATION",
    "left of": "RELATION",
    "right of": "RELATION",
    "in front of": "RELATION",
    "behind": "RELATION",
    "if": "IF",
    "unless": "UNLESS",
    "until": "UNTIL",
    "with consent of": "WITH_CONSENT_OF",
    **dict.fromkeys("first second third fourth fifth sixth seventh eighth ninth tenth".split(), "ORDINAL"),
    "choice": "CHOICE",
}
ORDINALS = [word for word, token in GRAMMAR_WORDS.items() if token == "ORDINAL"]

_CHUNK = re.compile(
    r"""(?P<QUOTED>"[^"]*"|“[^”]*”|„[^“”]*[“”]|«[^»]*»)
      | (?P<POSITION>\(\s*[-+−]?[\d.]+[^()]*,[^()]*\))
      | (?P<COMMA>,)
      | (?P<PLUSMINUS>±|\+/-|\+-)
      | (?P<WORD>(?:(?!±|\+/-|\+-)[^\s,"“”„«»])+)
      | (?P<STRAY>\S)""",
    re.VERBOSE,
)
_NUMBER = re.compile(r"[-+−]?\d")


@dataclass(frozen=True, slots=True)
class Phrases:
    """Known names by their first word, the longest first."""

    by_first: Mapping[str, tuple[tuple[str, ...], ...]]


def phrases(names: Iterable[str]) -> Phrases:
    by_first: dict[str, set[tuple[str, ...]]] = {}
    for name in names:
        words = tuple(match.group() for match in _CHUNK.finditer(normal(name)))
        if words:
            by_first.setdefault(words[0], set()).add(words)
    return Phrases({first: _longest_first(known) for first, known in by_first.items()})


def _longest_first(known: Iterable[tuple[str, ...]]) -> tuple[tuple[str, ...], ...]:
    return tuple(sorted(known, key=lambda words: (-len(words), words)))


_GRAMMAR = {words: GRAMMAR_WORDS[" ".join(words)] for words in (tuple(phrase.split()) for phrase in GRAMMAR_WORDS)}
_GRAMMAR_PHRASES = phrases(GRAMMAR_WORDS)


def tokens(text: str, known: Phrases) -> Iterator[Token]:
    """The tokens of a sentence, with their places in it."""
    chunks = list(_CHUNK.finditer(text))
    words = [normal(chunk.group()) for chunk in chunks]
    index = 0
    while index < len(chunks):
        name = _match(words, index, known)
        grammar = () if name else _match(words, index, _GRAMMAR_PHRASES)
        size = len(name or grammar) or 1
        kind = "NAME" if name else _GRAMMAR[grammar] if grammar else _kind(chunks[index])
        start, end = chunks[index].start(), chunks[index + size - 1].end()
        yield Token(kind, text[start:end], start_pos=start, end_pos=end, line=1, column=start + 1)
        index += size


def _match(words: Sequence[str], index: int, known: Phrases) -> tuple[str, ...]:
    for candidate in known.by_first.get(words[index], ()):
        if tuple(words[index : index + len(candidate)]) == candidate:
            return candidate
    return ()


def _kind(chunk: re.Match[str]) -> str:
    if chunk.lastgroup == "WORD" and _NUMBER.match(chunk.group()):
        return "NUMBER"
    return "WORD" if chunk.lastgroup == "STRAY" else str(chunk.lastgroup)
