"""How much hangs on a question: one number, and the factors that it is made of."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

OLD = 40
"""Years after which a device counts as old as can be. Common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Wear:
    """How soon the devices of some parts must be replaced; without devices, nothing presses."""

    devices: int = 0
    """How many devices serve the parts."""
    spares: int = 0
    failed: int = 0
    """Of the devices that serve, those that have failed."""
    hours: Fraction | None = None
    """The most hours that one of them has run."""
    hours_of_others: Fraction | None = None
    """What others alike have run on average."""
    years: int = 0
    """Since the oldest was made, or since the year of the work."""
    since_made: bool = False
    """Whether the years are since the devices were made."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Factors:
    """What a question is weighed by."""

    wear: Wear = Wear()
    seen: int = 2
    """How hard a loss is to see, as the vocabulary says of the characteristic: 1 to 3."""
    undone: int = 2
    """How hard a loss is to undo: 1 to 3."""
    differed: int = 0
    """In how many past installations it was otherwise than documented."""
    shown: int = 0
    """How many past installations there are."""
    bearing: int = 1
    """3 where instructions clash, 2 where nobody has spoken or nobody can answer any more, 1 where it is uncertain."""


def urgency(wear: Wear) -> Fraction:
    """``1 + lack + run + age``, from 1 to 5: how soon a device must be replaced.

    ``lack`` is the share of devices without a spare, and the share that has failed; ``run`` is the hours over
    themselves and those of others alike, one half where there is nothing to compare; ``age`` is the years over 40,
    at most 1.
    """
    if not wear.devices:
        return Fraction(1)
    lack = Fraction(max(wear.devices - wear.spares, 0) + wear.failed, wear.devices)
    others = wear.hours if wear.hours_of_others is None else wear.hours_of_others
    run = wear.hours / (wear.hours + others) if wear.hours and others is not None else Fraction(0)
    return 1 + lack + run + Fraction(min(max(wear.years, 0), OLD), OLD)


def weight(factors: Factors) -> Fraction:
    """``urgency × (seen + undone) × (1 + differed) × bearing``: the higher, the sooner it is to be asked."""
    return urgency(factors.wear) * (factors.seen + factors.undone) * (1 + factors.differed) * factors.bearing
