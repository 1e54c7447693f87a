"""How much a package may hold before it is refused unread."""

from __future__ import annotations

from dataclasses import dataclass, replace

from intent.language.sizes import GIBIBYTE, MEBIBYTE


@dataclass(frozen=True, slots=True, kw_only=True)
class Limits:
    """Bounds of a package; sizes in bytes. Common practice, no source: a loan of media art is well within them."""

    most_files: int = 10_000
    largest_file: int = 64 * GIBIBYTE
    largest_total: int = 256 * GIBIBYTE
    deepest: int = 16
    """Folders within one another."""
    largest_tag_file: int = 8 * MEBIBYTE
    """Of a manifest and of what else is read as a whole before anything is believed."""
    largest_directory: int = 16 * MEBIBYTE
    """Of the list of contents of a zip."""
    highest_ratio: int = 100
    """Bytes that one compressed byte may become, for entries of more than a mebibyte and for all together."""


DEFAULT = Limits()


def limits_of(most_files: int | None, most_bytes: int | None) -> Limits:
    """The limits with another number of files, or of bytes in all and in one file, where one is given."""
    files = most_files or DEFAULT.most_files
    total = most_bytes or DEFAULT.largest_total
    file = min(total, DEFAULT.largest_file) if most_bytes is None else total
    return replace(DEFAULT, most_files=files, largest_total=total, largest_file=file)
