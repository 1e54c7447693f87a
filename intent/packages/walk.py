"""What a package holds, found without opening or following anything: the walk through a folder, and its faults.

Every file is looked at with `lstat` before it is read. Links, devices, pipes and files with holes have no place in a
package; a file that goes by two names is refused as well, since what is written to one would change the other.
"""

from __future__ import annotations

import os
import stat
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import islice
from pathlib import Path
from typing import Protocol

from intent.diagnostics import Diagnostic, Span
from intent.language.message import Words, say
from intent.language.sizes import size_words
from intent.packages.file_names import PackageFault, collisions, name_faults, shown_name
from intent.packages.limits import Limits


@dataclass(frozen=True, slots=True, kw_only=True)
class PackageEntry:
    """One file of a package; its path has `/` between its steps."""

    path: str
    size: int
    refused: bool = False
    """Whether it is there and must not be opened."""
    identity: tuple[int, int] = (0, 0)
    """Device and inode, so that what is opened is what was looked at."""


@dataclass(frozen=True, slots=True)
class PackageListing:
    """The files of a package, and what is wrong with it as far as can be told from outside."""

    name: str
    """The package as its receiver knows it."""
    entries: tuple[PackageEntry, ...]
    faults: tuple[Diagnostic, ...]

    def entry(self, path: str) -> PackageEntry | None:
        return next((entry for entry in self.entries if entry.path == path), None)


class Stream(Protocol):
    """A file of a package, read block by block."""

    def readinto(self, buffer: memoryview, /) -> int | None:
        """Fill the buffer as far as there is something; 0 at the end."""

    def close(self) -> None: ...


def fault_at(package: str, path: str, slug: str, message: Words) -> Diagnostic:
    """A fault of one file of a package."""
    return Diagnostic(
        slug=slug, message=message, span=Span(file="/".join(filter(None, [package, shown_name(path)])))
    )


def list_folder(folder: Path, limits: Limits) -> PackageListing:
    """Everything in a folder. Nothing is opened but to ask whether a file has holes."""
    name = str(folder)
    entries: list[PackageEntry] = []
    faults: list[Diagnostic] = []
    waiting: list[tuple[Path, str, int]] = [(folder, "", 0)]
    seen = 0
    while waiting:
        place, prefix, depth = waiting.pop()
        for path, found in _in_order(place, faults, name, prefix, limits):
            inner, seen = f"{prefix}{path.name}", seen + 1
            if seen > limits.most_files:
                faults.append(_too_many(name, limits))
                return PackageListing(name, tuple(entries), tuple(faults))
            if stat.S_ISDIR(found.st_mode):
                if depth >= limits.deepest:
                    faults.append(_too_deep(name, inner, limits))
                else:
                    waiting.append((path, f"{inner}/", depth + 1))
            else:
                wrong = [*_kind_faults(path, found), *name_faults(inner)]
                faults.extend(fault_at(name, inner, one.slug, one.message) for one in wrong)
                identity = (found.st_dev, found.st_ino)
                entries.append(
                    PackageEntry(path=inner, size=found.st_size, refused=bool(wrong), identity=identity)
                )
    ordered = tuple(sorted(entries, key=lambda entry: entry.path))
    return PackageListing(name, ordered, (*faults, *common_faults(name, ordered, limits)))


def _in_order(
    place: Path, faults: list[Diagnostic], name: str, prefix: str, limits: Limits
) -> Iterator[tuple[Path, os.stat_result]]:
    try:
        for path in sorted(islice(place.iterdir(), limits.most_files + 1)):
            yield path, path.lstat()
    except OSError as error:
        message = say("the folder cannot be read: {reason}", reason=error.strerror or str(error))
        faults.append(fault_at(name, prefix.rstrip("/"), "unreadable", message))


def _kind_faults(path: Path, found: os.stat_result) -> Iterator[PackageFault]:
    """What a file is, other than an ordinary one with a single name and without holes."""
    if stat.S_ISLNK(found.st_mode):
        yield PackageFault(
            "symbolic-link", say("this is a symbolic link; ask the sender for the file itself")
        )
    elif not stat.S_ISREG(found.st_mode):
        message = next((message for test, message in _SPECIAL if test(found.st_mode)), _NOT_ORDINARY)
        yield PackageFault("special-file", message)
    elif found.st_nlink > 1:
        yield PackageFault(
            "hard-link", say("this file goes by several names; copy it, so that it stands alone")
        )
    elif found.st_size and _has_holes(path, found.st_size):
        message = say(
            "this file has holes: it says that it is larger than what was written of it; copy it without them"
        )
        yield PackageFault("sparse-file", message)


_SPECIAL = (
    (stat.S_ISFIFO, say("this is a pipe; a package holds ordinary files only")),
    (stat.S_ISSOCK, say("this is a socket; a package holds ordinary files only")),
    (stat.S_ISCHR, say("this is a device; a package holds ordinary files only")),
    (stat.S_ISBLK, say("this is a device; a package holds ordinary files only")),
)
_NOT_ORDINARY = say("this is no ordinary file; a package holds ordinary files only")


def _has_holes(path: Path, size: int) -> bool:
    """Whether the file system knows of a hole in an ordinary file; where it cannot tell, there is none."""
    if not hasattr(os, "SEEK_HOLE"):
        return False
    try:
        handle = os.open(path, os.O_RDONLY | os.O_NOFOLLOW | os.O_NONBLOCK)
    except OSError:
        return False
    try:
        return os.lseek(handle, 0, os.SEEK_HOLE) < size
    except OSError:
        return False
    finally:
        os.close(handle)


def common_faults(name: str, entries: Iterable[PackageEntry], limits: Limits) -> Iterator[Diagnostic]:
    """What holds for packages of every form: names that meet, and how much there may be."""
    total = 0
    for entry in entries:
        total += entry.size
        if entry.size > limits.largest_file:
            message = say(
                "the file has {size}; the most is {most}",
                size=size_words(entry.size),
                most=size_words(limits.largest_file),
            )
            yield fault_at(name, entry.path, "too-large", message)
    if total > limits.largest_total:
        message = say(
            "the package has {size}; the most is {most}",
            size=size_words(total),
            most=size_words(limits.largest_total),
        )
        yield fault_at(name, "", "too-large", message)
    for path, fault in collisions(entry.path for entry in entries):
        yield fault_at(name, path, fault.slug, fault.message)


def _too_many(name: str, limits: Limits) -> Diagnostic:
    return fault_at(
        name,
        "",
        "too-many-files",
        say("the package has more than {most} files and folders", most=limits.most_files),
    )


def _too_deep(name: str, path: str, limits: Limits) -> Diagnostic:
    return fault_at(
        name, path, "too-deep", say("the folder lies deeper than {deepest} others", deepest=limits.deepest)
    )


def open_in_folder(folder: Path, entry: PackageEntry) -> Stream:
    """A file of a folder, if it is still the one that was looked at. Raises ``OSError`` where it is not."""
    handle = os.open(folder / entry.path, os.O_RDONLY | os.O_NOFOLLOW | os.O_NONBLOCK)
    found = os.fstat(handle)
    if (found.st_dev, found.st_ino) != entry.identity or not stat.S_ISREG(found.st_mode):
        os.close(handle)
        raise OSError("it was changed for another while the package was read")
    return os.fdopen(handle, "rb", buffering=0)
