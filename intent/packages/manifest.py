"""Manifests of a bag: which file has which digest. RFC 8493, sections 2.1.3, 2.2.1 and 2.4."""

from __future__ import annotations

import hashlib
import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from intent.diagnostics import Diagnostic, Span
from intent.language.message import say
from intent.packages.file_names import name_faults, shown_name

SHA512 = "sha512"
ALGORITHMS = {"md5": 32, "sha1": 40, "sha224": 56, "sha256": 64, "sha384": 96, SHA512: 128}
"""The algorithms that are known, by the number of hexadecimal digits; RFC 8493, section 2.4."""
STRONG = frozenset({"sha256", "sha384", SHA512})
FILE_NAME = re.compile(r"(?P<tag>tag)?manifest-(?P<algorithm>[^/]+)\.txt$")
PAYLOAD = "data/"
_LINE = re.compile(r"(?P<digest>[0-9A-Fa-f]+)[ \t]+(?P<path>.*\S)\s*$")
_ENCODED = {"%0A": "\n", "%0D": "\r", "%25": "%", "%0a": "\n", "%0d": "\r"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Manifest:
    """One manifest, of the payload or of the tag files."""

    file: str
    algorithm: str
    is_of_tags: bool
    digests: Mapping[str, str]
    """By path, in small letters."""


def read_manifest(file: str, text: str, package: str) -> tuple[Manifest, tuple[Diagnostic, ...]]:
    """A manifest of a known algorithm, and what is wrong with its lines."""
    named = FILE_NAME.match(file)
    assert named is not None
    algorithm, is_of_tags = named["algorithm"], bool(named["tag"])
    digests: dict[str, str] = {}
    faults: list[Diagnostic] = []
    for number, line in enumerate(lines_of(text), start=1):
        span = Span(file=f"{package}/{file}", line=number, column=1, text=shown_name(line), length=len(line))
        if not line.strip():
            continue
        found = _LINE.match(line)
        if found is None or len(found["digest"]) != ALGORITHMS[algorithm]:
            message = say(
                "this is no line of a manifest: {digits} digits of {algorithm}, and a path",
                digits=ALGORITHMS[algorithm],
                algorithm=algorithm,
            )
            faults.append(Diagnostic(slug="bad-manifest", message=message, span=span))
            continue
        path = _decoded(found["path"])
        faults.extend(_path_faults(path, is_of_tags, path in digests, span))
        digests[path] = found["digest"].lower()
    return Manifest(file=file, algorithm=algorithm, is_of_tags=is_of_tags, digests=digests), tuple(faults)


def lines_of(text: str) -> list[str]:
    """The lines of a tag file, which end in LF, CR or both, and in nothing else; section 2.3."""
    return re.sub(r"\r\n?", "\n", text).removesuffix("\n").split("\n")


def _decoded(path: str) -> str:
    """Line ends and the per cent sign are written by their numbers, and nothing else is (section 2.1.3)."""
    return re.sub("%0[AaDd]|%25", lambda match: _ENCODED[match.group()], path)


def _path_faults(path: str, is_of_tags: bool, is_there: bool, span: Span) -> Iterator[Diagnostic]:
    for fault in name_faults(path):
        yield fault.at(span)
    if is_there:
        yield Diagnostic(
            slug="listed-twice",
            message=say("`{path}` is listed a second time", path=shown_name(path)),
            span=span,
        )
    if path.startswith(PAYLOAD) is is_of_tags:
        message = (
            say("`{path}`: a tag manifest lists no payload", path=shown_name(path))
            if is_of_tags
            else say("`{path}`: a payload manifest lists files in `data` only", path=shown_name(path))
        )
        yield Diagnostic(slug="wrong-manifest", message=message, span=span)


def completeness_faults(manifest: Manifest, paths: Sequence[str], package: str) -> Iterator[Diagnostic]:
    """What a manifest lists that is not there, and what is there that it does not list; section 3."""
    span = Span(file=f"{package}/{manifest.file}")
    wanted = {path for path in paths if is_listed_in(path, manifest.is_of_tags)}
    for path in sorted(manifest.digests.keys() - set(paths)):
        yield Diagnostic(
            slug="file-missing",
            message=say("`{path}` is listed here and is not in the package", path=shown_name(path)),
            span=span,
        )
    for path in sorted(wanted - manifest.digests.keys()):
        yield Diagnostic(
            slug="not-listed",
            message=say("`{path}` is in the package and is not listed here", path=shown_name(path)),
            span=span,
        )


def is_listed_in(path: str, tags: bool) -> bool:
    """Whether a file belongs in manifests of the tags, or of the payload; a tag manifest lists none of its own sort."""
    if path.startswith(PAYLOAD):
        return not tags
    found = FILE_NAME.match(path)
    return tags and not (found is not None and found["tag"])


def manifest_text(digests: Mapping[str, str]) -> str:
    """The lines of a manifest, in the order of the paths."""
    return "".join(f"{digest}  {_encoded(path)}\n" for path, digest in sorted(digests.items()))


def _encoded(path: str) -> str:
    return path.replace("%", "%25").replace("\n", "%0A").replace("\r", "%0D")


class Digester:
    """Several digests of one file, taken in one pass."""

    def __init__(self, algorithms: Iterable[str]) -> None:
        self._found = {name: hashlib.new(name, usedforsecurity=False) for name in algorithms}

    def update(self, block: memoryview) -> None:
        for one in self._found.values():
            one.update(block)

    def digests(self) -> dict[str, str]:
        return {name: one.hexdigest() for name, one in self._found.items()}
