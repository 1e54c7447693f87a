"""Files read once each: their digests are taken while they are copied, block by block, on two processors.

`hashlib` lets other threads run while it reads a large block, so that one thread takes digests of a block while the
next is read and written.
"""

from __future__ import annotations

import os
from collections.abc import Callable, Iterable, Iterator, Sequence
from concurrent.futures import Future, ThreadPoolExecutor
from pathlib import Path

from intent.diagnostics import Diagnostic
from intent.language.message import Words, say
from intent.packages.bag import Bag
from intent.packages.file_names import shown_name
from intent.packages.manifest import Digester
from intent.packages.walk import PackageEntry, Stream, fault_at

BLOCK = 1024 * 1024
"""Bytes read at once; digests gain nothing from more, and so many stay in a processor's cache."""
_BUFFERS = 4
_SETTLED = 32 * 1024 * 1024
"""Bytes after which a file that is being written is sent to the disk."""

Opens = Callable[[PackageEntry], Stream]


class UnreadableFile(Exception):
    """A file of the package could not be read; says why."""

    def __init__(self, reason: Words) -> None:
        self.reason = reason
        super().__init__(reason)


class Copier:
    """Copies streams, and takes their digests meanwhile. To be used as a context."""

    def __init__(self) -> None:
        self._buffers = [memoryview(bytearray(BLOCK)) for _ in range(_BUFFERS)]
        self._thread, self._settling = ThreadPoolExecutor(1), ThreadPoolExecutor(1)

    def __enter__(self) -> Copier:
        return self

    def __exit__(self, *_: object) -> None:
        self._thread.shutdown(wait=True, cancel_futures=True)
        self._settling.shutdown(wait=True, cancel_futures=True)

    def copy(
        self, stream: Stream, most: int | None, to: Path | None, algorithms: Iterable[str]
    ) -> tuple[int, dict[str, str]]:
        """How many bytes there were, and their digests; written to a new file, if one is named.

        Raises `UnreadableFile` where the stream cannot be read or has more bytes than ``most``, and ``OSError`` where
        the file cannot be written.
        """
        digester, pending, size = Digester(algorithms), list[Future[None]](), 0
        sink = None if to is None else _Sink(to, self._settling)
        try:
            for block in self._blocks(stream, pending):
                size += len(block)
                if most is not None and size > most:
                    raise UnreadableFile(
                        say("it has more than the {most} bytes that were announced", most=most)
                    )
                pending.append(self._thread.submit(digester.update, block))
                if sink is not None:
                    sink.write(block)
        finally:
            for one in pending:
                one.result()
            if sink is not None:
                sink.close()
        return size, digester.digests()

    def _blocks(self, stream: Stream, pending: Sequence[Future[None]]) -> Iterator[memoryview]:
        """The blocks of a stream, each in a buffer whose digest is no longer being taken."""
        turn = 0
        while True:
            if turn >= _BUFFERS:
                pending[turn - _BUFFERS].result()
            buffer = self._buffers[turn % _BUFFERS]
            filled = _read(stream, buffer)
            if not filled:
                return
            yield buffer[:filled]
            turn += 1


def _read(stream: Stream, buffer: memoryview) -> int:
    try:
        return stream.readinto(buffer) or 0
    except OSError as error:
        raise UnreadableFile(error.strerror or str(error)) from None


class _Sink:
    """A new file, whose bytes are sent to the disk while more are written, so that nobody waits for all at the end."""

    def __init__(self, path: Path, thread: ThreadPoolExecutor) -> None:
        self._stream = path.open("xb", buffering=0)
        self._thread = thread
        self._unsettled = 0
        self._settling: Future[None] | None = None

    def write(self, block: memoryview) -> None:
        done = 0
        while done < len(block):
            done += self._stream.write(block[done:]) or 0
        self._unsettled += done
        if self._unsettled >= _SETTLED and (self._settling is None or self._settling.done()):
            self._settling = self._thread.submit(os.fsync, self._stream.fileno())
            self._unsettled = 0

    def close(self) -> None:
        if self._settling is not None:
            self._settling.result()
        self._stream.close()


def copied(
    entries: Iterable[PackageEntry], opens: Opens, bag: Bag, package: str, into: Path | None
) -> Iterator[Diagnostic]:
    """Read every file once, into a folder if one is given; yields where it is not what the manifests say."""
    with Copier() as copier:
        for entry in entries:
            if not entry.refused:
                yield from _copied(copier, entry=entry, opens=opens, bag=bag, package=package, into=into)


def _copied(
    copier: Copier, entry: PackageEntry, opens: Opens, bag: Bag, package: str, into: Path | None
) -> Iterator[Diagnostic]:
    expected = list(bag.expected(entry.path))
    target = None if into is None else into / entry.path
    if target is not None:
        target.parent.mkdir(parents=True, exist_ok=True)
    try:
        size, found = _read_once(
            copier, entry, opens, target, {manifest.algorithm for manifest, _ in expected}
        )
    except UnreadableFile as error:
        yield fault_at(
            package, entry.path, "unreadable", say("the file cannot be read: {reason}", reason=error.reason)
        )
        return
    if size != entry.size:
        message = say(
            "the file has {size} bytes, where {announced} were announced", size=size, announced=entry.size
        )
        yield fault_at(package, entry.path, "size-differs", message)
    for manifest, digest in expected:
        if found[manifest.algorithm] != digest:
            message = say(
                "the file is not the one that `{manifest}` tells of: its {algorithm} is {found}… and not {digest}…",
                manifest=shown_name(manifest.file),
                algorithm=manifest.algorithm,
                found=found[manifest.algorithm][:12],
                digest=digest[:12],
            )
            yield fault_at(package, entry.path, "digest-differs", message)


def _read_once(
    copier: Copier, entry: PackageEntry, opens: Opens, target: Path | None, algorithms: Iterable[str]
) -> tuple[int, dict[str, str]]:
    try:
        stream = opens(entry)
    except OSError as error:
        raise UnreadableFile(error.strerror or str(error)) from None
    try:
        return copier.copy(stream, entry.size, target, algorithms)
    finally:
        stream.close()
