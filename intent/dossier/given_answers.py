"""What an expectation takes as given: facts, consents and refusals, with `;` between."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from intent.dossier.fields import Desk, asked_fact
from intent.dossier.register import IdentifierKind
from intent.dossier.unreadable import Unreadable
from intent.language.message import say
from intent.model.expectation import GivenAnswer
from intent.vocabulary.grammar import Word
from intent.vocabulary.phrases import CHUNK, normal, unquoted, words_of

_ITEMS = re.compile(r'(?:"[^"]*"|“[^”]*”|„[^“”]*[“”]|«[^»]*»|[^;])+')
_LINES = (IdentifierKind.HEADING, IdentifierKind.INSTRUCTION)


def read_given(desk: Desk, text: str) -> Sequence[GivenAnswer]:
    """The answers in a cell. Raises `Unreadable`."""
    return [_answer(desk, item) for match in _ITEMS.finditer(text) if (item := match.group().strip())]


def _answer(desk: Desk, item: str) -> GivenAnswer:
    for word, holds in ((Word.CONSENT_OF, True), (Word.REFUSAL_OF, False)):
        rest = _after(desk, word, item)
        if rest is not None:
            return _of_person(desk, rest, holds=holds)
    denied = _after(desk, Word.NOT, item)
    fact = item if denied is None else denied
    if unquoted(fact) in {fact, ""} or not _is_one_quotation(fact):
        message = say(
            "`{item}` is nothing that can be given; write a fact in double quotes, `not` and a fact, "
            "`consent of` or `refusal of` and a person, with `;` between",
            item=item,
        )
        raise Unreadable("given", message)
    return GivenAnswer(holds=denied is None, fact=asked_fact(desk, unquoted(fact)))


def _is_one_quotation(text: str) -> bool:
    chunk = CHUNK.match(text)
    return chunk is not None and chunk.lastgroup == "QUOTED" and chunk.end() == len(text)


def _of_person(desk: Desk, text: str, *, holds: bool) -> GivenAnswer:
    """`estate`, or `estate to R1.2 and R2`."""
    person, _, said = text.partition(" ")
    found = desk.register.find(person, IdentifierKind.PERSON)
    if not said.strip():
        return GivenAnswer(holds=holds, person=found.identifier)
    lines = _after(desk, Word.TO_LINE, said.strip())
    if not lines:
        message = say(
            "`{said}` after a person is not read; write `to` and an instruction, such as `to R1.2`", said=said
        )
        raise Unreadable("given", message)
    names = [desk.register.find(name, *_LINES).identifier for name in desk.listed(lines)]
    return GivenAnswer(holds=holds, person=found.identifier, to=tuple(dict.fromkeys(names)))


def _after(desk: Desk, word: Word, text: str) -> str | None:
    """What stands after a word, in any language; nothing where the text does not begin with it."""
    chunks = list(CHUNK.finditer(text))
    pieces = tuple(normal(chunk.group()) for chunk in chunks)
    for label in _labels(desk, word):
        if pieces[: len(label)] == label:
            return text[chunks[len(label) - 1].end() :].strip()
    return None


def _labels(desk: Desk, word: Word) -> Iterator[tuple[str, ...]]:
    """The labels of a word in every language, in pieces, the longest first."""
    labels = {words_of(label) for one in desk.draft.vocabulary.grammars for label in one.labels(word)}
    yield from sorted(labels, key=lambda pieces: (-len(pieces), pieces))
