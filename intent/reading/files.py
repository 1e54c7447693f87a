"""Files read with care: nothing beyond a sensible size, nothing outside the folder that a text may name."""

from __future__ import annotations

import codecs
import os
import stat
from pathlib import Path

from intent.diagnostics import Span, Unusable, refusal, refusal_of_file
from intent.language.message import say

LARGEST = 8 * 1024 * 1024
"""The most bytes that a text or graph may have; a work of hundreds of parts has less than one mebibyte."""


def read_bytes(path: Path, shown: str | None = None) -> bytes:
    """A file's bytes. Raises `Unusable`, saying what to do, where it cannot be read or is too large."""
    name = shown or str(path)
    try:
        found = path.stat()
        if stat.S_ISDIR(found.st_mode):
            raise refusal_of_file(
                "is-a-folder", say("`{file}` is a folder; name the file in it", file=name), name
            )
        if not stat.S_ISREG(found.st_mode):
            raise refusal_of_file("no-file", say("`{file}` is not an ordinary file", file=name), name)
        if found.st_size > LARGEST:
            size = f"{found.st_size / 1024 / 1024:.0f} MB"
            message = say("the file has {size}; the most that is read is 8 MB", size=size)
            raise refusal_of_file("too-large", message, name)
        return path.read_bytes()
    except FileNotFoundError:
        raise refusal_of_file("no-file", say("there is no file `{file}`", file=name), name) from None
    except (OSError, ValueError) as error:
        reason = error.strerror if isinstance(error, OSError) and error.strerror else str(error)
        message = say("`{file}` cannot be read: {reason}", file=name, reason=reason)
        raise refusal_of_file("unreadable", message, name) from None


def as_text(content: bytes, name: str) -> str:
    """The text of UTF-8 bytes. Raises `Unusable` at the first byte that is not."""
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        raise _not_utf_8(content, name, error.start) from None
    if "\0" in text:
        line = text[: text.index("\0")].count("\n") + 1
        message = say("the file holds a NUL byte, so it is no text")
        raise refusal("not-text", message, Span(file=name, line=line))
    return text


def _not_utf_8(content: bytes, name: str, place: int) -> Unusable:
    """That the bytes are in another encoding from a place on, and in which, as far as can be told."""
    if content.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)):
        message = say(
            "the file is not UTF-8; save it as UTF-8 (it looks like UTF-16, which some editors call Unicode)"
        )
        return refusal_of_file("not-utf-8", message, name)
    message = say("the file is not UTF-8; save it as UTF-8 (it looks like Latin-1 or Windows-1252)")
    before = content[:place]
    start = before.rfind(b"\n") + 1
    span = Span(
        file=name,
        line=before.count(b"\n") + 1,
        column=len(before[start:].decode("utf-8", "replace")) + 1,
        text=content[start:].split(b"\n", 1)[0].decode("latin-1").rstrip("\r"),
    )
    return refusal("not-utf-8", message, span)


def within(folder: Path, written: str, span: Span, beside: Path | None = None) -> Path:
    """A path as written in a text, which must lead to a place within a folder. Raises `Unusable`.

    The path is taken from the folder, or from a place in it that is named as ``beside``.
    """
    path = Path(os.path.normpath((beside or folder) / written))
    root = folder.resolve()
    if not path.resolve().is_relative_to(root):
        message = say(
            "`{path}` leads out of the work's folder; keep what belongs to the work in it", path=written
        )
        raise refusal("outside-folder", message, span)
    return path
