"""The list of contents of a zip, read strictly, before anything in it is unpacked.

Source: the ZIP file format as published by PKWARE (APPNOTE.TXT 6.3), sections 4.3 and 4.4, from memory. Readers of zips
differ in what they make of one that contradicts itself; here it is refused: a single end record at the very end, no
bytes between entries, none that overlap, and each local header says what the directory says.
"""

from __future__ import annotations

import struct
from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import BinaryIO

from intent.language.message import Words, joined, say
from intent.packages.file_names import PackageFault
from intent.packages.limits import Limits

STORED, DEFLATED = 0, 8
_END, _END_64, _LOCATOR = b"PK\x05\x06", b"PK\x06\x06", b"PK\x06\x07"
_CENTRAL, _LOCAL = b"PK\x01\x02", b"PK\x03\x04"
_END_RECORD = struct.Struct("<4s4H2LH")
_END_64_RECORD = struct.Struct("<4sQ2H2L4Q")
_LOCATOR_RECORD = struct.Struct("<4sLQL")
_CENTRAL_RECORD = struct.Struct("<4s6H3L5H2L")
_LOCAL_RECORD = struct.Struct("<4s5H3L2H")
_UTF8, SIZES_LATER = 0x800, 0x8
"""Flags of an entry: its name is in UTF-8; its sizes follow it, since they were not known when it was begun."""
_HUGE, _MANY = 0xFFFFFFFF, 0xFFFF
_ZIP64, _UNICODE_PATH = 0x0001, 0x7075
_UNIX = 3


_SEVERAL_ENDS = say("the file ends in more than one way, so it is no zip that can be trusted")
_NO_END = say("the file does not end as a zip does, or is cut off, so it is no zip that can be trusted")


class NotAZip(Exception):
    """The file as a whole cannot be read as a zip; says why."""

    def __init__(self, slug: str, message: Words) -> None:
        self.fault = PackageFault(slug, message)
        super().__init__(slug)


@dataclass(frozen=True, slots=True, kw_only=True)
class ZipEntry:
    """One entry as the directory tells of it; sizes and offsets in bytes."""

    name: str
    raw: bytes
    flags: int
    method: int
    crc: int
    packed: int
    size: int
    offset: int
    mode: int
    """The file's mode on Unix; 0 where it is not told."""
    start: int = 0
    """Where its bytes begin, once its local header was read."""

    @property
    def is_folder(self) -> bool:
        return self.raw.endswith(b"/")


@dataclass(frozen=True, slots=True)
class ZipDirectory:
    """The list of contents: its entries in their order, and where in the zip it begins."""

    entries: tuple[ZipEntry, ...]
    start: int


def read_directory(stream: BinaryIO, limits: Limits) -> ZipDirectory:
    """The list of contents. Raises `NotAZip`."""
    count, size, offset, end = _find_directory(stream)
    if size > limits.largest_directory or count > limits.most_files * 2:
        raise NotAZip("too-many-files", say("the zip lists {count} entries, more than is read", count=count))
    if offset + size != end:
        raise NotAZip("zip-gap", say("the zip's list of contents does not end where the zip does"))
    stream.seek(offset)
    return ZipDirectory(tuple(_entries(stream.read(size), count)), offset)


def _find_directory(stream: BinaryIO) -> tuple[int, int, int, int]:
    """How many entries there are, the size of their list, where it begins and where it ends."""
    length = stream.seek(0, 2)
    tail_start = max(0, length - _END_RECORD.size - _MANY)
    stream.seek(tail_start)
    tail = stream.read()
    places = list(_ends(tail))
    if len(places) != 1:
        raise NotAZip("not-a-zip", _SEVERAL_ENDS if places else _NO_END)
    _, disk, first_disk, here, count, size, offset, _ = _END_RECORD.unpack_from(tail, places[0])
    end = tail_start + places[0]
    if _MANY in {disk, here, count} or _HUGE in {size, offset}:
        return _find_directory_64(stream, end)
    if disk or first_disk or here != count:
        raise NotAZip("not-a-zip", say("the zip is one of several pieces"))
    return count, size, offset, end


def _ends(tail: bytes) -> Iterator[int]:
    """Where an end record begins that reaches, with its comment, just to the end of the file."""
    place = tail.find(_END)
    while place >= 0:
        if place + _END_RECORD.size <= len(tail):
            comment = _END_RECORD.unpack_from(tail, place)[7]
            if place + _END_RECORD.size + comment == len(tail):
                yield place
        place = tail.find(_END, place + 1)


def _find_directory_64(stream: BinaryIO, end: int) -> tuple[int, int, int, int]:
    """The same of a zip with large sizes, from its second end record."""
    place = end - _LOCATOR_RECORD.size
    if place >= 0:
        stream.seek(place)
        signature, disk, offset_64, disks = _LOCATOR_RECORD.unpack(stream.read(_LOCATOR_RECORD.size))
        if signature == _LOCATOR and not disk and disks == 1 and offset_64 + _END_64_RECORD.size == place:
            stream.seek(offset_64)
            found = _END_64_RECORD.unpack(stream.read(_END_64_RECORD.size))
            signature, _, _, _, disk, first_disk, here, count, size, offset = found
            if signature == _END_64 and not disk and not first_disk and here == count:
                return count, size, offset, offset_64
    raise NotAZip("not-a-zip", say("the zip's second end record, for large sizes, cannot be found"))


def _entries(directory: bytes, count: int) -> Iterator[ZipEntry]:
    place = 0
    for _ in range(count):
        if len(directory) - place < _CENTRAL_RECORD.size or not directory.startswith(_CENTRAL, place):
            raise NotAZip("not-a-zip", say("the zip's list of contents breaks off"))
        found = _CENTRAL_RECORD.unpack_from(directory, place)
        flags, method, crc, packed, size = found[3], found[4], found[7], found[8], found[9]
        name_length, extra_length, comment_length, disk = found[10], found[11], found[12], found[13]
        mode, offset = found[15] >> 16 if found[1] >> 8 == _UNIX else 0, found[16]
        start = place + _CENTRAL_RECORD.size
        raw = directory[start : start + name_length]
        extra = _extra_fields(directory[start + name_length : start + name_length + extra_length])
        place = start + name_length + extra_length + comment_length
        if place > len(directory) or disk not in {0, _MANY}:
            raise NotAZip("not-a-zip", say("the zip's list of contents breaks off"))
        size, packed, offset = _large(extra.get(_ZIP64, b""), size, packed, offset)
        name = _decoded(raw, flags, extra.get(_UNICODE_PATH))
        yield ZipEntry(
            name=name,
            raw=raw,
            flags=flags,
            method=method,
            crc=crc,
            packed=packed,
            size=size,
            offset=offset,
            mode=mode,
        )
    if place != len(directory):
        raise NotAZip("zip-gap", say("the zip's list of contents holds more than its entries"))


def _extra_fields(extra: bytes) -> dict[int, bytes]:
    found: dict[int, bytes] = {}
    place = 0
    while place + 4 <= len(extra):
        kind, length = struct.unpack_from("<2H", extra, place)
        found.setdefault(kind, extra[place + 4 : place + 4 + length])
        place += 4 + length
    return found


def _large(extra: bytes, *values: int) -> tuple[int, ...]:
    """Sizes and offset, with those that need eight bytes taken from their extra field, in its order."""
    wide = iter(struct.unpack(f"<{len(extra) // 8}Q", extra[: len(extra) // 8 * 8]))
    found = [next(wide, None) if value == _HUGE else value for value in values]
    if None in found:
        raise NotAZip("not-a-zip", say("a size of more than 4 GiB is announced and not given"))
    return tuple(value for value in found if value is not None)


def _decoded(raw: bytes, flags: int, unicode_path: bytes | None) -> str:
    """The name: in UTF-8 where that is declared, else in ASCII; in another encoding it is left undecodable."""
    named = raw if unicode_path is None else unicode_path[5:]
    if named != raw:
        return raw.decode("ascii", "surrogateescape") + "\ud800"
    try:
        return raw.decode("utf-8" if flags & _UTF8 else "ascii")
    except UnicodeDecodeError:
        return raw.decode("ascii", "surrogateescape")


def with_start(stream: BinaryIO, entry: ZipEntry) -> tuple[ZipEntry, tuple[PackageFault, ...]]:
    """The entry with the place of its bytes, and where its local header contradicts the directory."""
    stream.seek(entry.offset)
    header = stream.read(_LOCAL_RECORD.size)
    if len(header) < _LOCAL_RECORD.size or not header.startswith(_LOCAL):
        return entry, (PackageFault("zip-header", say("the zip's list of contents leads to no such entry")),)
    _, _, flags, method, _, _, crc, packed, size, name_length, extra_length = _LOCAL_RECORD.unpack(header)
    raw = stream.read(name_length)
    extra = _extra_fields(stream.read(extra_length))
    start = entry.offset + _LOCAL_RECORD.size + name_length + extra_length
    try:
        size, packed = _large(extra.get(_ZIP64, b""), size, packed)
    except NotAZip as error:
        return entry, (error.fault,)
    later = bool(flags & SIZES_LATER)
    told = (raw, flags, method, *((0, 0, 0) if later and not size else (crc, packed, size)))
    listed_sizes = (0, 0, 0) if later and not size else (entry.crc, entry.packed, entry.size)
    listed = (entry.raw, entry.flags, entry.method, *listed_sizes)
    names = ("name", "flags", "method", "checksum", "packed size", "size")
    different = [name for name, one, two in zip(names, told, listed, strict=True) if one != two]
    message = say("the zip contradicts itself on this entry's {names}", names=joined(different, ", "))
    return replace(entry, start=start), (PackageFault("zip-header", message),) if different else ()
