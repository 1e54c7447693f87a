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

from intent.diagnostics import Diagnostic, Span
from intent.language.message import Words, say

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
class PackageFault:
    """What is wrong with a name or a file of a package, wherever it was found."""

    slug: str
    message: Words

    def at(self, span: Span) -> Diagnostic:
        """The same as a finding."""
        return Diagnostic(slug=self.slug, message=self.message, span=span)


def shown_name(name: str) -> str:
    """A name as it can be printed: what is no printable character is written as a number."""
    return "".join(sign if sign.isprintable() else f"\\u{ord(sign):04x}" for sign in name)


def name_faults(path: str) -> Iterator[PackageFault]:
    """What keeps a path, with `/` between its steps, from being a safe name within a package."""
    shown = shown_name(path)
    if path.startswith(("/", "\\")) or re.match(r"[A-Za-z]:", path):
        yield PackageFault(
            "absolute-name",
            say("`{path}` starts at a root; names in a package start at its folder", path=shown),
        )
    if "\\" in path:
        yield PackageFault(
            "backslash-name",
            say("`{path}` has a backslash, which some systems take for a folder's end", path=shown),
        )
    if len(path) > LONGEST_PATH:
        yield PackageFault(
            "long-name",
            say(
                "`{path}…` has {length} characters; the most is {most}",
                path=shown[:60],
                length=len(path),
                most=LONGEST_PATH,
            ),
        )
    for step in path.removeprefix("/").split("/"):
        yield from _step_faults(step, shown)


def _step_faults(step: str, shown: str) -> Iterator[PackageFault]:
    if step in {"", ".", ".."}:
        yield PackageFault(
            "climbing-name",
            say("`{path}` has a step `{step}`, which could lead out of the package", path=shown, step=step),
        )
        return
    if any("\ud800" <= sign <= "\udfff" for sign in step):
        yield PackageFault("name-not-utf-8", say("`{path}` is a name that is not in UTF-8", path=shown))
    elif any(unicodedata.category(sign) == "Cc" for sign in step):
        yield PackageFault(
            "control-character", say("`{path}` has a control character in its name", path=shown)
        )
    if set(step) & (_TURNING | _ISOLATING):
        yield PackageFault(
            "hidden-character",
            say("`{path}` has a character that hides or turns round part of its name", path=shown),
        )
    if _RESERVED.match(step):
        yield PackageFault(
            "reserved-name", say("`{path}` is a name that Windows keeps for a device", path=shown)
        )
    if set(step) & _NOT_ON_WINDOWS:
        yield PackageFault(
            "unportable-name",
            say('`{path}` has one of < > : " | ? * in its name, which Windows cannot hold', path=shown),
        )
    if step.endswith((".", " ")):
        yield PackageFault(
            "unportable-name",
            say("`{path}` has a name that ends in a full stop or space, which Windows drops", path=shown),
        )
    if len(step.encode("utf-8", "surrogatepass")) > LONGEST_STEP:
        yield PackageFault(
            "long-name",
            say("`{path}…` has a name of more than {most} bytes", path=shown[:60], most=LONGEST_STEP),
        )


def meeting_key(name: str) -> str:
    """Two names with one key are one file on a system that minds neither case nor normalisation."""
    return unicodedata.normalize("NFC", unicodedata.normalize("NFC", name).casefold())


def collisions(paths: Iterable[str]) -> Iterator[tuple[str, PackageFault]]:
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
                yield here, PackageFault("names-collide", _meeting(here, other))
        files[meeting_key(path)] = path
    for path in files.values():
        steps = path.split("/")
        for length in range(1, len(steps)):
            file = files.get(meeting_key("/".join(steps[:length])))
            if file is not None and file not in told:
                told.add(file)
                yield (
                    file,
                    PackageFault(
                        "names-collide",
                        say("`{path}` is a file, and a folder elsewhere", path=shown_name(file)),
                    ),
                )


def _meeting(path: str, other: str) -> Words:
    names = {"path": shown_name(path), "other": shown_name(other)}
    if unicodedata.normalize("NFC", path) == unicodedata.normalize("NFC", other):
        return say(
            "`{path}` differs from `{other}` only in how its accents are encoded; some systems hold but one",
            **names,
        )
    if path.casefold() == other.casefold():
        return say(
            "`{path}` differs from `{other}` only in the spelling of its characters; some systems hold but one",
            **names,
        )
    return say("`{path}` differs from `{other}` only in capital letters; some systems hold but one", **names)
