"""How far a plain cable carries a signal, as the vocabulary says of each signal."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from intent.values.regions import Interval
from intent.vocabulary.phrases import label_among
from intent.vocabulary.properties import INTENT, Properties, fraction_of, texts_of, value_of


@dataclass(frozen=True, slots=True, kw_only=True)
class CableReach:
    """The plain copper cable over which a signal is carried, by its length or by what it takes from the signal."""

    length: Interval | None
    """Metres: as far as any sound cable carries it, and as far as the best do; none where only the loss counts."""
    loss: Interval | None
    """Decibels that the cable may take: with any receiver, and with the best; none where it only grows softer."""
    frequency: Fraction | None
    """The hertz at which a loss is counted."""
    is_by_raster: bool = False
    """Whether a loss is counted at the finest detail of the picture, whatever raster and rate that has."""
    sources: Mapping[str, str] = field(hash=False)
    """Where it is said, by language."""

    def label_in(self, language: str) -> str:
        """Where it is said, so that this may stand in a message."""
        return label_among(self.sources, language) or ""


def reach_of(about: Properties) -> CableReach | None:
    """What is said of a signal; none where nothing is."""
    length = _from_to(about, "cableSurelyTo", "cableAtMost")
    loss = _from_to(about, "cableLossSurely", "cableLossAtMost")
    frequency = fraction_of(about, INTENT + "cableLossAt")
    is_by_raster = value_of(about, INTENT + "cableLossByRaster") == "true"
    if length is None and frequency is None and not is_by_raster:
        return None
    return CableReach(
        length=length,
        loss=loss,
        frequency=frequency,
        is_by_raster=is_by_raster,
        sources=texts_of(about, INTENT + "cableSource"),
    )


def _from_to(about: Properties, surely: str, at_most: str) -> Interval | None:
    low, high = (fraction_of(about, INTENT + name) for name in (surely, at_most))
    return None if low is None or high is None else Interval(low, high)
