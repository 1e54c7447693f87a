"""The files by which a stranger checks an installation: shapes of its work, its data, and what is to be found."""

from __future__ import annotations

from intent.exports.work_shapes.expected_results import expected_results
from intent.exports.work_shapes.instruction_shapes import shapes_of_work
from intent.exports.work_shapes.shown_data import installation_data
from intent.variance.case import Case

SHAPES, DATA, RESULTS = "work-shapes.ttl", "installation-data.ttl", "expected-results.json"


def checkable_files(case: Case) -> dict[str, str]:
    """The files by their names; the same bytes for the same case."""
    graphs = {SHAPES: shapes_of_work(case.work), DATA: installation_data(case)}
    return {**graphs, RESULTS: expected_results(case, graphs)}
