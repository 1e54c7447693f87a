"""What one drawing is of, and how it is to be drawn."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from intent.drawings.patterns import Channel
from intent.drawings.sheet import MARGIN_LEFT, Sheet
from intent.drawings.stage import Item, Stage, Which
from intent.language.locale import Locale
from intent.language.message import Words

LEFT, RIGHT = MARGIN_LEFT - 9, 5.0
"""Millimetres of margin beside titles and what stands below the drawing."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Depicted:
    """One state of a work on one sheet."""

    stage: Stage
    sheet: Sheet
    which: Which
    prefix: str
    """Begins every identifier in the drawing."""
    locale: Locale
    highlight: frozenset[str]
    """The parts that alone are drawn in full; none: all."""
    channels: Mapping[Words, Channel]

    def is_quiet(self, item: Item) -> bool:
        return bool(self.highlight) and item.identifier not in self.highlight

    def channel_of(self, item: Item) -> Channel | None:
        """What a display shows."""
        return self.channels.get(item.channel) if item.is_display else None
