"""The instructions exported as SHACL: two unrelated engines reach the verdicts that the program reaches.

Source: W3C, Shapes Constraint Language (SHACL), Recommendation of 20 July 2017. The engines are pySHACL and Rudof.
"""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache
from pathlib import Path
from random import Random

import pytest
from examples_read import INSTALLATIONS, proposal, vocabulary
from oracle.drawing import draw_case
from oracle.drawing_together import draw_together
from oracle.program import loaded
from oracle.world import small_world
from oracle.writing import installation_text, work_text
from pyshacl import validate
from rdflib import Graph
from rdflib.namespace import SH

from intent.exports.shacl import CANARY, ShaclGraphs, export_shacl
from intent.variance.case import Case, lay_out
from intent.variance.judge import rulings
from intent.variance.result import Verdict

SEVERITY = {
    Verdict.FORBIDDEN: "Violation",
    Verdict.BREACH: "Violation",
    Verdict.CONTRADICTION: "Warning",
    Verdict.UNKNOWN: "Warning",
    Verdict.UNCOVERED: "Warning",
    Verdict.CONDITIONAL: "Warning",
}
DRAWN, TOGETHER, BATCH = 60, 20, 20
Severities = dict[str, str]


def expected(case: Case) -> Severities:
    """By the name of the fact, what an engine must find: nothing of what is allowed, required or documented."""
    told = [one.row for one in rulings(case) if one.row.verdict is not Verdict.AS_DOCUMENTED]
    found = {f"row-{place}": SEVERITY.get(row.verdict, "") for place, row in enumerate(told, start=1)}
    return {CANARY: "Violation", **{name: severity for name, severity in found.items() if severity}}


def by_pyshacl(exported: ShaclGraphs) -> Severities:
    shapes, data = (Graph().parse(data=text, format="turtle") for text in (exported.shapes, exported.data))
    _, report, _ = validate(data, shacl_graph=shapes)
    assert isinstance(report, Graph)
    found = report.objects(None, SH.result)
    return worst((report.value(one, SH.focusNode), report.value(one, SH.resultSeverity)) for one in found)


def by_rudof(exported: ShaclGraphs) -> Severities:
    rudof = pytest.importorskip("pyrudof", reason="the second engine, pyrudof, is not installed")
    engine = rudof.Rudof(rudof.RudofConfig())
    engine.read_data(exported.data)
    engine.read_shacl(exported.shapes)
    return worst((one.focus_node, one.severity) for one in engine.validate_shacl())


def worst(results: Iterable[tuple[object, object]]) -> Severities:
    found: Severities = {}
    for focus, severity in results:
        name = str(focus).strip("<>").rpartition("fact.")[2]
        word = str(severity).strip("<>").rpartition("#")[2] or str(severity)
        if found.get(name) != "Violation":
            found[name] = word
    return found


def case_of(file: Path) -> Case:
    found = proposal(file)
    return lay_out(found.documentation.work, found.installation)


@cache
def shapes_of(file: Path) -> ShaclGraphs:
    return export_shacl(case_of(file))


@pytest.mark.parametrize("file", INSTALLATIONS, ids=lambda file: file.stem)
def test_two_engines_agree_on_the_examples(file: Path) -> None:
    case, exported = case_of(file), shapes_of(file)
    assert by_pyshacl(exported) == expected(case)
    assert by_rudof(exported) == expected(case)
    assert exported == export_shacl(case)


@pytest.mark.parametrize("file", INSTALLATIONS, ids=lambda file: file.stem)
def test_every_term_of_shacl_that_is_used_exists(file: Path) -> None:
    """A misspelt term passes silently in every engine."""
    shapes = Graph().parse(data=shapes_of(file).shapes, format="turtle")
    used = {node for triple in shapes for node in triple if str(node).startswith(str(SH))}
    known = {f"{SH}{name}" for name in (*SH.__annotations__, "and", "class", "in", "not", "or")}
    assert {str(node) for node in used} <= known


@pytest.mark.parametrize("batch", range((DRAWN + TOGETHER) // BATCH))
def test_two_engines_agree_on_random_works(batch: int) -> None:
    for seed in range(batch * BATCH, (batch + 1) * BATCH):
        chance = Random(seed)
        drawn = draw_case(chance, small_world()) if seed < DRAWN else draw_together(chance)
        texts = work_text(drawn), installation_text(drawn)
        found = loaded(*texts, vocabulary())
        case = lay_out(found.work, found.installation)
        exported, wanted = export_shacl(case), expected(case)
        assert by_pyshacl(exported) == wanted, f"seed {seed}\n{exported.shapes}\n{exported.data}"
        assert by_rudof(exported) == wanted, f"seed {seed}\n{exported.shapes}\n{exported.data}"
