"""A work, and an installation of it with its report, as one package to send: a bag in a folder or a zip.

Everything in it is made from what may leave the house, read back from the very texts that it holds. The same input
gives the same bytes: no clock is asked, dates come from the installation or from whoever packs.
"""

from __future__ import annotations

import datetime
import hashlib
import re
import tempfile
import unicodedata
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path

from intent import __version__
from intent.diagnostics import Diagnostic, Severity, Span, Unusable
from intent.effects.assess import assess
from intent.exports.standards import STANDARDS as EXPORTS
from intent.names import INTENT
from intent.packages.atomic_folder import refuse_existing, staged_file, staged_folder
from intent.packages.bag import DECLARATION, DECLARED, INFO, info_text
from intent.packages.carrying import Carried, carried
from intent.packages.contents import (
    CARDS_PAGE,
    INSTALLATION_GRAPH,
    LEFT_OUT,
    NOTHING,
    PACKING_LIST,
    PAYLOAD,
    REPORT_PAGE,
    STANDARDS,
    WORK_GRAPH,
)
from intent.packages.documents import DOCUMENTS, told_of
from intent.packages.file_names import collisions, name_faults
from intent.packages.manifest import SHA512, manifest_text
from intent.packages.opening import Copier, Unread
from intent.packages.read_back import read_back
from intent.packages.reviewing import review
from intent.packages.zip_writing import write_zip
from intent.papers.naming import labelled_fields
from intent.papers.packing_list import Packed, write_packing_list
from intent.papers.wording import day_in_words
from intent.reading.documentation import Documentation
from intent.reading.proposal import Proposal
from intent.record.serialize import serialize_rdf
from intent.redaction.texts import Texts, installation_path, texts_leaving
from intent.variance.result import Variance

_HEAD = "https://w3id.org/intent-record/term/work-head"


@dataclass(frozen=True, slots=True)
class Package:
    """What was packed, and what its sender should look at before it goes."""

    path: Path
    left_out: tuple[str, ...]
    """The sorts of things that stay in the house."""
    findings: tuple[Diagnostic, ...]


@dataclass(slots=True)
class _Bag:
    """A bag being filled, with what lies in it so far."""

    folder: Path
    packed: dict[str, Packed] = field(default_factory=dict)

    def add(self, path: str, content: bytes) -> None:
        place = self.folder / path
        place.parent.mkdir(parents=True, exist_ok=True)
        with place.open("xb") as stream:
            stream.write(content)
        self.packed[path] = Packed(len(content), hashlib.sha512(content).hexdigest())

    def digests(self, *, payload: bool) -> dict[str, str]:
        return {
            path: one.sha512 for path, one in self.packed.items() if path.startswith(f"{PAYLOAD}/") is payload
        }


@dataclass(frozen=True, slots=True)
class Printing:
    """How pages are made that this room does not make itself."""

    cards: Callable[[Proposal, Variance], str]
    """The placement cards of a proposal, as a page."""
    pdf: Callable[[str], bytes] | None
    """A page as a PDF; none where no PDF is wanted. Raises `Unusable` where what it needs is missing."""


def write_package(
    documentation: Documentation,
    proposal: Proposal | None,
    to: Path,
    date: datetime.date | None,
    printing: Printing,
) -> Package:
    """Pack a work, and an installation of it if one is given, into a folder or, where ``to`` ends in `.zip`, a zip.

    Raises `Unusable`; then nothing is left under that name.
    """
    refuse_existing(to)
    texts = texts_leaving(documentation, proposal)
    files, findings = carried(documentation, texts.work)
    errors = [found for found in findings if found.is_error]
    errors += list(_unsafe(texts, files, documentation))
    if errors:
        raise Unusable(errors)
    if to.suffix.lower() == ".zip":
        prefix = f".{to.name[:80]}."
        with staged_file(to) as place, tempfile.TemporaryDirectory(".partial", prefix, to.parent) as name:
            bag, more = _filled(Path(name), documentation, proposal, texts, files, date, printing)
            write_zip(bag.folder, bag.packed, root_name(texts, proposal), place)
    else:
        with staged_folder(to) as folder:
            _, more = _filled(folder, documentation, proposal, texts, files, date, printing)
    return Package(to, tuple(map(str, texts.sorts)), (*findings, *more))


def _unsafe(texts: Texts, files: tuple[Carried, ...], documentation: Documentation) -> list[Diagnostic]:
    """Names that could not travel, or that would meet in the package."""
    span = Span(file=documentation.files[0].name)
    paths = dict.fromkeys([*texts.files, *(one.inside for one in files)])
    faults = [fault for path in texts.files for fault in name_faults(path)]
    faults += [fault for _, fault in collisions(paths)]
    return [Diagnostic(slug=fault.slug, message=fault.message, span=span) for fault in faults]


def root_name(texts: Texts, proposal: Proposal | None) -> str:
    """The top folder of a zip: made from the titles, so that it does not depend on how the file is called."""
    title = f"{texts.work.title} {proposal.installation.title if proposal else ''}"
    plain = unicodedata.normalize("NFKD", title).encode("ascii", "ignore").decode().lower()
    return re.sub(r"[^a-z0-9]+", "-", plain).strip("-")[:60].strip("-") or "package"


def _filled(
    folder: Path,
    documentation: Documentation,
    proposal: Proposal | None,
    texts: Texts,
    files: tuple[Carried, ...],
    date: datetime.date | None,
    printing: Printing,
) -> tuple[_Bag, tuple[Diagnostic, ...]]:
    """Fill a folder with the whole bag; gives what the sender should look at."""
    bag, findings = _Bag(folder), list[Diagnostic]()
    for path, text in texts.files.items():
        bag.add(path, text.encode())
    _carry(bag, files)
    day = date or (proposal.installation.dates.first if proposal else None)
    leaving = read_back(folder, installation_path(proposal) if proposal else None)
    bag.add(WORK_GRAPH, serialize_rdf(leaving.documentation.graph, "turtle").encode())
    sent = leaving.proposal
    variance = assess(leaving.documentation.work, sent.installation) if sent else None
    if sent is not None and variance is not None and day is not None:
        bag.add(INSTALLATION_GRAPH, serialize_rdf(sent.graph, "turtle").encode())
        told = told_of(sent, variance, texts.sorts, day, folder)
        pages = {name: content for _, document in DOCUMENTS for name, content in document(told).items()}
        pages[CARDS_PAGE] = printing.cards(sent, variance).encode()
        _add_all(bag, "", pages)
        findings += _print(bag, pages, printing)
    for name, export in EXPORTS:
        _add_all(bag, f"{STANDARDS}/{name}/", export(leaving.documentation, sent))
    foot = f"Packed by intent {__version__}{f' on {day_in_words(day)}' if day else ''}."
    work = leaving.documentation.work
    bag.add(PACKING_LIST, write_packing_list(work, files, bag.packed, texts.sorts, foot))
    _seal(bag, leaving.documentation, sent, texts, day)
    found = review(
        folder,
        documentation=documentation,
        proposal=proposal,
        texts=texts,
        files=files,
        leaving=leaving.documentation,
        variance=variance,
    )
    return bag, (*findings, *found)


def _print(bag: _Bag, pages: Mapping[str, bytes], printing: Printing) -> Iterator[Diagnostic]:
    """The report and the cards as PDFs beside their pages; where that cannot be, it is said, and they go without."""
    if printing.pdf is None:
        return
    for name in (REPORT_PAGE, CARDS_PAGE):
        try:
            bag.add(f"{name.removesuffix('.html')}.pdf", printing.pdf(pages[name].decode()))
        except Unusable as error:
            missing = error.diagnostics[0]
            message = f"the package goes without PDFs: {missing.message}"
            yield Diagnostic(slug="not-packed", message=message, span=missing.span, severity=Severity.WARNING)
            return


def _carry(bag: _Bag, files: tuple[Carried, ...]) -> None:
    """Copy the files that go with the dossier, each once."""
    with Copier() as copier:
        for one in files:
            if not one.is_there or one.inside in bag.packed:
                continue
            place = bag.folder / one.inside
            place.parent.mkdir(parents=True, exist_ok=True)
            try:
                with one.path.open("rb", buffering=0) as stream:
                    size, found = copier.copy(stream, None, place, [SHA512])
            except Unread as error:
                message = f"`{one.name}` cannot be read: {error}"
                raise Unusable(
                    [Diagnostic(slug="unreadable", message=message, span=Span(file=str(one.path)))]
                ) from None
            bag.packed[one.inside] = Packed(size, found[SHA512])


def _add_all(bag: _Bag, within: str, files: Mapping[str, bytes]) -> None:
    for name, content in files.items():
        bag.add(f"{within}{name}", content)


def _seal(
    bag: _Bag,
    documentation: Documentation,
    proposal: Proposal | None,
    texts: Texts,
    day: datetime.date | None,
) -> None:
    """Declaration, metadata and manifests; RFC 8493, sections 2.1.1, 2.2.2, 2.1.3 and 2.2.1."""
    faults = [
        *(one for path in bag.packed for one in name_faults(path)),
        *(one for _, one in collisions(bag.packed)),
    ]
    if faults:
        raise Unusable(
            [
                Diagnostic(slug=one.slug, message=one.message, span=Span(file=documentation.files[0].name))
                for one in faults
            ]
        )
    payload = [one for path, one in bag.packed.items() if path.startswith(f"{PAYLOAD}/")]
    oxum = f"{sum(one.size for one in payload)}.{len(payload)}"
    work = documentation.work
    head = labelled_fields(work.vocabulary, work.fields, _HEAD)
    title = " – ".join(filter(None, [work.title, proposal.installation.title if proposal else ""]))
    info = [
        ("Source-Organization", head.get("owner", "")),
        ("External-Description", title),
        ("External-Identifier", work.fields.get(str(INTENT.accessionNumber), "")),
        ("Bagging-Date", day.isoformat() if day else ""),
        ("Bag-Software-Agent", f"intent {__version__}"),
        ("Payload-Oxum", oxum),
        (LEFT_OUT, "; ".join(map(str, texts.sorts)) or NOTHING),
    ]
    bag.add(DECLARATION, DECLARED.encode())
    bag.add(INFO, info_text(info).encode())
    bag.add(f"manifest-{SHA512}.txt", manifest_text(bag.digests(payload=True)).encode())
    bag.add(f"tagmanifest-{SHA512}.txt", manifest_text(bag.digests(payload=False)).encode())
