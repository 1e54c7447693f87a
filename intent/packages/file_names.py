"""Names of files that every system can hold, and names that would meet on some of them.

Sources: RFC 8493, sections 5 (paths that lead out of the bag) and 6 (names on different systems), subsections from
memory; Unicode Standard Annex 15 for normalisation. Reserved names of Windows: Microsoft, "Naming Files, Paths, and
Namespaces", from memory.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

_RESERVED = re.compile(
    r"(?:con|prn|aux|nul|conin\$|conout\$|(?:com|lpt)[0-9¹²³])(?:\s*\..*)?$", re.IGNORECASE
)
_NOT_ON_WINDOWS = frozenset('<>:"|?*')
_TURNING = frozenset("\u200e\u200f\u061c\u2028\u2029\ufeff" + "".join(map(chr, range(0x202A, 0x202F))))
_ISOLATING = frozenset(map(chr, range(0x2066, 0x206A)))
LONGEST_STEP = 255
"""Bytes of UTF-8 that one step of a path may have: the limit of common file systems."""
LONGEST_PATH = 240
"""Characters that a path may have within its package, so that Windows can hold it in a folder (260 in all)."""


@dataclass(frozen=True, slots=True)
class Fault:
    """What is wrong with a name."""

    slug: str
    message: str


def shown_name(name: str) -> str:
    """A name as it can be printed: what is no printable character is written as a number."""
    return "".join(sign if sign.isprintable() else f"\\u{ord(sign):04x}" for sign in name)


def name_faults(path: str) -> Iterator[Fault]:
    """What keeps a path, with `/` between its steps, from being a safe name within a package."""
    shown = shown_name(path)
    if path.startswith(("/", "\\")) or re.match(r"[A-Za-z]:", path):
        yield Fault("absolute-name", f"`{shown}` starts at a root; names in a package start at its folder")
    if "\\" in path:
        yield Fault(
            "backslash-name", f"`{shown}` has a backslash, which some systems take for a folder's end"
        )
    if len(path) > LONGEST_PATH:
        yield Fault("long-name", f"`{shown[:60]}…` has {len(path)} characters; the most is {LONGEST_PATH}")
    for step in path.removeprefix("/").split("/"):
        yield from _step_faults(step, shown)


def _step_faults(step: str, shown: str) -> Iterator[Fault]:
    if step in {"", ".", ".."}:
        yield Fault("climbing-name", f"`{shown}` has a step `{step}`, which could lead out of the package")
        return
    if any("\ud800" <= sign <= "\udfff" for sign in step):
        yield Fault("name-not-utf-8", f"`{shown}` is a name that is not in UTF-8")
    elif any(unicodedata.category(sign) == "Cc" for sign in step):
        yield Fault("control-character", f"`{shown}` has a control character in its name")
    if set(step) & (_TURNING | _ISOLATING):
        yield Fault(
            "hidden-character", f"`{shown}` has a character that hides or turns round part of its name"
        )
    if _RESERVED.match(step):
        yield Fault("reserved-name", f"`{shown}` is a name that Windows keeps for a device")
    if set(step) & _NOT_ON_WINDOWS:
        yield Fault(
            "unportable-name", f'`{shown}` has one of < > : " | ? * in its name, which Windows cannot hold'
        )
    if step.endswith((".", " ")):
        yield Fault(
            "unportable-name", f"`{shown}` has a name that ends in a full stop or space, which Windows drops"
        )
    if len(step.encode("utf-8", "surrogatepass")) > LONGEST_STEP:
        yield Fault("long-name", f"`{shown[:60]}…` has a name of more than {LONGEST_STEP} bytes")


def meeting_key(name: str) -> str:
    """Two names with one key are one file on a system that minds neither case nor normalisation."""
    return unicodedata.normalize("NFC", unicodedata.normalize("NFC", name).casefold())


def collisions(paths: Iterable[str]) -> Iterator[tuple[str, Fault]]:
    """The paths that would meet another on some system, each with what it meets; folders on the way count too."""
    first: dict[str, str] = {}
    files: dict[str, str] = {}
    told: set[str] = set()
    for path in paths:
        steps = path.split("/")
        for length in range(1, len(steps) + 1):
            here = "/".join(steps[:length])
            other = first.setdefault(meeting_key(here), here)
            if other != here and here not in told:
                told.add(here)
                yield here, Fault("names-collide", _meeting(here, other))
        files[meeting_key(path)] = path
    for path in files.values():
        steps = path.split("/")
        for length in range(1, len(steps)):
            file = files.get(meeting_key("/".join(steps[:length])))
            if file is not None and file not in told:
                told.add(file)
                yield file, Fault("names-collide", f"`{shown_name(file)}` is a file, and a folder elsewhere")


def _meeting(path: str, other: str) -> str:
    alike = "the spelling of its characters" if path.casefold() == other.casefold() else "capital letters"
    if unicodedata.normalize("NFC", path) == unicodedata.normalize("NFC", other):
        alike = "how its accents are encoded"
    return (
        f"`{shown_name(path)}` differs from `{shown_name(other)}` only in {alike}; some systems hold but one"
    )
