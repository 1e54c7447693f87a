"""Time codes in a transcript: in brackets or parentheses, at the start of a line, or as the timing of a caption.

Source for captions: W3C, WebVTT (Candidate Recommendation of 4 April 2019), section 4.1, cue timings. The other
ways are common practice, no source.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import floor

from intent.dossier.media_time import Clip, seconds

_FRACTION = r"(?:[.,]\d{1,3})?"
_FULL = rf"\d{{1,3}}:[0-5]?\d:[0-5]\d{_FRACTION}"
_SHORT = rf"\d{{1,3}}:[0-5]\d{_FRACTION}"
_ANY = rf"(?:{_FULL}|{_SHORT})"
_REST = rf"\d{{0,2}}:[0-5]?\d(?::[0-5]\d)?{_FRACTION}"
LEAD = r"\[(\d"
"""The first signs of a time code, for a class of characters: what begins with a class is searched for quickly."""
AFTER_LEAD = (
    rf"(?<=\[){_ANY}\]"
    rf"|(?<=\(){_FULL}\)"
    rf"|(?<=^\d)(?:\d*\n{_ANY}|{_REST})[ \t]+-->[ \t]+{_ANY}.*$"
    rf"|(?<=^\d)\d{{0,2}}:[0-5]?\d:[0-5]\d{_FRACTION}(?![\w:.])"
)
"""What follows; in parentheses or bare, hours are needed, since `4:30` may be a time of day."""
_TIME_CODE = re.compile(rf"[{LEAD}](?:{AFTER_LEAD})", re.MULTILINE)
_POINT = re.compile(_ANY)


@dataclass(frozen=True, slots=True)
class TimeCode:
    """A time code: where it stands in the text, as written, and in seconds."""

    place: int
    written: str
    seconds: Fraction


@dataclass(frozen=True, slots=True)
class TimedStretch:
    """A stretch of a text, in code points."""

    start: int
    end: int


def time_codes(text: str) -> tuple[TimeCode, ...]:
    return tuple(_read(match) for match in _TIME_CODE.finditer(text))


def _read(match: re.Match[str]) -> TimeCode:
    """The first point of time in what is written: a caption also says when it ends, and may have a number."""
    line = match.group().rpartition("\n")[2] if "-->" in match.group() else match.group()
    point = _POINT.search(line)
    written = point.group() if point else "0:00"
    return TimeCode(match.start(), written, seconds(written.replace(",", ".")))


def code_before(codes: Sequence[TimeCode], place: int) -> TimeCode | None:
    """The last time code that stands before a place."""
    return next((code for code in reversed(codes) if code.place <= place), None)


def stretches_at(codes: Sequence[TimeCode], clip: Clip, length: int) -> tuple[TimedStretch, ...]:
    """Where a text of ``length`` code points tells of a span of time, by its time codes.

    It begins with the last time code that is not later, and ends with the next that is: a citation anywhere in what
    somebody says holds for all of it. Where the count starts anew (the second side of a cassette) there are several.
    """
    is_whole = clip.start.denominator == 1
    times = [Fraction(floor(code.seconds)) if is_whole else code.seconds for code in codes]
    found = []
    for index, time in enumerate(times):
        following = times[index + 1] if index + 1 < len(times) else None
        if time <= clip.start and (following is None or following > clip.start or following < time):
            first = times.index(time, 0, index + 1) if time == clip.start else index
            found.append(TimedStretch(codes[first].place, _end(codes, times, index, clip, length)))
    if times and times[0] > clip.start:
        found.append(TimedStretch(0, codes[0].place))
    return tuple(found)


def _end(codes: Sequence[TimeCode], times: Sequence[Fraction], index: int, clip: Clip, length: int) -> int:
    """The end of the stretch that begins at or before the clip: the next time code that is past it."""
    until = clip.start if clip.end is None else clip.end
    for code, time in zip(codes[index + 1 :], times[index + 1 :], strict=True):
        if time > clip.start and time >= until:
            return code.place
        if time < times[index]:
            return code.place
    return length
