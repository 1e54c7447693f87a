"""The dimensions that somebody who hangs the work needs: heights to the floor, and steps between neighbours.

Neighbours are displays of one group in one row; a row whose steps are another's is not measured twice.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from intent.drawings.captions import metres
from intent.drawings.lettering import FIGURES, width_of
from intent.drawings.plane import Point
from intent.drawings.sheet import Sheet, flat
from intent.drawings.stage import Item, View
from intent.drawings.svg import SANS, Element, line, number, path, shape, words
from intent.language.locale import Locale

SAME = 0.02
"""Metres within which two displays count as being in one row, or one above another."""
LANE = 4.6
"""Millimetres between two lines of dimensions."""
MOST_LANES = 5
_THIN, _TICK = 0.12, 0.7
_LEAST_GAP = 2.5


@dataclass(frozen=True, slots=True)
class Chain:
    """A row of neighbours, by where their middles are across the room, in metres."""

    stations: tuple[float, ...]
    lane: int = 0
    is_tall: bool = False


def chains_of(items: Iterable[Item], sheet: Sheet) -> tuple[Chain, ...]:
    """The rows to be measured, each in the first line below the drawing in which it has room."""
    rows: dict[tuple[str, int], list[Item]] = {}
    for item in items:
        if item.is_display:
            down = flat(item.centre, sheet.view)[1]
            rows.setdefault((item.group, round(down / (2 * SAME))), []).append(item)
    lines = dict.fromkeys(map(_stations, rows.values()))
    ordered = sorted((line for line in lines if len(line) > 1), key=lambda row: (row[0] - row[-1], row))
    return tuple(_in_lanes(_new_steps(ordered), sheet.unit))


def _stations(row: Sequence[Item]) -> tuple[float, ...]:
    found: list[float] = []
    for across in sorted(item.centre[0] for item in row):
        if not found or across - found[-1] > SAME:
            found.append(round(across, 3))
    return tuple(found)


def _new_steps(ordered: Sequence[tuple[float, ...]]) -> Iterator[tuple[float, ...]]:
    """The rows of which some step is not measured yet."""
    measured: set[tuple[float, float]] = set()
    for row in ordered:
        steps = set(pairwise(row))
        if not steps <= measured:
            measured |= steps
            yield row


def _in_lanes(rows: Iterable[tuple[float, ...]], unit: float) -> Iterator[Chain]:
    """A row with a step too short for its figure takes two lines: the figure stands upright below it."""
    taken: list[tuple[int, float, float]] = []
    for row in rows:
        tall = any((b - a) * unit < width_of("0.00", FIGURES) for a, b in pairwise(row))
        first, last = row[0] - 0.05, row[-1] + 0.05
        for lane in range(MOST_LANES):
            wanted = (lane, lane + 1) if tall else (lane,)
            if not any(line in wanted and first <= right and left <= last for line, left, right in taken):
                taken += [(line, first, last) for line in wanted]
                yield Chain(row, lane, tall)
                break


def lanes(chains: Iterable[Chain]) -> int:
    return max((chain.lane + 1 + chain.is_tall for chain in chains), default=0)


def chain_drawn(chain: Chain, sheet: Sheet, top: float, locale: Locale) -> Element:
    """A line with a stroke at every middle and the step written on it."""
    y = top + (chain.lane + 0.7) * LANE
    places = [sheet.at((across, 0.0, 0.0))[0] for across in chain.stations]
    drawn = [line((places[0], y), (places[-1], y), _THIN)]
    for x in places:
        drawn.append(line((x, y - _TICK * 1.6), (x, y + _TICK), _THIN))
        drawn.append(line((x - _TICK / 2, y + _TICK / 2), (x + _TICK / 2, y - _TICK / 2), 0.25))
    steps = zip(chain.stations, chain.stations[1:], places, places[1:], strict=False)
    drawn += [
        _step(metres(b - a, locale), (left + right) / 2, right - left, y) for a, b, left, right in steps
    ]
    return shape("g", drawn, class_="dimensions")


def _step(written: str, x: float, room: float, y: float) -> Element:
    """The figure on its line; upright below it where the step is too short."""
    if width_of(written, FIGURES) <= room:
        return words(written, (x, y - 0.55), FIGURES, font_family=SANS, text_anchor="middle")
    if room < FIGURES:
        return shape("g")
    foot = (x + FIGURES * 0.34, y + 1.0)
    turned = f"rotate(-90 {number(foot[0])} {number(foot[1])})"
    return words(written, foot, FIGURES, font_family=SANS, text_anchor="end", transform=turned)


def levels_of(items: Iterable[Item], view: View) -> tuple[float, ...]:
    """The heights, or in a plan the depths, at which displays are; each once."""
    found: list[float] = []
    for level in sorted(flat(item.centre, view)[1] for item in items if item.is_display):
        if not found or level - found[-1] > SAME / 2:
            found.append(level)
    return tuple(found)


def ladder(levels: Sequence[float], sheet: Sheet, left: float, locale: Locale) -> Element:
    """The levels written one above another at the left, with a bent line where they had to be moved apart."""
    places = [sheet.drawn.top + (level - sheet.room.top) * sheet.unit for level in levels]
    if not places:
        return shape("g")
    base = sheet.drawn.top - sheet.room.top * sheet.unit
    ends = (min(*places, base), max(*places, base))
    drawn = [line((left, ends[0]), (left, ends[1]), _THIN)]
    for level, y, beside in zip(levels, places, apart(places), strict=True):
        value = -level if sheet.view is View.ELEVATION else level
        written = metres(value, locale)
        bend: tuple[Point, Point, Point] = ((left + _TICK, y), (left - _TICK, y), (left - 2.4, beside))
        drawn.append(path("M" + "L".join(f"{x:.2f} {down:.2f}" for x, down in bend), _THIN))
        at = (left - 2.8, beside + FIGURES * 0.35)
        drawn.append(words(written, at, FIGURES, font_family=SANS, text_anchor="end"))
    return shape("g", drawn, class_="levels")


def apart(places: Sequence[float]) -> list[float]:
    """Places in rising order moved so far that each has room, and about as far up as down."""
    moved: list[float] = []
    for place in places:
        moved.append(max(place, moved[-1] + _LEAST_GAP) if moved else place)
    shift = sum(new - old for new, old in zip(moved, places, strict=True)) / len(moved) if moved else 0.0
    return [place - shift for place in moved]
