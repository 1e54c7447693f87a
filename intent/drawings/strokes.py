"""Outlines by verdict: each verdict has a stroke of its own kind, as in the margin of a report."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from intent.drawings.plane import Point, offset
from intent.drawings.svg import Element, closed, path
from intent.variance.result import Verdict

PLAIN = 0.22
"""Millimetres: the line of what does not depart."""


@dataclass(frozen=True, slots=True)
class Stroke:
    """The width of a line, its dashes, and whether it is drawn twice."""

    width: float
    dashes: str = ""
    is_double: bool = False

    def finer(self, share: float) -> Stroke:
        """The same kind of line, thinner."""
        dashes = " ".join(f"{float(length) * share:g}" for length in self.dashes.split())
        return Stroke(max(self.width * share, PLAIN), dashes, self.is_double)

    @property
    def reach(self) -> float:
        """How far it stands out from what it goes round."""
        return 3 * self.width if self.is_double else self.width

    @property
    def cap(self) -> str:
        """Dots are round: dashes of no length with round ends."""
        return "round" if self.dashes.startswith("0 ") else ""


STROKES = {
    Verdict.FORBIDDEN: Stroke(0.3, is_double=True),
    Verdict.BREACH: Stroke(0.8),
    Verdict.CONTRADICTION: Stroke(0.8, "2.4 1.2"),
    Verdict.UNKNOWN: Stroke(0.8, "0 1.4"),
    Verdict.UNCOVERED: Stroke(0.45, "0 0.9"),
    Verdict.CONDITIONAL: Stroke(0.45, "1.6 0.8"),
    Verdict.ALLOWED: Stroke(0.45),
}
"""The rules of the report's margin in ink: double, thick, thick in dashes, thick in dots, dots, dashes, a line."""
GHOST = Stroke(0.18, "0.7 0.7")
"""What is left out."""


def stroke_of(verdict: Verdict | None) -> Stroke:
    return STROKES.get(verdict, Stroke(PLAIN)) if verdict else Stroke(PLAIN)


def drawn(corners: Sequence[Point], stroke: Stroke) -> Iterator[Element]:
    """The outline of some corners; a marked one stands outside them, so that what is inside keeps its size."""
    if not stroke.is_double:
        apart = offset(corners, max(stroke.width - PLAIN, 0) / 2)
        yield path(
            closed(apart),
            stroke.width,
            stroke_dasharray=stroke.dashes,
            stroke_linecap=stroke.cap,
            **_joined(corners),
        )
        return
    yield path(closed(corners), stroke.width, **_joined(corners))
    yield path(closed(offset(corners, 2.4 * stroke.width)), stroke.width, **_joined(corners))


def _joined(corners: Sequence[Point]) -> dict[str, str]:
    return {"stroke_linejoin": "miter"} if len(corners) > 2 else {}
