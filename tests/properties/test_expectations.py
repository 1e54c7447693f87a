"""An expectation is judged as `check` judges the installation that says the same."""

from __future__ import annotations

import datetime
from random import Random

from examples_read import vocabulary
from hypothesis import given
from oracle.cases import Case
from oracle.expecting import Expected, as_installation, draw_expected
from oracle.program import judged
from oracle.writing import work_text

from intent.analysis.expectations.held import hold_expectations
from intent.diagnostics import Diagnostic
from intent.dossier.work_text import read_work
from intent.language.locale import ENGLISH
from intent.record.load_work import load_work
from intent.variance.result import Verdict
from properties.strategies import cases, fixed, seeds

LATER = datetime.date(2031, 1, 1)
"""Another day than the expectation's own."""


def checked(case: Case, expected: Expected) -> str:
    """The worst verdict of the rows that `check` gives for the installation; `none` where there is none."""
    rows = [
        row.verdict
        for row in judged(as_installation(case, expected), vocabulary()).rows
        if not row.is_whole and row.subject.written in expected.members
        if ENGLISH.say(row.characteristic) == expected.trait
    ]
    return max(rows, key=lambda verdict: verdict.badness).value if rows else "none"


def unmet(case: Case, expected: Expected, verdict: str) -> list[Diagnostic]:
    """What is said where the dossier expects a verdict."""
    reading = read_work(work_text(case) + expected.table(verdict), "work.md", vocabulary())
    assert not [one for one in reading.findings if one.is_error], reading.findings
    work = load_work(reading.triples, reading.iri, vocabulary())
    found = hold_expectations(work, (), LATER, reading.spans)
    return [one for one in found if one.slug == "not-as-expected"]


@given(case=cases(), seed=seeds())
@fixed(150)
def test_an_expectation_is_judged_as_its_installation_is(case: Case, seed: int) -> None:
    expected = draw_expected(Random(seed), case)
    verdict = checked(case, expected)
    assert unmet(case, expected, verdict) == []
    for other in ("none", *Verdict):
        if other != verdict:
            assert len(unmet(case, expected, other)) == 1
            break
