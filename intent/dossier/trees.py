"""The tree of a sentence beside its text, and faults with their place in it."""

from __future__ import annotations

from dataclasses import dataclass

from lark import Token, Tree

from intent.dossier.register import Register
from intent.dossier.unreadable import Unreadable
from intent.language.message import Words
from intent.vocabulary.terms import Vocabulary


class Misread(Unreadable):
    """Something in a sentence that cannot be read, with where it stands in it, counted from 0."""

    def __init__(self, slug: str, message: Words, offset: int, length: int) -> None:
        super().__init__(slug, message)
        self.offset = offset
        self.length = length


@dataclass(frozen=True, slots=True)
class Sentence:
    """A text being interpreted, with what the work and the vocabulary know."""

    text: str
    register: Register
    vocabulary: Vocabulary

    def words(self, tree: Tree[Token]) -> str:
        """What stands in the text for a tree."""
        start, end = extent(tree)
        return self.text[start:end]

    def fault(self, slug: str, message: Words, tree: Tree[Token]) -> Misread:
        start, end = extent(tree)
        return Misread(slug, message, start, max(1, end - start))

    def located(self, error: Unreadable, tree: Tree[Token]) -> Misread:
        """The same fault with its place."""
        return self.fault(error.slug, error.message, tree)


def subtrees(tree: Tree[Token]) -> list[Tree[Token]]:
    return [child for child in tree.children if isinstance(child, Tree)]


def extent(tree: Tree[Token]) -> tuple[int, int]:
    """Where a tree begins and ends in its text."""
    tokens = list(tree.scan_values(lambda token: isinstance(token, Token)))
    starts = [token.start_pos for token in tokens if token.start_pos is not None]
    ends = [token.end_pos for token in tokens if token.end_pos is not None]
    return (min(starts), max(ends)) if starts and ends else (0, 0)
