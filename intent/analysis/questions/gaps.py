"""What counts of a work without being asked, and what no instruction speaks of, group by group of parts."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from intent.analysis.questions.occasion import Occasion
from intent.model.assertions import Aggregate
from intent.model.phrasing import NOT_GIVEN
from intent.model.work import Part
from intent.names import HEIGHT, POSITION, PRESENCE, THE_WORK
from intent.vocabulary.terms import Characteristic

_OF_SOME = {Aggregate.EACH, Aggregate.SAME, Aggregate.DIFFERENT, Aggregate.DIFFERENCE, Aggregate.TOTAL}
_AT_ONCE = 1
"""A loss that is seen at once, as the vocabulary rates it."""
_FOR_EVER = 3
"""A loss that cannot be undone, as the vocabulary rates it."""


@dataclass(frozen=True, slots=True)
class Gap:
    """Characteristics of some parts that nobody has spoken of: of one group, or of several asked about together."""

    parts: tuple[Part, ...]
    characteristics: tuple[Characteristic, ...]

    @property
    def goes_with_device(self) -> bool:
        return any("device" in one.bearers for one in self.characteristics)


def gaps_of_parts(occasion: Occasion) -> Iterator[Gap]:
    """What nobody has spoken of among the parts; what is named and goes with a place, over all groups as one gap."""
    named: dict[str, list[Gap]] = {}
    for gap in _group_by_group(occasion):
        first = gap.characteristics[0]
        if len(gap.characteristics) > 1 or gap.goes_with_device or first.is_measured:
            yield gap
        else:
            named.setdefault(first.iri, []).append(gap)
    for alike in named.values():
        yield Gap(tuple(part for gap in alike for part in gap.parts), alike[0].characteristics)


def gaps_of_work(occasion: Occasion) -> Iterator[tuple[Characteristic, ...]]:
    """What nobody has spoken of among the characteristics of the work as a whole.

    Each that is documented by itself; those of which nothing is documented, and that everybody sees, together.
    """
    spoken, documented = _spoken(occasion), occasion.case.documented
    silent = [
        one
        for one in occasion.work.vocabulary.characteristics.values()
        if "work" in one.unasked_of and (THE_WORK, one.iri) not in spoken
    ]
    yield from ((one,) for one in silent if documented.is_given(THE_WORK, one))
    undocumented = tuple(
        one for one in silent if one.seen == _AT_ONCE and not documented.is_given(THE_WORK, one)
    )
    if undocumented:
        yield undocumented


def _spoken(occasion: Occasion) -> frozenset[tuple[str, str]]:
    """Subjects with the characteristics that an instruction speaks of: a height is half a position."""
    found: set[tuple[str, str]] = set()
    for line in occasion.lines:
        assertion = line.assertion
        members = occasion.case.members[line.identifier]
        if assertion.aggregate is Aggregate.NUMBER:
            found |= {(member, PRESENCE) for member in members}
        elif assertion.aggregate in _OF_SOME and assertion.characteristic:
            named = POSITION if assertion.characteristic == HEIGHT else assertion.characteristic
            found |= {(member, named) for member in members}
    return frozenset(found)


def _group_by_group(occasion: Occasion) -> Iterator[Gap]:
    """Of a device each characteristic by itself; of a place, all those that the same parts lack."""
    vocabulary, spoken = occasion.work.vocabulary, _spoken(occasion)
    groups: dict[str, list[Part]] = {}
    for part in occasion.work.parts:
        groups.setdefault(part.group or part.identifier, []).append(part)
    for parts in groups.values():
        placed: dict[tuple[str, ...], list[Characteristic]] = {}
        for one in vocabulary.characteristics.values():
            if not one.unasked_of & {"device", "place"}:
                continue
            asked = (part for part in parts if vocabulary.applies(one, part.kind.iri))
            silent = [part for part in asked if (part.identifier, one.iri) not in spoken]
            lacking = tuple(part for part in silent if _is_asked(occasion, part, one))
            if lacking and ("device" in one.bearers or one.iri == PRESENCE):
                yield Gap(lacking, (one,))
            elif lacking:
                placed.setdefault(tuple(part.identifier for part in lacking), []).append(one)
        for names, of_place in placed.items():
            yield Gap(tuple(part for part in parts if part.identifier in names), tuple(of_place))


def _is_asked(occasion: Occasion, part: Part, characteristic: Characteristic) -> bool:
    """What is documented is asked about; what is not, where it goes with the device and a loss is for ever.

    What everybody takes for granted is not asked about, nor what follows from other characteristics.
    A text that is one and the same throughout the work leaves nothing to choose.
    """
    documented = occasion.case.documented
    if characteristic.iri == PRESENCE:
        return True
    if not documented.is_given(part.identifier, characteristic):
        return (
            "device" in characteristic.bearers
            and part.device is not None
            and characteristic.undone == _FOR_EVER
        )
    if documented.is_granted(part.identifier, characteristic) or characteristic.is_computed:
        return False
    if characteristic.space != "text":
        return True
    return len({documented.words(one, characteristic) for one in documented.present} - {NOT_GIVEN}) > 1
