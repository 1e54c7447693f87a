"""Labels as people write them: how they are looked up, and how they are found whole within a sentence."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

CHUNK = re.compile(
    r"""(?P<QUOTED>"[^"]*"|“[^”]*”|„[^“”]*[“”]|«[^»]*»)
      | (?P<POSITION>\(\s*[-+−]?[\d.]+[^()]*,[^()]*\))
      | (?P<COMMA>,)
      | (?P<ELIDED>[^\W\d_]{1,2}['’](?=[^\W\d_]))
      | (?P<PLUSMINUS>±|\+/-|\+-)
      | (?P<WORD>(?:(?!±|\+/-|\+-)[^\s,"“”„«»])+)
      | (?P<STRAY>\S)""",
    re.VERBOSE,
)
"""The pieces of a sentence that are never divided further; what is elided (`d'`, `l'`) is a piece by itself."""

_QUOTES = {'"': '"', "“": "”", "„": "“”", "«": "»"}
_PLAIN = re.compile(r"[\w ./²³-]*$")


def label_among(labels: Mapping[str, str], language: str) -> str:
    """The label in a language, else in English, else in any; nothing where there is none."""
    return labels.get(language) or labels.get("en") or next(iter(labels.values()), "")


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
        words = words_of(name)
        if words:
            by_first.setdefault(words[0], set()).add(words)
    return Phrases({first: _longest_first(known) for first, known in by_first.items()})


def words_of(name: str) -> tuple[str, ...]:
    """The pieces of a name that is as `normal` makes it, as they are found in a sentence."""
    if _PLAIN.match(name):  # most names have no mark in them, and splitting them is quicker
        return tuple(name.split(" "))
    return tuple(match.group() for match in CHUNK.finditer(name))


def _longest_first(known: set[tuple[str, ...]]) -> tuple[tuple[str, ...], ...]:
    if len(known) == 1:
        return tuple(known)
    return tuple(sorted(known, key=lambda words: (-len(words), words)))


def begins_quoted(text: str) -> bool:
    """Whether a text opens with a quotation mark, be it closed or not."""
    return text.lstrip()[:1] in _QUOTES


def unquoted(text: str) -> str:
    """The text without a pair of quotation marks around it."""
    text = text.strip()
    if len(text) >= 2 and text[0] in _QUOTES and text[-1] in _QUOTES[text[0]]:
        return text[1:-1].strip()
    return text
