"""Times in a recording, as a citation and a transcript write them: to spans of seconds.

Source: W3C, Media Fragments URI 1.0 (Recommendation of 25 September 2012), section 4.2.1, normal play time. Two
things are taken beside it, since transcripts write them: one digit for the minutes, and more than 59 minutes
where there are no hours.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

POINT = r"(?:\d+:[0-5]?\d:[0-5]\d|\d{1,3}:[0-5]\d)(?:\.\d*)?"
"""Hours, minutes and seconds, or minutes and seconds."""
_TIME = re.compile(
    rf"(?:npt:)?(?:(?P<start>{POINT}|\d+(?:\.\d*)?)(?:,(?P<end>{POINT}|\d+(?:\.\d*)?))?"
    rf"|,(?P<until>{POINT}|\d+(?:\.\d*)?))"
)


@dataclass(frozen=True, slots=True)
class Clip:
    """A span of a recording, in seconds from its start; without an end it runs to the last second."""

    start: Fraction
    end: Fraction | None = None


def read_clip(written: str) -> Clip:
    """The span that a media fragment's `t` names: `3,7`, `,7`, `0:14:05`. Raises `ValueError`."""
    match = _TIME.fullmatch(written)
    if match is None:
        raise ValueError(f"`{written}` is no time of a recording; write `0:14:05`, or `0:14:05,0:15:20`")
    start = seconds(match["start"] or "0")
    end = match["end"] or match["until"]
    if end is None:
        return Clip(start)
    if seconds(end) <= start:
        raise ValueError(f"`{written}` ends before it begins")
    return Clip(start, seconds(end))


def seconds(point: str) -> Fraction:
    """The seconds from the start of the recording."""
    total = Fraction(0)
    for step in point.split(":"):
        total = total * 60 + Fraction(step.rstrip("."))
    return total
