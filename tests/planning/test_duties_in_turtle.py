"""The duties of a showing as programs read them: in the Turtle report, which the ontology is held to as well."""

from __future__ import annotations

from pathlib import Path

from intent.papers import Evidence, write_report
from intent.values.dates import read_date
from intent.variance.judge import judge
from planning.test_duties_due import read

EXPECTED = Path(__file__).parent / "expected"


def test_a_report_tells_what_is_to_be_done() -> None:
    work, showing = read(
        '"wipe the glass", by cons, every 30 days',
        '"send photographs", by borrower, within 14 days of the end, if "it is shown outside"',
        attested="| wipe the glass | yes | cons | 2027-03-05 |",
    )
    evidence = Evidence((), "0.1.0", read_date("2026-11-02").first)
    told = write_report(judge(work, showing), "turtle", evidence)
    assert told == (EXPECTED / "duties.ttl").read_text(encoding="utf-8")
