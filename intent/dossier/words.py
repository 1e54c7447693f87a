"""A sentence into words: known names matched whole and longest first, then the words of a language's grammar."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from lark.lexer import Token

from intent.names import TERM
from intent.vocabulary.grammar import UNRESERVED, Grammar, Word
from intent.vocabulary.phrases import CHUNK, Phrases, normal, words_of
from intent.vocabulary.terms import Vocabulary

Known = tuple[Phrases, ...]
"""The names that are matched whole in a sentence: the work's, and the vocabulary's."""

_TOKENS = frozenset(word.token for word in Word)
_NUMBER = re.compile(r"[-+−]?\d")
_COMPARING = (
    Word.ONE_OF,
    Word.BETWEEN,
    Word.AT_LEAST,
    Word.AT_MOST,
    Word.AS_DOCUMENTED,
    Word.ANY,
)
"""The words that a cell begins with where it holds more than a value."""


def tokens(text: str, known: Known, grammar: Grammar) -> list[Token]:
    """The tokens of a sentence, with their places in it; names of any of the ``known`` are matched whole.

    What a token holds is the name of the word, or else what stands in the text. Of a value `with consent` and the
    words `with consent of`, the longer is meant.
    """
    chunks = list(CHUNK.finditer(text))
    pieces = [normal(chunk.group()) for chunk in chunks]
    found: list[Token] = []
    index = 0
    while index < len(chunks):
        name = max((names.match(pieces, index) for names in known), key=len, default=())
        size, words = grammar.match(pieces, index)
        if len(name) >= size:
            size, words = len(name), ()
        size = size or 1
        start, end = chunks[index].start(), chunks[index + size - 1].end()
        place = {"start_pos": start, "end_pos": end, "line": 1, "column": start + 1}
        found += [Token(word.token, word.name, **place) for word in words]
        if not words:
            found.append(Token("NAME" if name else _kind(chunks[index]), text[start:end], **place))
        index += size
    return found


def _kind(chunk: re.Match[str]) -> str:
    if chunk.lastgroup == "WORD" and _NUMBER.match(chunk.group()):
        return "NUMBER"
    return "WORD" if chunk.lastgroup in {"STRAY", "ELIDED"} else str(chunk.lastgroup)


def spoken_in(text: str, known: Known, grammars: Sequence[Grammar]) -> Grammar:
    """The language that a sentence is in: the one that knows most of its words, of equals the first."""
    return max(grammars, key=lambda grammar: sum(map(is_word, tokens(text, known, grammar))))


def is_word(token: Token) -> bool:
    """Whether a token is a word of the grammar, and not a name, a value or a mark."""
    return token.type in _TOKENS


def compared_in(text: str, known: Known, grammars: Iterable[Grammar]) -> Grammar | None:
    """The language in which a cell holds more than a value: `at most 5 kg`, `one of LCD or OLED`, `A or B`."""
    pieces = words_of(normal(text))
    for grammar in grammars:
        if any(piece in grammar.phrases.by_first for piece in pieces):
            found = tokens(text, known, grammar)
            if any(token.type == Word.OR.name for token in found) or _compares(found):
                return grammar
    return None


def _compares(found: Sequence[Token]) -> bool:
    first = found[0].type if found else ""
    if first == Word.ANY.name:
        return len(found) == 1
    return any(first == word.name for word in _COMPARING)


def is_reserved(name: str, grammars: Sequence[Grammar]) -> bool:
    """Whether an identifier of this name would be mistaken for a word of the sentence.

    Only the words of the first language count, in which a sentence is tried first: an estate may be called `est`,
    though a sentence in French that needs this word cannot be read beside it, and says so.
    """
    word = normal(name)
    first, *_ = grammars
    return any(
        word in words_of(label)
        for words in first.terms
        if not UNRESERVED & set(words)
        for label in first.labels(*words)
    )


def reads_as_words(name: str, vocabulary: Vocabulary) -> bool:
    """Whether a name means something in a sentence of any language already: `additions`, `every display`."""
    return any(
        _is_of_words(tokens(name, (vocabulary.phrases,), grammar), vocabulary)
        for grammar in vocabulary.grammars
    )


def _is_of_words(found: Sequence[Token], vocabulary: Vocabulary) -> bool:
    if len(found) > 1 and found[-2].type == Word.EVERY.name:
        kind = vocabulary.find_value([str(TERM.kinds)], str(found[-1]))
        found = found[:-1] if kind is not None else found
    return bool(found) and all(map(is_word, found))
