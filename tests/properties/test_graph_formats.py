"""Property 6: a graph received as Turtle or JSON-LD gives the same verdicts as its text."""

from __future__ import annotations

import shutil
from pathlib import Path
from random import Random

import pytest
from oracle.drawing import draw_case
from oracle.drawing_together import draw_together
from oracle.program import rows_of
from oracle.writing import installation_text, work_text

from intent.verbs import check, convert
from properties.strategies import INSTALLATIONS, world

FORMATS = {"turtle": ".ttl", "json-ld": ".jsonld"}


def assert_the_same(installation: Path, work: Path, received: Path, format: str) -> None:
    """Both texts, sent as graphs to a folder that has neither, are judged as they were."""
    of_text = check(installation, work).variance
    sent = []
    for path, text in (
        (installation, convert(installation, format, work)[0]),
        (work, convert(work, format)[0]),
    ):
        sent.append((received / path.relative_to(work.parent)).with_suffix(FORMATS[format]))
        sent[-1].parent.mkdir(parents=True, exist_ok=True)
        sent[-1].write_text(text, encoding="utf-8")
    of_graph = check(*sent).variance
    assert rows_of(of_graph) == rows_of(of_text)
    assert of_graph.outcome is of_text.outcome
    assert of_graph.sentence == of_text.sentence


@pytest.mark.parametrize("seed", range(12))
@pytest.mark.parametrize("format", ["turtle", "json-ld"])
def test_a_graph_is_judged_as_its_text(seed: int, format: str, tmp_path: Path) -> None:
    case = draw_case(Random(seed), world()) if seed % 3 else draw_together(Random(seed))
    work, installation = tmp_path / "work.md", tmp_path / "proposal.md"
    work.write_text(work_text(case), encoding="utf-8")
    installation.write_text(installation_text(case), encoding="utf-8")
    assert_the_same(installation, work, tmp_path / "received", format)


SENT = [(path, "turtle") for path in INSTALLATIONS] + [
    (next(path for path in INSTALLATIONS if path.parents[1] == work), format)
    for work in sorted({path.parents[1] for path in INSTALLATIONS})
    for format in FORMATS
    if format != "turtle"
]
"""Every example in one format, and one of each work in the others."""


@pytest.mark.parametrize(("path", "format"), SENT, ids=[f"{path.stem}-{format}" for path, format in SENT])
def test_a_graph_of_an_example_is_judged_as_its_text(path: Path, format: str, tmp_path: Path) -> None:
    folder, received = path.parents[1], tmp_path / "received"
    shutil.copytree(folder, received, ignore=shutil.ignore_patterns("work.md", path.name))
    assert_the_same(path, folder / "work.md", received, format)
