"""The clauses of a duty's line, parsed past those that are broken, so that each fault of a line is found."""

from __future__ import annotations

from collections.abc import Sequence

from lark import Token, Tree

from intent.dossier.hints import without_quoted
from intent.dossier.sentence import Ungrammatical, parse
from intent.dossier.words import Known
from intent.vocabulary.grammar import Grammar


def duty_trees(
    text: str, known: Known, grammars: Sequence[Grammar]
) -> tuple[list[Tree[Token]], list[Ungrammatical]]:
    """The trees of what can be parsed, each beginning with what is to be done, and where parsing stopped.

    After a clause that is broken it goes on at the next comma. Places are those of the whole text.
    """
    outside = without_quoted(text)
    what_ends = len(outside) - len(outside.lstrip())
    if what_ends == 0:  # a quotation that is not closed
        what_ends = max(outside.find(","), 0)
    begins, trees, faults = what_ends, list[Tree[Token]](), list[Ungrammatical]()
    while True:
        tree, fault = _parsed(text, (what_ends, begins), known, grammars)
        if tree is not None:
            trees.append(tree)
        if fault is None:
            return trees, faults
        if faults and fault.offset < begins:  # what is to be done is itself broken
            return trees, faults
        faults.append(fault)
        comma = outside.rfind(",", begins, fault.offset)
        if comma > begins:
            tree, _ = _parsed(text[:comma], (what_ends, begins), known, grammars)
            trees += [tree] if tree is not None else []
        begins = outside.find(",", max(fault.offset, what_ends))
        if begins < 0:
            return trees, faults


def _parsed(
    text: str, hidden: tuple[int, int], known: Known, grammars: Sequence[Grammar]
) -> tuple[Tree[Token] | None, Ungrammatical | None]:
    """The tree of a text of which a stretch is passed over; or else where it broke."""
    start, end = hidden
    try:
        return parse(text[:start] + " " * (end - start) + text[end:], known, grammars, "duty"), None
    except Ungrammatical as fault:
        return None, fault
