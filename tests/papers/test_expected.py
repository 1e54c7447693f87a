"""Each report of one proposal, against a file that a reader can judge; and what must hold of all of them."""

from __future__ import annotations

import json
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pytest

from intent.language.languages import locale_of
from intent.model.subject import one
from intent.papers import FORMATS, Evidence, write_report
from intent.variance.result import Variance

EXPECTED = Path(__file__).parent / "expected"
SUFFIXES = {"text": "txt", "html": "html", "markdown": "md", "json": "json", "turtle": "ttl"}


@pytest.mark.parametrize("format", FORMATS)
def test_report_is_as_expected(format: str, variance: Variance, evidence: Evidence) -> None:
    path = EXPECTED / f"loan.{SUFFIXES[format]}"
    assert write_report(variance, format, evidence) == path.read_text(encoding="utf-8"), (
        f"differs from {path}"
    )


@pytest.mark.parametrize("language", ["de", "fr"])
def test_report_in_another_language_is_as_expected(
    language: str, variance: Variance, evidence: Evidence
) -> None:
    """The variance itself is made by hand: its reasons and labels are English, as what writers wrote would be."""
    path = EXPECTED / f"loan.{language}.txt"
    report = write_report(variance, "text", evidence, locale=locale_of(language))
    assert report == path.read_text(encoding="utf-8"), f"differs from {path}"


def test_many_screens_share_one_departure(many: Variance, evidence: Evidence) -> None:
    path = EXPECTED / "wall.txt"
    assert write_report(many, "text", evidence) == path.read_text(encoding="utf-8"), f"differs from {path}"


@pytest.mark.parametrize("format", FORMATS)
def test_unchanged_work_has_no_departures(format: str, unchanged: Variance, evidence: Evidence) -> None:
    report = write_report(unchanged, format, evidence)
    assert 'id="departures"' not in report
    assert "Point by point" not in report
    assert "sh:result " not in report


@pytest.mark.parametrize("format", FORMATS)
def test_same_input_gives_same_report(format: str, variance: Variance, evidence: Evidence) -> None:
    assert write_report(variance, format, evidence) == write_report(variance, format, evidence)


@pytest.mark.parametrize("format", FORMATS)
def test_hostile_words_do_no_harm(format: str, variance: Variance, evidence: Evidence) -> None:
    hostile = "</style><script>alert(1)</script>\x1b[2J\x00 \"'\\ | # *"
    work = replace(variance.work, title=hostile, note=f"{hostile}\n\n![picture](https://example.org/p.png)")
    row = replace(variance.rows[0], proposed=hostile, subject=one(hostile), reason=hostile)
    report = write_report(replace(variance, work=work, rows=(row,)), format, evidence)
    for harm in ("\x1b", "\x00", *(("<script", "<img") if format == "html" else ())):
        assert harm not in report


def test_terminal_report_waits_for_nothing_it_does_not_need() -> None:
    program = (
        "import sys, intent.papers.told_text, intent.papers.variance_report; "
        "print([m for m in ('lxml', 'babel') if m in sys.modules])"
    )
    ran = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=True)
    assert ran.stdout.strip() == "[]"


def test_unknown_format_is_refused(variance: Variance, evidence: Evidence) -> None:
    with pytest.raises(ValueError, match="text, html, markdown, json, turtle"):
        write_report(variance, "pdf", evidence)


def test_json_has_the_shape_that_other_programs_rely_on(variance: Variance, evidence: Evidence) -> None:
    """The keys and their order are those of the command line's documentation; others may only follow."""
    document = json.loads(write_report(variance, "json", evidence))
    assert list(document)[:8] == [
        "work",
        "installation",
        "outcome",
        "refer_to",
        "verdicts",
        "obstacles",
        "effects",
        "notes",
    ]
    assert document["work"] == {
        "title": "Timetable for a Closed Line",
        "iri": "https://example.org/closed-line/work",
    }
    assert list(document["installation"].items())[:2] == [
        ("title", "Loan to Halmsee"),
        ("date", "2027-03-01"),
    ]
    assert document["outcome"] == "not-acceptable"
    verdict = document["verdicts"][5]
    assert list(verdict.items())[:10] == [
        ("subject", "M2"),
        ("characteristic", "technology"),
        ("documented", "cathode-ray tube"),
        ("proposed", "LCD"),
        ("verdict", "conditional"),
        ("governing", ["R1.2"]),
        ("set_aside", [{"instruction": "R1.1", "by": "R1.2", "because": "exception"}]),
        ("ground", "intent"),
        ("days", None),
        ("open", [{"kind": "consent", "person": "estate", "instruction": "R1.2"}]),
    ]
    assert document["verdicts"][1]["days"] == "2027-03-01/2027-03-31"
    assert all(row["verdict"] != "as-documented" for row in document["verdicts"])
