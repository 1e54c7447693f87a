"""The tag files of a bag: its declaration, its metadata, and what it wants fetched.

Source: RFC 8493, The BagIt File Packaging Format (V1.0), October 2018.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from intent.diagnostics import Diagnostic, Span
from intent.language.message import say
from intent.packages.file_names import shown_name
from intent.packages.manifest import PAYLOAD, lines_of
from intent.packages.walk import PackageListing, fault_at

DECLARATION = "bagit.txt"
INFO = "bag-info.txt"
FETCH = "fetch.txt"
DECLARED = "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n"
"""Section 2.1.1: exactly these two lines."""
EARLIER = "BagIt-Version: 0.97"
"""What common makers of bags still write; held to the same."""
_OXUM = re.compile(r"([0-9]{1,18})\.([0-9]{1,18})$")
_LABEL = re.compile(r"(?P<label>[^\s:][^:]*?)\s*:\s*(?P<value>.*)$")


def declaration_faults(listing: PackageListing, text: str | None) -> Iterator[Diagnostic]:
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


def read_info(package: str, text: str, faults: list[Diagnostic]) -> Iterator[tuple[str, str]]:
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


def oxum_faults(listing: PackageListing, info: Iterable[tuple[str, str]]) -> Iterator[Diagnostic]:
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


def fetch_faults(package: str, text: str) -> Iterator[Diagnostic]:
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


def info_text(info: Iterable[tuple[str, str]]) -> str:
    """`bag-info.txt`; section 2.2.2."""
    return "".join(f"{label}: {' '.join(value.split())}\n" for label, value in info if value)
