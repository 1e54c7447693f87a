"""Values are sets: what a row gives, what an instruction admits, and how one lies within the other.

Two kinds of set suffice. `Labels` holds names (concepts with all that is narrower, texts, yes and no);
`Region` holds numbers (lengths, ratios, angles, positions, counts, rasters, days). Both are closed under
intersection and complement, so every question is a question of sets.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from intent.values.regions import Region


class Answer(StrEnum):
    """How a value lies to a set: wholly inside, wholly outside, or not to be told."""

    IN = "in"
    OUT = "out"
    OPEN = "open"

    @property
    def negated(self) -> Answer:
        return {Answer.IN: Answer.OUT, Answer.OUT: Answer.IN, Answer.OPEN: Answer.OPEN}[self]


@dataclass(frozen=True, slots=True)
class Labels:
    """Some names, or all but some. A concept is there with all that is narrower and itself unspecified."""

    names: frozenset[str]
    all_but: bool = False

    @property
    def is_empty(self) -> bool:
        return not self.names and not self.all_but

    @property
    def is_point(self) -> bool:
        return len(self.names) == 1 and not self.all_but

    def meet(self, other: Labels) -> Labels:
        if self.all_but and other.all_but:
            return Labels(self.names | other.names, True)
        if self.all_but:
            return Labels(other.names - self.names)
        return Labels(self.names - other.names if other.all_but else self.names & other.names)

    def complement(self) -> Labels:
        return Labels(self.names, not self.all_but)

    def joined(self, other: Labels) -> Labels:
        return self.complement().meet(other.complement()).complement()


ValueSet = Labels | Region
ANY_LABEL = Labels(frozenset(), True)


def meet(one: ValueSet, two: ValueSet) -> ValueSet:
    """What both sets hold. Sets of different kinds hold nothing in common."""
    if isinstance(one, Labels) and isinstance(two, Labels):
        return one.meet(two)
    if isinstance(one, Region) and isinstance(two, Region):
        return one.meet(two)
    return Labels(frozenset())


def union(one: ValueSet, two: ValueSet) -> ValueSet:
    """What either set holds; both are of one kind."""
    if isinstance(one, Labels) and isinstance(two, Labels):
        return one.joined(two)
    assert isinstance(one, Region)
    assert isinstance(two, Region)
    return one.joined(two)


def is_within(one: ValueSet, two: ValueSet) -> bool:
    """Whether the second set holds all that the first does."""
    if isinstance(one, Labels) and isinstance(two, Labels):
        return one.meet(two.complement()).is_empty
    if isinstance(one, Region) and isinstance(two, Region):
        return one.is_within(two)
    return one.is_empty


def are_disjoint(one: ValueSet, two: ValueSet) -> bool:
    """Whether the two sets have nothing in common."""
    return meet(one, two).is_empty


def is_strictly_within(one: ValueSet, two: ValueSet) -> bool:
    return is_within(one, two) and not is_within(two, one)


def lies(value: ValueSet, among: ValueSet) -> Answer:
    """Of a value and a set: in when it is a subset, out when they are disjoint, open otherwise."""
    if are_disjoint(value, among):
        return Answer.OUT
    return Answer.IN if is_within(value, among) else Answer.OPEN
