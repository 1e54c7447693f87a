"""Sets of values for an engine that knows only SHACL: as data, and as what a value must be.

A value that is not known exactly stands in the data as all that it may be: every name, or the bounds of every
number. So that a value lies wholly outside a set, wholly inside, or neither, can be asked with SHACL Core alone
(W3C Shapes Constraint Language, 2017: sh:in, sh:qualifiedValueShape, sh:minInclusive …).
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from intent.names import is_iri
from intent.record.turtle_text import collection, decimal_term, iri_term, nested_node, text_term
from intent.values.regions import Box, Interval
from intent.values.sets import Labels, ValueSet

ANYTHING = "intent:anything"
"""Stands in the data for a text of which nothing is known."""
NOTHING = "intent:nothing"
"""Stands for a set that holds no value."""
Statements = list[tuple[str, str]]


def value_in_data(value: ValueSet) -> list[str]:
    """The objects that stand for a value: names, or one node of bounds for each stretch of numbers."""
    if isinstance(value, Labels):
        return [ANYTHING] if value.all_but else sorted(map(_name, value.names)) or [NOTHING]
    return [nested_node(_bounds(box)) for box in value.boxes] or [NOTHING]


def _name(name: str) -> str:
    return iri_term(name) if is_iri(name) else text_term(name)


def _bounds(box: Box) -> Statements:
    statements = [("a", "intent:Bounds")]
    for suffix, interval in _axes(box):
        if interval.low is not None:
            word = "moreThan" if interval.low_strict else "atLeast"
            statements.append((f"intent:{word}{suffix}", decimal_term(interval.low)))
        if interval.high is not None:
            word = "lessThan" if interval.high_strict else "atMost"
            statements.append((f"intent:{word}{suffix}", decimal_term(interval.high)))
    return statements


def _axes(box: Box) -> Iterator[tuple[str, Interval]]:
    yield from ((str(axis) if len(box) > 1 else "", interval) for axis, interval in enumerate(box, start=1))


def must_touch(path: str, admitted: ValueSet) -> Statements:
    """What fails where a value lies wholly outside a set."""
    shapes = _touching(admitted)
    return [("sh:path", path), ("sh:qualifiedValueShape", _any_of(shapes)), ("sh:qualifiedMinCount", "1")]


def must_leave(path: str, forbidden: ValueSet) -> Statements:
    """What fails where a value lies wholly inside a set."""
    inside = nested_node([("sh:not", _any_of(_inside(forbidden)))])
    return [("sh:path", path), ("sh:qualifiedValueShape", inside), ("sh:qualifiedMinCount", "1")]


def must_lie_in(path: str, admitted: ValueSet) -> Statements:
    """What fails where a value does not lie wholly inside a set."""
    return [("sh:path", path), ("sh:node", lying_in(admitted))]


def lying_in(admitted: ValueSet) -> str:
    """The shape of one name, or one stretch of numbers, that lies in a set."""
    return _any_of(_inside(admitted))


def must_lie_out(path: str, forbidden: ValueSet) -> Statements:
    """What fails where a value does not lie wholly outside a set."""
    return [("sh:path", path), ("sh:node", nested_node([("sh:not", _any_of(_touching(forbidden)))]))]


def _any_of(shapes: list[str]) -> str:
    if len(shapes) == 1:
        return shapes[0]
    return nested_node([("sh:or", collection(shapes))]) if shapes else _one_of([])


def _one_of(names: list[str]) -> str:
    return nested_node([("sh:in", collection(names))])


def _none_of(names: list[str]) -> str:
    return nested_node([("sh:not", _one_of(names))])


def _touching(admitted: ValueSet) -> list[str]:
    if isinstance(admitted, Labels):
        names = sorted(map(_name, admitted.names))
        if admitted.all_but:
            return [_none_of(names)]
        return [_one_of([*names, ANYTHING] if names else [])]
    return [_all(_reaching(box)) for box in admitted.boxes]


def _inside(admitted: ValueSet) -> list[str]:
    if isinstance(admitted, Labels):
        names = sorted(map(_name, admitted.names))
        if admitted.all_but:
            return [_none_of([*names, ANYTHING] if names else names)]
        return [_one_of(names)]
    return [_all(_within(box)) for box in admitted.boxes]


def _all(parts: list[str]) -> str:
    return nested_node([("sh:class", "intent:Bounds"), *(("sh:property", part) for part in parts)])


def _reaching(box: Box) -> list[str]:
    """That bounds and a stretch of numbers have something in common, axis by axis."""
    parts: list[str] = []
    for suffix, interval in _axes(box):
        if interval.low is not None:
            loose = "sh:minExclusive" if interval.low_strict else "sh:minInclusive"
            parts.append(_bound(f"intent:atMost{suffix}", loose, interval.low))
            parts.append(_bound(f"intent:lessThan{suffix}", "sh:minExclusive", interval.low))
        if interval.high is not None:
            loose = "sh:maxExclusive" if interval.high_strict else "sh:maxInclusive"
            parts.append(_bound(f"intent:atLeast{suffix}", loose, interval.high))
            parts.append(_bound(f"intent:moreThan{suffix}", "sh:maxExclusive", interval.high))
    return parts


def _bound(path: str, word: str, limit: Fraction) -> str:
    return nested_node([("sh:path", path), (word, decimal_term(limit))])


def _within(box: Box) -> list[str]:
    """That bounds lie in a stretch of numbers, axis by axis: an end that is limited must be there."""
    parts: list[str] = []
    for suffix, interval in _axes(box):
        if interval.low is not None:
            strict = "sh:minExclusive" if interval.low_strict else "sh:minInclusive"
            closed, open_ = f"intent:atLeast{suffix}", f"intent:moreThan{suffix}"
            parts += _ended(closed, strict, open_, "sh:minInclusive", interval.low)
        if interval.high is not None:
            strict = "sh:maxExclusive" if interval.high_strict else "sh:maxInclusive"
            closed, open_ = f"intent:atMost{suffix}", f"intent:lessThan{suffix}"
            parts += _ended(closed, strict, open_, "sh:maxInclusive", interval.high)
    return parts


def _ended(closed: str, strict: str, open_: str, loose: str, limit: Fraction) -> Iterator[str]:
    """That bounds have an end, one that counts itself or one that does not, and that it is within a limit."""
    either = nested_node([("sh:alternativePath", collection([closed, open_]))])
    yield nested_node([("sh:path", either), ("sh:minCount", "1")])
    yield _bound(closed, strict, limit)
    yield _bound(open_, loose, limit)
