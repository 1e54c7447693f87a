"""A space of values cut at the borders of several sets, so that each piece lies wholly in or out of each."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from intent.values.sets import ValueSet, meet


@dataclass(frozen=True, slots=True)
class ValuePiece:
    """All the values that lie alike to every set."""

    values: ValueSet
    within: tuple[bool, ...]
    """Whether it lies in each of the sets."""


def cut(whole: ValueSet, sets: Sequence[ValueSet]) -> tuple[ValuePiece, ...]:
    """The pieces of a whole that hold any value; together they are the whole, and no two share a value."""
    pieces: dict[tuple[bool, ...], ValueSet] = {} if whole.is_empty else {(): whole}
    for among in sets:
        beyond = among.complement()
        pieces = {
            (*within, is_in): part
            for within, values in pieces.items()
            for is_in, side in ((True, among), (False, beyond))
            if not (part := meet(values, side)).is_empty
        }
    return tuple(ValuePiece(values, within) for within, values in pieces.items())


def smallest_clashes(whole: ValueSet, sets: Sequence[ValueSet]) -> tuple[frozenset[int], ...]:
    """The smallest choices of sets, by their places, that have no value of the whole in common.

    A choice has nothing in common just where it holds, for every value, a set that the value is not in; so these
    are the minimal transversals of what each piece lies outside of (C. Berge, Hypergraphs, 1989, chapter 2).
    """
    outside = {
        frozenset(place for place, is_in in enumerate(piece.within) if not is_in)
        for piece in cut(whole, sets)
    }
    chosen: list[frozenset[int]] = [frozenset()]
    for edge in _least(outside):
        met = [one for one in chosen if one & edge]
        more = [one | {place} for one in chosen if not one & edge for place in edge]
        chosen = _least([*met, *more])
    return tuple(sorted(chosen, key=sorted)) if outside else ()


def _least(among: Iterable[frozenset[int]]) -> list[frozenset[int]]:
    """Those that hold no other of them."""
    least: list[frozenset[int]] = []
    for one in sorted(set(among), key=lambda one: (len(one), sorted(one))):
        if not any(other <= one for other in least):
            least.append(one)
    return least
