"""Property 9: a consent refused or ended, or a condition denied, never ends in a better outcome than no answer."""

from __future__ import annotations

import datetime
from dataclasses import replace

from hypothesis import assume, given
from hypothesis import strategies as st
from oracle.cases import Answer, Case, Line
from oracle.instructing import FACTS, day, year
from oracle.proposing import TERMS
from oracle.writing import installation_text, work_text

from properties.strategies import crowded, fixed, verdicts

OUTCOMES = ("acceptable", "acceptable-on-conditions", "refer", "not-acceptable")
ASKED = day(datetime.date(2026, 10, 2))


def assert_no_better(case: Case, other: Case) -> None:
    _, before = verdicts(work_text(case), installation_text(case))
    _, after = verdicts(work_text(other), installation_text(other))
    assert OUTCOMES.index(after) >= OUTCOMES.index(before), (
        f"{before}, and then {after}\n{work_text(case)}\n{installation_text(case)}\n"
        f"with the answer:\n{installation_text(other)}"
    )


def calling(case: Case, which: int) -> Line:
    """A permission that calls for a consent to which nobody has answered."""
    lines = [line for line in case.lines if line.consents]
    assume(lines)
    line = lines[which % len(lines)]
    assume(not any(answer.to in (line.name, line.heading) for answer in case.answers))
    return line


@given(case=crowded(), which=st.integers(0, 50))
@fixed(100)
def test_a_refusal_never_ends_better_than_no_answer(case: Case, which: int) -> None:
    line = calling(case, which)
    refusal = Answer(line.consents[0], line.name, False, date=ASKED)
    assert_no_better(case, replace(case, answers=(*case.answers, refusal)))


@given(case=crowded(), which=st.integers(0, 50))
@fixed(60)
def test_a_consent_that_has_ended_never_ends_better_than_no_answer(case: Case, which: int) -> None:
    line = calling(case, which)
    ended = Answer(line.consents[0], line.name, True, date=day(datetime.date(2010, 6, 1)), until=year(2020))
    assert_no_better(case, replace(case, answers=(*case.answers, ended)))


@given(case=crowded(), which=st.integers(0, 50))
@fixed(60)
def test_denied_terms_never_end_better_than_no_answer(case: Case, which: int) -> None:
    line, terms = calling(case, which), TERMS[which % len(TERMS)]
    assume(not any(answer.terms == terms for answer in case.answers))
    consent = Answer(line.consents[0], line.name, True, terms=terms, date=ASKED)
    denied = {**case.attested, terms: False}
    assert_no_better(case, replace(case, answers=(*case.answers, consent), attested=denied))


@given(case=crowded(), which=st.integers(0, 50))
@fixed(100)
def test_a_condition_denied_never_ends_better_than_no_answer(case: Case, which: int) -> None:
    """Of a permission that nothing else shares its fact with, and that is no choice before another."""
    fact = FACTS[which % len(FACTS)]
    asking = [line for line in case.lines if any(one.fact == fact for one in line.conditions)]
    assume(len(asking) == 1 and fact not in case.attested)
    (line,) = asking
    assume(line.modality == "allowed" and not line.choice)
    unless = next(one.unless for one in line.conditions if one.fact == fact)
    assert_no_better(case, replace(case, attested={**case.attested, fact: unless}))
