"""Property 8, of the documentation: a cell left blank, or a broad term, is never better than a value would be."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st
from oracle.cases import Case, Place
from oracle.world import Written, small_world
from oracle.writing import installation_text, work_text

from properties.strategies import crowded, fixed, over, verdicts
from properties.test_refusals import OUTCOMES

Cell = tuple[str, str]
"""A part, a device or the work, and what is documented of it."""


def documented_cells(case: Case) -> Iterator[Cell]:
    """Every cell of the work that could be filled in, or left blank."""
    for name, trait in small_world().items():
        if name == "presence" or trait.bearer == "venue":
            continue
        if trait.bearer == "work":
            yield "the work", name
        elif name in {"model", "weight"}:
            yield from ((place.device, name) for place in case.places if place.device in case.devices)
        else:
            yield from ((place.name, name) for place in case.places)


def documented_with(case: Case, cell: Cell, written: Written | None) -> Case:
    """The case with something else documented in a cell, or nothing."""
    name, trait = cell

    def placed(place: Place) -> Place:
        return replace(place, cells=over(place.cells, trait, written)) if place.name == name else place

    if name == "the work":
        return replace(case, work=over(case.work, trait, written))
    devices = {
        device: over(of, trait, written) if device == name else of for device, of in case.devices.items()
    }
    return replace(case, devices=devices, places=tuple(placed(place) for place in case.places))


def worse(case: Case, cell: Cell, less: Written | None, values: list[Written]) -> Iterator[str]:
    """How the outcome is better with less documented than a value gives."""
    before = documented_with(case, cell, less)
    _, outcome = verdicts(work_text(before), installation_text(before))
    found = {}
    for value in values:
        more = documented_with(case, cell, value)
        found[value.text] = verdicts(work_text(more), installation_text(more))[1]
    best = min(found.values(), key=OUTCOMES.index)
    if OUTCOMES.index(outcome) < OUTCOMES.index(best) or (
        outcome == "acceptable" and {*found.values()} != {outcome}
    ):
        told = less.text if less else "blank"
        yield f"{cell}: {outcome} where {told}, {found}\n{work_text(before)}\n{installation_text(before)}"


def single(trait: str) -> list[Written]:
    """The values of a characteristic that say one thing: no range, and no term that only gathers others."""
    return [
        written
        for written in small_world()[trait].cells
        if "±" not in written.text and written.text not in {"flat panel", "projector"}
    ]


def chosen(case: Case, which: int) -> Cell:
    """One of the cells, sooner one of which an instruction speaks."""
    every = list(documented_cells(case))
    spoken = {line.saying.trait for line in case.lines}
    among = [cell for cell in every if cell[1] in spoken] or every
    return among[which % len(among)]


@given(case=crowded(), which=st.integers(0, 100))
@fixed(60)
def test_nothing_documented_is_never_better(case: Case, which: int) -> None:
    cell = chosen(case, which)
    found = list(worse(case, cell, None, single(cell[1])))
    assert not found, found[0]


@given(case=crowded(), which=st.integers(0, 100))
@fixed(60)
def test_a_broad_term_documented_is_never_better(case: Case, which: int) -> None:
    cell = case.places[which % len(case.places)].name, "technology"
    terms = {written.text: written for written in small_world()["technology"].cells}
    narrower = {"flat panel": ("LCD", "OLED"), "projector": ("video projector",)}
    for broad, names in narrower.items():
        values = [terms[name] for name in names if name in terms]
        found = list(worse(case, cell, terms[broad], values)) if broad in terms and values else []
        assert not found, found[0]
