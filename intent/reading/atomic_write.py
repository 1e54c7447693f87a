"""Files and folders written beside their final place, made safe on the disk, and only then given their name.

Whoever looks, after a crash as well, finds under the final name the whole or nothing. What a program that was killed
leaves behind begins with a full stop and ends in `.partial`; it may be removed.
"""

from __future__ import annotations

import contextlib
import os
import shutil
import stat
import tempfile
from collections.abc import Iterator
from pathlib import Path

from intent.diagnostics import refusal_of_file
from intent.language.message import say

_LONGEST = 80
"""Characters of the final name that the passing one repeats, so that it stays within what file systems hold."""


def write_whole(path: Path, content: str | bytes, *, replace: bool = False) -> None:
    """Write a file so that it is there whole or not at all. Raises `Unusable` where it cannot be.

    What is there already is written over only where ``replace`` says so: it keeps its permissions, its owner and its
    ends of lines, and a link goes on to lead to it. What is no file, a pipe or a device, is written into.
    """
    if path.is_dir():
        raise refusal_of_file(
            "is-a-folder", say("`{path}` is a folder; name a file in it", path=str(path)), path
        )
    if is_passage(path):
        _pass_on(path, content)
        return
    if not replace:
        refuse_taken(path)
    final = Path(os.path.realpath(path))
    _refuse_protected(final)
    written = _like_before(final, content) if isinstance(content, str) else content
    with _staged_file(final, replace) as place:
        place.write_bytes(written)


def is_passage(path: Path) -> bool:
    """Whether what is there passes on what is written into it, as a pipe or a device does, and keeps nothing."""
    return path.exists() and not path.is_file() and not path.is_dir()


def _pass_on(path: Path, content: str | bytes) -> None:
    with _refusing_unwritable(path), path.open("wb") as stream:
        stream.write(content.encode() if isinstance(content, str) else content)


def _like_before(final: Path, text: str) -> bytes:
    """A text with the ends of lines of the one in whose place it comes, where that has those of Windows alone."""
    with contextlib.suppress(OSError):
        before = final.read_bytes()
        if 0 < before.count(b"\r\n") == before.count(b"\n"):
            return text.replace("\r\n", "\n").replace("\n", "\r\n").encode()
    return text.encode()


def _refuse_protected(final: Path) -> None:
    """A file that nobody may write is not to be replaced, though the folder would let one."""
    if final.exists() and not final.stat().st_mode & 0o222:
        message = say(
            "`{path}` is write-protected; name another, or take the protection away", path=str(final)
        )
        raise refusal_of_file("write-protected", message, final)


@contextlib.contextmanager
def staged_file(final: Path) -> Iterator[Path]:
    """An empty file to fill, which takes its final name when the block ends well, and goes when it does not.

    Raises `Unusable` where something has that name already, or it cannot be written.
    """
    refuse_existing(final)
    with _staged_file(final, False) as place:
        yield place


@contextlib.contextmanager
def staged_folder(final: Path) -> Iterator[Path]:
    """The same for a folder."""
    refuse_existing(final)
    with _refusing_unwritable(final):
        place = Path(tempfile.mkdtemp(prefix=_prefix(final), suffix=".partial", dir=final.parent))
        try:
            yield place
            _settle_all(place)
            _give_name(place, final, mode=0o777, replace=False)
        except BaseException:
            shutil.rmtree(place, ignore_errors=True)
            raise


@contextlib.contextmanager
def passing_folder(final: Path) -> Iterator[Path]:
    """A folder beside the final place, to be used while that is made, and gone afterwards."""
    with tempfile.TemporaryDirectory(".partial", _prefix(final), final.parent) as name:
        yield Path(name)


def refuse_existing(final: Path) -> None:
    """Raises `Unusable` where something has the final name already, or there is no folder to write in."""
    if os.path.lexists(final):
        message = say("`{path}` is already there; name another, or move it away", path=str(final))
        raise refusal_of_file("file-exists", message, final)
    if not final.parent.is_dir():
        message = say("there is no folder `{folder}` to write in", folder=str(final.parent))
        raise refusal_of_file("no-folder", message, final)


def refuse_taken(path: Path) -> None:
    """Raises `Unusable` where a file is there already; not for a folder, in which one may be written."""
    if os.path.lexists(path) and not path.is_dir() and not is_passage(path):
        message = say(
            "`{path}` is already there; name another, or add --replace to write over it", path=str(path)
        )
        raise refusal_of_file("file-exists", message, path)


@contextlib.contextmanager
def _staged_file(final: Path, replace: bool) -> Iterator[Path]:
    with _refusing_unwritable(final):
        handle, name = tempfile.mkstemp(prefix=_prefix(final), suffix=".partial", dir=final.parent)
        os.close(handle)
        place = Path(name)
        try:
            yield place
            _settle(place)
            _give_name(place, final, mode=0o666, replace=replace)
        except BaseException:
            with contextlib.suppress(OSError):
                place.unlink()
            raise


def _prefix(final: Path) -> str:
    return f".{final.name[:_LONGEST]}."


def _give_name(place: Path, final: Path, *, mode: int, replace: bool) -> None:
    os.chmod(place, mode & ~_umask())
    if not replace:
        # asked again as late as can be: the block may have taken long, and renaming replaces without a word
        refuse_existing(final)
    elif final.exists():
        _be_as(place, final.stat())
    os.replace(place, final)
    _settle_names(final.parent)


def _be_as(place: Path, before: os.stat_result) -> None:
    """Give a file the owner, group and permissions of the one in whose place it comes, where the system lets one."""
    with contextlib.suppress(OSError):
        os.chown(place, before.st_uid, before.st_gid)
    os.chmod(place, stat.S_IMODE(before.st_mode))


def _settle_all(folder: Path) -> None:
    """Wait until every file and folder within is on the disk."""
    for place, _, names in os.walk(folder):
        for name in names:
            _settle(Path(place) / name)
        _settle_names(Path(place))


def _settle_names(folder: Path) -> None:
    """Wait until a folder's list of names is on the disk, where the system lets one: a rename alone may be lost."""
    with contextlib.suppress(OSError):
        _settle(folder)


def _settle(path: Path) -> None:
    handle = os.open(path, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def _umask() -> int:
    """The permissions that the user withholds; the system tells them only in exchange for others."""
    mask = os.umask(0)
    os.umask(mask)
    return mask


@contextlib.contextmanager
def _refusing_unwritable(final: Path) -> Iterator[None]:
    try:
        yield
    except OSError as error:
        reason = error.strerror or str(error)
        message = say("`{path}` cannot be written: {reason}", path=str(final), reason=reason)
        raise refusal_of_file("unwritable", message, final) from None
