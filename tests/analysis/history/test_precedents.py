"""Precedents are told and never count; the past is found by its head alone."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from random import Random

import pytest
from examples_read import EXAMPLES, INSTALLATIONS, WORKS, checked, documentation, vocabulary
from hypothesis import given
from oracle.cases import Case
from oracle.program import loaded
from oracle.writing import installation_text, work_text
from properties.strategies import cases, fixed

from analysis.history.transcripts import read_transcript, write_files
from intent.analysis.history.precedents import precedents_of
from intent.papers import Evidence, write_report
from intent.reading.past import read_past
from intent.values.dates import read_date
from intent.variance.judge import judge, rows_about
from intent.verbs import check

EARLIER = read_date("1950-01-01")
EXPECTED = Path(__file__).parent / "expected"


@given(case=cases())
@fixed(60)
def test_precedents_change_no_verdict_and_hold_what_they_cite(case: Case) -> None:
    """The same installation, carried out earlier, is a precedent of each departure that has a value."""
    found = loaded(work_text(case), installation_text(case), vocabulary())
    variance = judge(found.work, found.installation)
    past = replace(found.installation, iri="urn:example:earlier", dates=EARLIER)
    standings = precedents_of(variance, [past])
    assert judge(found.work, found.installation) == variance
    assert {one.key for one in standings} <= {row.key for row in variance.departures}
    then = {row.key: row.verdict for row in judge(found.work, past).rows}
    for one in standings:
        for precedent in one.precedents:
            assert precedent.verdict == then.get(one.key)
            assert precedent.reach == "same"


@given(case=cases())
@fixed(40)
def test_rows_asked_for_are_those_that_judging_gives(case: Case) -> None:
    found = loaded(work_text(case), installation_text(case), vocabulary())
    rows = judge(found.work, found.installation).rows
    wanted = {row.key for row in Random(len(rows)).sample(rows, len(rows) // 2)}
    told = rows_about(found.work, found.installation, wanted)
    assert set(told) == {row for row in rows if row.key in wanted}


@pytest.mark.parametrize("path", INSTALLATIONS, ids=lambda path: path.stem)
def test_the_past_changes_no_verdict_of_the_examples(path: Path) -> None:
    found = checked(path).variance
    by_itself = judge(found.work, found.installation)
    assert found.rows == by_itself.rows
    assert found.outcome == by_itself.outcome


@pytest.mark.parametrize("path", WORKS, ids=lambda path: path.parent.name)
def test_every_example_was_shown(path: Path) -> None:
    past = read_past(documentation(path), all_told=True)
    assert past.installations
    assert not past.findings


def test_every_report_tells_of_precedents() -> None:
    found = checked(EXAMPLES / "second-delivery/installations/2027-maarholm-loan.md")
    evidence = Evidence((), "0.1.0", read_date("2026-11-02").first)
    for format, words in (
        ("text", "shown before"),
        ("markdown", "*Shown before:*"),
        ("html", "Shown before"),
        ("json", '"precedents"'),
        ("turtle", "intent:precedent"),
    ):
        told = write_report(found.variance, format, evidence, standings=found.standings)
        assert words in told
        assert "In the lower hall" in told or format == "turtle"
        assert words not in write_report(found.variance, format, evidence)


def test_turtle_is_as_expected(tmp_path: Path) -> None:
    """A report with precedents, with the consent given then; the ontology is held to it as well."""
    write_files(read_transcript(EXPECTED.parent / "cases" / "consent.md"), tmp_path)
    found = check(tmp_path / "installations" / "2024.md")
    evidence = Evidence((), "0.1.0", read_date("2026-11-02").first)
    told = write_report(found.variance, "turtle", evidence, standings=found.standings)
    assert told == (EXPECTED / "consent.ttl").read_text(encoding="utf-8")
