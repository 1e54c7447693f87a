"""Texts that were left out, looked for in what leaves: prose may say what a table keeps in the house."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

SHORTEST = 6
"""Characters of a text that is worth looking for; a shorter one, or a number, stands anywhere."""


def texts_to_look_for(kept: Iterable[str]) -> tuple[str, ...]:
    """Those that are long enough and no mere numbers, with single spaces, in a fixed order."""
    return tuple(sorted({with_single_spaces(text) for text in kept if _is_telling(text)}))


def _is_telling(text: str) -> bool:
    return len(text.strip()) >= SHORTEST and any(sign.isalpha() for sign in text)


def texts_said_in(text: str, kept: Sequence[str]) -> Iterator[str]:
    """Which of the texts to look for stand in another text, however it is broken into lines."""
    plain = with_single_spaces(text)
    yield from (one for one in kept if one in plain)


def with_single_spaces(text: str) -> str:
    return " ".join(text.split())
