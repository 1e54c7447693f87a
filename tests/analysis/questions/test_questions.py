"""The agenda in a case that can be read; ranks that follow the measure; nobody asked whose time is over."""

from __future__ import annotations

import datetime
from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest
from examples_read import WORKS, documentation
from hypothesis import given, settings
from hypothesis import strategies as st
from lxml import html

from analysis.history.transcripts import assert_printed
from intent.analysis.questions.agenda import draw_up
from intent.analysis.questions.measure import Factors, Wear, urgency, weight
from intent.analysis.questions.question import Agenda, Question, ranked
from intent.papers.agenda_paper import agenda_paper
from intent.papers.telling import tell
from intent.reading.past import read_past
from intent.variance.people import is_over

CASES = sorted((Path(__file__).parent / "cases").glob("*.md"))
DAYS = (datetime.date(2010, 1, 1), datetime.date(2027, 3, 1))

WEARS = st.builds(
    Wear,
    devices=st.integers(0, 24),
    spares=st.integers(0, 6),
    failed=st.integers(0, 24),
    hours=st.none() | st.integers(0, 90000).map(Fraction),
    hours_of_others=st.none() | st.integers(1, 90000).map(Fraction),
    years=st.integers(0, 80),
)
FACTORS = st.builds(
    Factors,
    wear=WEARS,
    seen=st.integers(0, 3),
    undone=st.integers(0, 3),
    differed=st.integers(0, 5),
    bearing=st.integers(1, 3),
)


@pytest.mark.parametrize("path", CASES, ids=lambda path: path.stem)
def test_case(path: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    assert_printed(path, tmp_path)


def more_pressing(factors: Factors) -> list[Factors]:
    """The same with each factor by itself a step more pressing."""
    wear = factors.wear
    wears = [replace(wear, spares=max(wear.spares - 1, 0)), replace(wear, years=wear.years + 5)]
    wears.append(replace(wear, failed=wear.failed + 1))
    if wear.hours is not None:
        wears.append(replace(wear, hours=wear.hours + 1000))
    return [
        *(replace(factors, wear=one) for one in wears),
        replace(factors, seen=factors.seen + 1),
        replace(factors, undone=factors.undone + 1),
        replace(factors, differed=factors.differed + 1),
        replace(factors, bearing=factors.bearing + 1),
    ]


@given(ours=FACTORS, others=st.lists(FACTORS, max_size=6))
@settings(max_examples=100, deadline=None, derandomize=True)
def test_more_pressing_factors_never_lower_a_rank(ours: Factors, others: list[Factors]) -> None:
    beside = [
        Question(text=f"other {number}", why="", factors=one, whom=("a",))
        for number, one in enumerate(others)
    ]
    before = Question(text="ours", why="", factors=ours, whom=("a",))
    rank = ranked([before, *beside]).index(before)
    for factors in more_pressing(ours):
        after = replace(before, factors=factors)
        assert weight(factors) >= weight(ours)
        assert ranked([after, *beside]).index(after) <= rank


def test_the_measure_by_hand() -> None:
    """Three devices with one spare, 21,000 hours against 7,000, twenty years: 1 + 2/3 + 3/4 + 1/2."""
    wear = Wear(
        devices=3, spares=1, failed=0, hours=Fraction(21000), hours_of_others=Fraction(7000), years=20
    )
    assert urgency(wear) == 1 + Fraction(2, 3) + Fraction(3, 4) + Fraction(1, 2)
    assert weight(Factors(wear=wear, seen=3, undone=3, differed=2, bearing=2)) == urgency(wear) * 6 * 3 * 2
    assert weight(Factors()) == 4


def agenda_of(path: Path, day: datetime.date) -> Agenda:
    found = documentation(path)
    return draw_up(found.work, read_past(found).installations, day)


@pytest.mark.parametrize("path", WORKS, ids=lambda path: path.parent.name)
@pytest.mark.parametrize("day", DAYS, ids=str)
def test_examples(path: Path, day: datetime.date) -> None:
    agenda = agenda_of(path, day)
    assert 3 <= agenda.count <= 40
    for sheet in agenda.sheets:
        person = agenda.work.person(sheet.person)
        assert person is not None
        assert not is_over(person, day)
        assert list(sheet.questions) == list(ranked(sheet.questions))
    paper = agenda_paper(agenda)
    assert tell(paper, "markdown") == tell(agenda_paper(agenda_of(path, day)), "markdown")
    page = html.fromstring(tell(paper, "html"))
    assert not {"script", "link", "img"} & {str(found.tag) for found in page.iter()}
    assert sum(1 for _ in page.iter("article")) == sum(len(sheet.questions) for sheet in agenda.sheets)
