"""Sets of numbers, exactly: unions of boxes in one or more dimensions, with their algebra."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True, slots=True)
class Interval:
    """The numbers from ``low`` to ``high``; ``None`` is without end; a strict end is not itself included."""

    low: Fraction | None
    high: Fraction | None
    low_strict: bool = False
    high_strict: bool = False

    @property
    def is_empty(self) -> bool:
        if self.low is None or self.high is None:
            return False
        return self.low > self.high or (self.low == self.high and (self.low_strict or self.high_strict))

    @property
    def is_point(self) -> bool:
        return self.low is not None and self.low == self.high and not (self.low_strict or self.high_strict)

    def meet(self, other: Interval) -> Interval:
        low, low_strict = _tighter(self.low, self.low_strict, other.low, other.low_strict, upper=False)
        high, high_strict = _tighter(self.high, self.high_strict, other.high, other.high_strict, upper=True)
        return Interval(low, high, low_strict, high_strict)

    def holds(self, other: Interval) -> bool:
        """Whether every number of another interval is in this one."""
        return self.meet(other) == other


EVERYTHING = Interval(None, None)


def _tighter(
    one: Fraction | None, one_strict: bool, two: Fraction | None, two_strict: bool, *, upper: bool
) -> tuple[Fraction | None, bool]:
    if one is None or two is None:
        return (two, two_strict) if one is None else (one, one_strict)
    if one == two:
        return one, one_strict or two_strict
    one_is_tighter = (one < two) if upper else (one > two)
    return (one, one_strict) if one_is_tighter else (two, two_strict)


Box = tuple[Interval, ...]


@dataclass(frozen=True, slots=True)
class Region:
    """A union of boxes, one interval a dimension; within ``whole``, beyond which there is no value."""

    boxes: tuple[Box, ...]
    whole: tuple[Interval, ...] = (EVERYTHING,)
    discrete: bool = False
    """Whole numbers only: an interval between two neighbours is empty."""

    @property
    def is_empty(self) -> bool:
        return not self.boxes

    @property
    def is_point(self) -> bool:
        return len(self.boxes) == 1 and all(interval.is_point for interval in self.boxes[0])

    def meet(self, other: Region) -> Region:
        return region([_meet(mine, theirs) for mine in self.boxes for theirs in other.boxes], self)

    def is_within(self, other: Region) -> bool:
        """Whether all of it lies in another; of single boxes told without cutting."""
        if len(self.boxes) == 1 and len(other.boxes) == 1:
            return all(theirs.holds(mine) for mine, theirs in zip(self.boxes[0], other.boxes[0], strict=True))
        return self.minus(other).is_empty

    def minus(self, other: Region) -> Region:
        left = list(self.boxes)
        for hole in other.boxes:
            left = [piece for box in left for piece in _without(box, hole)]
        return region(left, self)

    def complement(self) -> Region:
        return region([self.whole], self).minus(self)

    def joined(self, other: Region) -> Region:
        return region([*self.boxes, *other.boxes], self)

    @property
    def bounds(self) -> Interval:
        """The hull of the first dimension: what is known of a single number."""
        lows = [box[0].low for box in self.boxes]
        highs = [box[0].high for box in self.boxes]
        return Interval(
            None if None in lows else min(low for low in lows if low is not None),
            None if None in highs else max(high for high in highs if high is not None),
        )


def region(boxes: Iterable[Box], like: Region) -> Region:
    """The boxes that hold anything, cut to the whole of ``like``, each once and in order."""
    cut = (_meet(box, like.whole) for box in boxes)
    if like.discrete:
        cut = (tuple(_whole_numbers(interval) for interval in box) for box in cut)
    kept = [box for box in cut if not any(interval.is_empty for interval in box)]
    return Region(_merged(kept, like.discrete), like.whole, like.discrete)


def _merged(boxes: Sequence[Box], discrete: bool) -> tuple[Box, ...]:
    ordered = sorted(set(boxes), key=lambda box: [_start(interval) for interval in box])
    if len(ordered) < 2 or len(ordered[0]) > 1:
        return tuple(ordered)
    merged = [ordered[0][0]]
    for (interval,) in ordered[1:]:
        last = merged[-1]
        if _touch(last, interval, Fraction(discrete)):
            further = _further(last, interval)
            merged[-1] = Interval(last.low, further.high, last.low_strict, further.high_strict)
        else:
            merged.append(interval)
    return tuple((interval,) for interval in merged)


def _touch(first: Interval, second: Interval, step: Fraction) -> bool:
    """Whether nothing lies between two intervals; whole numbers a step apart have nothing between them."""
    if first.high is None or second.low is None:
        return True
    if step:
        return second.low <= first.high + step
    return second.low < first.high or (
        second.low == first.high and not (second.low_strict and first.high_strict)
    )


def _further(one: Interval, two: Interval) -> Interval:
    if one.high is None or two.high is None:
        return one if one.high is None else two
    if one.high == two.high:
        return two if one.high_strict else one
    return one if one.high > two.high else two


def _start(interval: Interval) -> tuple[bool, Fraction, bool]:
    return interval.low is not None, interval.low or Fraction(0), interval.low_strict


def _meet(one: Box, two: Box) -> Box:
    return tuple(mine.meet(theirs) for mine, theirs in zip(one, two, strict=True))


def _without(box: Box, hole: Box) -> list[Box]:
    """What is left of a box when another is cut out of it, as boxes that do not overlap."""
    if any(interval.is_empty for interval in _meet(box, hole)):
        return [box]
    left: list[Box] = []
    core = list(box)
    for axis, cut in enumerate(hole):
        if cut.low is not None:
            below = core[axis].meet(Interval(None, cut.low, False, not cut.low_strict))
            left.append((*core[:axis], below, *core[axis + 1 :]))
        if cut.high is not None:
            above = core[axis].meet(Interval(cut.high, None, not cut.high_strict, False))
            left.append((*core[:axis], above, *core[axis + 1 :]))
        core[axis] = core[axis].meet(cut)
    return [piece for piece in left if not any(interval.is_empty for interval in piece)]


def _whole_numbers(interval: Interval) -> Interval:
    low, high = interval.low, interval.high
    if low is not None:
        low = Fraction(low.__floor__() + 1 if interval.low_strict else low.__ceil__())
    if high is not None:
        high = Fraction(high.__ceil__() - 1 if interval.high_strict else high.__floor__())
    return Interval(low, high)


def arc(start: Fraction, end: Fraction) -> tuple[Box, ...]:
    """The angles from one to another, clockwise, in degrees, as intervals of a single turn."""
    if end - start >= 360:
        return ((Interval(Fraction(0), Fraction(360), False, True),),)
    start, end = start % 360, end % 360
    if start <= end:
        return ((Interval(start, end),),)
    return (
        (Interval(Fraction(0), end),),
        (Interval(start, Fraction(360), False, True),),
    )


def spread(regions: Sequence[Region]) -> Region:
    """The sum of several numbers, each known only within bounds."""
    total = Interval(Fraction(0), Fraction(0))
    for bounds in (summand.bounds for summand in regions):
        total = Interval(
            None if total.low is None or bounds.low is None else total.low + bounds.low,
            None if total.high is None or bounds.high is None else total.high + bounds.high,
        )
    whole = regions[0].whole if regions else (EVERYTHING,)
    return region([(total,)], Region((), whole))
