"""Files read with care and written whole: nothing half-written, nothing beyond a sensible size."""

from __future__ import annotations

import codecs
import contextlib
import os
import stat
import tempfile
from pathlib import Path

from intent.diagnostics import Diagnostic, Span, Unusable

LARGEST = 8 * 1024 * 1024
"""The most bytes that a text or graph may have; a work of hundreds of parts has less than one mebibyte."""


def read_bytes(path: Path, shown: str | None = None) -> bytes:
    """A file's bytes. Raises `Unusable`, saying what to do, where it cannot be read or is too large."""
    name = shown or str(path)
    try:
        found = path.stat()
        if stat.S_ISDIR(found.st_mode):
            raise _unusable("is-a-folder", f"`{name}` is a folder; name the file in it", name)
        if not stat.S_ISREG(found.st_mode):
            raise _unusable("no-file", f"`{name}` is not an ordinary file", name)
        if found.st_size > LARGEST:
            size = f"{found.st_size / 1024 / 1024:.0f} MB"
            raise _unusable("too-large", f"the file has {size}; the most that is read is 8 MB", name)
        return path.read_bytes()
    except FileNotFoundError:
        raise _unusable("no-file", f"there is no file `{name}`", name) from None
    except (OSError, ValueError) as error:
        reason = error.strerror if isinstance(error, OSError) and error.strerror else str(error)
        raise _unusable("unreadable", f"`{name}` cannot be read: {reason}", name) from None


def as_text(content: bytes, name: str) -> str:
    """The text of UTF-8 bytes. Raises `Unusable` at the first byte that is not."""
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        before = content[: error.start]
        line = before.count(b"\n") + 1
        start = before.rfind(b"\n") + 1
        column = len(before[start:].decode("utf-8", "replace")) + 1
        whole = content[start:].split(b"\n", 1)[0].decode("latin-1").rstrip("\r")
        is_wide = content.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE))
        looks = "UTF-16, which some editors call Unicode" if is_wide else "Latin-1 or Windows-1252"
        message = f"the file is not UTF-8; save it as UTF-8 (it looks like {looks})"
        if is_wide:
            raise Unusable([Diagnostic(slug="not-utf-8", message=message, span=Span(file=name))]) from None
        raise Unusable(
            [
                Diagnostic(
                    slug="not-utf-8",
                    message=message,
                    span=Span(file=name, line=line, column=column, text=whole),
                )
            ]
        ) from None
    if "\0" in text:
        line = text[: text.index("\0")].count("\n") + 1
        raise Unusable(
            [
                Diagnostic(
                    slug="not-text",
                    message="the file holds a NUL byte, so it is no text",
                    span=Span(file=name, line=line),
                )
            ]
        )
    return text


def write_whole(path: Path, content: str | bytes, *, replace: bool = True) -> None:
    """Write a file so that it is there whole or not at all. Raises `Unusable` where it cannot be."""
    try:
        if not replace and path.exists():
            raise _unusable(
                "file-exists", f"`{path}` is already there; name another, or move it away", str(path)
            )
        if path.is_dir():
            raise _unusable("is-a-folder", f"`{path}` is a folder; name a file in it", str(path))
        handle, temporary = tempfile.mkstemp(prefix=f".{path.name}.", dir=path.parent)
        try:
            with os.fdopen(handle, "wb") as stream:
                stream.write(content.encode() if isinstance(content, str) else content)
                stream.flush()
                os.fsync(stream.fileno())
            os.chmod(temporary, 0o666 & ~_umask())
            os.replace(temporary, path)
        except BaseException:
            with contextlib.suppress(OSError):
                os.unlink(temporary)
            raise
    except OSError as error:
        raise _unusable(
            "unwritable", f"`{path}` cannot be written: {error.strerror or error}", str(path)
        ) from None


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask


def within(folder: Path, written: str, span: Span, beside: Path | None = None) -> Path:
    """A path as written in a text, which must lead to a place within a folder. Raises `Unusable`.

    The path is taken from the folder, or from a place in it that is named as ``beside``.
    """
    path = Path(os.path.normpath((beside or folder) / written))
    root = folder.resolve()
    if not path.resolve().is_relative_to(root):
        message = f"`{written}` leads out of the work's folder; keep what belongs to the work in it"
        raise Unusable([Diagnostic(slug="outside-folder", message=message, span=span)])
    return path


def _unusable(slug: str, message: str, name: str) -> Unusable:
    return Unusable([Diagnostic(slug=slug, message=message, span=Span(file=name))])
