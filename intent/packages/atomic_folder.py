"""Something written beside its final place, made safe on the disk, and only then given its name.

Whoever looks, after a crash as well, finds under the final name the whole or nothing. What a program that was killed
leaves behind begins with a full stop and ends in `.partial`; it may be removed.
"""

from __future__ import annotations

import contextlib
import os
import shutil
import tempfile
from collections.abc import Iterator
from pathlib import Path

from intent.diagnostics import Diagnostic, Span, Unusable


def refuse_existing(final: Path) -> None:
    """Raises `Unusable` where something has the final name already, or there is no folder to write in."""
    if os.path.lexists(final):
        message = f"`{final}` is already there; name another, or move it away"
        raise Unusable([Diagnostic(slug="file-exists", message=message, span=Span(file=str(final)))])
    if not final.parent.is_dir():
        message = f"there is no folder `{final.parent}` to write in"
        raise Unusable([Diagnostic(slug="no-folder", message=message, span=Span(file=str(final)))])


@contextlib.contextmanager
def staged_folder(final: Path) -> Iterator[Path]:
    """A folder to fill, which takes its final name when the block ends well, and goes when it does not.

    Raises `Unusable` where it cannot be written.
    """
    refuse_existing(final)
    try:
        place = Path(tempfile.mkdtemp(prefix=f".{final.name[:80]}.", suffix=".partial", dir=final.parent))
        try:
            yield place
            settle(place)
            os.chmod(place, 0o777 & ~_umask())
            refuse_existing(final)
            os.rename(place, final)
            _settle_one(final.parent)
        except BaseException:
            shutil.rmtree(place, ignore_errors=True)
            raise
    except OSError as error:
        raise _unwritable(final, error) from None


@contextlib.contextmanager
def staged_file(final: Path) -> Iterator[Path]:
    """The same for a file; the block is given the path of a file that is empty."""
    refuse_existing(final)
    try:
        prefix = f".{final.name[:80]}."
        handle, name = tempfile.mkstemp(prefix=prefix, suffix=".partial", dir=final.parent)
        os.close(handle)
        place = Path(name)
        try:
            yield place
            _settle_one(place)
            os.chmod(place, 0o666 & ~_umask())
            refuse_existing(final)
            os.rename(place, final)
            _settle_one(final.parent)
        except BaseException:
            with contextlib.suppress(OSError):
                place.unlink()
            raise
    except OSError as error:
        raise _unwritable(final, error) from None


def settle(folder: Path) -> None:
    """Wait until every file and folder within is on the disk."""
    for place, _, names in os.walk(folder):
        for name in names:
            _settle_one(Path(place) / name)
        _settle_one(Path(place))


def _settle_one(path: Path) -> None:
    handle = os.open(path, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask


def _unwritable(final: Path, error: OSError) -> Unusable:
    message = f"`{final}` cannot be written: {error.strerror or error}"
    return Unusable([Diagnostic(slug="unwritable", message=message, span=Span(file=str(final)))])
