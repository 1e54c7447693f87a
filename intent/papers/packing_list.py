"""What travels: the boxes with seals and sizes, what is in each, what has no box, and the files; to be ticked."""

from __future__ import annotations

import datetime
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from intent.language.calendar import day_words, span_words
from intent.language.figures import figure
from intent.language.message import Words, joined, listed, say, say_of, sentence, words
from intent.language.sizes import size_words
from intent.model.installation import Installation
from intent.model.naming import runs
from intent.model.work import Work
from intent.papers.annex import FORM_STYLE, SIGNED
from intent.papers.document import (
    Block,
    Column,
    Document,
    FactLine,
    Facts,
    FactsRole,
    PaperSection,
    Paragraph,
    ParagraphRole,
)
from intent.papers.inline import Content, with_below
from intent.papers.left_out import left_out_section
from intent.papers.packed_tables import (
    boxes_section,
    contents_section,
    loose_section,
    ticked_section,
)
from intent.planning.shipment import CargoKind, Shipment, shipment_of
from intent.redaction.withholding import WithheldKind

MANIFEST = "manifest-sha512.txt"
"""The file of a package in which the digests are."""
_DIGITS = 5
"""A sum of boxes that were weighed in whole kilograms is told as it is."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ListedFile:
    """A file of a source or of material, whether or not it goes along."""

    identifier: str
    """Of the source or material; of what belongs to no one of them, empty."""
    name: str
    """The path as the work gives it."""
    size: int | None
    """In bytes; of a file that does not go along, none."""


def packing_paper(
    work: Work,
    files: Sequence[ListedFile] | None,
    withheld: Sequence[WithheldKind],
    *,
    version: str,
    day: datetime.date,
    installation: Installation | None = None,
) -> Document:
    """The list of what goes to a showing, or of all that a work has; of a package with its files, if any are given."""
    shipment = shipment_of(work, installation)
    sections = (
        boxes_section(shipment, work.vocabulary),
        contents_section(shipment, work.vocabulary),
        loose_section(shipment, work.vocabulary),
        _material(work, shipment, files),
        _documents(work, files or ()),
        *([left_out_section(withheld)] if files is not None else []),
        _hands(),
    )
    return Document(
        title=work.title,
        name=say("{work}: packing list", work=work.title),
        lead=(*_lead(installation), _totals(shipment), *_remarks(shipment)),
        sections=tuple(section for section in sections if section.blocks),
        foot=say("Listed by intent {version} on {date}.", version=version, date=day_words(day)),
        created=day,
        styles=(FORM_STYLE,),
    )


def _lead(installation: Installation | None) -> Iterator[Paragraph]:
    yield Paragraph(say("Packing list. Tick on leaving and on arriving."), ParagraphRole.OCCASION)
    if installation is not None:
        where = joined([installation.title, installation.venue, span_words(installation.dates)], ", ")
        yield Paragraph(sentence(where), ParagraphRole.OCCASION)


def _totals(shipment: Shipment) -> Facts:
    """What a carrier asks first: how many boxes, how heavy and how large together."""
    loose = sum(one.kind is not CargoKind.MATERIAL for one in shipment.loose)
    facts: dict[Words, Words] = {say("boxes"): say("{count}", count=len(shipment.boxes))}
    if shipment.boxes:
        weight, volume = figure(shipment.weight, "kg", _DIGITS), figure(shipment.volume, "m³")
        facts[say("weight")] = say("{weight}, all boxes together", weight=weight)
        facts[say("volume")] = say("{volume}, all boxes together", volume=volume)
    facts[say("in no box")] = say_of(loose, "1 thing", "{count} things", count=loose)
    return Facts(tuple(FactLine(label, (text,)) for label, text in facts.items()), FactsRole.VALUES)


def _remarks(shipment: Shipment) -> Iterator[Paragraph]:
    """What the totals rest on, where a box has not been weighed or measured, or was weighed with more in it."""
    if shipment.unweighed:
        told = say("Not weighed: {boxes}.", boxes=runs(shipment.unweighed))
        yield Paragraph(told, ParagraphRole.QUIET)
    if shipment.unmeasured:
        told = say("Not measured: {boxes}.", boxes=runs(shipment.unmeasured))
        yield Paragraph(told, ParagraphRole.QUIET)
    fuller = [
        say("{box} (with {parts})", box=one.box.identifier, parts=runs(one.staying))
        for one in shipment.boxes
        if one.staying
    ]
    if fuller:
        told = say("To be weighed again, since more was in it: {boxes}.", boxes=listed(fuller))
        yield Paragraph(told, ParagraphRole.QUIET)


def _material(work: Work, shipment: Shipment, files: Sequence[ListedFile] | None) -> PaperSection:
    """How each channel's material goes: in a box, as a file of the package, or nobody says how."""
    columns = (Column(say("material"), 24), Column(say("file"), 30), Column(say("how it goes")))
    boxes: dict[str, list[str]] = {}
    for filled in shipment.boxes:
        for cargo in filled.cargo:
            boxes.setdefault(cargo.identifier, []).append(filled.box.identifier)
    sizes = {one.identifier: one.size for one in files or ()}
    rows: list[tuple[Content, ...]] = []
    for one in work.material:
        named = with_below(one.name, one.identifier) if one.name else one.identifier
        ways: list[Words] = [say("in {box}", box=box) for box in boxes.get(one.identifier, ())]
        size = sizes.get(one.identifier)
        if size is not None:
            ways.append(say("in this package, {size}", size=size_words(size)))
        elif files is not None and one.file:
            ways.append(say("not in this package"))
        rows.append((named, one.file or "", listed(ways) or say("in no box")))
    return ticked_section("material", say("Material"), columns, rows, words("checked"))


def _documents(work: Work, files: Sequence[ListedFile]) -> PaperSection:
    """The files of the package that are no material; their digests are in a file, where they can be compared."""
    material = {one.identifier for one in work.material}
    columns = (Column(say("for"), 8), Column(say("file")), Column(say("size"), 20))
    rows: list[tuple[Content, ...]] = [
        (one.identifier, one.name, say("not in this package") if one.size is None else size_words(one.size))
        for one in files
        if not one.identifier or one.identifier not in material
    ]
    found = ticked_section("documents", say("Documents"), columns, rows, words("checked"))
    digests: Block = Paragraph(
        say("The SHA-512 of every file is in {file}.", file=MANIFEST), ParagraphRole.QUIET
    )
    return PaperSection(
        title=found.title, anchor=found.anchor, blocks=(*found.blocks, digests) if rows else ()
    )


def _hands() -> PaperSection:
    """Who packed, received, packed again and received again."""
    columns = (Column(say("name")), Column(say("capacity"), 30), SIGNED)
    capacities = words("packed", "received", "packed for the way back", "received again")
    return ticked_section("signed", say("Signatures"), columns, [("", one) for one in capacities], ())
