"""The instruction sentence as a tree: an LALR grammar over words that the work and the vocabulary know."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import cache
from importlib.resources import files
from typing import Any, Literal

from lark import Lark, Token, Tree
from lark.exceptions import UnexpectedInput, UnexpectedToken
from lark.lexer import Lexer

from intent.dossier.unreadable import Unreadable
from intent.dossier.word_order import verb_second, with_one_of
from intent.dossier.words import Known, spoken_in, tokens
from intent.language.locale import ENGLISH
from intent.language.message import Message, Words, joined, say
from intent.vocabulary.grammar import ORDINALS, RELATIONS, Grammar, Word

Start = Literal["sentence", "duty"]
"""What a line under a heading may be."""
_FEW = 6
"""So many things that could have stood in a place can be listed."""
_PLAIN = {
    "NAME": say("a name"),
    "WORD": say("a name or value"),
    "NUMBER": say("a number"),
    "QUOTED": say("a fact in double quotes"),
    "POSITION": say("a position"),
    "COMMA": say("a comma"),
    "PLUSMINUS": say("±"),
    "$END": say("the end"),
}


_KINDS = {"RELATION": RELATIONS[:2], "ORDINAL": ORDINALS[:1]}
"""Samples of the words that are all one to the grammar."""


class Ungrammatical(Unreadable):
    """A sentence that does not parse; ``offset`` is where, counted from 0."""

    def __init__(self, message: Words, offset: int, length: int) -> None:
        super().__init__("sentence", message)
        self.offset = offset
        self.length = length


class _GivenTokens(Lexer):
    """Hands on tokens that are already made."""

    def __init__(self, configuration: object) -> None:
        del configuration

    def lex(self, lexer_state: Any, parser_state: Any = None) -> Iterator[Token]:
        yield from lexer_state


@cache
def grammar() -> Lark:
    text = files("intent.dossier").joinpath("sentence.lark").read_text(encoding="utf-8")
    return Lark(
        text,
        parser="lalr",
        lexer=_GivenTokens,
        start=["sentence", "duty", "values"],
        maybe_placeholders=False,
    )


def parse(text: str, known: Known, grammars: Sequence[Grammar], start: Start = "sentence") -> Tree[Token]:
    """The tree of an instruction's sentence, or of a duty's. Raises `Ungrammatical`.

    It is tried in the first language, so that what is said there is never taken for another's words, and then in
    the one that knows most of its words.
    """
    first, *_ = grammars
    try:
        return _tree(text, known, first, start)
    except Ungrammatical:
        spoken = spoken_in(text, known, grammars)
        if spoken is first:
            raise
    return _tree(text, known, spoken, start)


def parse_values(text: str, known: Known, spoken: Grammar) -> Tree[Token]:
    """The tree of what may stand after `is`. Raises `Ungrammatical`."""
    return _tree(text, known, spoken, "values")


def _tree(text: str, known: Known, spoken: Grammar, start: str) -> Tree[Token]:
    given: Any = verb_second(tokens(text, known, spoken))
    if not spoken.label(Word.ONE_OF):  # a language that tells no such word does not ask for it
        given = with_one_of(given)
    try:
        return grammar().parse(given, start=start)
    except UnexpectedToken as error:
        raise _explained(error, text, spoken) from None
    except UnexpectedInput as error:  # pragma: no cover - the lexer above refuses nothing
        raise Ungrammatical(str(error), 0, len(text)) from None


def _explained(error: UnexpectedToken, text: str, spoken: Grammar) -> Ungrammatical:
    expected = _expected(error, spoken)
    fitting = joined(expected, ", ") if len(expected) <= _FEW else say("a name or value")
    token = error.token
    start, end = token.start_pos or 0, token.end_pos or 0
    if token.type == "$END":
        return Ungrammatical(
            say("the sentence breaks off; expected {fitting}", fitting=fitting), len(text), 1
        )
    message = say("`{word}` does not fit here; expected {fitting}", word=text[start:end], fitting=fitting)
    return Ungrammatical(message, start, end - start)


def _expected(error: UnexpectedToken, spoken: Grammar) -> list[Message]:
    """What could have stood there, each thing once; words by their label in the language of the sentence."""
    found = {_PLAIN[kind] for kind in error.expected if kind in _PLAIN}
    for token, words in _KINDS.items():
        if token in error.expected:
            labels = ", ".join(f"`{spoken.label(word)}`" for word in words)
            found.add(say("{labels} …", labels=labels))
    for word in (Word[kind] for kind in error.expected if kind in Word.__members__):
        if spoken.label(word):
            found.add(say("`{word}`", word=spoken.label(word)))
    return sorted(found, key=ENGLISH.say)
