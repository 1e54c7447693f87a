"""What is wrong with the entries of a zip, as its list of contents and their local headers tell of them.

Each rule yields what breaks it. Sizes are bytes; nothing has been unpacked yet.
"""

from __future__ import annotations

from collections.abc import Iterator

from intent.language.message import Words, say
from intent.language.sizes import MEBIBYTE, size_words
from intent.packages.file_names import PackageFault, shown_name
from intent.packages.limits import Limits
from intent.packages.zip_directory import DEFLATED, SIZES_LATER, STORED, ZipEntry

_ENCRYPTED = 0x1 | 0x40 | 0x2000
_DESCRIPTORS = frozenset({12, 16, 20, 24})
"""Bytes that may follow an entry whose sizes were not known when it was begun."""


def entry_faults(entry: ZipEntry, limits: Limits) -> Iterator[PackageFault]:
    """What is wrong with an entry as the directory tells of it."""
    kind = entry.mode & 0o170000
    if kind == 0o120000:
        yield PackageFault(
            "symbolic-link", say("this is a symbolic link; ask the sender for the file itself")
        )
    elif kind not in {0, 0o100000, 0o040000} or (kind == 0o040000 and not entry.is_folder):
        yield PackageFault(
            "special-file", say("this is a device, a pipe or a socket; a package holds ordinary files only")
        )
    if entry.flags & _ENCRYPTED:
        yield PackageFault(
            "encrypted", say("this is encrypted, so it cannot be checked; ask for it without a password")
        )
    elif entry.method not in {STORED, DEFLATED}:
        yield PackageFault(
            "zip-method",
            say(
                "this is compressed by method {method}; only stored and deflated are read",
                method=entry.method,
            ),
        )
    elif entry.method == STORED and entry.packed != entry.size:
        yield PackageFault("zip-sizes", say("this is stored, and yet its two sizes differ"))
    if entry.is_folder and entry.size:
        yield PackageFault("zip-sizes", say("this is a folder, and yet it has a size"))
    if entry.size > MEBIBYTE and entry.size > limits.highest_ratio * max(1, entry.packed):
        yield PackageFault("zip-bomb", _bomb(entry.size, entry.packed, limits))


def _bomb(size: int, packed: int, limits: Limits) -> Words:
    return say(
        "{packed} would become {size}, more than {ratio} times as much; ask for it uncompressed",
        packed=size_words(packed),
        size=size_words(size),
        ratio=limits.highest_ratio,
    )


def whole_faults(entries: tuple[ZipEntry, ...], limits: Limits) -> Iterator[PackageFault]:
    """What is wrong with all entries together: what they would become, and names that are there twice."""
    size, packed = sum(entry.size for entry in entries), sum(entry.packed for entry in entries)
    if size > MEBIBYTE and size > limits.highest_ratio * max(1, packed):
        yield PackageFault("zip-bomb", _bomb(size, packed, limits))
    seen: set[str] = set()
    for entry in entries:
        if entry.name in seen:
            yield PackageFault(
                "zip-duplicate", say("`{path}` is in the zip more than once", path=shown_name(entry.name))
            )
        seen.add(entry.name)


def layout_faults(entries: tuple[ZipEntry, ...], directory: int) -> Iterator[tuple[ZipEntry, PackageFault]]:
    """Entries that overlap, and bytes that belong to none: in front, between, or before the list of contents."""
    end = 0
    later = False
    for entry in sorted(entries, key=lambda one: one.offset):
        yield from ((entry, fault) for fault in _meets(entry.offset, end, later))
        end, later = entry.start + entry.packed, bool(entry.flags & SIZES_LATER)
    if entries:
        last = max(entries, key=lambda one: one.offset)
        yield from ((last, fault) for fault in _meets(directory, end, later))


def _meets(begin: int, end: int, later: bool) -> Iterator[PackageFault]:
    gap = begin - end
    if gap < 0:
        yield PackageFault(
            "zip-overlap", say("two entries share bytes; what is unpacked could be far larger than the zip")
        )
    elif gap and not (later and gap in _DESCRIPTORS):
        yield PackageFault(
            "zip-gap",
            say("{gap} bytes belong to no entry; another reader may find something else in them", gap=gap),
        )
