"""Packages that must be refused, each made from a sound one by a single act of malice or of carelessness.

Each is made anew by the tests, so that nothing harmful lies in the project.
"""

from __future__ import annotations

import hashlib
import os
import re
import socket
import struct
import warnings
import zipfile
import zlib
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path

Spoils = Callable[[Path], None]
SOURCE = "data/dossier/sources/note.md"
"""A file of the sound package that anything may be done to."""


@dataclass(frozen=True, slots=True)
class Hostile:
    """A way to spoil a package, and the slug of the fault that is to be found."""

    name: str
    slug: str
    spoils: Spoils


def sealed(folder: Path) -> None:
    """Write the manifests anew, so that nothing but the malice itself is wrong."""
    _seal(folder, "manifest-sha512.txt", lambda path: path.startswith("data/"))
    _seal(folder, "tagmanifest-sha512.txt", lambda path: not re.match(r"data/|tagmanifest-", path))


def _seal(folder: Path, name: str, belongs: Callable[[str], bool]) -> None:
    lines = [
        f"{hashlib.sha512((folder / path).read_bytes()).hexdigest()}  {path}\n"
        for path in sorted(files_of(folder))
        if belongs(path)
    ]
    (folder / name).write_text("".join(lines), encoding="utf-8")
    if name.startswith("manifest"):
        payload = [folder / path for path in files_of(folder) if path.startswith("data/")]
        oxum = f"Payload-Oxum: {sum(one.stat().st_size for one in payload)}.{len(payload)}"
        info = folder / "bag-info.txt"
        info.write_text(re.sub("Payload-Oxum: .*", oxum, info.read_text("utf-8")), encoding="utf-8")


def files_of(folder: Path) -> Iterator[str]:
    for place, _, names in os.walk(folder):
        for name in names:
            path = Path(place) / name
            if path.is_file() and not path.is_symlink():
                yield path.relative_to(folder).as_posix()


def _replaced(path: str, old: str, new: str, *, seals: bool = True) -> Spoils:
    def spoils(folder: Path) -> None:
        text = (folder / path).read_bytes().decode()
        assert re.search(old, text), old
        (folder / path).write_bytes(re.sub(old, new, text, count=1).encode())
        if seals:
            _seal(folder, "tagmanifest-sha512.txt", lambda one: not re.match(r"data/|tagmanifest-", one))

    return spoils


def _named(name: str) -> Spoils:
    """Another file in the payload, under a name, listed as it should be."""

    def spoils(folder: Path) -> None:
        path = os.path.join(os.fsencode(folder), b"data", os.fsencode(name))
        os.makedirs(os.path.dirname(path), exist_ok=True)
        with open(path, "wb") as stream:
            stream.write(b"x")

    return spoils


def _instead(make: Callable[[Path], None]) -> Spoils:
    """Something else in the place of a source."""

    def spoils(folder: Path) -> None:
        (folder / SOURCE).unlink()
        make(folder / SOURCE)

    return spoils


def _symbolic(to: str) -> Spoils:
    return _instead(lambda path: path.symlink_to(to))


def _linked_folder(folder: Path) -> None:
    (folder / "data/elsewhere").symlink_to("/etc")


def _hard(folder: Path) -> None:
    os.link(folder / SOURCE, folder / "data/second.md")
    sealed(folder)


def _sparse(path: Path) -> None:
    with path.open("wb") as stream:
        stream.truncate(1 << 40)


def _bound_socket(path: Path) -> None:
    short = Path(path.anchor) / "tmp" / f"{os.getpid()}.socket"
    with socket.socket(socket.AF_UNIX) as bound:
        bound.bind(str(short))
        os.rename(short, path)


def _listed_also(line: str) -> Spoils:
    """One more line in the payload's manifest."""

    def spoils(folder: Path) -> None:
        with (folder / "manifest-sha512.txt").open("a", encoding="utf-8") as stream:
            stream.write(line)
        _seal(folder, "tagmanifest-sha512.txt", lambda one: not re.match(r"data/|tagmanifest-", one))

    return spoils


def _written(path: str, content: bytes, *, seals: bool = True) -> Spoils:
    def spoils(folder: Path) -> None:
        (folder / path).parent.mkdir(parents=True, exist_ok=True)
        (folder / path).write_bytes(content)
        if seals:
            sealed(folder)

    return spoils


def _written_tag(path: str, content: bytes) -> Spoils:
    """A tag file as given, with a tag manifest that vouches for it."""

    def spoils(folder: Path) -> None:
        (folder / path).write_bytes(content)
        _seal(folder, "tagmanifest-sha512.txt", lambda one: not re.match(r"data/|tagmanifest-", one))

    return spoils


def _removed(path: str) -> Spoils:
    def spoils(folder: Path) -> None:
        (folder / path).unlink()
        if path != "tagmanifest-sha512.txt":
            _seal(folder, "tagmanifest-sha512.txt", lambda one: not re.match(r"data/|tagmanifest-", one))

    return spoils


def _without(path: str) -> Spoils:
    """A file left out, and not listed either."""

    def spoils(folder: Path) -> None:
        (folder / path).unlink()
        sealed(folder)

    return spoils


def _deep(folder: Path) -> None:
    place = folder / "data" / "/".join(["d"] * 20)
    place.mkdir(parents=True)
    (place / "file.txt").write_text("x", encoding="utf-8")


def _numerous(folder: Path) -> None:
    (folder / "data/many").mkdir()
    for number in range(300):
        (folder / f"data/many/{number}.txt").write_bytes(b"")


def _hollow(folder: Path) -> None:
    """Folders without number, and nothing in them."""
    for one in range(20):
        for two in range(20):
            (folder / f"data/{one}/{two}").mkdir(parents=True)


def _nested_bomb(folder: Path) -> None:
    with zipfile.ZipFile(folder / "data/inner.zip", "w", zipfile.ZIP_DEFLATED) as inner:
        inner.writestr("zeros", bytes(16 << 20))
    sealed(folder)


def _hundredfold(folder: Path) -> None:
    (folder / "data/dossier/work.md").write_text("- [" * 5000 + "\n", encoding="utf-8")
    sealed(folder)


_FOREIGN = "data/dossier/../../../elsewhere.txt"
_DIGEST = "0" * 128
IN_FOLDERS = (
    # What is no ordinary file: nothing of it is opened
    Hostile("a link to a file outside", "symbolic-link", _symbolic("/etc/passwd")),
    Hostile("a link to a file inside", "symbolic-link", _symbolic("../work.md")),
    Hostile("a link that leads nowhere", "symbolic-link", _symbolic("nowhere")),
    Hostile("a link to itself", "symbolic-link", _symbolic("note.md")),
    Hostile("a linked folder", "symbolic-link", _linked_folder),
    Hostile("a pipe", "special-file", _instead(os.mkfifo)),
    Hostile("a socket", "special-file", _instead(_bound_socket)),
    Hostile("a file of two names", "hard-link", _hard),
    Hostile("a tebibyte of nothing", "sparse-file", _instead(_sparse)),
    # Names
    Hostile("a name with a line end", "control-character", _named("a\nb.txt")),
    Hostile("a name with an escape", "control-character", _named("\x1b[2J.txt")),
    Hostile("a name with a delete", "control-character", _named("a\x7fb.txt")),
    Hostile("a name turned round", "hidden-character", _named("report\u202efdp.exe")),
    Hostile("a name not in UTF-8", "name-not-utf-8", _named(os.fsdecode(b"\xff\xfe.txt"))),
    Hostile("a name with a backslash", "backslash-name", _named("..\\..\\evil.txt")),
    Hostile("a name of a device", "reserved-name", _named("NUL.txt")),
    Hostile("a name of a port", "reserved-name", _named("com1")),
    Hostile("a name with a colon", "unportable-name", _named("a:stream")),
    Hostile("a name ending in a full stop", "unportable-name", _named("work.md.")),
    Hostile("a path too long", "long-name", _named("/".join(["n" * 60] * 5))),
    Hostile("names that differ in case", "names-collide", _written("data/dossier/WORK.md", b"x")),
    Hostile("folders that differ in case", "names-collide", _written("data/Dossier/other.md", b"x")),
    Hostile(
        "names that differ in normalisation",
        "names-collide",
        lambda folder: (
            _written("data/\u00e9.md", b"x")(folder),
            _written("data/e\u0301.md", b"y")(folder),
            None,
        )[2],
    ),
    Hostile("folders too deep", "too-deep", _deep),
    Hostile("files too many", "too-many-files", _numerous),
    Hostile("empty folders too many", "too-many-files", _hollow),
    # Declaration and metadata: RFC 8493, sections 2.1.1 and 2.2.2
    Hostile("no declaration", "no-declaration", _removed("bagit.txt")),
    Hostile("another version", "bag-version", _replaced("bagit.txt", "1.0", "2.0")),
    Hostile("another encoding", "bag-encoding", _replaced("bagit.txt", "UTF-8", "UTF-7")),
    Hostile("an encoding that there is not", "bag-encoding", _replaced("bagit.txt", "UTF-8", "zlib_codec")),
    Hostile("a declaration of three lines", "bag-declaration", _replaced("bagit.txt", r"\Z", "More: here\n")),
    Hostile("a declaration not in UTF-8", "not-utf-8", _written_tag("bagit.txt", b"\xff\xfeB\0")),
    Hostile("a declaration with a byte order mark", "bag-version", _replaced("bagit.txt", r"\A", "\ufeff")),
    Hostile("metadata without labels", "bad-bag-info", _replaced("bag-info.txt", r"\A", "no label here\n")),
    Hostile("a malformed Oxum", "bad-oxum", _replaced("bag-info.txt", r"Oxum: \S+", "Oxum: many.files")),
    Hostile("an Oxum without files", "bad-oxum", _replaced("bag-info.txt", r"Oxum: \S+", "Oxum: 12")),
    Hostile("an endless Oxum", "bad-oxum", _replaced("bag-info.txt", r"Oxum: \S+", f"Oxum: {'9' * 5000}.1")),
    Hostile("an Oxum that is wrong", "oxum-differs", _replaced("bag-info.txt", r"Oxum: \S+", "Oxum: 1.1")),
    Hostile("two Oxums", "bad-oxum", _replaced("bag-info.txt", r"(Payload-Oxum: .*\n)", r"\1\1")),
    # Manifests: sections 2.1.3, 2.2.1, 2.4 and 3
    Hostile("no payload manifest", "no-payload-manifest", _removed("manifest-sha512.txt")),
    Hostile("no tag manifest", "no-tag-manifest", _removed("tagmanifest-sha512.txt")),
    Hostile("a file that is not listed", "not-listed", _written("data/more.txt", b"x", seals=False)),
    Hostile("a tag file that is not listed", "not-listed", _written("more.txt", b"x", seals=False)),
    Hostile("a listed file that is missing", "file-missing", _removed(SOURCE)),
    Hostile("a second manifest that is not complete", "not-listed", _written_tag("manifest-md5.txt", b"")),
    Hostile("an unknown algorithm", "unknown-algorithm", _written_tag("manifest-crc32.txt", b"0  data/x\n")),
    Hostile("a digest too short", "bad-manifest", _replaced("manifest-sha512.txt", "^[0-9a-f]{8}", "")),
    Hostile("a line without a path", "bad-manifest", _listed_also(f"{_DIGEST}\n")),
    Hostile("a path listed twice", "listed-twice", _replaced("manifest-sha512.txt", r"(.*\n)", r"\1\1")),
    Hostile("a manifest that climbs", "climbing-name", _listed_also(f"{_DIGEST}  {_FOREIGN}\n")),
    Hostile("a manifest with a root", "absolute-name", _listed_also(f"{_DIGEST}  /etc/passwd\n")),
    Hostile(
        "a manifest with an encoded line end", "control-character", _listed_also(f"{_DIGEST}  data/a%0Ab\n")
    ),
    Hostile("a payload manifest of tags", "wrong-manifest", _listed_also(f"{_DIGEST}  bagit.txt\n")),
    Hostile("something to fetch", "fetch-item", _written_tag("fetch.txt", b"file:///etc/passwd 10 data/x\n")),
    Hostile("a payload changed", "digest-differs", _written(SOURCE, b"other words\n", seals=False)),
    Hostile(
        "a tag file changed", "digest-differs", _replaced("bag-info.txt", "Hollins", "Hollow", seals=False)
    ),
    Hostile(
        "a manifest changed", "digest-differs", _replaced("manifest-sha512.txt", "^.{4}", "0000", seals=False)
    ),
    # What the package holds
    Hostile("a zip in it that would burst", "zip-bomb", _nested_bomb),
    Hostile("no work", "no-work", _without("data/dossier/work.md")),
    Hostile("a work that is no text", "not-utf-8", _written("data/dossier/work.md", b"\xff\xff")),
    Hostile("a work that is nothing", "empty-file", _written("data/dossier/work.md", b"")),
    Hostile("a text nested without end", "no-title", _hundredfold),
    Hostile(
        "a graph that says more",
        "text-and-graph-differ",
        _written("data/graph/work.ttl", b"<urn:a> a <urn:b> .\n"),
    ),
    Hostile("a graph that is none", "bad-turtle", _written("data/graph/work.ttl", b"<urn:a")),
    Hostile(
        "a graph left out",
        "no-file",
        _without("data/graph/work.ttl"),
    ),
    Hostile("verdicts that are none", "bad-verdicts", _written("data/report/report.json", b"[" * 100_000)),
    Hostile(
        "verdicts of another form", "bad-verdicts", _written("data/report/report.json", b'{"verdicts": [1]}')
    ),
    Hostile(
        "two installations",
        "several-installations",
        _written("data/dossier/installations/two.md", b"# Two\n"),
    ),
)


def zipped(folder: Path, to: Path, *, root: str = "package", method: int = zipfile.ZIP_STORED) -> None:
    """A sound zip of a folder."""
    with zipfile.ZipFile(to, "w", method) as archive:
        for path in sorted(files_of(folder)):
            archive.writestr(zipfile.ZipInfo(f"{root}/{path}"), (folder / path).read_bytes(), method)


def _with(
    name: str, content: bytes = b"x", *, mode: int = 0o100644, method: int = zipfile.ZIP_STORED
) -> Spoils:
    """One more entry in a zip."""

    def spoils(path: Path) -> None:
        info = zipfile.ZipInfo("placeholder")
        info.filename = name
        info.create_system, info.external_attr = 3, mode << 16
        with zipfile.ZipFile(path, "a") as archive, warnings.catch_warnings():
            warnings.simplefilter("ignore")  # of a name that is there already, which is meant
            archive.writestr(info, content, method)

    return spoils


def _patched(find: Callable[[bytes], int], change: Callable[[bytearray, int], None]) -> Spoils:
    """Bytes of a zip changed where something stands."""

    def spoils(path: Path) -> None:
        content = bytearray(path.read_bytes())
        change(content, find(bytes(content)))
        path.write_bytes(content)

    return spoils


def _put(shift: int, form: str, value: int) -> Callable[[bytearray, int], None]:
    return lambda content, place: struct.pack_into(form, content, place + shift, value)


def _local(content: bytes) -> int:
    return content.index(b"PK\x03\x04")


def _central(content: bytes) -> int:
    return content.index(b"PK\x01\x02")


def _both(*spoiling: Spoils) -> Spoils:
    def spoils(path: Path) -> None:
        for one in spoiling:
            one(path)

    return spoils


def _shared(path: Path) -> None:
    """A second entry in the list of contents that leads into the middle of another."""
    content = path.read_bytes()
    end = content.rindex(b"PK\x05\x06")
    start = struct.unpack_from("<L", content, end + 16)[0]
    name_length = struct.unpack_from("<H", content, start + 28)[0]
    entry = bytearray(content[start : start + 46 + name_length])
    entry[-1:] = b"!"
    size, count = (
        struct.unpack_from("<L", content, end + 12)[0],
        struct.unpack_from("<H", content, end + 10)[0],
    )
    tail = bytearray(content[end:])
    struct.pack_into("<HHL", tail, 8, count + 1, count + 1, size + len(entry))
    path.write_bytes(content[:end] + entry + tail)


def _in_front(path: Path) -> None:
    """Bytes in front of a zip, with the places moved to match, as in an archive that unpacks itself."""
    content = path.read_bytes()
    with zipfile.ZipFile(path) as archive:
        entries = [(info.filename, archive.read(info)) for info in archive.infolist()]
    with path.open("wb") as stream:
        stream.write(b"#!/bin/sh\nexit 0\n")
        with zipfile.ZipFile(stream, "w") as archive:
            for name, data in entries:
                archive.writestr(zipfile.ZipInfo(name), data)
    assert content


def _longer(path: Path) -> None:
    """An entry whose compressed bytes become more than either header says."""
    body = zlib.compress(bytes(1 << 22), 9)[2:-4]
    name = b"package/data/longer.bin"
    local = struct.pack("<4s5H3L2H", b"PK\x03\x04", 20, 0, 8, 0, 33, 0, len(body), 1000, len(name), 0)
    content = path.read_bytes()
    end = content.rindex(b"PK\x05\x06")
    start, size = (
        struct.unpack_from("<L", content, end + 16)[0],
        struct.unpack_from("<L", content, end + 12)[0],
    )
    count = struct.unpack_from("<H", content, end + 10)[0]
    central = struct.pack(
        "<4s6H3L5H2L", b"PK\x01\x02", 20, 20, 0, 8, 0, 33, 0, len(body), 1000, len(name), 0, 0, 0, 0, 0, start
    )
    tail = bytearray(content[end:])
    place = start + len(local) + len(name) + len(body)
    struct.pack_into("<HHLL", tail, 8, count + 1, count + 1, size + len(central) + len(name), place)
    path.write_bytes(content[:start] + local + name + body + content[start:end] + central + name + tail)


IN_ZIPS = (
    Hostile("no zip", "not-a-zip", lambda path: (path.write_bytes(b"PK\x03\x04 and so on"), None)[1]),
    Hostile("an empty file", "not-a-zip", lambda path: (path.write_bytes(b""), None)[1]),
    Hostile("a zip cut off", "not-a-zip", lambda path: (path.write_bytes(path.read_bytes()[:-30]), None)[1]),
    Hostile(
        "bytes after the end", "not-a-zip", lambda path: (path.write_bytes(path.read_bytes() + b"x"), None)[1]
    ),
    Hostile("bytes in front", "zip-gap", _in_front),
    Hostile("an entry that climbs", "climbing-name", _with("package/../../escaped.txt")),
    Hostile("an entry with a root", "absolute-name", _with("/etc/escaped.txt")),
    Hostile("an entry with a drive", "absolute-name", _with("C:/escaped.txt")),
    Hostile("an entry with backslashes", "backslash-name", _with("package\\..\\escaped.txt")),
    Hostile("an entry with a control character", "control-character", _with("package/data/a\x07.txt")),
    Hostile("a symbolic link", "symbolic-link", _with("package/data/link", b"/etc/passwd", mode=0o120777)),
    Hostile("a pipe", "special-file", _with("package/data/pipe", b"", mode=0o010644)),
    Hostile("a device", "special-file", _with("package/data/disk", b"", mode=0o060644)),
    Hostile(
        "an entry twice", "zip-duplicate", _both(_with("package/data/a", b"1"), _with("package/data/a", b"2"))
    ),
    Hostile(
        "entries that differ in case",
        "names-collide",
        _both(_with("package/data/a"), _with("package/data/A")),
    ),
    Hostile(
        "a file that is a folder too",
        "names-collide",
        _both(_with("package/data/a"), _with("package/data/a/b")),
    ),
    Hostile("a second folder at the top", "zip-roots", _with("other/data/a")),
    Hostile("a file at the top", "zip-roots", _with("loose.txt")),
    Hostile(
        "something encrypted",
        "encrypted",
        _both(*(_patched(find, _put(shift, "<H", 1)) for find, shift in ((_local, 6), (_central, 8)))),
    ),
    Hostile(
        "a method that is not read",
        "zip-method",
        _both(*(_patched(find, _put(shift, "<H", 14)) for find, shift in ((_local, 8), (_central, 10)))),
    ),
    Hostile("headers that differ in size", "zip-header", _patched(_local, _put(22, "<L", 7))),
    Hostile("headers that differ in checksum", "zip-header", _patched(_local, _put(14, "<L", 7))),
    Hostile("headers that differ in name", "zip-header", _patched(_local, _put(30, "<B", ord("q")))),
    Hostile("headers that differ in method", "zip-header", _patched(_local, _put(8, "<H", 8))),
    Hostile("an entry that leads nowhere", "zip-header", _patched(_central, _put(42, "<L", 5))),
    Hostile("entries that share bytes", "zip-overlap", _shared),
    Hostile("stored with two sizes", "zip-sizes", _patched(_central, _put(24, "<L", 1 << 30))),
    Hostile("a bomb", "zip-bomb", _with("package/data/zeros", bytes(32 << 20), method=zipfile.ZIP_DEFLATED)),
    Hostile("more than the zip says", "unreadable", _longer),
    Hostile(
        "a name in an encoding not declared",
        "name-not-utf-8",
        _both(
            _with("package/data/caf\u00e9"),
            _patched(lambda content: content.rindex(b"PK\x01\x02"), _put(8, "<H", 0)),
        ),
    ),
    Hostile(
        "a size of four gibibytes not given", "not-a-zip", _patched(_central, _put(24, "<L", 0xFFFFFFFF))
    ),
    Hostile(
        "a piece of several", "not-a-zip", _patched(lambda one: one.rindex(b"PK\x05\x06"), _put(4, "<H", 1))
    ),
    Hostile(
        "a count that is wrong",
        "zip-gap",
        _patched(lambda one: one.rindex(b"PK\x05\x06"), _put(8, "<L", 0x10001)),
    ),
)
