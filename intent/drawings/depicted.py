"""What one drawing is of, and how it is to be drawn."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from intent.drawings.patterns import Channel
from intent.drawings.sheet import MARGIN_LEFT, Sheet
from intent.drawings.stage import Detail, Item, Stage, Which
from intent.language.locale import ENGLISH, Locale
from intent.language.message import Words

LEFT, RIGHT = MARGIN_LEFT - 9, 5.0
"""Millimetres of margin beside titles and what stands below the drawing."""


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawingStyle:
    """How drawings are made."""

    locale: Locale = ENGLISH
    name: str = ""
    """Stands in the identifiers of a drawing: each of several like drawings on a page has its own."""
    has_lines: bool = False
    """Whether a line leads from each player to what it feeds."""
    has_legend: bool = True
    """Whether what the marks mean stands in the drawing, and not once for several."""
    has_notes: bool = True
    """Whether the notes stand in the drawing, and not on the page beside it."""


PLAIN_STYLE = DrawingStyle()


@dataclass(frozen=True, slots=True, kw_only=True)
class Depicted:
    """One state of a work on one sheet."""

    stage: Stage
    sheet: Sheet
    which: Which
    style: DrawingStyle
    channels: Mapping[Words, Channel]
    detail: Detail | None = None
    """Where it is not the whole that is drawn."""

    @property
    def locale(self) -> Locale:
        return self.style.locale

    @property
    def prefix(self) -> str:
        """Begins every identifier in the drawing."""
        return "-".join(filter(None, ("drawing", self.style.name, self.sheet.view.value, self.which.value)))

    def channel_of(self, item: Item) -> Channel | None:
        """What a display shows."""
        return self.channels.get(item.channel) if item.is_display else None
