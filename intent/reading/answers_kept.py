"""What was worked out before, kept in the user's cache folder until anything that it rests on changes.

It is a shortcut and nothing else: it may be deleted at any time, and loses nothing. It is used only while every file
that it rests on is the same to the byte, and the program and Python are those that kept it. What is kept is loaded as
Python objects, so it is never looked for anywhere but in a folder that belongs to the user and that nobody else may
write in; what came in a package is neither kept nor looked up.
"""

from __future__ import annotations

import contextlib
import hashlib
import os
import pickle
import stat
import sys
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path
from typing import Any

from intent.diagnostics import Unusable
from intent.reading.atomic_write import write_whole
from intent.version import VERSION

SETTING = "INTENT_CACHE"
"""The environment variable that names another folder, or says `off`."""
MOST = 64
"""So many answers are kept; the oldest go."""
_COARSE = 20_000_000
"""Nanoseconds by which the clock of a file system may be behind the system's."""
_ENDING = ".kept"
_PROGRAM = str(Path(__file__).parents[1])
Manifest = tuple[tuple[str, str], ...]
"""Each file or folder that an answer rests on, with its digest; of a folder, that of the names in it."""


def recall(question: Sequence[str]) -> Any:
    """The answer kept for a question, if what it rests on is still the same; else none."""
    folder = _folder()
    if folder is None:
        return None
    try:
        with (folder / _name(question)).open("rb") as file:
            manifest: Manifest = pickle.load(file)
            # the files are looked at before the answer, which is large, is loaded
            return pickle.load(file) if manifest == _manifest(path for path, _ in manifest) else None
    except (OSError, EOFError, pickle.UnpicklingError, AttributeError, ImportError, TypeError, ValueError):
        return None  # damaged, or kept by another program: it is worked out anew


def keep(question: Sequence[str], answer: object, rests_on: Iterable[Path], *, begun: int) -> None:
    """Keep an answer with the digests of what it rests on; where it cannot be kept, nothing is lost.

    ``begun`` is when work on the answer began, in nanoseconds of the system's clock. Whatever was written since may
    not be what was read, so that nothing is kept then.
    """
    folder = _folder()
    paths = tuple(map(str, rests_on))
    if folder is None or any(_changed(path) >= begun - _COARSE for path in paths):
        return
    manifest = _manifest(paths)
    content = pickle.dumps(manifest, protocol=5) + pickle.dumps(answer, protocol=5)
    with contextlib.suppress(OSError, Unusable):
        write_whole(folder / _name(question), content, replace=True)
        _forget_oldest(folder)


def _folder() -> Path | None:
    """The folder of what is kept, made where there is none; none where it is switched off or not the user's alone."""
    setting = os.environ.get(SETTING, "")
    if setting == "off" or not hasattr(os, "getuid"):
        return None
    home = os.environ.get("XDG_CACHE_HOME") or os.path.join(os.path.expanduser("~"), ".cache")
    folder = Path(setting or os.path.join(home, "intent-record"))
    try:
        folder.mkdir(mode=0o700, parents=True, exist_ok=True)
        found = folder.lstat()
    except OSError:
        return None
    is_own = stat.S_ISDIR(found.st_mode) and found.st_uid == os.getuid() and not found.st_mode & 0o022
    return folder if is_own else None


def _name(question: Sequence[str]) -> str:
    asked = "\0".join([_program(), sys.version, *question])
    return hashlib.sha256(asked.encode("utf-8", "surrogateescape")).hexdigest() + _ENDING


def _program() -> str:
    """What tells this program from any other state of it: when its files were last written, and how long they are."""
    told = hashlib.sha256(VERSION.encode())
    for path, found in sorted(_files(_PROGRAM)):
        told.update(f"{path}\0{found.st_mtime_ns}\0{found.st_size}\n".encode())
    return told.hexdigest()


def _files(folder: str) -> Iterator[tuple[str, os.stat_result]]:
    with os.scandir(folder) as entries:
        for entry in entries:
            if entry.is_dir():
                if entry.name != "__pycache__":
                    yield from _files(entry.path)
            else:
                yield entry.path, entry.stat()


def _changed(path: str) -> int:
    """When a file or folder was last changed, in nanoseconds; the beginning of time where there is none."""
    try:
        return os.stat(path).st_ctime_ns
    except OSError:
        return 0


def _manifest(paths: Iterable[str]) -> Manifest:
    return tuple((path, _digest(path)) for path in paths)


def _digest(path: str) -> str:
    """Of a file its bytes, of a folder the names in it; nothing of what is not there."""
    if os.path.isdir(path):
        return hashlib.sha256(
            "\0".join(sorted(os.listdir(path))).encode("utf-8", "surrogateescape")
        ).hexdigest()
    if not os.path.isfile(path):
        return ""
    with open(path, "rb") as file:
        return hashlib.file_digest(file, "sha256").hexdigest()


def _forget_oldest(folder: Path) -> None:
    kept = sorted(folder.glob(f"*{_ENDING}"), key=lambda path: path.stat().st_mtime, reverse=True)
    for path in kept[MOST:]:
        path.unlink(missing_ok=True)
