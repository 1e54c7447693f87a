"""The search for a quoted passage in a source: its words in their order, gaps where the quotation has them."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from intent.dossier.citations import GAP
from intent.reading.evidence.bare_words import Wording, wording_of
from intent.reading.evidence.time_codes import TimeCode, TimedStretch, time_codes

_AT_A_GAP = " \t\n,;:.!?–—-"
"""What stands beside words left out is the quoting writer's."""

_LINE_START = re.compile(r"^[ \t>]+", re.MULTILINE)


@dataclass(frozen=True, slots=True)
class Transcript:
    """A source's text, made ready once for every search."""

    wording: Wording
    codes: tuple[TimeCode, ...]

    @property
    def text(self) -> str:
        return self.wording.original


def transcript_of(text: str) -> Transcript:
    return Transcript(wording_of(text), time_codes(text))


def pieces_of(passage: str) -> tuple[str, ...]:
    """The wording of a quoted passage, cut at its gaps; where its own lines begin means nothing."""
    cut = [piece.strip(" \t\n-‐‑") for piece in GAP.split(passage)]
    if len(cut) > 1:
        cut = [
            cut[0].rstrip(_AT_A_GAP),
            *(one.strip(_AT_A_GAP) for one in cut[1:-1]),
            cut[-1].lstrip(_AT_A_GAP),
        ]
    lines = (" ".join(_LINE_START.sub("", piece).split()) for piece in cut)
    wordings = (wording_of(line).text.strip(" -") for line in lines)
    return tuple(piece for piece in wordings if re.search(r"\w", piece))


def find(
    pieces: Sequence[str], transcript: Transcript, within: TimedStretch | None = None
) -> TimedStretch | None:
    """Where the pieces stand one after another, in code points of the source; the closest such place at the end.

    Only whole words count: `art` is not in `party`.
    """
    wording = transcript.wording
    start = wording.place(within.start) if within else 0
    end = wording.place(within.end) if within else len(wording.text)
    place = start
    for piece in pieces:
        found = _forwards(wording, piece, place, end)
        if found is None:
            return None
        place = found + len(piece)
    first = place = place - len(pieces[-1])
    for piece in reversed(pieces[:-1]):
        first = place = _backwards(wording, piece, start, place)
    return TimedStretch(*wording.span(first, _end_of(wording, pieces, first)))


def _end_of(wording: Wording, pieces: Sequence[str], place: int) -> int:
    for piece in pieces:
        found = _forwards(wording, piece, place, len(wording.text))
        place = (place if found is None else found) + len(piece)
    return place


def _forwards(wording: Wording, piece: str, start: int, end: int) -> int | None:
    place = wording.text.find(piece, start, end)
    while place >= 0 and not _is_whole(wording, place, place + len(piece)):
        place = wording.text.find(piece, place + 1, end)
    return None if place < 0 else place


def _backwards(wording: Wording, piece: str, start: int, end: int) -> int:
    place = wording.text.rfind(piece, start, end)
    while place >= 0 and not _is_whole(wording, place, place + len(piece)):
        place = wording.text.rfind(piece, start, place + len(piece) - 1)
    return place


def _is_whole(wording: Wording, start: int, end: int) -> bool:
    """Whether no word of the original is cut at either end."""
    first, last = wording.span(start, end)
    text = wording.original
    return not (_is_inside_word(text, first) or _is_inside_word(text, last))


def _is_inside_word(text: str, place: int) -> bool:
    return 0 < place < len(text) and text[place - 1].isalnum() and text[place].isalnum()
