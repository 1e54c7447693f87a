"""Property 4: adding a consent or an attestation never makes a conditional verdict worse, unless the answer is no.

Of a fact that an `unless` names, `holds` is the unfavourable answer.
"""

from __future__ import annotations

import datetime
from dataclasses import replace

from hypothesis import assume, given
from hypothesis import strategies as st
from oracle.cases import Answer, Case
from oracle.instructing import FACTS, day
from oracle.proposing import TERMS
from oracle.verdicts import ORDER
from oracle.writing import installation_text, work_text

from properties.strategies import crowded, fixed, verdicts


def favourable(case: Case, fact: str) -> bool | None:
    """The answer to a fact that closes every condition on it; None where no answer closes all."""
    wanted = {
        not condition.unless for line in case.lines for condition in line.conditions if condition.fact == fact
    }
    return wanted.pop() if len(wanted) == 1 else None


def assert_no_conditional_is_worse(case: Case, other: Case) -> None:
    before, _ = verdicts(work_text(case), installation_text(case))
    if "conditional" not in before.values():
        return
    after, _ = verdicts(work_text(other), installation_text(other))
    for key, verdict in before.items():
        now = after.get(key, "as-documented")
        assert verdict != "conditional" or ORDER.index(now) >= ORDER.index("conditional"), (
            f"{key}: conditional, and then {now}\n{work_text(case)}\n{installation_text(case)}\n"
            f"with the answer:\n{installation_text(other)}"
        )


@given(case=crowded(), which=st.integers(0, 50))
@fixed(250)
def test_an_attestation_never_makes_a_conditional_verdict_worse(case: Case, which: int) -> None:
    choices = [f"{line.name} cannot be had" for line in case.lines if line.choice]
    facts = [*FACTS, *TERMS, *choices]
    asked = facts[which % len(facts)]
    answer = favourable(case, asked) if asked in FACTS else True
    assume(answer is not None and asked not in case.attested)
    other = replace(case, attested={**case.attested, asked: bool(answer)})
    assert_no_conditional_is_worse(case, other)


@given(case=crowded(), which=st.integers(0, 50), terms=st.sampled_from(("", *TERMS)))
@fixed(250)
def test_a_consent_never_makes_a_conditional_verdict_worse(case: Case, which: int, terms: str) -> None:
    line = case.lines[which % len(case.lines)]
    person = line.consents[0] if line.consents else "artist"
    assume(line.modality != "allowed" or line.consents)
    assume(not any(answer.to in (line.name, line.heading) for answer in case.answers))
    given_on = day(datetime.date(2026, 10, 2) if which % 2 else datetime.date(2010, 6, 1))
    answer = Answer(person, line.name, True, terms=terms, date=given_on)
    assert_no_conditional_is_worse(case, replace(case, answers=(*case.answers, answer)))
