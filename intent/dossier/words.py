"""A sentence into words: known names matched whole and longest first, then the words of the grammar."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from lark.lexer import Token

from intent.vocabulary.phrases import CHUNK, Phrases, normal, phrases

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
    **dict.fromkeys(
        ["first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth"],
        "ORDINAL",
    ),
    "choice": "CHOICE",
}
ORDINALS = [word for word, token in GRAMMAR_WORDS.items() if token == "ORDINAL"]

_NUMBER = re.compile(r"[-+−]?\d")
_GRAMMAR = {tuple(phrase.split()): token for phrase, token in GRAMMAR_WORDS.items()}
_GRAMMAR_PHRASES = phrases(GRAMMAR_WORDS)


def tokens(text: str, *known: Phrases) -> Iterator[Token]:
    """The tokens of a sentence, with their places in it; names of any of the ``known`` are matched whole."""
    chunks = list(CHUNK.finditer(text))
    words = [normal(chunk.group()) for chunk in chunks]
    index = 0
    while index < len(chunks):
        name = max((names.match(words, index) for names in known), key=len, default=())
        grammar = () if name else _GRAMMAR_PHRASES.match(words, index)
        size = len(name or grammar) or 1
        kind = "NAME" if name else _GRAMMAR[grammar] if grammar else _kind(chunks[index])
        start, end = chunks[index].start(), chunks[index + size - 1].end()
        yield Token(kind, text[start:end], start_pos=start, end_pos=end, line=1, column=start + 1)
        index += size


def _kind(chunk: re.Match[str]) -> str:
    if chunk.lastgroup == "WORD" and _NUMBER.match(chunk.group()):
        return "NUMBER"
    return "WORD" if chunk.lastgroup == "STRAY" else str(chunk.lastgroup)
