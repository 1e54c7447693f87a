"""A package in a zip: its files as they would lie in a folder, unpacked block by block and never by their own word.

An entry gives as many bytes as the list of contents says and no more, whatever is compressed in it. Nothing that is
itself a zip is opened; where it would burst if somebody else opened it, that is said.
"""

from __future__ import annotations

import io
import struct
import zlib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from intent.diagnostics import Diagnostic
from intent.language.message import say
from intent.language.sizes import MEBIBYTE, size_words
from intent.packages.file_names import PackageFault, name_faults
from intent.packages.limits import Limits
from intent.packages.walk import PackageEntry, PackageListing, Stream, common_faults, fault_at
from intent.packages.zip_directory import DEFLATED, NotAZip, ZipEntry, read_directory, with_start
from intent.packages.zip_faults import entry_faults, layout_faults, whole_faults

MAGIC = b"PK\x03\x04"
_BLOCK = 256 * 1024


@dataclass(frozen=True, slots=True)
class ZippedPackage:
    """A zip with its listing; paths are those within its one top folder."""

    path: Path
    listing: PackageListing
    entries: Mapping[str, ZipEntry]

    def open(self, entry: PackageEntry) -> Stream:
        """The bytes of an entry. Raises ``OSError``."""
        found = self.entries[entry.path]
        handle = self.path.open("rb", buffering=0)
        handle.seek(found.start)
        stored = _Window(handle, found.packed)
        return _Inflated(stored, found.size) if found.method == DEFLATED else stored


def list_zip(path: Path, limits: Limits) -> ZippedPackage:
    """What a zip holds, and everything that is wrong with it; a file that is no zip has that one fault."""
    name = str(path)
    try:
        with path.open("rb") as stream:
            directory = read_directory(stream, limits)
            placed = {entry: with_start(stream, entry) for entry in directory.entries}
    except NotAZip as error:
        return _nothing(path, error.fault)
    except (OSError, struct.error) as error:
        return _nothing(
            path, PackageFault("unreadable", say("the zip cannot be read: {reason}", reason=str(error)))
        )
    entries = tuple(found for found, _ in placed.values())
    faults = [fault_at(name, "", one.slug, one.message) for one in whole_faults(entries, limits)]
    wrong = {found.offset: [*_faults_of(found, limits), *headed] for found, headed in placed.values()}
    for found, fault in layout_faults(tuple(one for one in entries if one.start), directory.start):
        wrong[found.offset].append(fault)
    root, files = _within_root(entries, wrong)
    if root is None:
        message = say("a package in a zip lies in one folder, named like the package; this one does not")
        faults.append(fault_at(name, "", "zip-roots", message))
    if len(files) > limits.most_files:
        message = say("the package has more than {most} files", most=limits.most_files)
        faults.append(fault_at(name, "", "too-many-files", message))
    for found in entries:
        faults.extend(fault_at(name, found.name, one.slug, one.message) for one in wrong[found.offset])
    listed = tuple(
        PackageEntry(path=inner, size=one.size, refused=bool(wrong[one.offset]))
        for inner, one in sorted(files.items())
    )
    faults.extend(common_faults(name, listed, limits))
    return ZippedPackage(path, PackageListing(name, listed, tuple(faults)), files)


def _nothing(path: Path, fault: PackageFault) -> ZippedPackage:
    return ZippedPackage(
        path, PackageListing(str(path), (), (fault_at(str(path), "", fault.slug, fault.message),)), {}
    )


def _faults_of(entry: ZipEntry, limits: Limits) -> Iterator[PackageFault]:
    path = entry.name.removesuffix("/")
    yield from name_faults(path)
    yield from entry_faults(entry, limits)
    if path.count("/") - 1 > limits.deepest:
        yield PackageFault("too-deep", say("the file lies deeper than {most} folders", most=limits.deepest))


def _within_root(
    entries: tuple[ZipEntry, ...], wrong: Mapping[int, list[PackageFault]]
) -> tuple[str | None, dict[str, ZipEntry]]:
    """The one top folder, if all lies in one, and the files by their paths within it."""
    safe = [entry.name for entry in entries if not wrong[entry.offset]]
    roots = {name.partition("/")[0] for name in safe}
    is_one = len(roots) == 1 and all("/" in name for name in safe)
    root = roots.pop() if is_one else None
    files = [entry for entry in entries if not entry.is_folder]
    return root, {entry.name.removeprefix(f"{root}/"): entry for entry in files}


class _Window:
    """A stretch of a file, read as though it were one by itself."""

    def __init__(self, handle: io.FileIO, length: int) -> None:
        self._handle, self._left = handle, length

    def readinto(self, buffer: memoryview, /) -> int | None:
        read = self._handle.readinto(buffer[: min(len(buffer), self._left)]) if self._left else 0
        self._left -= read or 0
        return read

    def close(self) -> None:
        self._handle.close()


class _Inflated:
    """What a compressed stretch becomes: never more than its size, whatever it holds."""

    def __init__(self, packed: _Window, size: int) -> None:
        self._packed, self._left = packed, size
        self._engine = zlib.decompressobj(-zlib.MAX_WBITS)
        self._waiting = b""
        self._block = memoryview(bytearray(_BLOCK))

    def readinto(self, buffer: memoryview, /) -> int:
        """Raises ``OSError`` where what is compressed is damaged, or is more than the zip says."""
        filled = 0
        try:
            while filled < len(buffer) and not self._engine.eof:
                if not self._waiting:
                    self._waiting = bytes(self._block[: self._packed.readinto(self._block) or 0])
                    if not self._waiting:
                        break
                made = self._engine.decompress(self._waiting, len(buffer) - filled)
                self._waiting = self._engine.unconsumed_tail
                buffer[filled : filled + len(made)] = made
                filled += len(made)
        except zlib.error as error:
            raise OSError(f"what is compressed is damaged ({error})") from None
        self._left -= filled
        if self._left < 0:
            raise OSError("what is compressed is more than the zip says")
        return filled

    def close(self) -> None:
        self._packed.close()


def nested_fault(path: Path, package: str, entry: str, limits: Limits) -> Diagnostic | None:
    """Of a file that is itself a zip: that it would burst where somebody unpacked it. It is not unpacked here."""
    try:
        with path.open("rb") as stream:
            if stream.read(len(MAGIC)) != MAGIC:
                return None
            entries = read_directory(stream, limits).entries
    except (NotAZip, OSError, struct.error):
        return None
    size, packed = sum(one.size for one in entries), path.stat().st_size
    is_dense = size > MEBIBYTE and size > limits.highest_ratio * packed
    if not is_dense and size <= limits.largest_total:
        return None
    message = say(
        "this is a zip of {packed} that would become {size} if it were opened",
        packed=size_words(packed),
        size=size_words(size),
    )
    return fault_at(package, entry, "zip-bomb", message)
