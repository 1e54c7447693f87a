"""Property 3: the documented state, checked against itself, departs from nothing that its instructions do not say.

Where it does, what examines the documentation by itself reports it.
"""

from __future__ import annotations

from dataclasses import replace

from examples_read import vocabulary
from hypothesis import given
from oracle.cases import Case, Line
from oracle.program import loaded
from oracle.state import documented, holds, meant
from oracle.world import small_world
from oracle.writing import installation_text, work_text

from intent.analysis.examination.examine import findings_about, undisturbed
from intent.variance.judge import judge
from properties.strategies import cases, crowded, fixed, verdicts

BAD = {"forbidden", "breach", "uncovered"}


def is_against(case: Case, line: Line, subject: str) -> bool:
    """Whether what is documented of a subject departs from an instruction."""
    if not holds(case, line.saying.reach, subject):
        return False
    known = documented(case, line.saying.trait, subject) or small_world()[line.saying.trait].everything
    named = meant(case, small_world(), line.saying, subject)
    if named is None:
        return False
    return (line.modality == "forbidden" and bool(known & named)) or (
        line.modality == "required" and not known <= named
    )


@given(case=crowded())
@fixed(150)
def test_the_documented_state_departs_from_nothing_unsaid(case: Case) -> None:
    case = case.unchanged()
    rows, _ = verdicts(work_text(case), installation_text(case))
    for (subject, trait), verdict in rows.items():
        departs = any(line.saying.trait == trait and is_against(case, line, subject) for line in case.lines)
        bad = verdict in {"forbidden", "breach", "uncovered"}
        assert not bad or (departs and verdict != "uncovered"), (
            f"{subject}, {trait}: {verdict}\n{work_text(case)}\n{installation_text(case)}"
        )


@given(case=cases())
@fixed(250)
def test_where_it_departs_the_documentation_is_reported(case: Case) -> None:
    case = replace(case.unchanged(), attested={})
    found = loaded(work_text(case), installation_text(case), vocabulary())
    bad = [row for row in judge(found.work, found.installation).rows if row.verdict.value in BAD]
    reported = {name for one in findings_about(undisturbed(found.work)) for name in (one.subject, *one.lines)}
    for row in bad:
        governing = {line.identifier for line in row.governing}
        assert governing & reported, (
            f"{row.subject.written}: {row.verdict} by {governing}, reported {reported}\n{work_text(case)}"
        )
