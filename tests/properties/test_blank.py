"""Property 8: a cell left blank never gives `acceptable` where some value in it would not; saying less never wins."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st
from oracle.cases import Case
from oracle.world import Written, small_world
from oracle.writing import installation_text, work_text

from properties.strategies import GOOD, crowded, fixed, over, verdicts

Cell = tuple[str, str]


def cells(case: Case) -> list[Cell]:
    """The cells that would stand for `not given` if they were blank: of new devices, additions and the venue."""
    found = [
        (place.name, name)
        for place in case.substitutions
        for name, trait in small_world().items()
        if trait.bearer == "device" and name not in case.devices.get(place.device, {})
    ]
    found += [(place.name, "technology") for place in case.additions if place.kind == "display"]
    return [*found, ("the venue", "mains")]


def filled(case: Case, cell: Cell, written: Written | None) -> Case:
    """The case with something else in a cell, or nothing."""
    name, trait = cell
    if name == "the venue":
        return replace(case, venue=over(case.venue, trait, written))
    return replace(
        case,
        substitutions=tuple(
            replace(place, cells=over(place.cells, trait, written)) if place.name == name else place
            for place in case.substitutions
        ),
        additions=tuple(
            replace(place, cells=over(place.cells, trait, written)) if place.name == name else place
            for place in case.additions
        ),
    )


def worse(case: Case, cell: Cell) -> Iterator[str]:
    """Each value that makes what was acceptable with a blank cell not acceptable."""
    blank = filled(case, cell, None)
    rows, outcome = verdicts(work_text(blank), installation_text(blank))
    row = rows.get(cell, "none")
    for written in small_world()[cell[1]].cells:
        with_value = filled(case, cell, written)
        found, other = verdicts(work_text(with_value), installation_text(with_value))
        if row in GOOD and found.get(cell, "none") not in GOOD:
            yield f"{cell}: {row} where blank, {found.get(cell)} with {written.text}"
        if outcome == "acceptable" and other != "acceptable":
            yield f"{outcome} where {cell} is blank, {other} with {written.text}"


@given(case=crowded(), which=st.integers(0, 100))
@fixed(60)
def test_a_blank_cell_never_wins(case: Case, which: int) -> None:
    spoken = {line.saying.trait for line in case.lines}
    among = [cell for cell in cells(case) if cell[1] in spoken] or cells(case)
    cell = among[which % len(among)]
    found = list(worse(case, cell))
    assert not found, "\n".join([*found, work_text(case), installation_text(filled(case, cell, None))])
