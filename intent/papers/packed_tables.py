"""The tables of a packing list: the boxes with their seals, what is in each, and what has none."""

from __future__ import annotations

from collections.abc import Sequence

from rdflib import RDFS

from intent.language.message import Words, joined, say, words
from intent.model.phrasing import expression_words
from intent.model.work import Crate
from intent.names import INTENT, TERM
from intent.papers.document import Column, PaperSection, PaperTable, TableRole
from intent.papers.inline import Break, Content, with_below
from intent.papers.statements_told import statements_words
from intent.planning.shipment import BOX_SIDES, Cargo, CargoKind, FilledBox, Shipment
from intent.vocabulary.terms import Vocabulary

_WAYS = words("left", "came")
_CONDITIONS = (Column(say("condition out"), 15), Column(say("condition in"), 15))
_LIES = str(TERM["transport-orientation"])
_TOLD_APART = {str(TERM[name]) for name in (*BOX_SIDES, "weight")}


def ticked_section(
    anchor: str,
    title: Words,
    columns: tuple[Column, ...],
    rows: Sequence[tuple[Content, ...]],
    ticks: tuple[Words, ...] = _WAYS,
) -> PaperSection:
    """A table to tick; a section without a block where there is nothing in it."""
    table = PaperTable(columns=columns, rows=tuple(rows), role=TableRole.CHECKLIST, ticks=ticks)
    return PaperSection(title=title, anchor=anchor, blocks=(table,) if rows else ())


def boxes_section(shipment: Shipment, vocabulary: Vocabulary) -> PaperSection:
    columns = (
        Column(say("box"), 12),
        Column(say("size and weight"), 24),
        Column(say("how it travels")),
        Column(say("seal out"), 13),
        Column(say("seal in"), 13),
    )
    rows = [(_named(one.box), _size(one, vocabulary), _said(one.box, vocabulary)) for one in shipment.boxes]
    return ticked_section("boxes", say("Boxes and seals"), columns, rows)


def _named(box: Crate) -> Content:
    name = box.fields.get(str(RDFS.label), "")
    return (box.identifier, Break.LINE, name) if name else box.identifier


def _size(filled: FilledBox, vocabulary: Vocabulary) -> Content:
    """`95 cm × 55 cm × 52 cm`, and below it `34 kg`; `not given` for what nobody has stated."""
    stated = filled.box.statements
    sides = [expression_words(stated.get(str(TERM[side])), vocabulary) for side in BOX_SIDES]
    is_measured = any(str(TERM[side]) in stated for side in BOX_SIDES)
    size = joined(sides, " × ") if is_measured else say("not measured")
    weight = stated.get(str(TERM.weight))
    return size, Break.LINE, expression_words(weight, vocabulary) if weight else say("not weighed")


def _said(box: Crate, vocabulary: Vocabulary) -> Content:
    """How a box may lie on its way; below that what else is stated of it, and a remark."""
    lies = box.statements.get(_LIES)
    others = {iri: value for iri, value in box.statements.items() if iri not in {_LIES, *_TOLD_APART}}
    beside = joined([statements_words(vocabulary, others), box.fields.get(str(INTENT.note), "")], "; ")
    return with_below(expression_words(lies, vocabulary) if lies else "", beside)


def contents_section(shipment: Shipment, vocabulary: Vocabulary) -> PaperSection:
    """One row for each thing, so that the condition of each can be noted."""
    columns = (Column(say("box"), 10), Column(say("what")), Column(say("device"), 19), *_CONDITIONS)
    rows: list[tuple[Content, ...]] = []
    for filled in shipment.boxes:
        box = filled.box.identifier
        rows += [(box, *_told(one, vocabulary)) for one in filled.cargo]
        if not filled.cargo:
            rows.append((box, say("nothing is said of what is in it"), ""))
    return ticked_section("contents", say("In the boxes"), columns, rows)


def _told(cargo: Cargo, vocabulary: Vocabulary) -> tuple[Content, Content]:
    """What a thing is, its code below; and the device in its place, with maker and model."""
    make = _make(cargo, vocabulary)
    if cargo.kind is CargoKind.SPARE:
        return cargo.name or say("spare device"), with_below(cargo.identifier, make)
    named = with_below(cargo.name, cargo.identifier) if cargo.name else cargo.identifier
    return named, with_below(cargo.device, make) if cargo.device else make


def _make(cargo: Cargo, vocabulary: Vocabulary) -> Words:
    stated = (cargo.statements.get(str(TERM[name])) for name in ("maker", "model"))
    return joined(expression_words(one, vocabulary) for one in stated if one)


def loose_section(shipment: Shipment, vocabulary: Vocabulary) -> PaperSection:
    columns = (Column(say("what")), Column(say("device"), 20), Column(say("weight"), 12), *_CONDITIONS)
    rows: list[tuple[Content, ...]] = []
    for one in shipment.loose:
        if one.kind is CargoKind.MATERIAL:
            continue  # it may go as a file, and is told apart
        weight = one.statements.get(str(TERM.weight))
        rows.append((*_told(one, vocabulary), expression_words(weight, vocabulary)))
    return ticked_section("loose", say("In no box"), columns, rows)
