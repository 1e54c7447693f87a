"""The instruction sentence as a tree: an LALR grammar over words that the work and the vocabulary know."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from importlib.resources import files
from typing import Any

from lark import Lark, Token, Tree
from lark.exceptions import UnexpectedInput, UnexpectedToken
from lark.lexer import Lexer

from intent.dossier.expressions import Unreadable
from intent.dossier.register import Known
from intent.dossier.words import GRAMMAR_WORDS, tokens
from intent.language.message import Words, joined, say

_PLAIN = {
    "NAME": "a name",
    "WORD": "a name or value",
    "NUMBER": "a number",
    "QUOTED": "a fact in double quotes",
    "POSITION": "a position",
    "COMMA": "a comma",
    "PLUSMINUS": "±",
    "RELATION": "`above`, `below` …",
    "ORDINAL": "`first` …",
    "$END": "the end",
    **{
        token: f"`{phrase}`"
        for phrase, token in GRAMMAR_WORDS.items()
        if token not in {"RELATION", "ORDINAL"}
    },
}


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
        text, parser="lalr", lexer=_GivenTokens, start=["sentence", "values"], maybe_placeholders=False
    )


def parse(text: str, known: Known, start: str = "sentence") -> Tree[Token]:
    """The tree of a sentence, or of values alone. Raises `Ungrammatical`."""
    given: Any = tokens(text, *known)
    try:
        return grammar().parse(given, start=start)
    except UnexpectedToken as error:
        raise _explained(error, text) from None
    except UnexpectedInput as error:  # pragma: no cover - the lexer above refuses nothing
        raise Ungrammatical(str(error), 0, len(text)) from None


def _explained(error: UnexpectedToken, text: str) -> Ungrammatical:
    expected = {_PLAIN.get(name, name) for name in error.expected}
    fitting = joined(sorted(expected), ", ") if len(expected) <= 6 else say("a name or value")
    token = error.token
    if token.type == "$END":
        return Ungrammatical(
            say("the sentence breaks off; expected {fitting}", fitting=fitting), len(text), 1
        )
    message = say("`{word}` does not fit here; expected {fitting}", word=str(token), fitting=fitting)
    return Ungrammatical(message, token.start_pos or 0, len(str(token)))
