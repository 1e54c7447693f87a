"""Sizes of files, as people are told them."""

from __future__ import annotations

from intent.language.figures import Written
from intent.language.message import Message, say

MEBIBYTE = 1024 * 1024
GIBIBYTE = 1024 * MEBIBYTE


def size_words(size: int) -> Message:
    """`300 bytes`, `12 MiB`, `1.5 GiB`."""
    if size >= GIBIBYTE:
        return say("{number} GiB", number=Written(f"{size / GIBIBYTE:.1f}"))
    if size >= MEBIBYTE:
        return say("{number} MiB", number=f"{size / MEBIBYTE:.0f}")
    return say("{number} bytes", number=size)
