"""A bag by itself: its declaration, its metadata, its manifests, and whether they tell of all that is there.

Source: RFC 8493, The BagIt File Packaging Format (V1.0), October 2018. Stricter than it: a tag manifest is wanted,
every manifest tells of every file of its sort, nothing is to be fetched, and tag files are in UTF-8.
"""

from __future__ import annotations

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
    read_manifest,
)
from intent.packages.tag_files import (
    DECLARATION,
    FETCH,
    INFO,
    declaration_faults,
    fetch_faults,
    oxum_faults,
    read_info,
)
from intent.packages.walk import PackageEntry, PackageListing, fault_at

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

    def expected(self, path: str) -> Iterator[tuple[Manifest, str]]:
        """Each manifest that tells of a file, with the digest that it states."""
        for manifest in self.manifests:
            if path in manifest.digests:
                yield manifest, manifest.digests[path]


def read_bag(listing: PackageListing, reads: Reads, limits: Limits) -> tuple[Bag, tuple[Diagnostic, ...]]:
    """The bag, and every fault in its tag files; sections 2.1 and 2.2."""
    faults: list[Diagnostic] = []
    texts = _tag_texts(listing, reads, limits, faults)
    faults.extend(declaration_faults(listing, texts.get(DECLARATION)))
    info = tuple(read_info(listing.name, texts.get(INFO, ""), faults))
    faults.extend(oxum_faults(listing, info))
    faults.extend(fetch_faults(listing.name, texts.get(FETCH, "")))
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
