"""A package of unknown origin: checked before anything in it is believed, then opened whole or not at all.

First its outside, without opening or following anything; then the tag files; then every file is read once, digested
and copied beside its final place; then what it holds is read, closed to the network, and judged again. Only when all
of that has gone well does it get its name.
"""

from __future__ import annotations

import os
import stat
from dataclasses import dataclass
from pathlib import Path

from intent.analysis.comparison.works import Comparison, compare_works, is_same_work
from intent.diagnostics import (
    Diagnostic,
    Severity,
    Span,
    Unusable,
    has_errors,
    in_order,
    refusal_of_file,
)
from intent.language.message import say
from intent.packages.bag import Bag, read_bag
from intent.packages.contents import LEFT_OUT
from intent.packages.judged_again import JudgedPackage, judge_again
from intent.packages.limits import DEFAULT, Limits
from intent.packages.opening import Opens, copied
from intent.packages.walk import PackageEntry, PackageListing, list_folder, open_in_folder
from intent.packages.zipped import list_zip, nested_fault
from intent.reading.atomic_write import refuse_existing, staged_folder
from intent.reading.documentation import Documentation


@dataclass(frozen=True, slots=True, kw_only=True)
class Received:
    """A package that was opened: where, what it holds, and what is to be said of it."""

    folder: Path
    judged: JudgedPackage
    left_out: str
    """What the sender keeps, in the sender's words; nothing where they do not say."""
    comparison: Comparison | None
    """What changed against the copy that is held, where one was named."""
    findings: tuple[Diagnostic, ...]


def receive_package(
    package: Path, into: Path, held: Documentation | None = None, limits: Limits = DEFAULT
) -> Received:
    """Check a package, a folder or a zip, and open it in a new folder. Raises `Unusable` with every fault found.

    Where it is refused, nothing of it stays anywhere.
    """
    refuse_existing(into)
    _refuse_within(package, into)
    listing, opens = _listed(package, limits)
    bag, faults = read_bag(listing, lambda entry: _whole(opens, entry), limits)
    faults = (*listing.faults, *faults)
    if has_errors(faults):
        raise Unusable([*faults, *copied(listing.entries, opens, bag, listing.name, None)])
    with staged_folder(into) as folder:
        wrong = list(copied(listing.entries, opens, bag, listing.name, folder))
        wrong += list(_nested(listing, folder, limits))
        if wrong:
            raise Unusable([*faults, *wrong])
        judged = judge_again(folder, listing.name)
        comparison, compared = _compared(held, judged, listing.name)
    findings = in_order([*faults, *judged.findings, *compared])
    return Received(
        folder=into, judged=judged, left_out=_left_out(bag), comparison=comparison, findings=findings
    )


def _refuse_within(package: Path, into: Path) -> None:
    """Raises `Unusable` where the new folder would lie in the package that is read."""
    if into.resolve().is_relative_to(package.resolve()):
        message = say("`{folder}` lies within the package; name a folder outside it", folder=str(into))
        raise refusal_of_file("within-package", message, into)


def _listed(package: Path, limits: Limits) -> tuple[PackageListing, Opens]:
    """What the package holds, and a way to open its files. Raises `Unusable` where there is no package."""
    try:
        mode = os.stat(package).st_mode
    except (OSError, ValueError):
        message = say("there is no package `{package}`", package=str(package))
        raise refusal_of_file("no-file", message, package) from None
    if stat.S_ISDIR(mode):
        return list_folder(package, limits), lambda entry: open_in_folder(package, entry)
    if not stat.S_ISREG(mode):
        message = say("`{package}` is neither a folder nor an ordinary file", package=str(package))
        raise refusal_of_file("special-file", message, package)
    found = list_zip(package, limits)
    return found.listing, found.open


def _whole(opens: Opens, entry: PackageEntry) -> bytes:
    """A small file as a whole; never more than was announced, and so no more than the limit. Raises ``OSError``."""
    stream = opens(entry)
    content = bytearray(entry.size + 1)
    filled = 0
    try:
        while read := stream.readinto(memoryview(content)[filled:]):
            filled += read
    finally:
        stream.close()
    return bytes(content[:filled])


def _nested(listing: PackageListing, folder: Path, limits: Limits) -> list[Diagnostic]:
    """The files that are zips themselves and would burst, if somebody opened them."""
    found = (nested_fault(folder / one.path, listing.name, one.path, limits) for one in listing.entries)
    return [fault for fault in found if fault is not None]


def _left_out(bag: Bag) -> str:
    return next((value for label, value in bag.info if label == LEFT_OUT), "")


def _compared(
    held: Documentation | None, judged: JudgedPackage, name: str
) -> tuple[Comparison | None, list[Diagnostic]]:
    """What changed against a copy already held; a warning where that is of another work."""
    if held is None:
        return None, []
    received = judged.dossier.documentation.work
    if held.work.iri != received.iri and not is_same_work(held.work, received):
        message = say(
            "“{received}” is another work than “{held}”, so the two are not compared",
            received=received.title,
            held=held.work.title,
        )
        return None, [
            Diagnostic(slug="another-work", message=message, span=Span(file=name), severity=Severity.WARNING)
        ]
    return compare_works(held.work, received), []
