"""Reports lead from a quotation to its passage; what stays in the house is named there and not shown."""

from __future__ import annotations

import datetime
from pathlib import Path
from typing import Any

import pytest
from lxml import html

from intent import verbs
from intent.papers import Evidence, write_report
from intent.papers.excerpts import AROUND, WHOLE, excerpts, left_out
from intent.papers.passages_told import headings_behind
from intent.reading.evidence.passages import read_passages

DAY = datetime.date(2026, 11, 24)
WORK = """# Timetable for a Ferry

- number: 7
- owner: Thornacre Museum

## People

| person | name             | role   |
| ------ | ---------------- | ------ |
| artist | Ottiline Quarrow | artist |

## Parts

| part | kind    | rotation |
| ---- | ------- | -------- |
| M1   | display | upright  |
| M2   | display | upright  |

## Sources

### S1 Conversation

- kind: interview
- with: artist
- date: 1999
- file: talk.md
{keep}
### S2 Letter

- kind: letter
- by: artist
- date: 2001
- file: letter.txt

## Instructions

### R1 As it is

> You wait *on the slip*.

> It leaves when it is full.

- required: rotation of M1 is upright ± 1 deg
- source: S1 at 0:02:10
- source: S2

### R2 And the other

> Nobody has ever drowned.

- required: rotation of M2 is upright ± 1 deg
- source: S2
"""
LOAN = """# Loan

- work: work.md
- dates: 2027-03-01

## Changes

| part | rotation    |
| ---- | ----------- |
| M1   | upside down |
| M2   | upside down |
"""
TALK = (
    "# Talk\n\n[0:02:10] OQ: You wait on the\nslip. <script>alert(1)</script> \ue000\n\n[0:03:00] OQ: No.\n"
)


def report(
    folder: Path, format: str, *, keep: str = "", talk: str = TALK, letter: str = "It leaves when it is full."
) -> str:
    (folder / "work.md").write_text(WORK.format(keep=keep), encoding="utf-8")
    (folder / "loan.md").write_text(LOAN, encoding="utf-8")
    (folder / "talk.md").write_text(talk, encoding="utf-8")
    (folder / "letter.txt").write_text(letter, encoding="utf-8")
    return verbs.report(verbs.check(folder / "loan.md"), format, date=DAY)


def parsed(page: str) -> Any:
    """The page's root; the stubs of lxml do not tell its methods for HTML."""
    return html.fromstring(page)


def marks(page: Any) -> dict[str, str]:
    return {
        one.get("id", ""): " ".join(one.text_content().split()) for one in page.iter("mark") if one.get("id")
    }


def test_each_quotation_leads_to_its_passage(tmp_path: Path) -> None:
    page = parsed(report(tmp_path, "html"))
    assert marks(page) == {
        "passage-R1-1": "You wait on the slip.",
        "passage-R1-2": "It leaves when it is full.",
    }
    links = {one.text_content(): one.get("href") for one in page.iter("a") if "Found" in one.text_content()}
    assert links == {
        "Found in talk.md, line 3, at 0:02:10": "#passage-R1-1",
        "Found in letter.txt, line 1": "#passage-R1-2",
    }
    assert "Not found in the source cited." in page.text_content()


def test_no_markup_of_a_source_passes(tmp_path: Path) -> None:
    page = parsed(report(tmp_path, "html", letter="<img src=x> It leaves when it is full."))
    assert not list(page.iter("script", "img"))
    assert "<script>alert(1)</script> \N{REPLACEMENT CHARACTER}" in page.text_content()


def test_a_passage_over_emphasis_and_paragraphs_is_marked_throughout(tmp_path: Path) -> None:
    talk = "[0:02:10] You **wait** on\n\nthe slip. Then *on*.\n"
    page = parsed(report(tmp_path, "html", talk=talk))
    marked = [one.text for one in page.get_element_by_id("source-S1").iter("mark")]
    assert marked == ["You ", "wait", " on", "the slip."]
    assert marks(page)["passage-R1-1"] == "You"


def test_what_stays_in_the_house_is_only_named(tmp_path: Path) -> None:
    page = parsed(report(tmp_path, "html", keep="- keep: internal\n"))
    assert "passage-R1-1" not in marks(page)
    assert "alert(1)" not in page.text_content()
    assert page.get_element_by_id("source-S1") is not None
    assert [one.get("href") for one in page.iter("a") if "talk.md" in one.text_content()] == ["#source-S1"]


def test_long_sources_are_cut_to_the_surroundings(tmp_path: Path) -> None:
    filling = (
        "\n\n".join(f"[0:{minute:02}:30] A: Nothing to say of it at all." for minute in range(3, 60)) * 5
    )
    page = parsed(report(tmp_path, "html", talk=TALK + filling))
    text = page.get_element_by_id("source-S1").text_content()
    assert marks(page)["passage-R1-1"] == "You wait on the slip."
    assert "characters are left out here" in text
    assert len(text) < WHOLE


def test_excerpts_hold_what_is_quoted_and_count_the_rest() -> None:
    text = "word " * 10_000
    shown = excerpts(text, [(20_000, 20_100), (20_500, 20_600), (40_000, 40_004)])
    assert len(shown) == 2
    assert shown[0].start <= 20_000 - AROUND + 5
    assert shown[0].end >= 20_600 + AROUND - 5
    assert sum(one.end - one.start for one in shown) + left_out(text, shown) == len(text)
    assert excerpts("short", [(0, 2)])[0].end == 5


def test_markdown_refers_to_file_time_and_line(tmp_path: Path) -> None:
    text = report(tmp_path, "markdown")
    assert "[^R1-1][^R1-2]" in text
    assert "[^R1-1]: Found in talk.md, line 3, at 0:02:10." in text
    assert "[^R1-2]: Found in letter.txt, line 1." in text
    assert "[^R2-1]: Not found in the source cited." in text


def test_text_says_the_line_where_the_sources_were_read(tmp_path: Path) -> None:
    report(tmp_path, "text")
    checked = verbs.check(tmp_path / "loan.md")
    passages = read_passages(checked.variance.work, tmp_path, headings_behind(checked.variance))
    text = write_report(checked.variance, "text", Evidence((), "0", DAY), passages=passages)
    assert "Found at line 3; found at line 1." in text
    assert "Not found in the source cited." in text


@pytest.mark.parametrize("format", ["text", "json", "turtle"])
def test_other_reports_do_not_wait_for_the_sources(format: str, tmp_path: Path) -> None:
    with_sources = report(tmp_path, format)
    (tmp_path / "talk.md").unlink()
    assert verbs.report(verbs.check(tmp_path / "loan.md"), format, date=DAY) == with_sources


@pytest.mark.parametrize("format", ["html", "markdown"])
def test_the_report_rests_on_the_sources_read(format: str, tmp_path: Path) -> None:
    assert "letter.txt" in report(tmp_path, format)
    (tmp_path / "letter.txt").unlink()
    assert "Not found" not in verbs.report(verbs.check(tmp_path / "loan.md"), format, date=DAY)
