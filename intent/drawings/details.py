"""Which parts are drawn again by themselves: a group of which the whole hides something, or leaves something unnamed.

What hides another part of its own group is not in the same drawing: in one of them every part is seen whole.
"""

from __future__ import annotations

from collections.abc import Iterator

from intent.drawings.glyphs import glyphs_of
from intent.drawings.hiding import hiding_of
from intent.drawings.sheet import lay
from intent.drawings.stage import Detail, Stages, View

_WIDTH = 120.0
"""Millimetres of the paper on which it is looked what hides what: about that of every drawing."""


def details_of(stages: Stages, lacking: frozenset[str]) -> tuple[Detail, ...]:
    """The details, in the order of the work, in which parts that lack something in the whole are seen."""
    groups: dict[str, list[str]] = {}
    for item in (*stages.documented.items, *stages.proposed.items):
        parts = groups.setdefault(item.group, [])
        if item.identifier not in parts:
            parts.append(item.identifier)
    before = _before(stages)
    return tuple(
        detail
        for group, parts in groups.items()
        if not lacking.isdisjoint(parts)
        for detail in _layers(group, parts, before)
        if not detail.parts.isdisjoint(lacking)
    )


def _before(stages: Stages) -> dict[str, set[str]]:
    """By identifier of each part, those that hide some of it in either state."""
    sheet = lay(stages, View.ELEVATION, _WIDTH)
    found: dict[str, set[str]] = {}
    for stage in (stages.documented, stages.proposed):
        for part, others in hiding_of(glyphs_of(stage.items, sheet), View.ELEVATION).items():
            found.setdefault(part, set()).update(other.item.identifier for other in others)
    return found


def _layers(group: str, parts: list[str], before: dict[str, set[str]]) -> Iterator[Detail]:
    """The parts of a group by how far they stand in front: those that hide none of the rest first."""
    left = parts
    while left:
        back = [part for part in left if not any(part in before[other] for other in left)]
        drawn = back or left[:1]  # two that stood before each other, one in each state
        left = [part for part in left if part not in drawn]
        yield Detail(group=group, parts=frozenset(drawn), without=tuple(left))
