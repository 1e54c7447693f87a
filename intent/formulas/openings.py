"""What goes through an opening, round a corner and into a lift: rectangles in rectangles, boxes in boxes.

Lengths are in metres. A clearance is by how much each side of what passes could be greater; less than nothing, by
how much each would have to be smaller.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from enum import Enum
from fractions import Fraction
from itertools import combinations

from intent.values.bounds import larger, minus, point, root, scaled, times
from intent.values.regions import Interval

ROOT_OF_TWO = root(point(2))
FINEST = Fraction(1, 1000)
"""A clearance on the slant is told to the millimetre below."""
ENDLESS = Fraction(10**6)
"""A side of an opening of which nobody knows how large it may be: greater than anything that travels."""

Sides = tuple[Interval, Interval, Interval]
"""Length, width and height of a box as it stands."""
Opening = tuple[Interval, Interval]
"""Width and height."""
Rectangle = tuple[Fraction, Fraction]


class Turning(Enum):
    """How far a thing may be turned on its way."""

    UPRIGHT = 1
    """About the vertical alone."""
    ON_EDGE = 2
    """On its long edge alone: neither its thickness nor its longest side is upright."""
    ON_BACK = 3
    """About the vertical, and onto its back or face: its length is never upright."""
    LAID = 4
    """Onto any of its sides."""
    ANY = 5
    """Onto any of its sides, and on the slant."""


def fits_slanting(face: Rectangle, opening: Rectangle) -> bool:
    """Whether a rectangle goes into another, straight or on the slant.

    Of sides p ≥ q and a ≥ b it does if p ≤ a and q ≤ b, or if q ≤ b and ((a + b)/(p + q))² + ((a − b)/(p − q))² ≥ 2
    (W. B. Carver 1957, as quoted in J. E. Wetzel, "Rectangles in Rectangles", 2000, itself read in excerpts).
    """
    longer, shorter = max(face), min(face)
    wide, narrow = max(opening), min(opening)
    if shorter > narrow:
        return False
    if longer <= wide:
        return True
    return ((wide + narrow) / (longer + shorter)) ** 2 + ((wide - narrow) / (longer - shorter)) ** 2 >= 2


def clearance(sides: Sides, opening: Opening, turning: Turning) -> Interval:
    """The clearance of a box in an opening, carried in the best of the ways allowed."""
    return _between(sides, opening, lambda box, hole: _through(box, hole, turning))


def clearance_in_car(sides: Sides, car: Sides, turning: Turning) -> Interval:
    """The clearance of a box in the car of a lift (width, depth, height), standing straight in it."""
    return _between(sides, car, lambda box, room: _into(box, room, turning))


def surely_larger(sides: Sides, car: Sides, turning: Turning) -> bool:
    """Whether a box goes into the car of a lift in no way at all, on the slant included.

    A box in another has neither a longer diagonal, nor a greater sum of its sides, nor a greater shortest side
    (theorems of geometry, from memory); what must stay upright goes in as its plan goes into the plan of the car.
    """
    box = [side.low or Fraction(0) for side in sides]
    across, deep, upright = room = [ENDLESS if side.high is None else side.high for side in car]
    if turning not in (Turning.LAID, Turning.ANY):
        return all(
            tall > upright or not fits_slanting((one, two), (across, deep))
            for one, two, tall in _ways(box, turning)
        )
    return (
        sum(side**2 for side in box) > sum(side**2 for side in room)
        or sum(box) > sum(room)
        or min(box) > min(room)
    )


def longest_round_corner(width: Interval, corridor: Interval) -> Interval:
    """How long a box of some width may be to be turned round a right angle between two corridors of one width.

    L = 2 (√2 c − w): the ladder problem for a ladder that is w wide. Arithmetic. What is no longer than the corridor
    is wide needs no turning.
    """
    turned = scaled(minus(times(ROOT_OF_TWO, corridor), width), 2)
    return larger(turned, corridor)


def clearance_round_corner(sides: Sides, corridor: Opening, turning: Turning) -> Interval:
    """By how much a box could be longer, or higher, and still go round, in the best of the ways to set it down.

    The corridor is as wide and as high before the corner as after it; on the slant nothing is carried round.
    """
    return _between(sides, corridor, lambda box, room: _round(box, room, turning))


def surely_too_wide(sides: Sides, corridor: Interval) -> bool:
    """Whether a box goes through a corridor in no way at all: even its shortest side is wider."""
    shortest = min(side.low or Fraction(0) for side in sides)
    return corridor.high is not None and shortest > corridor.high


def _between(
    sides: Sequence[Interval],
    room: Sequence[Interval],
    of: Callable[[Sequence[Fraction], Sequence[Fraction]], Fraction],
) -> Interval:
    """From the largest that the box may be in the smallest room, to the smallest in the largest."""
    largest, smallest = [side.high for side in sides], [side.low or Fraction(0) for side in sides]
    tightest = [side.low or Fraction(0) for side in room]
    widest = [ENDLESS if side.high is None else side.high for side in room]
    known = [side for side in largest if side is not None]
    most = of(smallest, widest)
    return Interval(
        of(known, tightest) if len(known) == len(largest) else None, None if most > ENDLESS / 2 else most
    )


def _through(box: Sequence[Fraction], hole: Sequence[Fraction], turning: Turning) -> Fraction:
    across, upright = hole
    straight = max(min(across - min(one, two), upright - tall) for one, two, tall in _ways(box, turning))
    if turning is not Turning.ANY or straight >= 0:
        return straight
    slanting = (_slanting((one, two), (across, upright)) for one, two in combinations(box, 2))
    return max(straight, *slanting)


def _slanting(face: Rectangle, opening: Rectangle) -> Fraction:
    """The clearance of a face that is too long to go straight, to the millimetre below."""
    low, high = -int(max(face) / FINEST) - 1, int((min(opening) - min(face)) / FINEST) + 1
    while high - low > 1:
        middle = (low + high) // 2
        grown = face[0] + middle * FINEST, face[1] + middle * FINEST
        low, high = (middle, high) if min(grown) <= 0 or fits_slanting(grown, opening) else (low, middle)
    return low * FINEST


def _into(box: Sequence[Fraction], room: Sequence[Fraction], turning: Turning) -> Fraction:
    across, deep, upright = room
    return max(
        min(max(min(across - one, deep - two), min(across - two, deep - one)), upright - tall)
        for one, two, tall in _ways(box, turning)
    )


def _round(box: Sequence[Fraction], corridor: Sequence[Fraction], turning: Turning) -> Fraction:
    across, upright = corridor
    return max(
        min(_longest(min(one, two), across) - max(one, two), upright - tall)
        for one, two, tall in _ways(box, turning)
    )


def _longest(width: Fraction, corridor: Fraction) -> Fraction:
    longest = longest_round_corner(point(width), point(corridor)).low
    assert longest is not None
    return longest


def _ways(box: Sequence[Fraction], turning: Turning) -> list[tuple[Fraction, Fraction, Fraction]]:
    """The ways to set a box down: two sides of what is seen from above, and the side that is upright."""
    length, width, height = box
    if turning is Turning.ON_EDGE:
        thin, middle, long = sorted(box)
        return [(long, thin, middle)]
    standing, on_back, on_end = (length, width, height), (length, height, width), (width, height, length)
    if turning is Turning.UPRIGHT:
        return [standing]
    return [standing, on_back] if turning is Turning.ON_BACK else [standing, on_back, on_end]
