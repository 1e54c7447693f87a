"""Property 1: text to graph to text to graph; the two graphs are isomorphic."""

from __future__ import annotations

import shutil
from pathlib import Path
from random import Random

import pytest
from examples_read import INSTALLATIONS, WORKS, documentation, proposal, vocabulary
from hypothesis import given
from hypothesis import strategies as st
from oracle.cases import Case
from oracle.expecting import draw_expected
from oracle.program import loaded
from oracle.writing import installation_text, work_text
from rdflib import Graph
from rdflib.compare import graph_diff, isomorphic

from intent.dossier.work_text import read_work
from intent.dossier.write_installation import write_installation
from intent.dossier.write_work import write_work
from intent.exports.converting import converted_work
from intent.reading.proposal import read_proposal
from intent.record.load_work import load_work
from intent.variance.result import Verdict
from properties.strategies import cases, fixed, seeds

TESTS = Path(__file__).parents[1]
LANGUAGES = TESTS / "dossier" / "languages"
WITH_EVERYTHING = (TESTS / "exports" / "marked.md", *sorted(LANGUAGES.glob("*.md")))


def told(first: Graph, second: Graph, text: str) -> str:
    _, lost, gained = graph_diff(first, second)
    return f"lost:\n{lost.serialize()}\ngained:\n{gained.serialize()}\n{text}"


def assert_same(first: Graph, second: Graph, text: str) -> None:
    assert isomorphic(first, second), told(first, second, text)


@given(case=cases(), seed=seeds(), verdict=st.sampled_from(["none", *Verdict]))
@fixed(120)
def test_a_work_and_an_installation_survive_being_written(case: Case, seed: int, verdict: str) -> None:
    expectation = draw_expected(Random(seed), case).table(verdict)
    once = loaded(work_text(case) + expectation, installation_text(case), vocabulary())
    work = write_work(once.work)
    installation = write_installation(once.installation, once.work)
    again = loaded(work, installation, vocabulary())
    assert_same(once.work_reading.graph, again.work_reading.graph, work)
    assert_same(once.installation_reading.graph, again.installation_reading.graph, installation)


@pytest.mark.parametrize("path", WORKS, ids=lambda path: path.parent.name)
def test_the_examples_survive_being_written(path: Path) -> None:
    once = documentation(path)
    text, lost = converted_work(once, "markdown")
    assert not lost
    again = read_work(text, "work.md", once.work.vocabulary)
    assert_same(once.graph, again.graph, "")


@pytest.mark.parametrize("path", WITH_EVERYTHING, ids=lambda path: path.stem)
def test_a_work_with_every_section_survives_being_written(path: Path) -> None:
    once = read_work(path.read_text(encoding="utf-8"), "work.md", vocabulary())
    text = write_work(load_work(once.triples, once.iri, vocabulary()))
    assert_same(once.graph, read_work(text, "work.md", vocabulary()).graph, text)


@pytest.mark.parametrize("path", INSTALLATIONS, ids=lambda path: path.stem)
def test_the_installations_of_the_examples_survive_being_written(path: Path, tmp_path: Path) -> None:
    once = proposal(path)
    text = write_installation(once.installation, once.documentation.work)
    folder = tmp_path / path.parents[1].name
    shutil.copytree(path.parents[1], folder)
    target = folder / "installations" / path.name
    target.write_text(text, encoding="utf-8")
    assert_same(once.graph, read_proposal(target, None, vocabulary()).graph, text)


@pytest.mark.parametrize(
    ("language", "own", "others"),
    [
        (
            "german",
            ["auf dem Kopf", "Bildröhre", "| Drehung ", "höchstens 12 kg"],
            ["upside down", "display"],
        ),
        (
            "french",
            ["à l'envers", "tube cathodique", "| rotation ", "d'au plus 12 kg"],
            ["upside down", "display"],
        ),
        ("english", ["upside down", "cathode-ray tube", "| rotation "], ["auf dem Kopf"]),
    ],
)
def test_a_dossier_comes_back_in_its_own_language(language: str, own: list[str], others: list[str]) -> None:
    once = read_work((LANGUAGES / f"{language}.md").read_text(encoding="utf-8"), "work.md", vocabulary())
    text = write_work(load_work(once.triples, once.iri, vocabulary()))
    assert [words for words in own if words not in text] == []
    assert [words for words in others if words in text] == []


def test_the_language_that_the_head_names_goes_before_that_of_the_sentences() -> None:
    text = (LANGUAGES / "german.md").read_text(encoding="utf-8")
    once = read_work(text.replace("\n\n##", "\n- Sprache: fr\n\n##", 1), "work.md", vocabulary())
    assert "| tube cathodique " in write_work(load_work(once.triples, once.iri, vocabulary()))
