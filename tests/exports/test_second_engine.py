"""Two unrelated engines find the same with the shapes of a work, and every query has two readers.

Sources: W3C, Shapes Constraint Language (SHACL), 20 July 2017; SPARQL 1.1 Query Language, 21 March 2013. The
engines are pySHACL over rdflib and Rudof over Oxigraph.
"""

from __future__ import annotations

from pathlib import Path
from random import Random

import pytest
from examples_read import INSTALLATIONS, WORKS, documentation, proposal
from oracle.drawing import draw_case
from oracle.drawing_together import draw_together
from oracle.world import small_world
from pyoxigraph import Store
from rdflib import SH, Graph

from exports.compared_rows import case_of_drawn, found_by_engine, found_by_rudof, rows_compared
from exports.test_shapes_and_changes import changed
from intent.exports.work_shapes.instruction_shapes import shapes_of_work
from intent.exports.work_shapes.shown_data import installation_data
from intent.variance.case import lay_out


@pytest.mark.parametrize("seed", range(1000, 1015))
def test_two_engines_find_the_same(seed: int) -> None:
    chance = Random(seed)
    drawn = draw_case(chance, small_world()) if seed % 3 else draw_together(chance)
    shapes = shapes_of_work(case_of_drawn(drawn).work)
    data = installation_data(case_of_drawn(changed(chance, drawn)))
    graphs = [Graph().parse(data=text, format="turtle") for text in (shapes, data)]
    found, other = found_by_engine(*graphs), found_by_rudof(shapes, data)
    assert (other.broken, other.undecided) == (found.broken, found.undecided)


@pytest.mark.parametrize("work", WORKS, ids=lambda file: file.parent.name)
def test_every_query_is_read_by_another_reader(work: Path) -> None:
    shapes = Graph().parse(data=shapes_of_work(documentation(work).work), format="turtle")
    declared = "".join(
        f"PREFIX {shapes.value(one, SH.prefix)}: <{shapes.value(one, SH.namespace)}>\n"
        for one in shapes.objects(None, SH.declare)
    )
    queries = set(shapes.objects(None, SH.select))
    assert queries
    for query in queries:
        Store().query(declared + str(query))


@pytest.mark.parametrize("file", INSTALLATIONS, ids=lambda file: file.stem)
def test_the_second_engine_finds_what_the_program_finds(file: Path) -> None:
    told = proposal(file)
    case = lay_out(told.documentation.work, told.installation)
    found = found_by_rudof(shapes_of_work(case.work), installation_data(case))
    assert not found.missing
    decided = [row for row in rows_compared(case, found) if row.is_decided]
    assert decided
    assert not [row for row in decided if row.is_broken != row.is_found_broken]
