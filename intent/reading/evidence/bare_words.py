"""A text reduced to its wording: what is left when nothing counts but the words, their case and punctuation.

Left out or made alike are white space, quotation marks, apostrophes, hyphens between letters (a line may have been
broken there), marks of emphasis and of quoted lines, escapes, and time codes. The same is done to a source and to
what is quoted from it, so that a passage is found by plain search; every place leads back to the text as it was.
"""

from __future__ import annotations

import re
import unicodedata
from bisect import bisect_right
from collections.abc import Callable
from dataclasses import dataclass
from functools import reduce

from intent.reading.evidence.time_codes import AFTER_LEAD, LEAD

_DROPPED = '*_"“”„‟«»`\u00ad\u200b\u200c\u200d\u2060\ufeff'
_MARKS = re.compile(
    rf"[{LEAD}~\\>{_DROPPED}](?:{AFTER_LEAD}"
    rf"|(?<=[{_DROPPED}])[{_DROPPED}]*"
    r"|(?<=~)~|(?<=\\)(?=[!-/:-@\[-`{-~\n])"
    r"|(?:(?<=^>)|(?<=^ >)|(?<=^  >)|(?<=^   >))[ \t>]*)",  # lines quoted in Markdown
    re.MULTILINE,
)
_HYPHENS = "-‐‑"
_APOSTROPHES = "'’‘ʼ′"
_SINGLE = f"{_APOSTROPHES}‚‛‹›"
_CLOSING = frozenset(",;:!?.)]")
_SPACING = re.compile(
    rf"[{_HYPHENS}{_SINGLE}\s](?:(?<= )(?:[\s{_SINGLE}]+|(?=[{re.escape(''.join(sorted(_CLOSING)))}]))"
    rf"|(?<=\w[{_HYPHENS}])\s*(?=\w)"
    rf"|(?<=\w[{_APOSTROPHES}])(?=\w)"
    rf"|(?<=[{_SINGLE}\t-\r\x1c-\x1f\x85\xa0\u1680\u2000-\u200a\u2028\u2029\u202f\u205f\u3000])[\s{_SINGLE}]*)"
)
"""A single space between words, which is most of them, is passed over; both begin with a class of characters."""
_DECOMPOSED = re.compile(r".[\u0300-\u036f]+")
_COMBINING = re.compile(r"[\u0300-\u036f]*")


@dataclass(frozen=True, slots=True)
class Trace:
    """Places in a rewritten text and, in step with them, the places in the text before."""

    after: list[int]
    before: list[int]

    def back(self, place: int) -> int:
        step = bisect_right(self.after, place) - 1
        return self.before[step] + place - self.after[step]

    def forth(self, place: int) -> int:
        step = bisect_right(self.before, place) - 1
        moved = self.after[step] + place - self.before[step]
        return min(moved, self.after[step + 1]) if step + 1 < len(self.after) else moved


@dataclass(frozen=True, slots=True)
class Wording:
    """A text with its wording; places in the original are counted in code points."""

    original: str
    text: str
    traces: tuple[Trace, ...]

    def span(self, start: int, end: int) -> tuple[int, int]:
        """Where a stretch of the wording, which is not empty, stands in the original."""
        first, last = (
            reduce(lambda place, trace: trace.back(place), reversed(self.traces), place)
            for place in (start, end - 1)
        )
        combined = _COMBINING.match(self.original, last + 1)
        return first, combined.end() if combined else last + 1

    def place(self, original: int) -> int:
        """The place in the wording of what stands at a place in the original, or next after it."""
        return reduce(lambda place, trace: trace.forth(place), self.traces, original)


def wording_of(text: str) -> Wording:
    composed, first = _rewritten(text, _DECOMPOSED, _composed)
    unmarked, second = _rewritten(composed, _MARKS, lambda match: "")
    spaced, third = _rewritten(unmarked, _SPACING, _spaced)
    return Wording(text, spaced, (first, second, third))


def _rewritten(text: str, pattern: re.Pattern[str], new: Callable[[re.Match[str]], str]) -> tuple[str, Trace]:
    pieces: list[str] = []
    after, before = [0], [0]
    length = end = 0
    for match in pattern.finditer(text):
        start, replacement = match.start(), new(match)
        pieces += (text[end:start], replacement)
        length += start - end
        after.append(length)
        before.append(start)
        length += len(replacement)
        end = match.end()
        after.append(length)
        before.append(end)
    pieces.append(text[end:])
    return "".join(pieces), Trace(after, before)


def _composed(match: re.Match[str]) -> str:
    return unicodedata.normalize("NFC", match.group())


def _spaced(match: re.Match[str]) -> str:
    """A run of spaces and single quotation marks, or one sign between two words, as it counts."""
    text, found, end = match.string, match.group(), match.end()
    before, after = text[match.start() - 1 : match.start()], text[end : end + 1]
    if found[0] in _HYPHENS:
        return "" if before.isalpha() and after.isalpha() else "-"
    if len(found) == 1 and found in _APOSTROPHES and before.isalnum() and after.isalnum():
        return "'"
    return " " if any(sign.isspace() for sign in found) and after not in _CLOSING else ""
