"""The program's verdicts against those counted out, over many random cases."""

from __future__ import annotations

from random import Random

import pytest

from intent.dossier.installation import read_installation
from intent.dossier.work import read_work
from intent.record.load_installation import load_installation
from intent.record.load_work import load_work
from intent.variance.judge import judge
from intent.variance.result import Variance
from intent.vocabulary.loader import read_vocabulary
from intent.vocabulary.terms import Vocabulary
from oracle.cases import Case
from oracle.drawing import draw_case
from oracle.judging import Rows, outcome, rows
from oracle.world import Trait, small_world
from oracle.writing import installation_text, work_text

SEEDS = range(1500)
BATCHES = 10


@pytest.fixture(scope="module")
def vocabulary() -> Vocabulary:
    return read_vocabulary()


@pytest.fixture(scope="module")
def world() -> dict[str, Trait]:
    return small_world()


def judged(case: Case, vocabulary: Vocabulary) -> Variance:
    """What the program says of the texts of a case."""
    found = read_work(work_text(case), "work.md", vocabulary)
    work = load_work(found.graph, found.iri, vocabulary)
    proposal = read_installation(installation_text(case), "installation.md", work)
    errors = [one for one in (*found.findings, *proposal.findings) if one.severity.value == "error"]
    assert not errors, f"{errors}\n{work_text(case)}\n{installation_text(case)}"
    return judge(work, load_installation(proposal.graph, proposal.iri, work, found.graph))


def compared(case: Case, world: dict[str, Trait], variance: Variance) -> list[str]:
    """Each row on which the two differ."""
    expected = rows(case, world)
    found: Rows = {
        (row.subject, row.characteristic): row.verdict.value
        for row in variance.rows
        if row.characteristic in world and row.verdict.value != "as-documented"
    }
    differences = [
        f"{subject}, {trait}: counted out {expected.get((subject, trait))}, found {found.get((subject, trait))}"
        for subject, trait in sorted({*expected, *found})
        if expected.get((subject, trait)) != found.get((subject, trait))
    ]
    if not differences and not variance.findings:
        everything = {(row.subject, row.characteristic): row.verdict.value for row in variance.rows}
        wanted = outcome(case, world, everything)
        if wanted != variance.outcome.value:
            differences.append(f"outcome: counted out {wanted}, found {variance.outcome.value}")
    return differences


@pytest.mark.parametrize("batch", range(BATCHES))
def test_rows_and_outcome_are_as_counted_out(
    batch: int, vocabulary: Vocabulary, world: dict[str, Trait]
) -> None:
    for seed in SEEDS[batch::BATCHES]:
        case = draw_case(Random(seed), world)
        differences = compared(case, world, judged(case, vocabulary))
        assert not differences, "\n".join(
            [f"seed {seed}", *differences, work_text(case), installation_text(case)]
        )
