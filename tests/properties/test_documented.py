"""Property 3: the documented state, checked against itself, departs from nothing that its instructions do not say."""

from __future__ import annotations

from hypothesis import given
from oracle.cases import Case, Line
from oracle.state import documented, holds, meant
from oracle.world import small_world
from oracle.writing import installation_text, work_text

from properties.strategies import crowded, fixed, verdicts


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
