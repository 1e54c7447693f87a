"""Labels as people write them: how they are looked up, and how they are found whole within a sentence."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

CHUNK = re.compile(
    r"""(?P<QUOTED>"[^"]*"|“[^”]*”|„[^“”]*[“”]|«[^»]*»)
      | (?P<POSITION>\(\s*[-+−]?[\d.]+[^()]*,[^()]*\))
      | (?P<COMMA>,)
      | (?P<PLUSMINUS>±|\+/-|\+-)
      | (?P<WORD>(?:(?!±|\+/-|\+-)[^\s,"“”„«»])+)
      | (?P<STRAY>\S)""",
    re.VERBOSE,
)
"""The pieces of a sentence that are never divided further."""

_PLAIN = re.compile(r"[\w .'/²³-]*$")


def normal(label: str) -> str:
    """A label as it is looked up: case, spacing and typographic apostrophes do not count."""
    return " ".join(label.replace("’", "'").split()).casefold()


@dataclass(frozen=True, slots=True)
class Phrases:
    """Known names as sequences of words, by their first word, the longest first."""

    by_first: Mapping[str, tuple[tuple[str, ...], ...]]

    def match(self, words: Sequence[str], index: int) -> tuple[str, ...]:
        """The longest known name that begins at a word; nothing where none does."""
        for candidate in self.by_first.get(words[index], ()):
            if tuple(words[index : index + len(candidate)]) == candidate:
                return candidate
        return ()


def phrases(names: Iterable[str]) -> Phrases:
    """The names, each as `normal` makes it, in words."""
    by_first: dict[str, set[tuple[str, ...]]] = {}
    for name in names:
        words = tuple(name.split(" ")) if _PLAIN.match(name) else _chunks(name)
        if words:
            by_first.setdefault(words[0], set()).add(words)
    return Phrases({first: _longest_first(known) for first, known in by_first.items()})


def _chunks(name: str) -> tuple[str, ...]:
    return tuple(match.group() for match in CHUNK.finditer(name))


def _longest_first(known: set[tuple[str, ...]]) -> tuple[tuple[str, ...], ...]:
    if len(known) == 1:
        return tuple(known)
    return tuple(sorted(known, key=lambda words: (-len(words), words)))
