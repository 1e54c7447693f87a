"""The passage of a source that comes nearest to one that is not in it."""

from __future__ import annotations

import difflib
import re
from collections import Counter
from collections.abc import Sequence

from intent.reading.evidence.search import Transcript
from intent.reading.evidence.time_codes import TimedStretch

_RUN = 3
"""How many words in a row speak for a place."""
_RUNS = 48
"""How many runs of a long passage are looked for."""
_LIKE = 0.6
"""How alike the wording must be (0 to 1, the ratio of `difflib`)."""


def nearest_passage(pieces: Sequence[str], transcript: Transcript) -> TimedStretch | None:
    """Where most runs of three words of the passage stand together, if what stands there is like it.

    Each run is looked for by plain search, and speaks for the place where the passage would begin; only at the place
    with most voices are the texts compared, so that a long source costs little more than reading it.
    """
    passage = " ".join(pieces)
    voices: Counter[int] = Counter()
    bucket = max(24, len(passage) // 4)
    for offset, run in _runs(passage):
        place = transcript.wording.text.find(run)
        if place >= 0:
            voices[(place - offset) // bucket] += 1
    if not voices:
        return None
    chosen = max(voices, key=lambda one: (voices[one] + voices[one + 1], -one))
    return _compared(passage, transcript, chosen * bucket, len(passage) + 2 * bucket)


def _runs(passage: str) -> list[tuple[int, str]]:
    words = list(re.finditer(r"\S+", passage))
    length = min(_RUN, max(1, len(words) - 1))
    starts = range(0, len(words) - length + 1, max(1, len(words) // _RUNS))
    return [
        (words[start].start(), passage[words[start].start() : words[start + length - 1].end()])
        for start in starts
    ]


def _compared(passage: str, transcript: Transcript, place: int, length: int) -> TimedStretch | None:
    """The part of the source from the first to the last word that it shares with the passage there."""
    wording = transcript.wording
    start = max(0, place)
    there = list(re.finditer(r"\S+", wording.text[start : start + length]))
    words = passage.split()
    matcher = difflib.SequenceMatcher(None, words, [word.group() for word in there], autojunk=False)
    blocks = [block for block in matcher.get_matching_blocks() if block.size]
    if not blocks:
        return None
    first = max(0, blocks[0].b - blocks[0].a)
    last = min(len(there), blocks[-1].b + len(words) - blocks[-1].a)
    alike = 2 * sum(block.size for block in blocks) / (len(words) + last - first)
    if alike < _LIKE:
        return None
    return TimedStretch(*wording.span(start + there[first].start(), start + there[last - 1].end()))
