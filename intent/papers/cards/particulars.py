"""What hands have to know of a part: the device, its place, what it is to stay as, mains, vents, and its box."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from intent.effects.scene import Scene, Sides
from intent.language.message import Words, joined, named, say
from intent.model.as_proposed import PackedBox
from intent.model.assertions import Named
from intent.model.phrasing import expression_words
from intent.names import YES, term_iri
from intent.papers.cards.card import CardRow
from intent.papers.cards.signals import part_named
from intent.papers.statements_told import characterised, in_order
from intent.planning.concerns import Concern, stated_of

_OF_DEVICE = ("technology", "maker", "model", "serial", "visible-diagonal", "aspect-ratio", "weight")
_OF_PLACE = (
    "support", "power-state", "picture-turn", "height", "fit", "start-offset", "synchronisation", "spacing",
    "barrier-distance", "viewing-distance", "visibility", "cable-visibility", "volume-setting", "handling",
)  # fmt: skip
_OF_MAINS = ("plug", "rated-voltage", "rated-frequency", "power", "earthing", "circuit")
_PLAIN = {"support", "power-state", "rated-voltage", "rated-frequency", "power", "earthing"}
"""Characteristics whose values say by themselves what they are of: `in a rack`, `230 V`."""


def particulars(
    sides: Sides, part: str, boxes: Iterable[PackedBox], carriers: Mapping[str, str]
) -> Iterator[CardRow]:
    """The rows of a part, of which those without anything in them are left out.

    ``carriers`` are the parts on which others surely stand.
    """
    scene = sides.proposed
    told = (
        (_device_label(scene, part), _device(sides, part)),
        (say("placed"), _stated(scene, part, _OF_PLACE)),
        (say("stands on"), part_named(scene, carriers[part]) if part in carriers else ""),
        (say("as it is"), _as_it_is(scene, part)),
        (say("mains"), _stated(scene, part, _OF_MAINS)),
        (say("vents"), _vents(scene, part)),
        (say("box"), _box(scene, part, boxes)),
    )
    yield from (CardRow(label, (words,)) for label, words in told if words)


def _device_label(scene: Scene, part: str) -> Words:
    """What the first row is called; of a thing of which nothing but a weight is known, the weight."""
    if scene.device(part):
        return say("device")
    known = [name for name in _OF_DEVICE if scene.text(part, name)]
    return scene.called("weight") if known == ["weight"] else say("what it is")


def _device(sides: Sides, part: str) -> Words:
    """The device, by what one can tell it by."""
    scene = sides.proposed
    device = joined([scene.device(part) or "", *(scene.text(part, one) for one in _OF_DEVICE)], ", ")
    before = sides.documented.device(part) if part in scene.case.substituted else None
    return say("{device}, in the place of {other}", device=device, other=before) if before else device


def _stated(scene: Scene, part: str, names: Iterable[str]) -> Words:
    """What is written of some characteristics, in one line."""
    return joined(
        (
            scene.text(part, name)
            if name in _PLAIN
            else characterised(scene.called(name), scene.text(part, name))
            for name in names
            if scene.states(part, name)
        ),
        ", ",
    )


def _as_it_is(scene: Scene, part: str) -> Words:
    """`casing hidden, deliberate damage, repair none`: the shipped terms that matter to hands, and all own ones."""
    vocabulary, stated = scene.vocabulary, stated_of(scene, part, Concern.CONDITION)
    told: list[Words] = []
    for iri in in_order(vocabulary, stated):
        characteristic = named(vocabulary.named(iri))
        is_so = [item.concept for item in stated[iri].items if isinstance(item, Named)] == [YES]
        value = expression_words(stated[iri], vocabulary)
        told.append(characteristic if is_so else characterised(characteristic, value))
    return joined(told, ", ")


def _vents(scene: Scene, part: str) -> Words:
    """How much is to stay free, and on which side of the device as it was built."""
    where, clear = (
        scene.text(part, name) if scene.states(part, name) else ""
        for name in ("vent-position", "vent-clearance")
    )
    if where and clear:
        return say("{side}, keep {clearance} free", side=where, clearance=clear)
    if where:
        return say("{side}, keep free", side=where)
    return say("keep {clearance} free", clearance=clear) if clear else ""


def _box(scene: Scene, part: str, boxes: Iterable[PackedBox]) -> Words:
    """The box that a part comes in, and which way up that travels."""
    orientation = term_iri("transport-orientation")
    return joined(
        (
            joined(
                [
                    one.box.identifier,
                    expression_words(one.box.statements[orientation], scene.vocabulary)
                    if orientation in one.box.statements
                    else "",
                ],
                ", ",
            )
            for one in boxes
            if part in one.parts
        ),
        "; ",
    )
