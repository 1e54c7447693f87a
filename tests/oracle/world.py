"""A small world: a few characteristics, and for each every point that its values are made of.

A value is the set of its points, written out. Measured characteristics have a grid, fine enough that each end of
an interval used here is a point and each open stretch between two ends holds one; what is named comes from the
taxonomy, read here with SPARQL, and nothing else can be; a text may be any other. Tolerances are those of the
vocabulary (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from rdflib import Graph

Point = int | str
Points = frozenset[Point]

ELSE = "anything else"
VOCABULARY = Path(__file__).parents[2] / "intent" / "vocabulary"

_NARROWER = """
PREFIX skos: <http://www.w3.org/2004/02/skos/core#>
SELECT ?label ?narrower WHERE {
  ?concept skos:prefLabel ?label . ?narrower skos:broader* ?concept ; skos:inScheme ?scheme .
  FILTER(lang(?label) = "en" && strends(str(?scheme), "/%s"))
}
"""


@dataclass(frozen=True)
class Written:
    """A text with the points that it means in an instruction, and those that it means in a cell."""

    text: str
    points: Points
    cell: Points | None = None
    """None: not for cells."""


@dataclass(frozen=True)
class Trait:
    """A characteristic as this world has it."""

    name: str
    bearer: str
    unasked: bool
    everything: Points
    comparisons: tuple[Written, ...]
    """What may follow `is`."""
    cells: tuple[Written, ...]
    widen: Callable[[Points], Points]
    """The points within the tolerance of some points."""
    shares: Mapping[str, tuple[int, int]]
    """`90 % of documented` with its factor, as numerator and denominator."""


def taxonomy(file: str, scheme: str) -> dict[str, Points]:
    """Each English label of a scheme with the points that it means: the concept and everything narrower."""
    graph = Graph().parse(VOCABULARY / file)
    found: dict[str, set[Point]] = {}
    for row in graph.query(_NARROWER % scheme):
        label, narrower = row  # type: ignore[misc]
        found.setdefault(str(label), set()).add(str(narrower))
    return {label: frozenset(points) for label, points in found.items()}


def _same(points: Points) -> Points:
    return points


def _named(
    name: str, bearer: str, unasked: bool, among: Mapping[str, Points], labels: tuple[str, ...]
) -> Trait:
    everything = frozenset().union(*among.values(), {ELSE} if name in {"model", "channel"} else ())
    single = [Written(label, among[label], among[label]) for label in labels]
    pairs = [
        Written(f"one of {one} or {two}", among[one] | among[two])
        for place, one in enumerate(labels)
        for two in labels[place + 1 :]
    ]
    no_share: dict[str, tuple[int, int]] = {}
    whole = [] if name == "presence" else [Written("any", everything)]
    return Trait(name, bearer, unasked, everything, (*single, *pairs, *whole), tuple(single), _same, no_share)


@dataclass(frozen=True)
class _Scale:
    """A grid of ``steps`` points, ``per_unit`` of them to the unit that texts are written in."""

    unit: str
    per_unit: float
    steps: int
    tolerance: float
    """In units, or as a share where ``relative``."""
    relative: bool = False

    def within(self, low: float, high: float) -> Points:
        first, last = round(low * self.per_unit), round(high * self.per_unit)
        return frozenset(range(max(0, first), min(self.steps - 1, last) + 1))

    def around(self, value: float, more: float | None = None) -> Points:
        by = more if more is not None else value * self.tolerance if self.relative else self.tolerance
        return self.within(value - by, value + by)

    def widen(self, points: Points) -> Points:
        return frozenset().union(*(self.around(int(point) / self.per_unit) for point in points))


def _measured(
    name: str, bearer: str, unasked: bool, scale: _Scale, values: tuple[int, ...], plus_minus: int
) -> Trait:
    everything = frozenset(range(scale.steps))
    top = scale.steps / scale.per_unit
    written: list[Written] = []
    cells: list[Written] = []
    for value in values:
        exact, wide = scale.around(value, 0), scale.around(value, plus_minus)
        cells += [Written(f"{value} {scale.unit}", scale.around(value), exact)]
        cells += [Written(f"{value} {scale.unit} ± {plus_minus} {scale.unit}", wide, wide)]
        written += [
            Written(f"at least {value} {scale.unit}", scale.within(value, top)),
            Written(f"at most {value} {scale.unit}", scale.within(0, value)),
        ]
        written += [
            Written(f"between {value} and {other} {scale.unit}", scale.within(value, other))
            for other in values
            if value < other
        ]
    shares = (
        {"90 % of documented": (9, 10), "110 % of documented": (11, 10)} if name == "visible diagonal" else {}
    )
    every = (*cells, *written, Written("any", everything))
    return Trait(name, bearer, unasked, everything, every, tuple(cells), scale.widen, shares)


_DEGREES = {
    "upright": 0,
    "turned right": 90,
    "upside down": 180,
    "turned left": 270,
    "45 deg": 45,
    "46 deg": 46,
}
_TURN = 720


def _arc(first: float, last: float) -> Points:
    """Half degrees from one angle clockwise to another."""
    return frozenset(step % _TURN for step in range(round(first * 2), round(last * 2) + 1))


def _widened_arc(points: Points) -> Points:
    return frozenset((int(point) + by) % _TURN for point in points for by in range(-2, 3))


def _rotation() -> Trait:
    everything = frozenset(range(_TURN))
    cells = [
        Written(text, _arc(angle - 1, angle + 1), _arc(angle, angle)) for text, angle in _DEGREES.items()
    ]
    cells += [
        Written(
            f"{text} ± 10 deg", _arc(_DEGREES[text] - 10, _DEGREES[text] + 10), _arc(angle - 10, angle + 10)
        )
        for text, angle in (("upright", 0), ("upside down", 180))
    ]
    sectors = [
        Written("between turned right and turned left", _arc(90, 270)),
        Written("between turned left and turned right", _arc(270, 450)),
        Written("between upright and 46 deg", _arc(0, 46)),
        Written("one of upright or upside down", _arc(-1, 1) | _arc(179, 181)),
        Written("any", everything),
    ]
    return Trait("rotation", "place", True, everything, (*cells, *sectors), tuple(cells), _widened_arc, {})


def _texts(name: str, bearer: str, unasked: bool, texts: tuple[str, ...]) -> Trait:
    return _named(name, bearer, unasked, {text: frozenset({text}) for text in texts}, texts)


@cache
def small_world() -> dict[str, Trait]:
    """The characteristics by name."""
    technologies = taxonomy("technologies.ttl", "technologies")
    sounds = taxonomy("values.ttl", "sounds")
    traits = (
        _named(
            "technology", "device", True, technologies,
            ("cathode-ray tube", "flat panel", "LCD", "OLED", "projector", "video projector"),
        ),
        _measured("visible diagonal", "device", True, _Scale("mm", 0.4, 401, 5), (200, 300, 310, 400), 20),
        _named("casing", "device", True, taxonomy("values.ttl", "casings"), ("original", "altered", "hidden")),
        _texts("model", "device", False, ("TV-13", "TV-9", "PX-15")),
        _measured("weight", "device", False, _Scale("kg", 4, 401, 0.05, relative=True), (10, 20, 40), 2),
        _rotation(),
        _texts("channel", "place", True, ("A", "B", "C")),
        _named("presence", "place", True, taxonomy("values.ttl", "presences"), ("present", "absent")),
        _named("sound", "work", True, sounds, ("silent", "audible", "mono", "stereo")),
        _measured("mains", "venue", False, _Scale("V", 2, 601, 0.05, relative=True), (100, 200, 240), 10),
    )  # fmt: skip
    return {trait.name: trait for trait in traits}
