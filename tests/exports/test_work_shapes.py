"""Shapes of a work and data of an installation: a foreign engine finds what the program finds, and what is missing.

Source: W3C, Shapes Constraint Language (SHACL), Recommendation of 20 July 2017. The engines are pySHACL, and for what
is SHACL Core also Rudof.
"""

from __future__ import annotations

import json
import os
from functools import cache
from hashlib import sha256
from pathlib import Path

import pytest
from examples_read import FIRST_OF_EACH, INSTALLATIONS, WORKS, documentation, proposal
from rdflib import RDF, SH, Graph, Literal, URIRef
from rdflib.term import Node

from exports.compared_rows import ByEngine, found_by_engine, rows_compared
from intent.exports.work_shapes.canaries import canary_shapes
from intent.exports.work_shapes.checkable import DATA, RESULTS, SHAPES, checkable_files
from intent.exports.work_shapes.instruction_shapes import shapes_of_work
from intent.exports.work_shapes.shape_names import ShapeNames
from intent.names import INTENT
from intent.variance.case import Case, lay_out

COMPONENTS = {
    "class", "in", "hasValue", "minCount", "maxCount", "minInclusive", "maxInclusive", "minExclusive",
    "maxExclusive", "node", "not", "or", "and", "xone", "property", "qualifiedMinCount", "qualifiedMaxCount",
    "sparql", "datatype", "nodeKind", "pattern", "equals", "disjoint", "lessThan", "closed",
}  # fmt: skip
"""The parameters of SHACL that ask something: Recommendation, sections 4 and 5."""


SMALLEST = min(FIRST_OF_EACH, key=lambda file: file.parents[1].joinpath("work.md").stat().st_size)
TRIED = INSTALLATIONS if os.environ.get("INTENT_EVERY_EXAMPLE") else [SMALLEST]
"""pySHACL takes a minute for a large work: all are tried where that is asked for."""


def case_of(file: Path) -> Case:
    found = proposal(file)
    return lay_out(found.documentation.work, found.installation)


@cache
def files_of(file: Path) -> dict[str, str]:
    return checkable_files(case_of(file))


@cache
def shapes_graph(file: Path) -> Graph:
    return turtle(files_of(file)[SHAPES])


def turtle(text: str) -> Graph:
    return Graph().parse(data=text, format="turtle")


@cache
def found_in(file: Path) -> ByEngine:
    return found_by_engine(shapes_graph(file), turtle(files_of(file)[DATA]))


@pytest.mark.parametrize("file", TRIED, ids=lambda file: file.stem)
def test_an_engine_finds_what_the_program_finds(file: Path) -> None:
    found = found_in(file)
    assert not found.missing
    decided = [row for row in rows_compared(case_of(file), found) if row.is_decided]
    assert decided
    assert not [row for row in decided if row.is_broken != row.is_found_broken]


@pytest.mark.parametrize("file", TRIED, ids=lambda file: file.stem)
def test_the_results_file_says_what_an_engine_finds(file: Path) -> None:
    files, found = files_of(file), found_in(file)
    told = json.loads(files[RESULTS])
    for graph in told["graphs"]:
        assert graph["sha256"] == sha256(files[graph["file"]].encode()).hexdigest()
    names = {iri.rpartition("canary:")[2] for iri in told["must_fail"]}
    assert found.canaries == names
    case = case_of(file)
    by_name = {row.name: row for row in rows_compared(case, found)}
    for row in told["rows"]:
        compared = by_name[f"{row['subject']}: {row['characteristic']}"]
        assert compared.is_decided or not row["decided"], row
        if row["decided"]:
            assert row["violation"] == compared.is_found_broken, row


@pytest.mark.parametrize("work", WORKS, ids=lambda file: file.parent.name)
def test_shapes_are_of_the_work_alone(work: Path) -> None:
    """Whatever the installation, the shapes graph is the same, byte for byte."""
    shapes = shapes_of_work(documentation(work).work)
    for file in INSTALLATIONS:
        if file.parents[1] == work.parent:
            assert files_of(file)[SHAPES] == shapes


@pytest.mark.parametrize("work", WORKS, ids=lambda file: file.parent.name)
def test_there_is_a_canary_for_each_component_that_is_used(work: Path) -> None:
    found = documentation(work).work
    shapes = turtle(shapes_of_work(found))
    used = {name for name in COMPONENTS if (None, SH[name], None) in shapes}
    failing = [URIRef(str(node)) for node in shapes.subjects(SH.targetNode) if "#canary:" in str(node)]
    known = {
        name for node in failing for name in COMPONENTS if (node, SH[name], None) in closure(shapes, node)
    }
    assert used <= known | {"property"}
    assert len(failing) == len(canary_shapes(ShapeNames(found)))


def closure(graph: Graph, node: Node) -> Graph:
    """What is said of a node and of the blank nodes under it, all as of the node."""
    found, left = Graph(), [node]
    while left:
        one = left.pop()
        for _, joint, value in graph.triples((one, None, None)):
            found.add((node, joint, value))
            if not isinstance(value, URIRef | Literal):
                left.append(value)
    return found


@pytest.mark.parametrize(
    ("gone", "named"),
    [
        ((None, INTENT.shown, None), "parts"),
        ((None, INTENT.shows, None), "shown"),
        ((None, INTENT.fromDay, None), "days"),
        ((None, RDF.type, INTENT.WholeShowing), "showing"),
    ],
)
def test_missing_data_fail(gone: tuple[Node | None, Node, Node | None], named: str) -> None:
    data = turtle(files_of(SMALLEST)[DATA])
    data.remove(gone)
    assert found_by_engine(shapes_graph(SMALLEST), data).missing


def test_data_that_are_not_there_at_all_fail() -> None:
    found = found_by_engine(shapes_graph(SMALLEST), Graph())
    assert {"parts", "showing"} <= found.missing
    assert "where-data-are-missing" in found.canaries
