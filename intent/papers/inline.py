"""What stands in a line of a paper: words, phrases told otherwise than those around them, verdicts, lists of links."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum, StrEnum
from typing import Protocol, TypeAlias

from intent.language.message import Words
from intent.papers.verdict_words import OUTCOME_WORDS
from intent.variance.result import VERDICT_WORDS, Outcome, Verdict


class PhraseRole(StrEnum):
    """What a phrase is among the words around it."""

    PLAIN = "plain"
    STRONG = "strong"
    QUIET = "quiet"
    """Beside the matter: who somebody is, what a file was read for."""
    CODE = "code"
    """For programs: a command, a name of a field."""
    DIGEST = "digest"
    """Digits that are compared and copied, and not read."""


@dataclass(frozen=True, slots=True)
class Beside:
    """A file to which words lead."""

    address: str
    """From where the paper lies, as a relative reference (RFC 3986, section 4.2)."""


@dataclass(frozen=True, slots=True)
class Phrase:
    """Some words that are told otherwise than those around them."""

    words: Words
    role: PhraseRole = PhraseRole.PLAIN
    link: str | Beside = ""
    """The anchor in the same paper to which they lead, or a file."""


@dataclass(frozen=True, slots=True)
class Stamp:
    """A verdict or an outcome, which is made plain by more than colour: by a rule, by capitals, by bold type."""

    grade: Verdict | Outcome

    @property
    def words(self) -> Words:
        """What the verdict or the outcome is called."""
        return OUTCOME_WORDS[self.grade] if isinstance(self.grade, Outcome) else VERDICT_WORDS[self.grade]


@dataclass(frozen=True, slots=True)
class Several:
    """Phrases in one list: `2, 3 and 5`."""

    phrases: tuple[Phrase, ...]


class Break(Enum):
    """Where what follows stands on a line of its own."""

    LINE = "line"


class Original(Protocol):
    """What was read of a writer's words, which each language tells in its own."""

    def differs_in(self, language: str) -> bool:
        """Whether a language tells it otherwise than its writer put it."""
        ...


@dataclass(frozen=True, slots=True)
class AsWritten:
    """The words of a writer, which stand on a line of their own where a language tells them otherwise."""

    original: Original
    words: Words


Told: TypeAlias = "Words | Phrase | Stamp | Several | Break"
Inline: TypeAlias = "Told | AsWritten"
Content: TypeAlias = "Inline | tuple[Inline, ...]"
"""What stands in a paragraph, an item or a cell; the spaces between its pieces are its own."""


def inlines(content: Content, language: str) -> tuple[Told, ...]:
    """The pieces of a content that a language tells, one after another, without those that are empty."""
    told: list[Told] = []
    for piece in _pieces(content):
        if not isinstance(piece, AsWritten):
            told.append(piece)
        elif piece.original.differs_in(language):
            told.extend([Break.LINE, quiet(piece.words)])
    return tuple(told)


def _pieces(content: Content) -> tuple[Inline, ...]:
    pieces = content if isinstance(content, tuple) else (content,)
    return tuple(piece for piece in pieces if piece != "")


def strong(words: Words) -> Phrase:
    return Phrase(words, PhraseRole.STRONG)


def quiet(words: Words) -> Phrase:
    return Phrase(words, PhraseRole.QUIET)


def with_below(first: Words, second: Words) -> Content:
    """The second in a line of its own, quietly."""
    found: tuple[Inline, ...] = (first, Break.LINE, quiet(second))
    return found if first and second else first or second


def in_one(texts: tuple[Content, ...]) -> Content:
    """Several contents as one, with commas between."""
    pieces: list[Inline] = []
    for text in texts:
        pieces.extend([", "] if pieces else [])
        pieces.extend(_pieces(text))
    return tuple(pieces)
