"""Property 6: a graph received as Turtle or JSON-LD gives the same verdicts as its text."""

from __future__ import annotations

import os
import shutil
from pathlib import Path
from random import Random

import pytest
from examples_read import FIRST_OF_EACH, LATEST_OF_EACH, checked, written
from oracle.drawing import draw_case
from oracle.drawing_together import draw_together
from oracle.program import rows_of
from oracle.world import small_world
from oracle.writing import installation_text, work_text

from intent.variance.result import Variance
from intent.verbs import check, convert

FORMATS = {"turtle": ".ttl", "json-ld": ".jsonld"}


def assert_the_same(of_text: Variance, graphs: dict[Path, str], received: Path, format: str) -> None:
    """An installation and its work, sent as graphs to a folder that has neither, are judged as they were as texts."""
    folder = Path(os.path.commonpath([path.parent for path in graphs]))
    sent = []
    for path, text in graphs.items():
        sent.append((received / path.relative_to(folder)).with_suffix(FORMATS[format]))
        sent[-1].parent.mkdir(parents=True, exist_ok=True)
        sent[-1].write_text(text, encoding="utf-8")
    of_graph = check(*sent).variance
    assert rows_of(of_graph) == rows_of(of_text)
    assert of_graph.outcome is of_text.outcome
    assert of_graph.sentence == of_text.sentence


@pytest.mark.parametrize("seed", range(12))
@pytest.mark.parametrize("format", ["turtle", "json-ld"])
def test_a_graph_is_judged_as_its_text(seed: int, format: str, tmp_path: Path) -> None:
    case = draw_case(Random(seed), small_world()) if seed % 3 else draw_together(Random(seed))
    work, installation = tmp_path / "work.md", tmp_path / "proposal.md"
    work.write_text(work_text(case), encoding="utf-8")
    installation.write_text(installation_text(case), encoding="utf-8")
    graphs = {installation: convert(installation, format, work)[0], work: convert(work, format)[0]}
    assert_the_same(check(installation, work).variance, graphs, tmp_path / "received", format)


SENT = [(path, "turtle") for path in LATEST_OF_EACH] + [(path, "json-ld") for path in FIRST_OF_EACH]
"""One example of each work in one format, and another in the other."""


@pytest.mark.parametrize(("path", "format"), SENT, ids=[f"{path.stem}-{format}" for path, format in SENT])
def test_a_graph_of_an_example_is_judged_as_its_text(path: Path, format: str, tmp_path: Path) -> None:
    folder, received = path.parents[1], tmp_path / "received"
    shutil.copytree(folder, received, ignore=shutil.ignore_patterns("work.md", path.name))
    graphs = {file: written(file, format) for file in (path, folder / "work.md")}
    assert_the_same(checked(path).variance, graphs, received, format)
