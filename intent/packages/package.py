"""A work, and an installation of it with its report, as one package to send: a bag in a folder or a zip.

Everything in it is made from what may leave the house, read back from the very texts that it holds. The same input
gives the same bytes: no clock is asked, dates come from the installation or from whoever packs.
"""

from __future__ import annotations

import datetime
from dataclasses import dataclass
from pathlib import Path

from intent.diagnostics import Diagnostic, Span
from intent.effects.assess import assess
from intent.exports.standards import STANDARDS as EXPORTS
from intent.exports.standards import Exported
from intent.language.locale import ENGLISH, Locale
from intent.names import CRM, INTENT
from intent.packages.contents import (
    INSTALLATION_GRAPH,
    INSTRUCTIONS_PAGE,
    LEFT_OUT,
    NOTHING,
    PACKING_LIST,
    STANDARDS,
    START,
    WORK_GRAPH,
)
from intent.packages.documents import instructions_page, packing_list, pages_of, printed
from intent.packages.dossier_texts import installation_path
from intent.packages.filling import BagBeingFilled
from intent.packages.outgoing import Outgoing, outgoing_of
from intent.packages.read_back import PackedDossier, read_back
from intent.packages.reviewing import review
from intent.packages.start import start_page
from intent.packages.zip_writing import write_zip
from intent.reading.atomic_write import passing_folder, refuse_existing, staged_file, staged_folder
from intent.reading.documentation import Documentation
from intent.reading.proposal import Proposal
from intent.record.serialize import serialize_rdf
from intent.version import VERSION


@dataclass(frozen=True, slots=True)
class Package:
    """What was packed, and what its sender should look at before it goes."""

    path: Path
    left_out: tuple[str, ...]
    """The kinds of thing that stay in the house, in English."""
    findings: tuple[Diagnostic, ...]


def write_package(
    documentation: Documentation,
    proposal: Proposal | None,
    to: Path,
    *,
    date: datetime.date,
    pdf: bool = True,
    locale: Locale = ENGLISH,
) -> Package:
    """Pack a work, and an installation of it if one is given, into a folder or, where ``to`` ends in `.zip`, a zip.

    Its papers are in a language; those that go on paper are PDFs too, where ``pdf`` says so. Raises `Unusable`;
    then nothing is left under that name.
    """
    refuse_existing(to)
    outgoing = outgoing_of(documentation, proposal, date)
    if to.suffix.lower() == ".zip":
        with staged_file(to) as place, passing_folder(to) as folder:
            bag, findings = _filled(folder, outgoing, pdf, locale)
            write_zip(bag.folder, bag.packed, outgoing.name, place)
    else:
        with staged_folder(to) as folder:
            _, findings = _filled(folder, outgoing, pdf, locale)
    left_out = tuple(kind.text for kind in outgoing.leaving.withheld)
    return Package(to, left_out, (*outgoing.findings, *findings))


def _filled(
    folder: Path, outgoing: Outgoing, pdf: bool, locale: Locale
) -> tuple[BagBeingFilled, tuple[Diagnostic, ...]]:
    """Fill a folder with the whole bag; gives what the sender should look at."""
    bag = BagBeingFilled(folder)
    bag.add_all({path: text.encode() for path, text in outgoing.texts.items()})
    bag.copy(outgoing.files)
    proposal = outgoing.proposal
    sent = read_back(folder, installation_path(proposal) if proposal else None)
    bag.add(WORK_GRAPH, serialize_rdf(sent.documentation.graph, "turtle").encode())
    pages: dict[str, bytes] = {}
    variance = None
    if sent.proposal is not None:
        bag.add(INSTALLATION_GRAPH, serialize_rdf(sent.proposal.graph, "turtle").encode())
        variance = assess(sent.documentation.work, sent.proposal.installation)
        pages.update(pages_of(sent.proposal, variance, outgoing, bag.folder, locale))
    installation = sent.proposal.installation if sent.proposal else None
    day = installation.dates.first if installation else outgoing.day
    pages[INSTRUCTIONS_PAGE] = instructions_page(sent.documentation.work, day, locale)
    told = Exported(work=sent.documentation.work, installation=installation, day=outgoing.day)
    for name, export in EXPORTS:
        bag.add_all(export(told), f"{STANDARDS}/{name}/")
    pages[PACKING_LIST] = packing_list(
        sent.documentation.work, outgoing, bag.packed, locale, installation=installation
    )
    bag.add_all(pages)
    prints, findings = printed(pages) if pdf else ({}, ())
    bag.add_all(prints)
    bag.add(START, start_page(outgoing, sent, variance, bag.packed, locale))
    bag.refuse_unsafe(Span(file=sent.documentation.files[0].name))
    bag.seal(_info(sent, outgoing, bag.oxum))
    return bag, (*findings, *review(folder, outgoing, sent, variance))


def _info(sent: PackedDossier, outgoing: Outgoing, oxum: str) -> list[tuple[str, str]]:
    """The metadata of the bag; RFC 8493, section 2.2.2."""
    work, proposal = sent.documentation.work, sent.proposal
    title = " – ".join(filter(None, [work.title, proposal.installation.title if proposal else ""]))
    return [
        ("Source-Organization", work.fields.get(str(CRM["P52_has_current_owner"]), "")),
        ("External-Description", title),
        ("External-Identifier", work.fields.get(str(INTENT.accessionNumber), "")),
        ("Bagging-Date", outgoing.day.isoformat()),
        ("Bag-Software-Agent", f"intent {VERSION}"),
        ("Payload-Oxum", oxum),
        (LEFT_OUT, "; ".join(kind.text for kind in outgoing.leaving.withheld) or NOTHING),
    ]
