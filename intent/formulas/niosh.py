"""The revised NIOSH lifting equation: how much one person should lift with both hands, from where and to where.

Source: DHHS (NIOSH) 94-110, as quoted in a transcription. It is for one person and for smooth lifts with two hands,
not for carrying, stairs, or people who lift together; local rules prevail over it. Lengths are in centimetres and
weights in kilograms, or in the units of other constants that are asked for; angles are in degrees.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from fractions import Fraction
from math import ceil, prod

from intent.values.bounds import ZERO, Number, apart, hull, over, plus, point, scaled, times
from intent.values.regions import Interval

HALF = Fraction(1, 2)
NOTHING = Fraction(0)
SELDOM = Fraction(1, 5)
"""Lifts a minute, for up to an hour, that take nothing from the limit."""
FURTHEST_TURN, LOSS_A_DEGREE = Fraction(135), Fraction("0.0032")
TRAVEL_SHARE = Fraction("0.82")
GRIPS = {
    "good": (Fraction(1), Fraction(1)),
    "fair": (Fraction("0.95"), Fraction(1)),
    "poor": (Fraction("0.9"), Fraction("0.9")),
}
"""Coupling multipliers: with the hands below the knuckles, and at or above them."""
FREQUENCIES = (
    (SELDOM, Fraction(1)),
    (Fraction(1, 2), Fraction("0.97")),
    (Fraction(1), Fraction("0.94")),
    (Fraction(2), Fraction("0.91")),
    (Fraction(3), Fraction("0.88")),
    (Fraction(4), Fraction("0.84")),
    (Fraction(5), Fraction("0.80")),
    (Fraction(6), Fraction("0.75")),
)
"""Multipliers by lifts a minute, for up to an hour; more often than six a minute nobody installs a work."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Measures:
    """The constants of the equation in one system of units."""

    load: Fraction
    """What may be lifted in the best of postures."""
    nearest: Fraction
    """Hands nearer to the ankles than this, and ways shorter than this, count as this."""
    furthest: Fraction
    knuckles: Fraction
    """The height of the hands at which nothing is lost."""
    loss_of_height: Fraction
    highest: Fraction
    """Neither to a greater height nor by a longer way is anything to be lifted."""
    gain_of_travel: Fraction
    near_floor: Fraction
    """Below this height the load is taken to be held further out: in front of the knees."""
    beyond_middle: tuple[Fraction, Fraction]
    """How far the ankles are from the near side of the load: from this height on, and below it."""


METRIC = Measures(
    load=Fraction(23),
    nearest=Fraction(25),
    furthest=Fraction(63),
    knuckles=Fraction(75),
    loss_of_height=Fraction("0.003"),
    highest=Fraction(175),
    gain_of_travel=Fraction("4.5"),
    near_floor=Fraction(25),
    beyond_middle=(Fraction(20), Fraction(25)),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Lift:
    """One lift as the equation asks for it, at its origin or at its destination."""

    reach: Interval
    """How far the hands are in front of the ankles."""
    height: Interval
    """Of the hands above the floor."""
    travel: Interval
    """How far the load is lifted, up or down."""
    turn: Interval
    """How far the body turns to the side, to the left or to the right."""
    grips: frozenset[str]
    """What the grip may be: good, fair or poor."""
    frequency: Fraction = SELDOM
    """Lifts a minute."""


def recommended_limit(lift: Lift, measures: Measures = METRIC) -> Interval:
    """The recommended weight limit of a lift; nothing where it is beyond what the equation allows.

    RWL = LC × HM × VM × DM × AM × FM × CM (94-110, section 1.3).
    """
    shares = (
        _falling(_reach_share(measures), lift.reach),
        _height_share(lift.height, measures),
        _falling(_travel_share(measures), lift.travel),
        _falling(turn_share, lift.turn),
        _coupling_share(lift.grips, lift.height, measures),
    )
    most = measures.load * frequency_share(lift.frequency)
    low, high = (prod((end or NOTHING for end in ends), start=most) for ends in _ends(shares))
    return Interval(low, high)


def _ends(shares: Iterable[Interval]) -> tuple[list[Fraction | None], list[Fraction | None]]:
    """The lower and the upper ends of multipliers, all of which are known."""
    every = list(shares)
    return [share.low for share in every], [share.high for share in every]


def _reach_share(measures: Measures) -> Callable[[Number], Fraction]:
    """HM: 25/H."""

    def share(reach: Number) -> Fraction:
        return NOTHING if reach > measures.furthest else measures.nearest / max(reach, measures.nearest)

    return share


def _travel_share(measures: Measures) -> Callable[[Number], Fraction]:
    """DM: 0.82 + 4.5/D."""

    def share(travel: Number) -> Fraction:
        if travel > measures.highest:
            return NOTHING
        return TRAVEL_SHARE + measures.gain_of_travel / max(travel, measures.nearest)

    return share


def turn_share(turn: Number) -> Fraction:
    """AM: 1 − 0.0032 A."""
    return NOTHING if turn > FURTHEST_TURN else 1 - LOSS_A_DEGREE * turn


def frequency_share(frequency: Fraction) -> Fraction:
    """FM, for up to an hour: that of the next frequency in the table; nothing beyond it."""
    return next((share for most, share in FREQUENCIES if frequency <= most), NOTHING)


def _height_share(height: Interval, measures: Measures) -> Interval:
    """VM: 1 − 0.003 |V − 75|."""
    away = apart(height, point(measures.knuckles))
    lost = times(away, point(measures.loss_of_height))
    may_be_beyond = height.high is None or height.high > measures.highest
    low = NOTHING if may_be_beyond or lost.high is None else max(1 - lost.high, NOTHING)
    surely_beyond = height.low is not None and height.low > measures.highest
    return Interval(low, NOTHING if surely_beyond else max(1 - (lost.low or NOTHING), NOTHING))


def _coupling_share(grips: Iterable[str], height: Interval, measures: Measures) -> Interval:
    """CM, by the grip and the height of the hands."""
    below = height.low is None or height.low < measures.knuckles
    above = height.high is None or height.high >= measures.knuckles
    shares = [
        point(share)
        for grip in grips
        for share, may_be in zip(GRIPS[grip], (below, above), strict=True)
        if may_be
    ]
    return hull(shares)


def _falling(share: Callable[[Number], Fraction], number: Interval) -> Interval:
    """A multiplier that shrinks as its number grows."""
    low = NOTHING if number.high is None else share(number.high)
    return Interval(low, share(number.low or NOTHING))


def reach_around(depth: Interval, height: Interval, measures: Measures = METRIC) -> Interval:
    """How far out the hands are that hold a load of some depth before the body, where nobody has measured it.

    H = 20 + W/2 with the hands at 25 cm or higher, else 25 + W/2 (94-110, section 1.3.1, from memory).
    """
    may_be_high = height.high is None or height.high >= measures.near_floor
    may_be_low = height.low is None or height.low < measures.near_floor
    outs = [out for out, may in zip(measures.beyond_middle, (may_be_high, may_be_low), strict=True) if may]
    return plus(hull([point(out) for out in outs]), scaled(depth, HALF))


def lifting_index(weight: Interval, limit: Interval) -> Interval:
    """The weight over the recommended limit (94-110, section 1.4); without end where the limit may be nothing."""
    return over(weight, limit)


def people_needed(alone: Interval, together: Interval) -> Interval:
    """How many people at least, from the index for one person, and that for one who stands close at an end of it.

    One, where the index is not above 1; else two or more who bear like shares of the weight. The equation is for one
    person: that two share a load evenly is a rough rule, and so is lifting by more than two (common practice, no
    source).
    """
    return Interval(_people(alone.low, together.low), _people(alone.high, together.high))


def _people(alone: Fraction | None, together: Fraction | None) -> Fraction | None:
    if alone is not None and alone <= 1:
        return Fraction(1)
    return None if together is None else Fraction(max(2, ceil(together)))


def least_limit(measures: Measures = METRIC) -> Fraction:
    """What may be lifted without turning, however far, high and badly held, if the equation allows it at all."""
    furthest = point(measures.furthest)
    height, travel = point(measures.highest), point(measures.highest)
    worst = Lift(reach=furthest, height=height, travel=travel, turn=ZERO, grips=frozenset({"poor"}))
    return recommended_limit(worst, measures).low or NOTHING
