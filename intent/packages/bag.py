"""A bag by itself: its declaration, its metadata, its manifests, and whether they tell of all that is there.

Source: RFC 8493, The BagIt File Packaging Format (V1.0), October 2018. Stricter than it: a tag manifest is wanted,
every manifest tells of every file of its sort, nothing is to be fetched, and tag files are in UTF-8.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass

from intent.diagnostics import Diagnostic, Severity, Span
from intent.language.message import Message, joined, say
from intent.language.sizes import size_words
from intent.packages.file_names import shown_name
from intent.packages.limits import Limits
from intent.packages.manifest import (
    ALGORITHMS,
    FILE_NAME,
    PAYLOAD,
    STRONG,
    Manifest,
    completeness_faults,
    lines_of,
    read_manifest,
)
from intent.packages.walk import PackageEntry, PackageListing, fault_at

DECLARATION = "bagit.txt"
INFO = "bag-info.txt"
FETCH = "fetch.txt"
DECLARED = "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n"
"""Section 2.1.1: exactly these two lines."""
EARLIER = "BagIt-Version: 0.97"
"""What common makers of bags still write; held to the same."""
_OXUM = re.compile(r"([0-9]{1,18})\.([0-9]{1,18})$")
_LABEL = re.compile(r"(?P<label>[^\s:][^:]*?)\s*:\s*(?P<value>.*)$")

_OF_EACH_SORT: tuple[tuple[bool, tuple[str, Message], Message], ...] = (
    (
        False,
        ("no-payload-manifest", say("there is no payload manifest, so nothing vouches for its files")),
        say("every payload manifest uses an algorithm that is known to be forgeable; SHA-512 is not"),
    ),
    (
        True,
        ("no-tag-manifest", say("there is no tag manifest, so nothing vouches for its files")),
        say("every tag manifest uses an algorithm that is known to be forgeable; SHA-512 is not"),
    ),
)
"""Of the payload and of the tags: what is said where no manifest is there, and where none is strong."""

Reads = Callable[[PackageEntry], bytes]
"""Reads a small file of the package as a whole; raises ``OSError``."""


@dataclass(frozen=True, slots=True)
class Bag:
    """What a bag says of itself."""

    manifests: tuple[Manifest, ...]
    info: tuple[tuple[str, str], ...]
    """The labels and values of `bag-info.txt`, in its order."""

    @property
    def algorithms(self) -> tuple[str, ...]:
        return tuple(sorted({manifest.algorithm for manifest in self.manifests}))

    def expected(self, path: str) -> Iterator[tuple[Manifest, str]]:
        """Each manifest that tells of a file, with the digest that it states."""
        for manifest in self.manifests:
            if path in manifest.digests:
                yield manifest, manifest.digests[path]


def read_bag(listing: PackageListing, reads: Reads, limits: Limits) -> tuple[Bag, tuple[Diagnostic, ...]]:
    """The bag, and every fault in its tag files; sections 2.1 and 2.2."""
    faults: list[Diagnostic] = []
    texts = _tag_texts(listing, reads, limits, faults)
    faults.extend(_declaration_faults(listing, texts.get(DECLARATION)))
    info = tuple(_read_info(listing.name, texts.get(INFO, ""), faults))
    faults.extend(_oxum_faults(listing, info))
    faults.extend(_fetch_faults(listing.name, texts.get(FETCH, "")))
    manifests = tuple(_manifests(listing, texts, faults))
    faults.extend(_manifest_faults(listing, manifests))
    if not any(entry.path.startswith(PAYLOAD) for entry in listing.entries):
        faults.append(
            fault_at(listing.name, "", "no-payload", say("the package has no files in a folder `data`"))
        )
    return Bag(manifests, info), tuple(faults)


def _is_read(path: str) -> bool:
    return path in {DECLARATION, INFO, FETCH} or FILE_NAME.match(path) is not None


def _tag_texts(
    listing: PackageListing, reads: Reads, limits: Limits, faults: list[Diagnostic]
) -> dict[str, str]:
    """The tag files that are read, as text; section 2.3."""
    found: dict[str, str] = {}
    for entry in listing.entries:
        if not _is_read(entry.path) or entry.refused:
            continue
        if entry.size > limits.largest_tag_file:
            most = size_words(limits.largest_tag_file)
            message = say(
                "the file has {size}; the most that is read is {most}", size=size_words(entry.size), most=most
            )
            faults.append(fault_at(listing.name, entry.path, "too-large", message))
            continue
        try:
            found[entry.path] = reads(entry).decode("utf-8")
        except UnicodeDecodeError:
            message = say("the file is not in UTF-8, the only encoding of tag files that is read")
            faults.append(fault_at(listing.name, entry.path, "not-utf-8", message))
        except OSError as error:
            faults.append(
                fault_at(
                    listing.name,
                    entry.path,
                    "unreadable",
                    say("the file cannot be read: {reason}", reason=str(error)),
                )
            )
    return found


def _declaration_faults(listing: PackageListing, text: str | None) -> Iterator[Diagnostic]:
    """Section 2.1.1: version and encoding, in two lines, without a byte order mark."""
    if text is None:
        if listing.entry(DECLARATION) is None:
            message = say(
                "there is no `{file}`, so this is no bag; name the folder or zip that holds it",
                file=DECLARATION,
            )
            yield fault_at(listing.name, "", "no-declaration", message)
        return
    lines = lines_of(text)
    wanted = lines_of(DECLARED)
    slugs = ("bag-version", "bag-encoding")
    for number, (want, slug) in enumerate(zip(wanted, slugs, strict=True), start=1):
        line = lines[number - 1] if number <= len(lines) else ""
        said = re.sub(r"\s+", " ", line).strip().casefold()
        if said != want.casefold() and (number > 1 or said != EARLIER.casefold()):
            span = Span(
                file=f"{listing.name}/{DECLARATION}",
                line=number,
                column=1,
                text=shown_name(line),
                length=max(1, len(line)),
            )
            yield Diagnostic(slug=slug, message=say("this line must be `{line}`", line=want), span=span)
    if len(lines) > len(wanted):
        span = Span(
            file=f"{listing.name}/{DECLARATION}",
            line=len(wanted) + 1,
            column=1,
            text=shown_name(lines[len(wanted)]),
        )
        yield Diagnostic(
            slug="bag-declaration", message=say("the declaration has two lines and no more"), span=span
        )


def _read_info(package: str, text: str, faults: list[Diagnostic]) -> Iterator[tuple[str, str]]:
    """Section 2.2.2: labels with values, which may go on in lines that are indented."""
    found: list[tuple[str, str]] = []
    for number, line in enumerate(lines_of(text), start=1):
        if found and line[:1] in {" ", "\t"} and line.strip():
            found[-1] = (found[-1][0], f"{found[-1][1]} {line.strip()}")
            continue
        match = _LABEL.match(line)
        if match is not None:
            found.append((match["label"], match["value"].strip()))
        elif line.strip():
            span = Span(
                file=f"{package}/{INFO}", line=number, column=1, text=shown_name(line), length=len(line)
            )
            faults.append(
                Diagnostic(slug="bad-bag-info", message=say("this line is no label with a value"), span=span)
            )
    yield from found


def _oxum_faults(listing: PackageListing, info: Iterable[tuple[str, str]]) -> Iterator[Diagnostic]:
    """Section 2.2.2: octets and files of the payload, stated once at most."""
    stated = [value for label, value in info if label.casefold() == "payload-oxum"]
    payload = [entry for entry in listing.entries if entry.path.startswith(PAYLOAD)]
    for value in stated:
        match = _OXUM.match(value)
        if match is None:
            message = say(
                "Payload-Oxum `{value}` is not octets, a full stop, and a number of files",
                value=shown_name(value[:60]),
            )
            yield fault_at(listing.name, INFO, "bad-oxum", message)
        elif (int(match[1]), int(match[2])) != (sum(entry.size for entry in payload), len(payload)):
            there = f"{sum(entry.size for entry in payload)}.{len(payload)}"
            yield fault_at(
                listing.name,
                INFO,
                "oxum-differs",
                say("Payload-Oxum is {value}; there are {there}", value=value, there=there),
            )
    if len(stated) > 1:
        yield fault_at(listing.name, INFO, "bad-oxum", say("Payload-Oxum is stated more than once"))


def _fetch_faults(package: str, text: str) -> Iterator[Diagnostic]:
    """Section 2.2.3: nothing is fetched, so a bag with something to fetch is not whole."""
    for number, line in enumerate(lines_of(text), start=1):
        if line.strip():
            span = Span(
                file=f"{package}/{FETCH}", line=number, column=1, text=shown_name(line), length=len(line)
            )
            message = say(
                "the package wants this fetched from elsewhere, which is not done; ask for a whole package"
            )
            yield Diagnostic(slug="fetch-item", message=message, span=span)


def _manifests(
    listing: PackageListing, texts: Mapping[str, str], faults: list[Diagnostic]
) -> Iterator[Manifest]:
    for file, text in sorted(texts.items()):
        named = FILE_NAME.match(file)
        if named is None:
            continue
        if named["algorithm"] not in ALGORITHMS:
            name, known = shown_name(named["algorithm"]), joined(ALGORITHMS, ", ")
            message = say(
                "`{name}` is no algorithm that is known here; those are {names}", name=name, names=known
            )
            faults.append(fault_at(listing.name, file, "unknown-algorithm", message))
            continue
        manifest, wrong = read_manifest(file, text, listing.name)
        faults.extend(wrong)
        yield manifest


def _manifest_faults(listing: PackageListing, manifests: Iterable[Manifest]) -> Iterator[Diagnostic]:
    """Sections 2.1.3, 2.2.1 and 3: each manifest tells of every file of its sort, and of no other."""
    every = tuple(manifests)
    paths = [entry.path for entry in listing.entries]
    for is_of_tags, none_there, all_weak in _OF_EACH_SORT:
        mine = [manifest for manifest in every if manifest.is_of_tags is is_of_tags]
        if not mine:
            yield fault_at(listing.name, "", *none_there)
        elif not any(manifest.algorithm in STRONG for manifest in mine):
            where = Span(file=f"{listing.name}/{mine[0].file}")
            yield Diagnostic(slug="weak-digest", message=all_weak, span=where, severity=Severity.WARNING)
        for manifest in mine:
            yield from completeness_faults(manifest, paths, listing.name)


def info_text(info: Iterable[tuple[str, str]]) -> str:
    """`bag-info.txt`; section 2.2.2."""
    return "".join(f"{label}: {' '.join(value.split())}\n" for label, value in info if value)
