"""A unit of measure, and the only place where a number is turned into another unit."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True, slots=True, kw_only=True)
class Unit:
    """A unit of measure; ``value in reference units = (value + offset) × factor``, exactly."""

    iri: str
    symbol: str
    names: tuple[str, ...]
    quantity_kinds: frozenset[str]
    factor: Fraction
    offset: Fraction = Fraction(0)

    def in_reference(self, number: Fraction) -> Fraction:
        """A number of this unit in reference units: `25.4 mm` is 0.0254 m, `20 °C` 293.15 K."""
        return (number + self.offset) * self.factor

    def length_in_reference(self, number: Fraction) -> Fraction:
        """How far apart two numbers are that differ by so many of this unit: where the zero lies plays no part."""
        return number * self.factor

    def length_of_reference(self, number: Fraction) -> Fraction:
        """How many of this unit so many reference units are apart."""
        return number / self.factor

    def of_reference(self, number: Fraction) -> Fraction:
        """A number of reference units in this unit."""
        return number / self.factor - self.offset
