"""What travels: the boxes with all that is in them, what has no box, and what the boxes weigh and measure together."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from enum import Enum
from functools import reduce

from rdflib import RDFS

from intent.model.as_proposed import PackedBox, packed_boxes, parts_as_proposed, parts_of
from intent.model.assertions import Statements
from intent.model.installation import Installation
from intent.model.meaning import given_value
from intent.model.work import Crate, Part, Work
from intent.names import TERM
from intent.values.bounds import ONE, is_known, natural, times, total
from intent.values.regions import Interval, Region
from intent.variance.two_states import Entries, entries_of
from intent.vocabulary.terms import Vocabulary

BOX_SIDES = ("length", "width", "height")


class CargoKind(Enum):
    """What a thing that travels is."""

    PART = "part"
    SPARE = "spare"
    """A device that stands in no part's place."""
    MATERIAL = "material"
    ACCESSORY = "accessory"


@dataclass(frozen=True, slots=True, kw_only=True)
class Cargo:
    """One thing that travels."""

    kind: CargoKind
    name: str
    """Empty where it has none; of an accessory its words."""
    identifier: str = ""
    """Empty for an accessory."""
    device: str = ""
    """The device in a part's place."""
    statements: Statements = field(default_factory=dict)
    """What is known of it and of its device."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FilledBox:
    """A box with what is in it."""

    box: Crate
    cargo: tuple[Cargo, ...]
    staying: tuple[str, ...]
    """The parts that are documented in it and do not go in it."""
    weight: Interval
    """In kilograms, as it is stated for the box."""
    volume: Interval
    """In cubic metres, over all."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Shipment:
    """All that travels."""

    boxes: tuple[FilledBox, ...]
    loose: tuple[Cargo, ...]
    """What has no box; material too, which may go as a file."""

    @property
    def weight(self) -> Interval:
        """Of all boxes, in kilograms."""
        return total(one.weight for one in self.boxes)

    @property
    def volume(self) -> Interval:
        """Of all boxes, in cubic metres."""
        return total(one.volume for one in self.boxes)

    @property
    def unweighed(self) -> tuple[str, ...]:
        """The boxes whose weight is not known."""
        return tuple(one.box.identifier for one in self.boxes if not is_known(one.weight))

    @property
    def unmeasured(self) -> tuple[str, ...]:
        """The boxes of which a side is not known."""
        return tuple(one.box.identifier for one in self.boxes if not is_known(one.volume))


def shipment_of(work: Work, installation: Installation | None) -> Shipment:
    """What goes to a showing; of a work for which none is proposed, all that it has."""
    packed = packed_boxes(work, installation)
    stock = _stock_of(work, installation)
    boxes = tuple(_filled(one, stock, work, installation) for one in packed)
    boxed = {one.identifier for filled in boxes for one in filled.cargo}
    carried = (one for one in stock.cargo.values() if one.kind in {CargoKind.PART, CargoKind.MATERIAL})
    return Shipment(boxes=boxes, loose=tuple(one for one in carried if one.identifier not in boxed))


@dataclass(frozen=True, slots=True, kw_only=True)
class _Stock:
    """Everything that could be in a box, and where it belongs."""

    cargo: Mapping[str, Cargo]
    """Parts that are there, devices, material, by their identifiers and in the order in which they are listed."""
    parts: Sequence[Part]
    """Those that are there, each with its device as proposed."""
    placed: frozenset[str]
    """The devices that the documentation gives to a part."""


def _stock_of(work: Work, installation: Installation | None) -> _Stock:
    pool = installation.devices if installation else ()
    entries, parts = entries_of(work, pool), parts_as_proposed(work, installation)
    proposed = (
        {one.part: one.statements for one in installation.substitutions if one.statements}
        if installation
        else {}
    )
    cargo = {part.identifier: _part(part, entries, proposed.get(part.identifier)) for part in parts}
    for device in (*work.devices, *pool):
        cargo[device.identifier] = Cargo(
            kind=CargoKind.SPARE,
            name=device.fields.get(str(RDFS.label), ""),
            identifier=device.identifier,
            statements=entries.of(device.identifier),
        )
    for one in work.material:
        cargo[one.identifier] = Cargo(
            kind=CargoKind.MATERIAL, name=one.name, identifier=one.identifier, statements=one.statements
        )
    placed = frozenset(part.device for part in work.parts if part.device)
    return _Stock(cargo=cargo, parts=parts, placed=placed)


def _part(part: Part, entries: Entries, proposed: Statements | None) -> Cargo:
    """A part with its device; what is said of the device that left is not said of the one that comes."""
    own = part.statements if proposed is None else proposed
    return Cargo(
        kind=CargoKind.PART,
        name=part.name,
        identifier=part.identifier,
        device=part.device or "",
        statements={**entries.of(part.device), **own},
    )


def _filled(packed: PackedBox, stock: _Stock, work: Work, installation: Installation | None) -> FilledBox:
    box, is_packed_anew = packed.box, installation is not None and packed.box in installation.boxes
    names = frozenset(_names_in(packed, stock, is_packed_anew))
    accessories = (Cargo(kind=CargoKind.ACCESSORY, name=words) for words in box.accessories)
    documented = () if is_packed_anew else parts_of(box, work.parts)
    return FilledBox(
        box=box,
        cargo=(*(one for name, one in stock.cargo.items() if name in names), *accessories),
        staying=tuple(part for part in documented if part not in packed.parts),
        weight=_bounds(box.statements, "weight", work.vocabulary),
        volume=reduce(times, (_bounds(box.statements, side, work.vocabulary) for side in BOX_SIDES), ONE),
    )


def _names_in(packed: PackedBox, stock: _Stock, is_packed_anew: bool) -> Iterator[str]:
    """What a box holds as it goes: parts for their groups and devices, and spares; nothing of what stays at home."""
    parts = [part for part in stock.parts if part.identifier in packed.parts]
    known = {part.identifier for part in stock.parts}
    for name in packed.box.holds:
        meant = [part.identifier for part in parts if name in {part.identifier, part.group, part.device}]
        yield from meant
        if not meant and name not in known and (is_packed_anew or name not in stock.placed):
            yield name


def _bounds(statements: Statements, characteristic: str, vocabulary: Vocabulary) -> Interval:
    found = vocabulary.characteristics[str(TERM[characteristic])]
    value = given_value(statements.get(found.iri), found, vocabulary)
    assert isinstance(value, Region)
    return natural(value.bounds)
