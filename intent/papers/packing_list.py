"""What travels: the boxes and what is in them, devices, and the media and documents of the package, to be ticked."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from intent.dossier.writing import statement_cells
from intent.language.locale import ENGLISH
from intent.language.message import say
from intent.language.sizes import size_words
from intent.model.work import Crate, Device, Work
from intent.papers.annex import SIGNED, left_out_words, unbroken_cell
from intent.papers.elements import Element, digest, element
from intent.papers.form_page import Column, sheet, to_fill
from intent.papers.standing_page import section
from intent.redaction.withholding import WithheldKind

_WAYS = ("Left", "Came")
_REMARK = Column("Remark", 18)


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


def write_packing_list(
    work: Work, files: Sequence[ListedFile], sorts: Sequence[WithheldKind], foot: str
) -> bytes:
    """The list as one page."""
    lead = ["Packing and media list. Tick on leaving and on arriving."]
    return sheet(work.title, lead, _sections(work, files, sorts), foot)


def _sections(work: Work, files: Sequence[ListedFile], sorts: Sequence[WithheldKind]) -> Iterator[Element]:
    boxed = {held for box in work.boxes for held in _held(work, box)}
    loose = [part for part in work.parts if part.identifier not in boxed]
    devices = [_device(work, device) for device in work.devices if device.listed]
    if work.boxes:
        columns = [Column("Box", 10), Column("Holds", 24), Column("What it is"), _REMARK]
        yield section("boxes", "Boxes", [to_fill(_WAYS, columns, [_box(work, box) for box in work.boxes])])
    if loose:
        columns = [Column("Part", 10), Column("Name"), Column("Device", 14), _REMARK]
        rows = [(part.identifier, part.name, part.device or "") for part in loose]
        yield section("loose", "Parts in no box", [to_fill(_WAYS, columns, rows)])
    if devices:
        columns = [Column("Device", 10), Column("Status", 10), Column("What it is"), _REMARK]
        yield section("devices", "Devices", [to_fill(_WAYS, columns, devices)])
    if files:
        columns = [Column("For", 7), Column("File", 24), Column("Size and SHA-512"), _REMARK]
        yield section(
            "media", "Media and documents", [to_fill(["Checked"], columns, [_file(one) for one in files])]
        )
    yield section("left-out", "What is not in this package", [element("p", left_out_words(sorts))])
    signing = [Column("Name"), Column("Capacity", 30), SIGNED]
    hands = [("", "packed"), ("", "received"), ("", "packed for the way back"), ("", "received again")]
    yield section("signed", "Signatures", [to_fill([], signing, hands)])


def _held(work: Work, box: Crate) -> Iterator[str]:
    """The parts in a box, where a group stands for all of its own."""
    for name in box.holds:
        members = [part.identifier for part in work.parts if part.group == name]
        yield from members or [name]


def _box(work: Work, box: Crate) -> tuple[str, Element, str]:
    return (
        box.identifier,
        unbroken_cell(", ".join(box.holds)),
        _stated(statement_cells(box.statements, work.vocabulary)),
    )


def _device(work: Work, device: Device) -> tuple[str, str, str]:
    status = device.status.label if device.status else ""
    like = str(say("like {device}", device=device.like)) if device.like else ""
    stated = _stated(statement_cells(device.statements, work.vocabulary))
    return device.identifier, status, "; ".join(filter(None, [like, stated]))


def _stated(cells: Mapping[str, str]) -> str:
    return "; ".join(f"{name} {value}" for name, value in cells.items() if value)


def _file(one: ListedFile) -> tuple[str, str, Element | str]:
    if one.size is None:
        return one.identifier, one.name, "not in this package"
    size = ENGLISH.say(size_words(one.size))
    return one.identifier, one.name, element("span", f"{size}, ", digest(one.sha512))
