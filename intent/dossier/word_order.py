"""Sentences of other languages in the order and with the words that the grammar has.

German puts the verb of a condition last (`falls Technologie von M1 Bildröhre ist`); the grammar has it between what
is spoken of and what is said of it. Where that is cannot be told from the words alone, since both may be names; but
a name of the work ends where no comma, `and` or `except` follows. And where English says `is one of A or B`, others
say `is A or B`.
"""

from __future__ import annotations

from collections.abc import Sequence

from lark.lexer import Token

from intent.vocabulary.grammar import Word

_IF = {Word.IF.name, Word.UNLESS.name}
_CLAUSES = {
    *_IF,
    Word.IF_SO.name,
    Word.UNTIL.name,
    Word.WITH_CONSENT_OF.name,
    "ORDINAL",
    Word.BY.name,
    Word.BEFORE.name,
    Word.DURING.name,
    Word.AFTER.name,
    Word.WITHIN.name,
    Word.EVERY_DAY.name,
}
_BEFORE_SCOPE = {Word.OF.name, Word.NUMBER_OF.name, Word.DISTANCE_BETWEEN.name, Word.BETWEEN.name}
_BETWEEN_NAMES = {"COMMA", Word.AND.name, Word.EXCEPT.name}
_BEFORE_VALUES = {Word.IS.name, Word.NOT.name, Word.IN_ALL.name}


def verb_second(tokens: Sequence[Token]) -> list[Token]:
    """The tokens of a sentence, the last verb of a condition put where the grammar has it."""
    ordered: list[Token] = []
    for clause in _clauses(tokens):
        last = clause[-1] if clause else None
        is_condition = bool(clause) and clause[0].type in _IF
        if last is None or not is_condition or [one for one in clause if one.type == Word.IS.name] != [last]:
            ordered += clause
            continue
        place = _place_of_verb(clause)
        ordered += [*clause[:place], last, *clause[place:-1]]
    return ordered


def with_one_of(tokens: Sequence[Token]) -> list[Token]:
    """The tokens of a sentence or of values, `one of` put before alternatives that have none."""
    found: list[Token] = []
    for clause in _clauses(tokens):
        kinds = [token.type for token in clause]
        if Word.OR.name in kinds and Word.ONE_OF.name not in kinds:
            place = max((at + 1 for at, kind in enumerate(kinds) if kind in _BEFORE_VALUES), default=0)
            here = clause[place] if place < len(clause) else clause[-1]
            one_of = Token(Word.ONE_OF.name, "", start_pos=here.start_pos, end_pos=here.start_pos)
            clause = [*clause[:place], one_of, *clause[place:]]
        found += clause
    return found


def _clauses(tokens: Sequence[Token]) -> list[list[Token]]:
    """The tokens clause by clause, each comma between two clauses by itself."""
    clauses: list[list[Token]] = [[]]
    for token in tokens:
        if token.type in _CLAUSES and clauses[-1] and clauses[-1][-1].type == "COMMA":
            clauses += [[clauses[-1].pop()], []]
        clauses[-1].append(token)
    return clauses


def _place_of_verb(clause: Sequence[Token]) -> int:
    """Before a relation, else after the last name of the scope; where neither is found, where the verb stands."""
    end = len(clause) - 1
    for place, token in enumerate(clause):
        if token.type == "RELATION":
            return place
    place = next((at + 1 for at, token in enumerate(clause) if token.type in _BEFORE_SCOPE), end)
    while place < end:
        place += 2 if clause[place].type == Word.EVERY.name else 1
        if place >= end or clause[place].type not in _BETWEEN_NAMES:
            break
        while place < end and clause[place].type in _BETWEEN_NAMES:
            place += 1
    return min(place, end)
