"""A duty is no requirement: whatever is to be done, every verdict and the outcome are what they were."""

from __future__ import annotations

import re

from hypothesis import given
from hypothesis import strategies as st
from oracle.cases import Case
from oracle.writing import installation_text, work_text

from properties.strategies import cases, fixed, verdicts

DUTIES = (
    '- duty: "wipe the disc"',
    '- duty: "wipe the disc", by borrower, within 14 days of the end',
    '- duty: "dust the glass", every 3 days, until 1990',
    '- duty: "look", before, if "it is cold"',
    '- duty: "look", unless number of additions is at least 1, by conservator',
)


@given(case=cases(), drawn=st.lists(st.sampled_from(DUTIES), min_size=1, max_size=3))
@fixed(60)
def test_a_duty_never_changes_a_verdict(case: Case, drawn: list[str]) -> None:
    work, installation = work_text(case), installation_text(case)
    # after the last line of each list under a heading, so that no instruction gets another number
    added = "\n".join(drawn) + "\n"
    with_duties = re.sub(r"(?m)^### R\S*.*\n(?:(?!#).*\n)*?(?:- .*\n)+", lambda found: found[0] + added, work)
    assert with_duties.count("- duty: ") >= work.count("### R") * len(drawn) > 0 or "### R" not in work
    assert verdicts(with_duties, installation) == verdicts(work, installation), with_duties
