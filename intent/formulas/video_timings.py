"""How many picture elements a second a computer sends for a raster and a rate: the clock of its picture.

Which timing a computer and a display agree on is not said by raster and rate alone: that of a table (VESA DMT), the
formula for tubes or that for panels with short blanking (VESA CVT). Clocks are in hertz.
"""

from __future__ import annotations

from fractions import Fraction
from math import floor

from intent.values.bounds import hull, point, scaled
from intent.values.regions import Interval

HALF = Fraction(1, 2)
STEP = Fraction(1, 4)
"""Megahertz: clocks are whole quarters (VESA CVT 1.1, 3.2; from memory)."""
CELL, PORCH, LEAST_BEHIND = 8, 3, 6
"""Elements that blanking is counted in; lines before the sync; the least after it (VESA CVT 1.1; from memory)."""
SYNC_LINES = {
    Fraction(4, 3): 4,
    Fraction(16, 9): 5,
    Fraction(16, 10): 6,
    Fraction(5, 4): 7,
    Fraction(15, 9): 7,
}
OTHER_SYNC = 10
"""Lines of sync, by the shape of the raster (VESA CVT 1.1, table 3-2; from memory)."""
SYNC_AND_BEHIND, SHORT_BLANKING = Fraction(550), Fraction(460)
"""Microseconds: the least that a tube needs to begin anew, and the least that a panel does."""
SHORT_LINE_BLANKING = 160
"""Elements of blanking of a line of a panel."""
TABLE = {
    (640, 480): {60: "25.175", 75: "31.5", 85: "36"},
    (800, 600): {60: "40", 75: "49.5", 85: "56.25"},
    (1024, 768): {60: "65", 75: "78.75", 85: "94.5"},
    (1280, 720): {60: "74.25"},
    (1280, 960): {60: "108"},
    (1280, 1024): {60: "108", 75: "135", 85: "157.5"},
    (1360, 768): {60: "85.5"},
    (1366, 768): {60: "85.5"},
    (1600, 900): {60: "108"},
    (1600, 1200): {60: "162", 75: "202.5", 85: "229.5"},
    (1920, 1080): {60: "148.5"},
}
"""Megahertz, by raster and rate (VESA DMT 1.13; from memory); those that the formulas give as well are left out."""
NEAR = 1
"""Hertz by which a rate may differ from the nominal one of the table: 59.94 Hz is 60 Hz."""
MILLION = 10**6


def clocks(columns: int, rows: int, rate: Fraction) -> Interval:
    """All the clocks that a raster may have at a rate in hertz."""
    found = [tube_clock(columns, rows, rate), panel_clock(columns, rows, rate)]
    table = TABLE.get((columns, rows), {})
    found += [Fraction(clock) * MILLION for nominal, clock in table.items() if abs(nominal - rate) <= NEAR]
    return hull(map(point, found))


def finest_detail(clock: Interval) -> Interval:
    """The frequency of the finest detail: of elements that are light and dark by turns, half the clock. Arithmetic."""
    return scaled(clock, HALF)


def tube_clock(columns: int, rows: int, rate: Fraction) -> Fraction:
    """The clock of a picture with the blanking that tubes need (VESA CVT 1.1, 3.4; from memory)."""
    shown = _whole_cells(columns)
    line = (MILLION / rate - SYNC_AND_BEHIND) / (rows + PORCH)
    share = max(Fraction(30) - 300 * line / 1000, Fraction(20))
    blank = floor(shown * share / (100 - share) / (2 * CELL)) * 2 * CELL
    return _stepped((shown + blank) / line)


def panel_clock(columns: int, rows: int, rate: Fraction) -> Fraction:
    """The clock of a picture with the short blanking of panels (VESA CVT 1.1, 3.5; from memory)."""
    line = (MILLION / rate - SHORT_BLANKING) / rows
    sync = SYNC_LINES.get(Fraction(columns, rows), OTHER_SYNC)
    blank = max(floor(SHORT_BLANKING / line) + 1, PORCH + sync + LEAST_BEHIND)
    return _stepped(rate * (rows + blank) * (_whole_cells(columns) + SHORT_LINE_BLANKING) / MILLION)


def _whole_cells(columns: int) -> int:
    return columns // CELL * CELL


def _stepped(megahertz: Fraction) -> Fraction:
    return floor(megahertz / STEP) * STEP * MILLION
