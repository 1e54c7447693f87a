"""Property 8: a range or a broader term is acceptable only if every value that it may stand for is."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st
from oracle.cases import Case
from oracle.world import Written, small_world
from oracle.writing import installation_text, work_text

from properties.strategies import GOOD, crowded, fixed, verdicts
from properties.test_blank import Cell, cells, filled


def narrower(cell: Cell, broad: Written) -> list[Written]:
    """What may stand in a cell and says more than another text does."""
    return [
        written
        for written in small_world()[cell[1]].cells
        if written.cell is not None and broad.cell is not None and written.cell < broad.cell
    ]


def outcome_and_row(case: Case, cell: Cell) -> tuple[str, str]:
    rows, outcome = verdicts(work_text(case), installation_text(case))
    return outcome, rows.get(cell, "none")


@given(case=crowded(), which=st.integers(0, 100))
@fixed(30)
def test_a_range_or_a_broader_term_never_wins(case: Case, which: int) -> None:
    spoken = {line.saying.trait for line in case.lines}
    among = [cell for cell in cells(case) if cell[1] in spoken] or cells(case)
    cell = among[which % len(among)]
    for broad in small_world()[cell[1]].cells:
        values = narrower(cell, broad)
        if not values:
            continue
        less = filled(case, cell, broad)
        outcome, row = outcome_and_row(less, cell)
        for value in values:
            more = filled(case, cell, value)
            found, its = outcome_and_row(more, cell)
            said = f"{cell}: {outcome}, {row} with {broad.text}; {found}, {its} with {value.text}"
            text = f"{said}\n{work_text(case)}\n{installation_text(less)}"
            assert row not in GOOD or its in GOOD, text
            assert outcome != "acceptable" or found == "acceptable", text
