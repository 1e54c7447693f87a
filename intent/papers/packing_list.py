"""What travels: the boxes and what is in them, devices, and the media and documents of the package, to be ticked."""

from __future__ import annotations

import datetime
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from intent.language.calendar import day_words
from intent.language.message import Words, joined, named, say, words
from intent.language.sizes import size_words
from intent.model.as_proposed import PackedBox, packed_boxes, parts_of
from intent.model.assertions import Statements
from intent.model.installation import Installation
from intent.model.logged import devices_as_logged
from intent.model.phrasing import expression_words
from intent.model.work import Device, Work
from intent.papers.annex import FORM_STYLE, SIGNED
from intent.papers.document import (
    Column,
    Document,
    PaperSection,
    PaperTable,
    Paragraph,
    ParagraphRole,
    TableRole,
)
from intent.papers.inline import Content, Phrase, PhraseRole
from intent.papers.left_out import left_out_section
from intent.redaction.withholding import WithheldKind
from intent.vocabulary.terms import Vocabulary

_WAYS = words("left", "came")
_REMARK = Column(say("remark"), 18)


@dataclass(frozen=True, slots=True, kw_only=True)
class ListedFile:
    """A file of a source or of material, whether or not it goes along."""

    identifier: str
    """Of the source or material."""
    name: str
    """The path as the work gives it."""
    size: int | None
    """In bytes; of a file that does not go along, none."""
    sha512: str = ""


def packing_paper(
    work: Work,
    files: Sequence[ListedFile],
    withheld: Sequence[WithheldKind],
    *,
    version: str,
    day: datetime.date | None,
    installation: Installation | None = None,
) -> Document:
    """The list of a package, packed with this version of the program on a day; for a showing, what goes to it."""
    packed = packed_boxes(work, installation) if installation else _at_home(work)
    sections = (
        _boxes(work, packed),
        _loose(work, packed, installation),
        _devices(work),
        _media(files),
        left_out_section(withheld),
        _hands(),
    )
    return Document(
        title=work.title,
        name=say("{work}: packing and media list", work=work.title),
        lead=(
            Paragraph(
                say("Packing and media list. Tick on leaving and on arriving."), ParagraphRole.OCCASION
            ),
        ),
        sections=tuple(section for section in sections if section.blocks),
        foot=_packed_by(version, day),
        created=day,
        styles=(FORM_STYLE,),
    )


def _packed_by(version: str, day: datetime.date | None) -> Words:
    if day is None:
        return say("Packed by intent {version}.", version=version)
    return say("Packed by intent {version} on {date}.", version=version, date=day_words(day))


def _section(
    anchor: str,
    title: Words,
    columns: tuple[Column, ...],
    rows: Sequence[tuple[Content, ...]],
    ticks: tuple[Words, ...] = _WAYS,
) -> PaperSection:
    """A table to tick; a section without a block where there is nothing in it."""
    table = PaperTable(columns=columns, rows=tuple(rows), role=TableRole.CHECKLIST, ticks=ticks)
    return PaperSection(title=title, anchor=anchor, blocks=(table,) if rows else ())


def _at_home(work: Work) -> tuple[PackedBox, ...]:
    """Every box with all its parts, where nothing is proposed; a group stands for all of its own."""
    return tuple(PackedBox(box, parts_of(box, work.parts)) for box in work.boxes)


def _boxes(work: Work, packed: Sequence[PackedBox]) -> PaperSection:
    columns = (Column(say("box"), 10), Column(say("holds"), 18), Column(say("what it is")), _REMARK)
    rows = [
        (one.box.identifier, ", ".join(_contents(work, one)), _stated(one.box.statements, work.vocabulary))
        for one in packed
    ]
    return _section("boxes", say("Boxes"), columns, rows)


def _contents(work: Work, packed: PackedBox) -> Iterator[str]:
    """What the box holds, as it is written, without the parts that do not travel in it."""
    members = {part.identifier: part.group for part in work.parts}
    for name in packed.box.holds:
        is_part, group = name in members, [part for part in members if members[part] == name]
        if not is_part and all(part in packed.parts for part in group):
            yield name
        else:
            yield from (part for part in group or [name] if part in packed.parts)


def _loose(work: Work, packed: Sequence[PackedBox], installation: Installation | None) -> PaperSection:
    boxed = {part for one in packed for part in one.parts}
    omitted = {omission.part for omission in installation.omissions} if installation else set()
    devices = {one.part: one.device for one in installation.substitutions} if installation else {}
    columns = (Column(say("part"), 10), Column(say("name")), Column(say("device"), 14), _REMARK)
    rows = [
        (part.identifier, part.name, devices.get(part.identifier, part.device) or "")
        for part in (*work.parts, *(installation.additions if installation else ()))
        if part.identifier not in boxed | omitted
    ]
    return _section("loose", say("Parts in no box"), columns, rows)


def _devices(work: Work) -> PaperSection:
    columns = (Column(say("device"), 10), Column(say("status"), 13), Column(say("what it is")), _REMARK)
    known = devices_as_logged(work.devices, work.log, work.parts, work.vocabulary)
    rows = [_device(work, device) for device in known.values() if device.listed]
    return _section("devices", say("Devices"), columns, rows)


def _device(work: Work, device: Device) -> tuple[Content, ...]:
    status = named(device.status) if device.status else ""
    like = say("like {device}", device=device.like) if device.like else ""
    stated = _stated(device.statements, work.vocabulary)
    return device.identifier, status, joined([like, stated], "; ")


def _stated(statements: Statements, vocabulary: Vocabulary) -> Words:
    """What is said of a thing, in the order of the vocabulary: `weight 16 kg; length 60 cm`."""
    known = [found for iri, found in vocabulary.characteristics.items() if iri in statements]
    return joined(
        (
            say(
                "{characteristic} {value}",
                characteristic=found,
                value=expression_words(statements[found.iri], vocabulary),
            )
            for found in known
        ),
        "; ",
    )


def _media(files: Sequence[ListedFile]) -> PaperSection:
    columns = (Column(say("for"), 7), Column(say("file"), 24), Column(say("size and SHA-512")), _REMARK)
    return _section(
        "media", say("Media and documents"), columns, [_file(one) for one in files], words("checked")
    )


def _file(one: ListedFile) -> tuple[Content, ...]:
    if one.size is None:
        return one.identifier, one.name, say("not in this package")
    return one.identifier, one.name, (size_words(one.size), ", ", Phrase(one.sha512, PhraseRole.DIGEST))


def _hands() -> PaperSection:
    """Who packed, received, packed again and received again."""
    columns = (Column(say("name")), Column(say("capacity"), 30), SIGNED)
    capacities = words("packed", "received", "packed for the way back", "received again")
    return _section("signed", say("Signatures"), columns, [("", one) for one in capacities], ())
